import { jointLevel } from '../needs/index.ts';
import { bagMenu } from './bag-menu.ts';
import type { NumberedProblem } from './grid-of-problem.ts';
import { cashOf } from './grid-program.ts';
import { costOf, type GridBag } from './purchase-grid.ts';

/** What a person would do: the wanted count of each item, less what there is, rounded up to whole bags at one shop. */
export interface ThumbPurchases {
  readonly supplier?: number;
  readonly plan: readonly GridBag[];
  readonly cash: number;
}

/**
 * Wanted counts are those that make "nothing runs out" true with the chance (before bags are thought of). The cheapest single shop that has
 * all items in time and accepts the order is taken, else each item is bought where it is cheapest. `undefined` where nothing is wanted, or
 * some item cannot be had at all.
 */
export function thumbPurchases({ problem, grid, scenarios }: NumberedProblem): ThumbPurchases | undefined {
  const width = grid.items.length;
  const totals = new Int32Array(scenarios.runs * width);
  for (const need of scenarios.need) for (let k = 0; k < totals.length; k++) totals[k] = (totals[k] ?? 0) + (need[k] ?? 0);
  const wanted = jointLevel(totals, width, problem.chance).stock;
  const missing = grid.items.map((item, i) => Math.max(0, (wanted[i] ?? 0) - item.supply.reduce((sum, lot) => sum + lot.pieces, 0)));
  if (missing.every((count) => count === 0)) return undefined;
  const firstNeed = grid.items.map((item, i) => firstPeriodOfNeed(scenarios.need, scenarios.runs, width, i) ?? item.demand.length);
  const bagsAt = (supplier: number, i: number): readonly GridBag[] | undefined => {
    const order = grid.orders.findIndex((o) => o.supplier === supplier && o.arrives <= (firstNeed[i] ?? 0));
    const offers = grid.offers
      .map((offer, index) => ({ offer, index }))
      .filter(({ offer }) => offer.item === i && offer.supplier === supplier);
    if (order < 0 || offers.length === 0) return undefined;
    const most = (missing[i] ?? 0) + Math.max(...offers.map(({ offer }) => offer.pieces));
    const menu = bagMenu(offers, 1, most);
    let best = -1;
    for (let e = 0; e < menu.units.length; e++)
      if ((menu.units[e] ?? 0) >= (missing[i] ?? 0) && (best < 0 || (menu.cost[e] ?? 0) < (menu.cost[best] ?? 0))) best = e;
    return best < 0
      ? undefined
      : (menu.bags[best] ?? []).flatMap((bags, k) => (bags === 0 ? [] : [{ order, offer: menu.offers[k] ?? -1, bags }]));
  };
  const short = missing.flatMap((count, i) => (count > 0 ? [i] : []));
  const shops = problem.suppliers.flatMap((_, supplier): readonly ThumbPurchases[] => {
    const lines = short.map((i) => bagsAt(supplier, i));
    if (lines.some((line) => line === undefined)) return [];
    const plan = lines.flatMap((line) => line ?? []);
    return costOf(grid, plan).belowMinimum.length > 0 ? [] : [{ supplier, plan, cash: cashOf(grid, plan) }];
  });
  const cheapest = shops.sort((a, b) => a.cash - b.cash)[0];
  if (cheapest !== undefined) return cheapest;
  const each = short.map(
    (i) =>
      problem.suppliers
        .flatMap((_, supplier) => {
          const line = bagsAt(supplier, i);
          return line === undefined ? [] : [{ line, cost: costOf(grid, line).goods }];
        })
        .sort((a, b) => a.cost - b.cost)[0]?.line,
  );
  if (each.some((line) => line === undefined)) return undefined;
  const plan = each.flatMap((line) => line ?? []);
  return { plan, cash: cashOf(grid, plan) };
}

function firstPeriodOfNeed(need: readonly Int32Array[], runs: number, width: number, item: number): number | undefined {
  const first = need.findIndex((row) => {
    for (let r = 0; r < runs; r++) if ((row[r * width + item] ?? 0) > 0) return true;
    return false;
  });
  return first < 0 ? undefined : first;
}
