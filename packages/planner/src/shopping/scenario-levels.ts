import { greatestCommonDivisor } from './bag-menu.ts';
import { type GridLot, netOf, type PurchaseGrid } from './purchase-grid.ts';

/** Joint futures of a grid: `need[p][r * items + i]` pieces of item i are asked for in period p of run r. */
export interface GridScenarios {
  readonly runs: number;
  readonly need: readonly Int32Array[];
}

/** The one future that a grid's own demand is. */
export const ownDemand = (grid: PurchaseGrid): GridScenarios => ({
  runs: 1,
  need: Array.from({ length: grid.periods }, (_, p) => Int32Array.from(grid.items, (item) => item.demand[p] ?? 0)),
});

/** "Bags that can serve one of these periods must hold so many pieces": what each run asks, in units that divide every bag. */
export interface LevelRow {
  readonly item: number;
  /** Periods of the row; a bag counts if it can be used in at least one of them. */
  readonly periods: readonly number[];
  readonly unit: number;
  /** Units that each run asks for. */
  readonly level: Int32Array;
}
export interface ScenarioLevels {
  readonly rows: readonly LevelRow[];
  /** Runs that nothing that can be bought would cover: no one sells the item, or it cannot arrive. */
  readonly isHopeless: Uint8Array;
  readonly hopeless: number;
  /** Items and periods for which nothing on offer can arrive, though some run asks for them. */
  readonly gaps: readonly { readonly item: number; readonly period: number; readonly runs: number }[];
  /** False where bags go off within the horizon and there are too many periods to list every row; the chance is then counted, not proven. */
  readonly isExact: boolean;
}

const mostPeriodsListed = 8;

/** Turns joint futures into the bag levels they ask for, with what is in store and on order taken off. */
export function scenarioLevels(grid: PurchaseGrid, scenarios: GridScenarios): ScenarioLevels {
  const rows: LevelRow[] = [];
  const isHopeless = new Uint8Array(scenarios.runs);
  const gaps: { readonly item: number; readonly period: number; readonly runs: number }[] = [];
  let isExact = true;
  for (let item = 0; item < grid.items.length; item++) {
    const offers = grid.offers.filter((offer) => offer.item === item);
    const perishes = offers.some((offer) => offer.keeps !== undefined && offer.keeps < grid.periods - 1);
    if (perishes && grid.periods > mostPeriodsListed) isExact = false;
    const unit = offers.length === 0 ? 1 : offers.map((offer) => offer.pieces).reduce(greatestCommonDivisor);
    const found = perishes ? perishableNeeds(grid, scenarios, item) : keepingNeeds(grid, scenarios, item);
    for (const { periods, pieces } of found) {
      if (pieces.every((count) => count <= 0)) continue;
      if (!canServe(grid, item, periods)) {
        let runs = 0;
        for (let r = 0; r < scenarios.runs; r++) {
          if ((pieces[r] ?? 0) <= 0) continue;
          isHopeless[r] = 1;
          runs++;
        }
        gaps.push({ item, period: Math.max(...periods), runs });
        continue;
      }
      rows.push({ item, periods, unit, level: pieces.map((count) => Math.max(0, Math.ceil(count / unit))) });
    }
  }
  return { rows, isHopeless, hopeless: isHopeless.reduce((sum, lost) => sum + lost, 0), gaps, isExact };
}

/** True if a bag of the offer in the order can be used in one of the periods. */
export function serves(grid: PurchaseGrid, order: number, offer: number, periods: readonly number[]): boolean {
  const arrives = grid.orders[order]?.arrives ?? Infinity;
  const last = arrives + (grid.offers[offer]?.keeps ?? Infinity);
  return periods.some((period) => arrives <= period && period <= last);
}
const canServe = (grid: PurchaseGrid, item: number, periods: readonly number[]): boolean =>
  grid.offers.some(
    (offer, f) => offer.item === item && grid.orders.some((order, o) => order.supplier === offer.supplier && serves(grid, o, f, periods)),
  );

interface Asked {
  readonly periods: readonly number[];
  readonly pieces: Int32Array;
}
/** Bags keep: whatever has arrived by a period must cover all that was asked up to then. */
function keepingNeeds(grid: PurchaseGrid, scenarios: GridScenarios, item: number): readonly Asked[] {
  const lots = grid.items[item]?.supply ?? [];
  const width = grid.items.length;
  const goesOff = lots.some((lot) => lot.until !== undefined && lot.until < grid.periods - 1);
  const asked = Array.from({ length: grid.periods }, (_, p) => ({
    periods: Array.from({ length: p + 1 }, (__, q) => q),
    pieces: new Int32Array(scenarios.runs),
  }));
  const arrived = Array.from({ length: grid.periods }, (_, p) => lots.reduce((sum, lot) => sum + (lot.from <= p ? lot.pieces : 0), 0));
  for (let r = 0; r < scenarios.runs; r++) {
    const demand = scenarios.need.map((need) => need[r * width + item] ?? 0);
    const short = goesOff ? netOf(demand, lots).short : undefined;
    let sum = 0;
    for (let p = 0; p < grid.periods; p++) {
      sum += short === undefined ? (demand[p] ?? 0) : (short[p] ?? 0);
      const row = asked[p];
      if (row !== undefined) row.pieces[r] = short === undefined ? sum - (arrived[p] ?? 0) : sum;
    }
  }
  return asked;
}
/** Bags go off: for every set of periods, all lots that can serve one of them must cover what is asked in them (Hall's condition). */
function perishableNeeds(grid: PurchaseGrid, scenarios: GridScenarios, item: number): readonly Asked[] {
  const lots = grid.items[item]?.supply ?? [];
  const width = grid.items.length;
  return setsOfPeriods(grid.periods).map((periods) => {
    const own = lots.reduce((sum, lot) => sum + (periods.some((p) => lot.from <= p && p <= (lot.until ?? Infinity)) ? lot.pieces : 0), 0);
    const pieces = Int32Array.from(
      { length: scenarios.runs },
      (_, r) => periods.reduce((sum, p) => sum + (scenarios.need[p]?.[r * width + item] ?? 0), 0) - own,
    );
    return { periods, pieces };
  });
}
function setsOfPeriods(count: number): readonly (readonly number[])[] {
  const sets: (readonly number[])[] = [];
  if (count <= mostPeriodsListed)
    for (let mask = 1; mask < 2 ** count; mask++) sets.push(Array.from({ length: count }, (_, p) => p).filter((p) => (mask >> p) & 1));
  else
    for (let from = 0; from < count; from++)
      for (let to = from; to < count; to++) sets.push(Array.from({ length: to - from + 1 }, (_, k) => from + k));
  return sets;
}

/** Runs in which nothing asked for runs out, when these lots come on top of what there is: served from what goes off first. */
export function coveredRuns(grid: PurchaseGrid, scenarios: GridScenarios, bought: readonly (readonly GridLot[])[]): Uint8Array {
  const covered = new Uint8Array(scenarios.runs).fill(1);
  const width = grid.items.length;
  for (const [i, item] of grid.items.entries()) {
    const lots = [...item.supply, ...(bought[i] ?? [])];
    const keeps = lots.every((lot) => lot.until === undefined || lot.until >= grid.periods - 1);
    const arrived = Array.from({ length: grid.periods }, (_, p) => lots.reduce((sum, lot) => sum + (lot.from <= p ? lot.pieces : 0), 0));
    for (let r = 0; r < scenarios.runs; r++) {
      if (covered[r] === 0) continue;
      if (keeps) {
        let sum = 0;
        for (let p = 0; p < grid.periods; p++) {
          sum += scenarios.need[p]?.[r * width + i] ?? 0;
          if (sum > (arrived[p] ?? 0)) covered[r] = 0;
        }
      } else if (
        netOf(
          scenarios.need.map((need) => need[r * width + i] ?? 0),
          lots,
        ).short.some((short) => short > 0)
      )
        covered[r] = 0;
    }
  }
  return covered;
}
