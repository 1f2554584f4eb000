import type { Business, Contact, PlanningSettings, Pump, ServicePromise, Settings, ToolWish } from '@twistwright/books';
import { z } from 'zod';
import { amount, count, currency, id, localDate, minutes, name, note, share, zone } from './basic-values.ts';
import { chargeSettingsSchema } from './charge-schema.ts';
import { lineSettingsSchema } from './line-schema.ts';

export const contactSchema = z.strictObject({
  person: z.exactOptional(name),
  phone: z.exactOptional(name),
  email: z.exactOptional(name),
  site: z.exactOptional(name),
  address: z.exactOptional(note),
}) satisfies z.ZodType<Contact>;

export const businessSchema = z
  .strictObject({
    name,
    currency,
    zone,
    country: z.exactOptional(z.string().regex(/^[A-Z]{2}$/)),
    town: z.exactOptional(name),
    contact: z.exactOptional(contactSchema),
    ruler: z.exactOptional(z.enum(['in', 'cm'])),
    paper: z.exactOptional(z.enum(['A4', 'Letter'])),
  })
  .meta({ id: 'Business', description: 'Who the book belongs to' }) satisfies z.ZodType<Business>;

export const servicePromiseSchema = z
  .strictObject({ waitMinutes: minutes, shareWithin: share, shareServed: share })
  .meta({ id: 'ServicePromise' }) satisfies z.ZodType<ServicePromise>;

/** Replications that one forecast may take at most. */
const mostRuns = 1_000_000;
export const planningSettingsSchema = z.strictObject({
  chanceOfRunningOut: z.exactOptional(share),
  daysToSpare: z.exactOptional(z.int().min(0).max(365)),
  runs: z.exactOptional(z.int().min(1).max(mostRuns)),
  seed: z.exactOptional(z.int().min(0).max(4_294_967_295)),
  holdingSharePerYear: z.exactOptional(z.number().min(0).max(10)),
  holdingPerPieceWeek: z.exactOptional(z.number().min(0).max(1_000_000)),
  promise: z.exactOptional(servicePromiseSchema),
  handHoursPerDay: z.exactOptional(z.number().gt(0).max(24)),
  budget: z.exactOptional(amount),
  holidays: z.exactOptional(z.array(localDate).max(2000)),
}) satisfies z.ZodType<PlanningSettings>;

const pumpSchema = z.strictObject({ name, litresPerStroke: z.number().gt(0).max(20) }) satisfies z.ZodType<Pump>;
const toolWishSchema = z.strictObject({
  item: id,
  count,
  when: z.enum(['always', 'spare', 'outdoors', 'tables']),
  firstKit: z.exactOptional(z.enum(['must-have', 'spare', 'later'])),
  place: id,
}) satisfies z.ZodType<ToolWish>;

export const settingsSchema = z
  .strictObject({
    line: z.exactOptional(lineSettingsSchema),
    charge: z.exactOptional(chargeSettingsSchema),
    planning: z.exactOptional(planningSettingsSchema),
    pump: z.exactOptional(pumpSchema),
    tools: z.exactOptional(z.array(toolWishSchema).max(500)),
  })
  .meta({ id: 'Settings', description: 'Habits of the business; a missing key takes the shipped default' }) satisfies z.ZodType<Settings>;
