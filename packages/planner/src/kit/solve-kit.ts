import { fail, type Money, money, ok, type Problem, type Result } from '@twistwright/units';
import { cheapestCompletion, spentOn } from './cheapest-completion.ts';
import { checkKit, priced } from './check-kit.ts';
import { coverModelOf } from './cover-model.ts';
import { CoverState } from './cover-state.ts';
import { describeKit } from './describe-kit.ts';
import { type KitModel, kitModelOf } from './kit-model.ts';
import type { Kit, KitProblem } from './kit-problem.ts';
import { KitValuer, piecesWith } from './kit-worth.ts';
import { type CoverAnswer, type CoverLimits, solveCover } from './solve-cover.ts';

/** How much effort goes into an answer. All limits are counts, so that the same problem gives the same kit on every machine. */
export interface KitLimits {
  /** `soon`: for a slider, within 100 ms; `full`: as near to proven as a second allows. Default `full`. */
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
  readonly bought: readonly number[];
  readonly answer: CoverAnswer;
}

/**
 * The purchase that lets the largest expected share of requests be met for the budget, must-haves first. Integer programming by branch
 * and bound; the answer says whether it is proven or how far from the best it can be. A budget below the must-haves, and whatever else
 * makes an answer impossible, is refused with what would be possible.
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
  if (model.cover.budget < 0) return fail([tooLittle(problem, model)]);
  const answer = search(model, limits);
  if (answer === undefined) return fail([forcedTooDear(problem, model)]);
  return ok({ model, bought: answer.bought, answer });
}

/** Searches a model; undefined if the forced purchases break the budget or the limit on colours. */
export function search(model: KitModel, limits: KitLimits): CoverAnswer | undefined {
  const start = bagsOf(model, limits.start);
  const found = solveCover(model.cover, coverLimits(model, limits, soon, start));
  if (found !== undefined && (limits.effort === 'soon' || found.proven)) return withoutIdle(model, found);
  // Found nothing soon: forced bags may fit only with free shipping, which takes a search to see.
  const better = solveCover(model.cover, coverLimits(model, limits, full, found?.bought ?? start));
  return better === undefined ? undefined : withoutIdle(model, better);
}

interface Effort {
  readonly movesPerBag: number;
  readonly rounds: number;
  readonly nodes: number;
  readonly worthMoves: number;
}
const soon: Effort = { movesPerBag: 20, rounds: 60, nodes: 0, worthMoves: 250 };
const full: Effort = { movesPerBag: 60, rounds: 300, nodes: 400, worthMoves: 3000 };

function coverLimits(model: KitModel, limits: KitLimits, effort: Effort, start: ArrayLike<number> | undefined): CoverLimits {
  const valuer = new KitValuer(model);
  return {
    moves: effort.movesPerBag * model.bags.length,
    rounds: effort.rounds,
    nodes: effort.nodes,
    worthMoves: effort.worthMoves,
    within: 1e-4 * model.requests,
    seed: limits.seed ?? 1,
    worth: (bought) => valuer.met(piecesWith(model, bought)),
    ...(start === undefined ? {} : { start }),
    ...(limits.now === undefined ? {} : { now: limits.now }),
    ...(limits.milliseconds === undefined ? {} : { milliseconds: limits.milliseconds }),
  };
}
function bagsOf(model: KitModel, offers: ReadonlyMap<string, number> | undefined): readonly number[] | undefined {
  if (offers === undefined) return undefined;
  const left = new Map(offers);
  return model.bags.map((bag) => {
    const count = left.get(bag.offer.id) ?? 0;
    left.set(bag.offer.id, count - 1);
    return count > 0 ? 1 : 0;
  });
}

/** Gives back bags that add nothing, dearest first, as long as that saves money. */
function withoutIdle(model: KitModel, answer: CoverAnswer): CoverAnswer {
  const state = new CoverState(coverModelOf(model.cover));
  state.set(answer.bought);
  const forced = new Set(model.cover.forcedIn ?? []);
  const valuer = new KitValuer(model);
  const worth = (): number => valuer.met(piecesWith(model, state.bought));
  let value = answer.value;
  const order = [...model.bags.keys()]
    .filter((bag) => state.has(bag) && !forced.has(bag))
    .sort((a, b) => (model.cover.costs[b] ?? 0) - (model.cover.costs[a] ?? 0) || b - a);
  for (const bag of order) {
    const before = state.spent;
    state.toggle(bag);
    const without = worth();
    if (without >= value - 1e-9 * model.requests && state.spent <= before && state.isAllowed()) value = Math.max(value, without);
    else state.toggle(bag);
  }
  return { ...answer, bought: [...state.bought], value: Math.max(value, worth()), spent: state.spent };
}

/**
 * The smallest budget with which all must-haves, what is to be bought in any case, and at least one figure can be had; undefined if no
 * budget is enough.
 */
export function leastBudget(problem: KitProblem): Money | undefined {
  const model = kitModelOf(problem);
  const bought = new Int8Array(model.bags.length);
  for (const bag of model.cover.forcedIn ?? []) bought[bag] = 1;
  const start = spentOn(model, bought).total;
  let least: number | undefined;
  for (const [f, figure] of model.figures.entries()) {
    const completion = figure.requests > 0 ? cheapestCompletion(model, bought, f) : undefined;
    if (completion !== undefined && (least === undefined || completion.cost < least)) least = completion.cost;
  }
  return least === undefined ? undefined : money(start + least);
}

function tooLittle(problem: KitProblem, model: KitModel): Problem {
  const tools = model.mustHaves.reduce((sum, tool) => sum + tool.price, 0);
  const least = leastBudget({ ...problem, wishes: { ...problem.wishes, budget: money(Number.MAX_SAFE_INTEGER) } });
  return {
    code: 'kit.budget',
    path: ['wishes', 'budget'],
    sentence: `The budget of ${priced(problem, problem.wishes.budget)} is below the must-haves at ${priced(problem, tools)} (${model.mustHaves.map((tool) => tool.name).join(', ')}).`,
    todo: least === undefined ? 'Add offers.' : possibleFrom(problem, least),
    weight: 'error',
  };
}
function possibleFrom(problem: KitProblem, least: Money): string {
  const model = kitModelOf({ ...problem, wishes: { ...problem.wishes, budget: least } });
  const answer = search(model, { effort: 'soon' });
  const share = answer === undefined ? 0 : answer.value / model.requests;
  return `A kit works from ${priced(problem, least)}; it meets ${Math.round(100 * share)} % of the requests.`;
}
function forcedTooDear(problem: KitProblem, model: KitModel): Problem {
  const forced = (model.cover.forcedIn ?? []).reduce((sum, bag) => sum + (model.cover.costs[bag] ?? 0), 0);
  return {
    code: 'kit.forced',
    path: ['wishes', 'forcedIn'],
    sentence: `What is to be bought in any case (${priced(problem, forced)} before shipping) does not fit the budget of ${priced(problem, problem.wishes.budget)} or the limit on colours.`,
    todo: 'Take one of these out, or raise the budget.',
    weight: 'error',
  };
}
