import { Chance, exp, fail, type Money, ok, type Problem, type Result, roundToMoney, type Spread, spreadOf } from '@twistwright/units';
import { type BreakEven, breakEven } from './break-even.ts';
import { poisson } from './kit-lasting.ts';

/** What the first gigs are like and what the money is for. Money in minor units. */
export interface GrowthProblem {
  /** Spent on the kit. */
  readonly invested: Money;
  readonly hoursPerGig: number;
  /** Fee for an hour; 0 where she works for tips. */
  readonly feePerHour: Money;
  /** Mean tip a guest served. */
  readonly tipPerGuest: Money;
  /** Spread of a gig's tips: standard deviation of the logarithm, default 0.5. */
  readonly tipSigma?: number;
  /** Guests served in an hour, on average. */
  readonly guestsPerHour: number;
  /** Balloons a guest, at cost. */
  readonly materialPerGuest: Money;
  /** Travel, parking and the like. */
  readonly costPerGig: Money;
  readonly gigsPerWeek: number;
  /** Share of what a gig leaves that goes into the next purchases, default 0.5. */
  readonly setAside?: number;
  /** What is to come, in this order: a second pump, a better bag, more colours. */
  readonly purchases: readonly { readonly name: string; readonly cost: Money }[];
  /** How many weeks to look ahead, default 52. */
  readonly weeks?: number;
}
export interface Growth {
  /** Mean of what a gig leaves. */
  readonly perGig: Money;
  /** Break-even on averages, in gigs; missing where a gig leaves nothing. */
  readonly breakEven?: BreakEven;
  /** When the kit has paid for itself. */
  readonly paidBack: Milestone;
  /** When each purchase can be made, in order. */
  readonly purchases: readonly (Milestone & { readonly name: string; readonly cost: Money })[];
  /** What is left after each number of gigs: kit paid, purchases not deducted. */
  readonly path: readonly { readonly gigs: number; readonly balance: Spread }[];
}
/** A moment that comes with a chance; the spreads are over the runs in which it comes within the weeks. */
export interface Milestone {
  readonly chance: number;
  readonly gigs?: Spread;
  readonly weeks?: Spread;
}

/**
 * From the earnings of the first gigs to the next purchases. Each run draws the guests of a gig (Poisson), its tips (log-normal about
 * the mean) and the days between gigs (exponential). Seeded.
 */
export function growthOf(problem: GrowthProblem, runs = 1000, seed = 1): Result<Growth> {
  const wrong = checkGrowth(problem);
  if (wrong.length > 0) return fail(wrong);
  const weeks = problem.weeks ?? 52;
  const back = tally();
  const bought = problem.purchases.map(tally);
  const pathGigs = Math.max(1, Math.min(30, Math.ceil(weeks * problem.gigsPerWeek)));
  const balances = Array.from({ length: pathGigs }, () => new Float64Array(runs));
  for (let run = 0; run < runs; run++) runOnce(problem, weeks, run, seed, back, bought, balances);
  const guests = problem.hoursPerGig * problem.guestsPerHour;
  const income = problem.hoursPerGig * problem.feePerHour + guests * problem.tipPerGuest;
  const cost = guests * problem.materialPerGuest + problem.costPerGig;
  const average = breakEven(problem.invested, roundToMoney(income), roundToMoney(cost));
  return ok({
    perGig: roundToMoney(income - cost),
    ...(average === undefined ? {} : { breakEven: average }),
    paidBack: milestone(back, runs),
    purchases: problem.purchases.map((purchase, p) => ({ ...purchase, ...milestone(bought[p] ?? tally(), runs) })),
    path: balances.map((values, g) => ({ gigs: g + 1, balance: spreadOf(values) })),
  });
}

interface Tally {
  readonly gigs: number[];
  readonly weeks: number[];
}
const tally = (): Tally => ({ gigs: [], weeks: [] });
const milestone = ({ gigs, weeks }: Tally, runs: number): Milestone => ({
  chance: gigs.length / runs,
  ...(gigs.length === 0 ? {} : { gigs: spreadOf(gigs), weeks: spreadOf(weeks) }),
});

function runOnce(
  problem: GrowthProblem,
  weeks: number,
  run: number,
  seed: number,
  back: Tally,
  bought: readonly Tally[],
  balances: readonly Float64Array[],
): void {
  const when = new Chance(seed, run, 21);
  const what = new Chance(seed, run, 22);
  let week = when.exponential() / problem.gigsPerWeek;
  let balance = -problem.invested;
  let isPaidBack = balance >= 0;
  if (isPaidBack) note(back, 0, 0);
  let pot = 0;
  let next = 0;
  for (let gig = 1; week <= weeks || gig <= balances.length; gig++) {
    const left = leftOfGig(problem, what);
    balance += left;
    pot += left * (problem.setAside ?? 0.5);
    const path = balances[gig - 1];
    if (path !== undefined) path[run] = balance;
    if (week <= weeks) {
      if (!isPaidBack && balance >= 0) {
        isPaidBack = true;
        note(back, gig, week);
      }
      for (let purchase = problem.purchases[next]; purchase !== undefined && pot >= purchase.cost; purchase = problem.purchases[next]) {
        pot -= purchase.cost;
        const list = bought[next++];
        if (list !== undefined) note(list, gig, week);
      }
    }
    week += when.exponential() / problem.gigsPerWeek;
  }
}
function note(list: Tally, gigs: number, weeks: number): void {
  list.gigs.push(gigs);
  list.weeks.push(weeks);
}
function leftOfGig(problem: GrowthProblem, chance: Chance): number {
  const sigma = problem.tipSigma ?? 0.5;
  const guests = poisson(problem.hoursPerGig * problem.guestsPerHour, chance);
  // A log-normal factor with mean 1: exp(sigma Z - sigma^2 / 2).
  const tips = guests * problem.tipPerGuest * exp(sigma * chance.normal() - (sigma * sigma) / 2);
  return problem.hoursPerGig * problem.feePerHour + tips - guests * problem.materialPerGuest - problem.costPerGig;
}

/** Codes of the problems that {@link growthOf} reports. */
export const growthProblemCodes = ['growth.number'] as const;

function checkGrowth(problem: GrowthProblem): readonly Problem[] {
  const problems: Problem[] = [];
  const check = (value: number | undefined, path: string, what: string, least: number, most: number): void => {
    if (value === undefined || (value >= least && value <= most)) return;
    problems.push({
      code: growthProblemCodes[0],
      path: [path],
      sentence: `${what} is ${value}.`,
      todo: `Give a number from ${least} to ${most}.`,
      weight: 'error',
    });
  };
  const amount = 1e12;
  check(problem.invested, 'invested', 'What the kit cost', 0, amount);
  check(problem.hoursPerGig, 'hoursPerGig', 'Hours per gig', 0.01, 24);
  check(problem.feePerHour, 'feePerHour', 'The fee per hour', 0, amount);
  check(problem.tipPerGuest, 'tipPerGuest', 'The tip per guest', 0, amount);
  check(problem.tipSigma, 'tipSigma', 'The spread of tips', 0, 3);
  check(problem.guestsPerHour, 'guestsPerHour', 'Guests per hour', 0, 1000);
  check(problem.materialPerGuest, 'materialPerGuest', 'Balloons per guest', 0, amount);
  check(problem.costPerGig, 'costPerGig', 'Cost per gig', 0, amount);
  check(problem.gigsPerWeek, 'gigsPerWeek', 'Gigs per week', 0.01, 50);
  check(problem.setAside, 'setAside', 'The share set aside', 0, 1);
  check(problem.weeks, 'weeks', 'Weeks to look ahead', 1, 520);
  for (const [p, purchase] of problem.purchases.entries())
    check(purchase.cost, `purchases.${p}.cost`, `The price of ${purchase.name}`, 0, amount);
  return problems;
}
