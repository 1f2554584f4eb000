import type { Proof } from '@twistwright/planner';
import type { Money, Spread } from '@twistwright/units';
import { z } from 'zod';

/** Money that may be below nought: differences, balances, what a gig leaves. */
export const moneyEitherWay = z.int().meta({
  description: 'Money, whole minor units (pence, cents, yen); may be negative',
  examples: [-250],
}) as unknown as z.ZodType<Money, Money>;
/** A sum of money that is not negative; sums may be larger than what one entry of a book may say. */
export const amount = z
  .int()
  .min(0)
  .meta({
    description: 'Money, whole minor units (pence, cents, yen)',
    examples: [845],
  }) as unknown as z.ZodType<Money, Money>;
/** A count of runs, guests, balloons: nought or more. */
export const whole = z.int().min(0);
/** A length in minutes from the start of a gig. */
export const minute = z.number().meta({ description: 'Minutes from the start of the gig', examples: [35] });
export const chance = z
  .number()
  .min(0)
  .max(1)
  .meta({ description: 'Chance, 0 to 1', examples: [0.9] });
export const part = z
  .number()
  .min(0)
  .max(1)
  .meta({ description: 'Share of the whole, 0 to 1', examples: [0.25] });

export const spreadSchema = z
  .strictObject({
    p10: z.number().meta({ description: '10th percentile over the runs' }),
    p50: z.number().meta({ description: 'Middle run' }),
    p90: z.number().meta({ description: '90th percentile over the runs' }),
    mean: z.number(),
    error: z.number().min(0).meta({ description: 'Standard error of the mean (Monte Carlo); 0 for what is counted' }),
  })
  .meta({
    id: 'Spread',
    description: 'A number that differs from run to run, in the unit of the key it stands under',
  }) satisfies z.ZodType<Spread>;

export const proofSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('proven') }),
    z.strictObject({ kind: z.literal('within'), share: z.number().min(0).meta({ description: 'No choice is better by more than this' }) }),
    z.strictObject({ kind: z.literal('found') }),
  ])
  .meta({ id: 'Proof', description: 'How sure it is that nothing is cheaper' }) satisfies z.ZodType<Proof>;
