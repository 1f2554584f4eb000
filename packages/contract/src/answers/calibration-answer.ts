import { type FitChange, sayFitChange } from '@twistwright/planner';
import type { Calibration, Posterior } from '@twistwright/repertoire';
import { z } from 'zod';
import { part, whole } from './answer-values.ts';

const belief = z.strictObject({ mean: z.number(), sd: z.number().min(0) });
const posteriorSchema = z
  .strictObject({
    mean: z.number(),
    sd: z.number().min(0).meta({ description: 'Standard deviation for the next balloon out of the next bag' }),
    prior: belief.meta({ description: 'Before anything was measured' }),
    measured: whole.meta({ description: "Single measurements of this maker's balloons" }),
    tests: whole.meta({ description: "Tests of this maker's balloons in which this was measured" }),
    parts: z.strictObject({ own: part, others: part, prior: part }).meta({ description: 'Whose data the mean is made of; they sum to 1' }),
  })
  .meta({ id: 'Posterior' }) satisfies z.ZodType<Posterior>;

export const calibrationSchema = z
  .strictObject({
    size: z.string(),
    maker: z.exactOptional(z.string()).meta({ description: 'Missing: nobody said whose balloons they are' }),
    tests: whole.meta({ description: "Tests of this maker's balloons" }),
    otherTests: whole.meta({ description: "Tests of other makers' balloons of this size code" }),
    working: z.strictObject({
      flat: posteriorSchema.meta({ description: 'Flat working length, flat inches' }),
      stretch: posteriorSchema.meta({ description: 'Inflated inches out of a flat one' }),
      tailPerBubble: posteriorSchema.meta({ description: 'Flat inches that a bubble eats' }),
    }),
  })
  .meta({ id: 'Calibration', description: 'What is believed of the balloons of a size code and maker' }) satisfies z.ZodType<Calibration>;

const verdict = z.enum(['fits', 'tight', 'does not fit']);
/** What a test does to one figure. */
export interface FitChangeAnswer {
  readonly figure: string;
  /** Missing for a figure without colourways. */
  readonly colourway?: string;
  readonly before: z.infer<typeof verdict>;
  readonly after: z.infer<typeof verdict>;
  /** Inflated inches left over in the balloon that decides; negative: missing. */
  readonly leftInches: number;
  readonly says: string;
}
export const fitChangeSchema = z
  .strictObject({
    figure: z.string(),
    colourway: z.exactOptional(z.string()),
    before: verdict,
    after: verdict,
    leftInches: z.number().meta({ description: 'Inflated inches left over in the balloon that decides; negative: missing' }),
    says: z.string(),
  })
  .meta({ id: 'FitChange', description: 'What a test does to one figure' }) satisfies z.ZodType<FitChangeAnswer>;

export const fitChangeAnswer = (change: FitChange, ruler?: 'in' | 'cm'): FitChangeAnswer => ({
  figure: change.figure.id,
  ...(change.way === undefined ? {} : { colourway: change.way.id }),
  before: change.before.verdict,
  after: change.after.verdict,
  leftInches: change.after.leftInflatedInches.mid,
  says: sayFitChange(change, ruler),
});
