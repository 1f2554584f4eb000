import { boughtLots, cashOf } from './grid-program.ts';
import { meanMissing } from './missing-pieces.ts';
import { costOf, type GridBag, type PurchaseGrid } from './purchase-grid.ts';
import type { GridScenarios } from './scenario-levels.ts';

/**
 * A purchase within the budget that leaves few pieces missing in the mean: for a business that cannot pay for everything, where no money that there is
 * makes it likelier that nothing runs out. For each set of orders that may be placed, bags are added by pieces no longer missing, per unit of money and
 * then outright, and changed for others while that helps. Good, not proven; empty if nothing helps.
 * `budget` in minor units, for goods and carriage.
 */
export function fewestMissing(grid: PurchaseGrid, scenarios: GridScenarios, budget: number): readonly GridBag[] {
  const scale = new MissingScale(grid, scenarios);
  let best: readonly GridBag[] = [];
  let bestMissing = scale.of([]);
  for (const orders of setsOfOrders(grid.orders.length))
    for (const worth of worths) {
      const shop: Counter = { grid, scale, orders, budget, worth };
      const plan = improved(shop, filled(shop, []));
      if (plan.length === 0 || costOf(grid, plan).belowMinimum.length > 0) continue;
      const missing = scale.of(plan);
      const isBetter = missing < bestMissing - tiny || (missing < bestMissing + tiny && cashOf(grid, plan) < cashOf(grid, best));
      if (!isBetter) continue;
      best = plan;
      bestMissing = missing;
    }
  return best;
}
const tiny = 1e-9;

/** What a bag is worth that takes so many pieces off what is missing for so much more money. */
type Worth = (fewer: number, money: number) => number;
const worths: readonly Worth[] = [(fewer, money) => fewer / Math.max(1, money), (fewer) => fewer];
interface Counter {
  readonly grid: PurchaseGrid;
  readonly scale: MissingScale;
  /** Orders that may be placed. */
  readonly orders: readonly number[];
  readonly budget: number;
  readonly worth: Worth;
}

/** Mean pieces missing of all items under a plan; what one item lacks is remembered by the lots bought of it. */
class MissingScale {
  readonly #grid: PurchaseGrid;
  readonly #scenarios: GridScenarios;
  readonly #known = new Map<string, number>();
  constructor(grid: PurchaseGrid, scenarios: GridScenarios) {
    this.#grid = grid;
    this.#scenarios = scenarios;
  }
  of(plan: readonly GridBag[]): number {
    return boughtLots(this.#grid, plan).reduce((sum, lots, item) => {
      const key = `${item}: ${lots.map((lot) => `${lot.pieces} ${lot.from} ${lot.until ?? ''}`).join(', ')}`;
      const known = this.#known.get(key) ?? meanMissing(this.#grid, this.#scenarios, item, lots);
      this.#known.set(key, known);
      return sum + known;
    }, 0);
  }
}

/** Every single order and every pair; with many possible orders only the single ones. */
function setsOfOrders(count: number): readonly (readonly number[])[] {
  const single = Array.from({ length: count }, (_, o) => [o]);
  if (count > 12) return single;
  return [...single, ...single.flatMap(([o = 0]) => Array.from({ length: count - o - 1 }, (_, k) => [o, o + 1 + k]))];
}

/** The plan with bags added, the worthiest first, until nothing that helps can be paid for. */
function filled({ grid, scale, orders, budget, worth }: Counter, start: readonly GridBag[]): readonly GridBag[] {
  let plan = start;
  for (;;) {
    const missing = scale.of(plan);
    const cash = cashOf(grid, plan);
    let best: readonly GridBag[] | undefined;
    let bestWorth = tiny;
    for (const next of oneMore(grid, plan, orders)) {
      const more = cashOf(grid, next) - cash;
      const nextWorth = worth(missing - scale.of(next), more);
      if (cash + more > budget || nextWorth <= bestWorth) continue;
      best = next;
      bestWorth = nextWorth;
    }
    if (best === undefined) return plan;
    plan = best;
  }
}

/** The plan after every change of a bag, or of all bags of an offer, for others that leaves fewer pieces missing. */
function improved(shop: Counter, start: readonly GridBag[]): readonly GridBag[] {
  const { scale } = shop;
  let plan = start;
  for (;;) {
    const missing = scale.of(plan);
    const better = plan
      .flatMap(({ order, offer, bags }) => [withBags(plan, order, offer, -1), withBags(plan, order, offer, -bags)])
      .flatMap((fewer) => worths.map((worth) => filled({ ...shop, worth }, fewer)))
      .find((next) => scale.of(next) < missing - tiny);
    if (better === undefined) return plan;
    plan = better;
  }
}

function* oneMore(grid: PurchaseGrid, plan: readonly GridBag[], orders: readonly number[]): Generator<readonly GridBag[]> {
  for (const o of orders)
    for (const [f, offer] of grid.offers.entries()) {
      const order = grid.orders[o];
      if (offer.supplier !== order?.supplier || order.arrives >= grid.periods) continue;
      const bags = plan.find((line) => line.order === o && line.offer === f)?.bags ?? 0;
      if (bags < (offer.mostBags ?? Infinity)) yield withBags(plan, o, f, 1);
    }
}
function withBags(plan: readonly GridBag[], order: number, offer: number, more: number): readonly GridBag[] {
  const known = plan.find((line) => line.order === order && line.offer === offer);
  const others = plan.filter((line) => line !== known);
  const bags = (known?.bags ?? 0) + more;
  return bags === 0 ? others : [...others, { order, offer, bags }];
}
