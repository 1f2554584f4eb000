import { type Book, planningSettingsOf } from '@twistwright/books';
import { type LocalTime, type Money, ok, type Problem, type Result } from '@twistwright/units';
import { type CurvePoint, type PurchaseTools, purchaseOfBook, type ShoppingPlan, shop, shoppingCurve } from '../shopping/index.ts';
import { forecastGig } from './forecast-gig.ts';
import { jointSamplesOf } from './joint-samples-of.ts';
import { comingGigs, type Outlook, outlookOf, type PlanOptions } from './outlook-of.ts';

export interface PlanBookOptions extends PlanOptions {
  readonly budget?: Money;
  /** The time of day: an order whose cut-off has passed goes on the next working day. Missing: every cut-off of today is still to come. */
  readonly now?: LocalTime;
  readonly daysToSpare?: number;
  /** Only these suppliers are bought from; all if missing. */
  readonly suppliers?: readonly string[];
  /** Also the curve of cost against risk. */
  readonly withCurve?: boolean;
  /** Also the chance on an independent sample of as many runs. */
  readonly withSecondOpinion?: boolean;
}
/** An outlook with its shopping. */
export interface Plan extends Outlook {
  /** The shopping plan, or the nearest one that is possible; missing if none is. */
  readonly shopping?: ShoppingPlan;
  /** Why the shopping is not as asked; empty if it is. */
  readonly shoppingProblems: readonly Problem[];
  readonly curve?: readonly CurvePoint[];
}

/** The whole plan: forecast, needs, shopping, packing and charge of the coming gigs. */
export async function planBook(book: Book, options: PlanBookOptions, tools: PurchaseTools): Promise<Result<Plan>> {
  const outlook = outlookOf(book, options);
  return outlook.ok ? ok(await shopFor(book, outlook.value, options, tools)) : outlook;
}

/** Adds the shopping to an outlook. */
export async function shopFor(book: Book, outlook: Outlook, options: PlanBookOptions, tools: PurchaseTools): Promise<Plan> {
  const problem = purchaseOfBook(book, outlook.samples, {
    today: outlook.today,
    until: outlook.until,
    chanceOfRunningOut: 1 - outlook.chance,
    ...(options.now === undefined ? {} : { now: options.now }),
    ...(options.daysToSpare === undefined ? {} : { daysToSpare: options.daysToSpare }),
    ...(options.budget === undefined ? {} : { budget: options.budget }),
    ...(options.suppliers === undefined ? {} : { suppliers: options.suppliers }),
  });
  const elsewhere = options.withSecondOpinion === true ? { elsewhere: secondSamples(book, outlook) } : {};
  const first = await shop(problem, tools, elsewhere);
  const answer =
    first.ok || problem.budget === undefined || first.error.nearest !== undefined
      ? first
      : await shop(problem, tools, { ...elsewhere, goal: 'safest' });
  const shopping = answer.ok ? answer.value : answer.error.nearest;
  const problems = first.ok ? [] : first.error.problems;
  const curve = options.withCurve === true ? await shoppingCurve(problem, tools) : undefined;
  return {
    ...outlook,
    shoppingProblems: problems,
    ...(shopping === undefined ? {} : { shopping }),
    ...(curve === undefined ? {} : { curve }),
  };
}

/** Added to the seed for a sample that has nothing in common with the one a plan was made from. */
const elsewhereSeed = 0x5eed;

function secondSamples(book: Book, outlook: Outlook) {
  const seed = (outlook.seed + elsewhereSeed) >>> 0;
  const runs = planningSettingsOf(book).runs;
  const gigs = comingGigs(book, outlook.today, outlook.until);
  return jointSamplesOf(
    gigs.flatMap((gig) => {
      const forecast = forecastGig(book, gig, { seed, runs });
      return forecast.ok ? [forecast.value] : [];
    }),
  );
}
