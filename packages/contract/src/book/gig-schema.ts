import {
  type Agreement,
  type Arrivals,
  type ClassPlan,
  type Gig,
  gigKinds,
  type MenuLine,
  type TablesPlan,
  type Venue,
} from '@twistwright/books';
import { z } from 'zod';
import { amount, countOrNone, id, localDate, localTime, miles, minutes, name, note, someMinutes, weight, zone } from './basic-values.ts';
import { lineSettingsSchema, timeLawSchema } from './line-schema.ts';

const venueSchema = z.strictObject({
  name,
  address: z.exactOptional(note),
  miles: z.exactOptional(miles),
  driveMinutes: z.exactOptional(minutes),
}) satisfies z.ZodType<Venue>;

export const arrivalsSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('stream'),
      profile: z
        .array(z.strictObject({ minute: minutes, weight }))
        .min(1)
        .max(1000),
    }),
    z.strictObject({ kind: z.literal('all at the start') }),
  ])
  .meta({ id: 'Arrivals', description: 'How parties come' }) satisfies z.ZodType<Arrivals>;

export const menuLineSchema = z.strictObject({
  figure: id,
  share: weight,
  colourways: z.exactOptional(z.array(id).max(1000)),
}) satisfies z.ZodType<MenuLine>;
const tablesPlanSchema = z.strictObject({
  tables: z.int().min(1).max(10_000),
  foodAfter: timeLawSchema,
  leaveAfter: timeLawSchema,
  walking: timeLawSchema,
}) satisfies z.ZodType<TablesPlan>;
const classPlanSchema = z.strictObject({
  learners: z.int().min(1).max(10_000),
  practiceFactor: z.number().min(1).max(100),
  lessons: z
    .array(z.strictObject({ figure: id, minutes: someMinutes }))
    .min(1)
    .max(100),
}) satisfies z.ZodType<ClassPlan>;
export const agreementSchema = z.strictObject({
  state: z.enum(['asked', 'quoted', 'agreed']),
  fee: z.exactOptional(amount),
  deposit: z.exactOptional(amount),
  depositPaidOn: z.exactOptional(localDate),
  balancePaidOn: z.exactOptional(localDate),
  earlyMinutes: z.exactOptional(minutes),
}) satisfies z.ZodType<Agreement>;
const pieces = z.array(z.strictObject({ figure: id, colourway: id, count: z.int().min(1).max(100_000) })).max(1000);

export const gigSchema = z
  .strictObject({
    id,
    name,
    kind: z.enum(gigKinds),
    day: localDate,
    starts: localTime,
    ends: localTime,
    zone: z.exactOptional(zone),
    client: z.exactOptional(id),
    where: z.exactOptional(venueSchema),
    artists: z.array(id).max(100),
    guests: z.exactOptional(countOrNone.max(100_000)),
    arrivals: z.exactOptional(arrivalsSchema),
    menu: z.array(menuLineSchema).max(1000),
    line: z.exactOptional(lineSettingsSchema),
    breaks: z.exactOptional(z.array(z.strictObject({ atMinute: minutes, minutes: someMinutes, artist: z.exactOptional(id) })).max(100)),
    premade: z.exactOptional(pieces),
    special: z.exactOptional(z.strictObject({ figure: id, colourway: z.exactOptional(id) })),
    tables: z.exactOptional(tablesPlanSchema),
    strolling: z.exactOptional(z.strictObject({ walking: timeLawSchema })),
    order: z.exactOptional(pieces),
    classPlan: z.exactOptional(classPlanSchema),
    weather: z.exactOptional(z.enum(['mild', 'hot', 'cold', 'wet'])),
    outdoors: z.exactOptional(z.boolean()),
    agreement: z.exactOptional(agreementSchema),
    packed: z.exactOptional(z.array(id).max(10_000)),
    notes: z.exactOptional(note),
  })
  .meta({ id: 'Gig', description: 'One booked job' }) satisfies z.ZodType<Gig>;
