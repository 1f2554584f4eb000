import type { Gig } from '@twistwright/books';
import type { Charge, ForecastSummary, PackingPlan, Plan, Take } from '@twistwright/planner';
import { z } from 'zod';
import { localDate } from '../book/basic-values.ts';
import { gigSchema } from '../book/gig-schema.ts';
import { problemSchema } from '../http/problem-details.ts';
import { chance, whole } from './answer-values.ts';
import { chargeSchema } from './charge-answer.ts';
import { forecastSchema, takesSchema } from './forecast-answer.ts';
import { packingSchema } from './packing-answer.ts';
import { curvePointSchema, needsSchema, shoppingSchema } from './shopping-answer.ts';

/** The plan of one gig as it travels: the forecast as its summary, takes by item id. */
export interface GigPlanAnswer {
  readonly gig: Gig;
  readonly forecast: ForecastSummary;
  readonly takes: Readonly<Record<string, Take>>;
  readonly packing: PackingPlan;
  readonly charge: Charge;
}
/** A plan as it travels: without its samples. */
export interface PlanAnswer extends Omit<Plan, 'samples' | 'gigs'> {
  readonly gigs: readonly GigPlanAnswer[];
}

export const planAnswer = ({ samples: _samples, gigs, ...plan }: Plan): PlanAnswer => ({
  ...plan,
  gigs: gigs.map(({ gig, forecast, takes, packing, charge }) => ({
    gig,
    forecast: forecast.summary,
    takes: Object.fromEntries(takes),
    packing,
    charge,
  })),
});

export const planAnswerSchema = z
  .strictObject({
    today: localDate,
    seed: z.int().min(0).max(4_294_967_295).meta({ description: 'Same facts, day, seed and runs give the same plan' }),
    runs: whole,
    until: localDate,
    chance: chance.meta({ description: 'Chance asked for, that nothing asked for runs out' }),
    problems: z.array(problemSchema).meta({ description: 'Gigs that cannot be played, and why' }),
    needs: needsSchema,
    gigs: z.array(
      z
        .strictObject({ gig: gigSchema, forecast: forecastSchema, takes: takesSchema, packing: packingSchema, charge: chargeSchema })
        .meta({ id: 'GigPlan', description: 'The plan of one gig' }),
    ),
    shopping: z.exactOptional(shoppingSchema).meta({ description: 'The shopping plan, or the nearest one that is possible' }),
    shoppingProblems: z.array(problemSchema).meta({ description: 'Why the shopping is not as asked; empty if it is' }),
    curve: z.exactOptional(z.array(curvePointSchema)).meta({ description: 'Cost against risk' }),
  })
  .meta({ id: 'Plan', description: 'Forecast, needs, shopping, packing and charge of the coming gigs' }) satisfies z.ZodType<PlanAnswer>;
