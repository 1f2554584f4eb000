import { jointLevel } from '../needs/index.ts';
import type { Solved, Solver } from '../solver-port.ts';
import { affordableRuns } from './affordable-runs.ts';
import { greatestCommonDivisor } from './bag-menu.ts';
import { fewestMissing } from './fewest-missing.ts';
import { boughtLots, cashOf, type GridGoal, gridProgram } from './grid-program.ts';
import { type SearchedPurchases, searchOrders } from './order-search.ts';
import { costOf, type GridBag, type PurchaseGrid } from './purchase-grid.ts';
import { coveredRuns, type GridScenarios, ownDemand, type ScenarioLevels, scenarioLevels } from './scenario-levels.ts';

/** How sure the answer is. `proven`: no other choice is better; `within`: no choice is better by more than this share; `found`: good, nothing proven. */
export type Proof = { readonly kind: 'proven' } | { readonly kind: 'within'; readonly share: number } | { readonly kind: 'found' };

/** What purchases are worked out with. The planner knows no clock: `now` gives seconds where a time limit is to hold. */
export interface PurchaseTools {
  readonly solver: Solver;
  readonly seed?: number;
  /** Outer time limit in seconds, default 20. */
  readonly seconds?: number;
  readonly now?: () => number;
  /** Bag columns (offers x orders) above which the problem is searched with a bound instead of handed to the solver; default 900. */
  readonly exactUpTo?: number;
  /** Additions that the search may spend; default by size of the problem. */
  readonly work?: number;
}
export interface PurchaseAnswer {
  readonly plan: readonly GridBag[];
  /** Goods and carriage. */
  readonly cash: number;
  /** Goods, carriage and keeping: what is made small. */
  readonly cost: number;
  /** No plan for the same chance costs less. */
  readonly bound: number;
  readonly covered: number;
  readonly runs: number;
  /** Share of runs in which nothing asked for runs out. */
  readonly chance: number;
  readonly proof: Proof;
}
/** Why no plan is possible, and what is nearest. */
export type PurchaseRefusal =
  | {
      readonly kind: 'cannot be covered';
      /** Best chance that any purchase can give. */
      readonly bestChance: number;
      readonly gaps: ScenarioLevels['gaps'];
    }
  /** Nothing within the budget, the least values or the most bags gives the chance. */
  | { readonly kind: 'no plan'; readonly nearest?: PurchaseAnswer }
  | { readonly kind: 'no answer in time' };
export type PurchaseOutcome =
  | { readonly ok: true; readonly value: PurchaseAnswer }
  | { readonly ok: false; readonly error: PurchaseRefusal };

const usualExactUpTo = 900;
const usualSeconds = 20;

/** Runs that must be covered for a chance; exact on the sample. */
export const runsFor = (chance: number, runs: number): number => Math.ceil(chance * runs - 1e-9);

/** Least cost such that in at least `chance` of the runs nothing runs out. Without scenarios the grid's own demand is the one future. */
export async function cheapestPurchases(
  grid: PurchaseGrid,
  asked: { readonly scenarios?: GridScenarios; readonly chance?: number; readonly budget?: number; readonly start?: readonly GridBag[] },
  tools: PurchaseTools,
): Promise<PurchaseOutcome> {
  const scenarios = asked.scenarios ?? ownDemand(grid);
  const covered = runsFor(asked.chance ?? 1, scenarios.runs);
  const levels = scenarioLevels(grid, scenarios);
  if (scenarios.runs - levels.hopeless < covered)
    return refusal({ kind: 'cannot be covered', bestChance: (scenarios.runs - levels.hopeless) / scenarios.runs, gaps: levels.gaps });
  const frame: Frame = { grid, scenarios, levels, tools, begun: tools.now?.() ?? 0 };
  const searched = isTiny(grid) && !isTooLarge(grid, tools) ? undefined : searchFirst(frame, covered);
  if (isTooLarge(grid, tools)) {
    if (searched === undefined) return refusal({ kind: 'no answer in time' });
    return accept(answerOf(frame, searched.plan, searched.bound), asked.budget);
  }
  const starts = [searched?.plan, isTiny(grid) ? undefined : asked.start].filter((plan): plan is readonly GridBag[] => plan !== undefined);
  const known = starts.find((plan) => coverage(frame, plan) >= covered && cashOf(grid, plan) <= (asked.budget ?? Infinity));
  if (known !== undefined && searched?.plan === known && searched.cost - searched.bound < 1e-6 && asked.scenarios === undefined)
    return { ok: true, value: answerOf(frame, known, searched.cost) };
  const goal: GridGoal = { kind: 'cheapest', covered, ...(asked.budget === undefined ? {} : { budget: asked.budget }) };
  return solveExactly(frame, goal, known);
}

/**
 * Most runs covered for a budget, and among those plans the cheapest. Where no purchase within the budget covers a run that is not covered already, the
 * bags that leave few pieces missing.
 */
export async function safestPurchases(
  grid: PurchaseGrid,
  asked: { readonly scenarios: GridScenarios; readonly budget: number },
  tools: PurchaseTools,
): Promise<PurchaseOutcome> {
  const { scenarios, budget } = asked;
  const levels = affordableRuns(grid, scenarioLevels(grid, scenarios), budget);
  const frame: Frame = { grid, scenarios, levels, tools, begun: tools.now?.() ?? 0 };
  const asItIs = coverage(frame, []);
  if (asItIs === scenarios.runs - levels.hopeless) return { ok: true, value: fewestMissingWithin(frame, budget) };
  const first = bestWithinBudget(frame, budget);
  const found = (plan: readonly GridBag[]): PurchaseOutcome => ({
    ok: true,
    value:
      coverage(frame, plan) > asItIs
        ? { ...answerOf(frame, plan, -Infinity), proof: { kind: 'found' } }
        : fewestMissingWithin(frame, budget),
  });
  if (isTooLarge(grid, tools)) return found(first);
  const goal: GridGoal = { kind: 'safest', budget, atLeast: coverage(frame, first) };
  const model = gridProgram(grid, levels, scenarios.runs, goal);
  const most = await tools.solver.solve(model.program, limitsOf(frame, model.valuesOf(first), 0.6));
  if (most.outcome === 'infeasible' || most.outcome === 'unbounded') return refusal({ kind: 'no plan' });
  if (most.outcome === 'no answer in time') return found(first);
  const plan = model.planOf(most.values);
  if (coverage(frame, plan) <= asItIs) return found(plan);
  const cheaper = await cheapestPurchases(
    grid,
    { scenarios, chance: coverage(frame, plan) / scenarios.runs, budget, start: plan },
    { ...tools, seconds: limitsOf(frame, undefined).seconds },
  );
  const value = cheaper.ok ? cheaper.value : answerOf(frame, plan, -Infinity);
  const isMost = most.outcome === 'optimal' && levels.isExact;
  return { ok: true, value: isMost ? value : { ...value, proof: { kind: 'found' } } };
}

function fewestMissingWithin(frame: Frame, budget: number): PurchaseAnswer {
  return { ...answerOf(frame, fewestMissing(frame.grid, frame.scenarios, budget), -Infinity), proof: { kind: 'found' } };
}

const refusal = (error: PurchaseRefusal): PurchaseOutcome => ({ ok: false, error });
const accept = (value: PurchaseAnswer, budget = Infinity): PurchaseOutcome =>
  value.cash <= budget ? { ok: true, value } : refusal({ kind: 'no plan', nearest: value });

interface Frame {
  readonly grid: PurchaseGrid;
  readonly scenarios: GridScenarios;
  readonly levels: ScenarioLevels;
  readonly tools: PurchaseTools;
  readonly begun: number;
}

const pairsOf = (grid: PurchaseGrid): number =>
  grid.orders.reduce((sum, order) => sum + grid.offers.filter((offer) => offer.supplier === order.supplier).length, 0);
/** Below this many bag columns the solver is done before a start would help it. */
const fewBagColumns = 60;
const isTiny = (grid: PurchaseGrid): boolean => pairsOf(grid) < fewBagColumns;
const isTooLarge = (grid: PurchaseGrid, tools: PurchaseTools): boolean => pairsOf(grid) > (tools.exactUpTo ?? usualExactUpTo);

function coverage(frame: Frame, plan: readonly GridBag[]): number {
  return coveredRuns(frame.grid, frame.scenarios, boughtLots(frame.grid, plan)).reduce((sum, covered) => sum + covered, 0);
}

function limitsOf(
  frame: Frame,
  start: readonly number[] | undefined,
  share = 1,
): { readonly seconds: number; readonly start?: readonly number[] } {
  const spent = frame.tools.now === undefined ? 0 : frame.tools.now() - frame.begun;
  const seconds = Math.max(0.02, share * ((frame.tools.seconds ?? usualSeconds) - spent));
  return start === undefined ? { seconds } : { seconds, start };
}

async function solveExactly(frame: Frame, goal: GridGoal, start: readonly GridBag[] | undefined): Promise<PurchaseOutcome> {
  const { grid, levels, scenarios, tools } = frame;
  const model = gridProgram(grid, levels, scenarios.runs, goal);
  const solved = await tools.solver.solve(model.program, limitsOf(frame, start === undefined ? undefined : model.valuesOf(start)));
  if (solved.outcome === 'infeasible' || solved.outcome === 'unbounded') return refusal({ kind: 'no plan' });
  if (solved.outcome === 'no answer in time') return refusal({ kind: 'no answer in time' });
  const plan = model.planOf(solved.values);
  return { ok: true, value: answerOf(frame, plan, boundOf(frame, plan, solved)) };
}

/** The solver's objective leaves out the part of keeping that no purchase changes; put it back. */
function boundOf(frame: Frame, plan: readonly GridBag[], solved: Solved & { readonly objective: number; readonly bound: number }): number {
  return priceOf(frame.grid, plan) - (solved.objective - solved.bound);
}

/** Goods, carriage and keeping of a plan. Keeping counts bought bags from arrival to the end, less what the expected demand takes. */
function priceOf(grid: PurchaseGrid, plan: readonly GridBag[]): number {
  let keeping = 0;
  for (const [i, item] of grid.items.entries()) {
    if (item.holding === undefined) continue;
    for (const [p, cost] of item.holding.entries()) {
      const demand = item.demand.slice(0, p + 1).reduce((sum, d) => sum + d, 0);
      const own = item.supply.reduce((sum, lot) => sum + (lot.from <= p ? lot.pieces : 0), 0);
      const bought = plan.reduce((sum, { order, offer, bags }) => {
        const sold = grid.offers[offer];
        return sum + (sold?.item === i && (grid.orders[order]?.arrives ?? Infinity) <= p ? bags * sold.pieces : 0);
      }, 0);
      keeping += cost * (own + bought - demand);
    }
  }
  return cashOf(grid, plan) + keeping;
}

function answerOf(frame: Frame, plan: readonly GridBag[], bound: number): PurchaseAnswer {
  const { grid, scenarios, levels } = frame;
  const cost = priceOf(grid, plan);
  const covered = coverage(frame, plan);
  const gap = cost - bound;
  const share = cost <= 0 ? 0 : gap / cost;
  const proof: Proof =
    !levels.isExact || !Number.isFinite(bound)
      ? { kind: 'found' }
      : gap <= 1e-6 * Math.max(1, Math.abs(cost))
        ? { kind: 'proven' }
        : { kind: 'within', share };
  return {
    plan,
    cash: cashOf(grid, plan),
    cost,
    bound: Math.min(cost, bound),
    covered,
    runs: scenarios.runs,
    chance: covered / scenarios.runs,
    proof,
  };
}

/** Units of one item above which the search's table would be larger than what it saves. */
const mostStates = 2500;
function hasTooManyStates(grid: PurchaseGrid, scenarios: GridScenarios): boolean {
  const width = grid.items.length;
  return grid.items.some((_, i) => {
    const bags = grid.offers.filter((offer) => offer.item === i).map((offer) => offer.pieces);
    if (bags.length === 0) return false;
    let peak = 0;
    for (let r = 0; r < scenarios.runs; r++)
      peak = Math.max(
        peak,
        scenarios.need.reduce((sum, need) => sum + (need[r * width + i] ?? 0), 0),
      );
    return peak / bags.reduce(greatestCommonDivisor) > mostStates;
  });
}

/** A plan by search for one demand that covers enough runs, with a bound that holds for every plan. */
function searchFirst(frame: Frame, covered: number, share = 0.95): SearchedPurchases | undefined {
  const { grid, scenarios, levels } = frame;
  const large = isTooLarge(grid, frame.tools);
  if (hasTooManyStates(grid, scenarios)) return undefined;
  const isSure = scenarios.runs === 1 && covered === 1;
  const effort = effortOf(frame, large, isSure ? share : share / 2);
  if (isSure) {
    const found = searchOrders(grid, effort);
    return found === undefined ? undefined : { ...found, cost: costOf(grid, found.plan).total };
  }
  const kept = keptRuns(grid, scenarios, levels, covered);
  const found = searchOrders(demandOfRuns(grid, scenarios, levels, kept), effort);
  if (found === undefined || !large) return found === undefined ? undefined : { ...found, bound: -Infinity };
  const relaxed = searchOrders(demandOfBase(grid, levels, scenarios.runs - levels.hopeless - covered), {
    ...effort,
    work: effort.work / 2,
  });
  // both searches leave out parts of keeping that no purchase changes, each its own; priceOf puts them back
  const price = (searched: SearchedPurchases): number => priceOf(grid, searched.plan) - searched.cost;
  return { ...found, cost: found.cost + price(found), bound: relaxed === undefined ? -Infinity : relaxed.bound + price(relaxed) };
}
function effortOf(frame: Frame, large: boolean, share: number): Parameters<typeof searchOrders>[1] {
  const { tools, grid } = frame;
  const holding = grid.items.some((item) => item.holding?.some((cost) => cost > 0) === true);
  const left = limitsOf(frame, undefined).seconds;
  return {
    seed: tools.seed ?? 1,
    work: tools.work ?? (large ? 2e8 : 4e5),
    wholeCosts: !holding,
    ...(tools.now === undefined ? {} : { now: tools.now, seconds: large ? share * left : 0.3 * share * left }),
  };
}

/** Runs to cover: those that are left when the dearest top counts are given up first. */
function keptRuns(grid: PurchaseGrid, scenarios: GridScenarios, levels: ScenarioLevels, covered: number): readonly number[] {
  const coverable = Array.from({ length: scenarios.runs }, (_, r) => r).filter((r) => levels.isHopeless[r] === 0);
  const items = grid.items.length;
  const peaks = new Int32Array(coverable.length * items);
  for (const row of levels.rows)
    for (const [k, r] of coverable.entries())
      peaks[k * items + row.item] = Math.max(peaks[k * items + row.item] ?? 0, (row.level[r] ?? 0) * row.unit);
  const weight = grid.items.map((_, i) =>
    Math.min(1e9, ...grid.offers.filter((offer) => offer.item === i).map((offer) => (offer.steps[0]?.price ?? 0) / offer.pieces)),
  );
  const level = jointLevel(peaks, items, coverable.length === 0 ? 0 : covered / coverable.length, weight);
  return coverable.filter((_, k) => level.stock.every((stock, i) => (peaks[k * items + i] ?? 0) <= stock));
}

/** A grid whose one demand is what the given runs ask for at most. */
function demandOfRuns(grid: PurchaseGrid, scenarios: GridScenarios, levels: ScenarioLevels, kept: readonly number[]): PurchaseGrid {
  return withDemand(grid, levels, (row) => kept.reduce((most, r) => Math.max(most, row.level[r] ?? 0), 0), {
    peak: (item, period) => kept.reduce((most, r) => Math.max(most, scenarios.need[period]?.[r * grid.items.length + item] ?? 0), 0),
  });
}
/** A grid that asks only for what every plan must hold: its bound is a bound for all. */
function demandOfBase(grid: PurchaseGrid, levels: ScenarioLevels, mayLose: number): PurchaseGrid {
  return withDemand(grid, levels, (row) => {
    const sorted = Array.from(row.level)
      .filter((_, r) => levels.isHopeless[r] === 0)
      .sort((a, b) => b - a);
    return sorted[mayLose] ?? 0;
  });
}
function withDemand(
  grid: PurchaseGrid,
  levels: ScenarioLevels,
  levelOf: (row: ScenarioLevels['rows'][number]) => number,
  perishable?: { readonly peak: (item: number, period: number) => number },
): PurchaseGrid {
  const items = grid.items.map((item, i) => {
    const rows = levels.rows.filter((row) => row.item === i);
    const isPrefix = rows.every((row) => row.periods.every((period, n) => period === n));
    if (!isPrefix)
      return {
        ...item,
        demand: item.demand.map((_, p) => perishable?.peak(i, p) ?? 0),
        supply: perishable === undefined ? [] : item.supply,
      };
    const demand = item.demand.map(() => 0);
    let reached = 0;
    for (const row of rows) {
      const pieces = Math.max(reached, levelOf(row) * row.unit);
      const last = row.periods.length - 1;
      demand[last] = (demand[last] ?? 0) + pieces - reached;
      reached = pieces;
    }
    return { ...item, demand, supply: [] };
  });
  return { ...grid, items };
}

/** The best plan of the search that fits the budget: halves the chance until it does. Buying nothing always fits. */
function bestWithinBudget(frame: Frame, budget: number): readonly GridBag[] {
  const { scenarios, levels } = frame;
  let best: readonly GridBag[] = [];
  let bestCovered = coverage(frame, best);
  let low = bestCovered;
  let high = scenarios.runs - levels.hopeless;
  const rounds = isTooLarge(frame.grid, frame.tools) ? 5 : 9;
  for (let round = 0; round < rounds && low < high; round++) {
    const middle = round === 0 ? high : Math.ceil((low + high) / 2);
    const found = searchFirst(frame, middle, 1 / (rounds - round + 1));
    if (found !== undefined && cashOf(frame.grid, found.plan) <= budget) {
      const covered = coverage(frame, found.plan);
      if (covered > bestCovered) {
        best = found.plan;
        bestCovered = covered;
      }
      low = Math.max(middle, covered);
    } else high = middle - 1;
  }
  return best;
}
