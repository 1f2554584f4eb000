import type { ClosingRule, LineSettings, OutOfStock, Patience, TimeLaw } from '@twistwright/books';
import { z } from 'zod';
import { count, countOrNone, factor, minutes, share, someMinutes, weight } from './basic-values.ts';

const sigma = z.number().min(0).max(5);

export const timeLawSchema = z
  .discriminatedUnion('law', [
    z.strictObject({ law: z.literal('log-normal'), median: someMinutes, sigma }),
    z.strictObject({ law: z.literal('gamma'), mean: someMinutes, shape: z.number().gt(0).max(10_000) }),
    z.strictObject({ law: z.literal('exponential'), mean: someMinutes }),
    z.strictObject({ law: z.literal('fixed'), minutes }),
  ])
  .meta({ id: 'TimeLaw', description: 'How long something takes, in minutes' }) satisfies z.ZodType<TimeLaw>;

export const patienceSchema = z
  .discriminatedUnion('law', [
    z.strictObject({ law: z.literal('log-normal'), median: someMinutes, sigma }),
    z.strictObject({ law: z.literal('exponential'), mean: someMinutes }),
    z.strictObject({ law: z.literal('endless') }),
  ])
  .meta({ id: 'Patience', description: 'How long somebody is willing to wait, in minutes' }) satisfies z.ZodType<Patience>;

export const closingRuleSchema = z
  .discriminatedUnion('rule', [
    z.strictObject({ rule: z.literal('none') }),
    z.strictObject({ rule: z.literal('fixed time'), minutesBeforeEnd: minutes }),
    z.strictObject({ rule: z.literal('work ahead'), keptBackMinutes: minutes, minutesPerHead: z.exactOptional(someMinutes) }),
  ])
  .meta({ id: 'ClosingRule', description: 'Who may still join the line' }) satisfies z.ZodType<ClosingRule>;

export const outOfStockSchema = z.enum([
  'other colour, then other figure',
  'other colour',
  'next figure in order',
  'disappointed',
]) satisfies z.ZodType<OutOfStock>;

export const lineSettingsSchema = z
  .strictObject({
    partySizes: z.exactOptional(z.array(weight).min(1).max(30)),
    joining: z.exactOptional(
      z.strictObject({ free: countOrNone, scale: z.exactOptional(z.number().gt(0).max(1_000_000)), room: z.exactOptional(count) }),
    ),
    patience: z.exactOptional(patienceSchema),
    choosing: z.exactOptional(timeLawSchema),
    colourChoosingMinutes: z.exactOptional(minutes),
    handingOver: z.exactOptional(timeLawSchema),
    copycat: z.exactOptional(z.strictObject({ figures: z.number().min(0).max(1000), colours: z.number().min(0).max(1000) })),
    fatiguePerHour: z.exactOptional(z.number().min(0).max(1)),
    weatherFactor: z.exactOptional(factor),
    chanceOfPop: z.exactOptional(z.number().min(0).max(0.9)),
    hiddenShare: z.exactOptional(z.number().min(0).max(10)),
    repeatShare: z.exactOptional(share),
    breakPerHourMinutes: z.exactOptional(z.number().min(0).max(60)),
    closing: z.exactOptional(closingRuleSchema),
    overtimeMinutes: z.exactOptional(minutes),
    outOfStock: z.exactOptional(outOfStockSchema),
    mostEach: z.exactOptional(z.int().min(1).max(100)),
    helper: z.exactOptional(z.strictObject({ pumps: z.exactOptional(factor), draws: z.exactOptional(factor) })),
    oneLine: z.exactOptional(z.boolean()),
    warmUpMinutes: z.exactOptional(minutes),
  })
  .meta({ id: 'LineSettings', description: "The line's habits" }) satisfies z.ZodType<LineSettings>;
