import { fail, type Money, money, ok, type Problem, type Result } from '@twistwright/units';
import { cheapestMusts } from './cheapest-musts.ts';
import { checkKit, priced } from './check-kit.ts';
import { cheapestCompletion } from './completion.ts';
import { describeKit, nearEnough } from './describe-kit.ts';
import { type KitModel, kitModelOf } from './kit-model.ts';
import type { Kit, KitProblem } from './kit-problem.ts';
import { piecesWith, worthOf } from './kit-worth.ts';
import { billOf, keepsColours } from './purchase.ts';
import { type KitSearched, type KitSearchLimits, searchKit } from './search-kit.ts';
import { thrifty } from './thrifty.ts';

/** How much effort goes into an answer. All limits are counts, so that the same problem gives the same kit on every machine. */
export interface KitLimits {
  /** `soon`: for a slider, within 100 ms; `full`: as near to proven as a second or two allow. Default `full`. */
  readonly effort?: 'soon' | 'full';
  readonly seed?: number;
  /** A clock in milliseconds and how many may pass: ends the search early, with a true but wider gap. */
  readonly now?: () => number;
  readonly milliseconds?: number;
  /** Offers bought in a kit to start from (bags by offer). */
  readonly start?: ReadonlyMap<string, number>;
}

/** A purchase found for a model, with its proof. */
export interface FoundKit {
  readonly model: KitModel;
  /** Bags of each offer of the model. */
  readonly bought: readonly number[];
  readonly answer: KitSearched;
}

/**
 * The purchase that lets the largest expected share of requests be met for the budget, must-haves first. Integer programming by branch
 * and bound; the answer says whether it is proven or how far from the best it can be. No shop is given an order that it would refuse. A
 * budget below the must-haves, and whatever else makes an answer impossible, is refused with what would be possible.
 */
export function firstKit(problem: KitProblem, limits: KitLimits = {}): Result<Kit> {
  const found = findKit(problem, limits);
  return found.ok ? ok(describeKit(found.value)) : found;
}

/** As {@link firstKit}, before it is put into words. */
export function findKit(problem: KitProblem, limits: KitLimits = {}): Result<FoundKit> {
  const errors = checkKit(problem).filter((one) => one.weight === 'error');
  if (errors.length > 0) return fail(errors);
  const model = kitModelOf(problem);
  const answer = search(model, limits);
  if (answer === undefined) return fail([whyNothing(problem, model)]);
  return ok({ model, bought: answer.bags, answer });
}

/** Searches a model; undefined if what is a must or forced in breaks the budget or the limit on colours. */
export function search(model: KitModel, limits: KitLimits): KitSearched | undefined {
  const found = searchKit(model, {
    ...(limits.effort === 'soon' ? soon : full),
    within: nearEnough * model.requests,
    seed: limits.seed ?? 1,
    ...(limits.start === undefined ? {} : { start: bagsOf(model, limits.start) }),
    ...(limits.now === undefined ? {} : { now: limits.now }),
    ...(limits.milliseconds === undefined ? {} : { milliseconds: limits.milliseconds }),
  });
  if (found === undefined) return undefined;
  const bags = thrifty(model, found.bags);
  const value = Math.max(found.value, worthOf(model, piecesWith(model, bags)).met);
  return { ...found, bags, value, bound: Math.max(found.bound, value) };
}

type Effort = Pick<KitSearchLimits, 'moves' | 'starts' | 'rounds' | 'work'>;
const soon: Effort = { moves: 0, starts: 0, rounds: 60, work: 0 };
const full: Effort = { moves: 3000, starts: 3, rounds: 120, work: 44_000 };

const bagsOf = (model: KitModel, offers: ReadonlyMap<string, number>): readonly number[] =>
  model.offers.map(({ offer, costs }) => Math.min(costs.length - 1, offers.get(offer.id) ?? 0));

/**
 * The smallest budget with which all must-haves, what is to be bought in any case, and at least one figure can be had; undefined if no
 * budget is enough.
 */
export function leastBudget(problem: KitProblem): Money | undefined {
  const model = kitModelOf({ ...problem, wishes: { ...problem.wishes, budget: money(Number.MAX_SAFE_INTEGER) } });
  let least: Money | undefined;
  for (const [f, figure] of model.figures.entries()) {
    if (figure.requests <= 0) continue;
    const kit = cheapestCompletion(model, new Int8Array(model.offers.length), f, least);
    if (kit !== undefined && keepsColours(model, kit.bags) && (least === undefined || kit.bill.total < least)) least = kit.bill.total;
  }
  return least;
}

/** Why there is no purchase at all: must-haves nobody sells, too little money, least orders, or wishes that do not go together. */
function whyNothing(problem: KitProblem, model: KitModel): Problem {
  const unlimited = kitModelOf({ ...problem, wishes: { ...problem.wishes, budget: money(Number.MAX_SAFE_INTEGER) } });
  const forced = unlimited.offers.some(
    ({ least, holds }) => least > 0 && !holds.some(({ item }) => unlimited.musts.some((must) => must.item === item)),
  );
  const least = leastBudget(problem);
  const possible = least === undefined ? 'Add offers.' : possibleFrom(problem, least);
  const budget = priced(problem, model.budget);
  const musts = unlimited.musts.map(({ tool }) => tool.name).join(', ');
  const bags = cheapestMusts(unlimited);
  if (bags === undefined) return nobodySells(problem, unlimited, possible);
  const cost = billOf(unlimited, bags).total;
  if (forced)
    return {
      code: 'kit.forced',
      path: ['wishes', 'forcedIn'],
      sentence: `What is to be bought in any case (${priced(problem, cost)} with shipping${musts === '' ? '' : ' and the must-haves'}) does not fit the budget of ${budget} or the limit on colours.`,
      todo: least === undefined ? 'Take one of these out.' : `Take one of these out, or raise the budget. ${possible}`,
      weight: 'error',
    };
  const filled = fillersIn(unlimited, bags);
  return {
    code: 'kit.budget',
    path: ['wishes', 'budget'],
    sentence: `The budget of ${budget} is below the must-haves at ${priced(problem, cost)} (${musts}).${filled}`,
    todo: possible,
    weight: 'error',
  };
}
/** Says where must-haves cost more because a shop takes no smaller order. */
function fillersIn(model: KitModel, bags: ArrayLike<number>): string {
  const isMust = (o: number): boolean => model.offers[o]?.holds.some(({ item }) => model.musts.some((must) => must.item === item)) ?? false;
  const shops = new Set([...model.offers.keys()].filter((o) => (bags[o] ?? 0) > 0 && !isMust(o)).map((o) => model.offers[o]?.shop ?? -1));
  return [...shops]
    .flatMap((s) => model.shops[s] ?? [])
    .filter((shop) => shop.leastOrder > 0)
    .map(
      (shop) =>
        ` ${shop.name} takes orders from ${priced(model.problem, shop.leastOrder)}, so that the order there is filled up with balloons.`,
    )
    .join('');
}
/** No order can be put together: nobody sells a must-have, or the only shop that does has too little to reach its least order. */
function nobodySells(problem: KitProblem, model: KitModel, possible: string): Problem {
  const [unsold] = model.musts.filter((must) => !model.offers.some((offer) => offer.holds.some((hold) => hold.item === must.item)));
  if (unsold !== undefined)
    return {
      code: 'kit.unknown',
      path: ['tools', problem.tools.indexOf(unsold.tool)],
      sentence: `${unsold.tool.name} is a must-have, but no offer sells it.`,
      todo: 'Add an offer for it, or say that it is there already.',
      weight: 'error',
    };
  const shops = model.shops.filter((shop) => shop.leastOrder > 0);
  return {
    code: 'kit.least-order',
    path: ['suppliers'],
    sentence: `What is a must or to be bought in any case makes no order that every shop accepts: ${shops
      .map((shop) => `${shop.name} takes orders from ${priced(problem, shop.leastOrder)}`)
      .join(', ')}.`,
    todo: `Take something else out, or allow more to be bought there. ${possible}`,
    weight: 'error',
  };
}
function possibleFrom(problem: KitProblem, least: Money): string {
  const model = kitModelOf({ ...problem, wishes: { ...problem.wishes, budget: least } });
  const answer = search(model, { effort: 'soon' });
  const share = answer === undefined ? 0 : answer.value / model.requests;
  return `A kit works from ${priced(problem, least)}; it meets ${Math.round(100 * share)} % of the requests.`;
}
