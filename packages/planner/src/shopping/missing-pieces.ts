import { type GridLot, netOf, type PurchaseGrid } from './purchase-grid.ts';
import type { GridScenarios } from './scenario-levels.ts';

/** Pieces of one item that the runs are short of in the mean, served from its supply and the lots bought of it. */
export function meanMissing(grid: PurchaseGrid, scenarios: GridScenarios, item: number, bought: readonly GridLot[]): number {
  const missingIn = missingCounter(grid.periods, [...(grid.items[item]?.supply ?? []), ...bought]);
  const width = grid.items.length;
  let missing = 0;
  for (let cell = item; cell < scenarios.runs * width; cell += width) missing += missingIn(scenarios.need, cell);
  return missing / scenarios.runs;
}

/**
 * Counts the pieces of one item that one run, the cell of its needs, is short of in all when it is served from these lots. Where nothing goes off that is
 * the worst lag of what has arrived behind what has been asked.
 */
export function missingCounter(periods: number, lots: readonly GridLot[]): (need: readonly Int32Array[], cell: number) => number {
  if (lots.some((lot) => lot.until !== undefined && lot.until < periods - 1))
    return (need, cell) =>
      netOf(
        need.map((row) => row[cell] ?? 0),
        lots,
      ).short.reduce((sum, pieces) => sum + pieces, 0);
  const arrived = Float64Array.from({ length: periods }, (_, p) => lots.reduce((sum, lot) => sum + (lot.from <= p ? lot.pieces : 0), 0));
  return (need, cell) => {
    let asked = 0;
    let missing = 0;
    for (let p = 0; p < need.length; p++) {
      asked += need[p]?.[cell] ?? 0;
      missing = Math.max(missing, asked - (arrived[p] ?? 0));
    }
    return missing;
  };
}
