import type { PurchaseGrid } from './purchase-grid.ts';
import type { ScenarioLevels } from './scenario-levels.ts';

/**
 * The same levels with every run given up that no purchase within the budget can cover: what the run asks of each item is bought at the least price
 * of any bag, carriage and least orders left out, so a run that costs more than the budget even so is out of reach. A bound, never an estimate.
 * `budget` in minor units.
 */
export function affordableRuns(grid: PurchaseGrid, levels: ScenarioLevels, budget: number): ScenarioLevels {
  const ladders = grid.items.map((_, i) => priceLadder(grid, i, mostPieces(levels, i)));
  const isHopeless = levels.isHopeless.slice();
  for (let r = 0; r < isHopeless.length; r++) {
    if (isHopeless[r] === 1) continue;
    const asked = new Float64Array(grid.items.length);
    for (const row of levels.rows) asked[row.item] = Math.max(asked[row.item] ?? 0, (row.level[r] ?? 0) * row.unit);
    let least = 0;
    for (const [i, pieces] of asked.entries()) least += ladders[i]?.[pieces] ?? 0;
    if (least > budget) isHopeless[r] = 1;
  }
  return { ...levels, isHopeless, hopeless: isHopeless.reduce((sum, lost) => sum + lost, 0) };
}

const mostPieces = (levels: ScenarioLevels, item: number): number =>
  levels.rows.reduce(
    (most, row) => (row.item === item ? row.level.reduce((high, level) => Math.max(high, level * row.unit), most) : most),
    0,
  );

/** The least price of at least 0, 1, 2, … pieces of one item, every bag at the best price it ever has. */
function priceLadder(grid: PurchaseGrid, item: number, most: number): Float64Array {
  const bags = grid.offers
    .filter((offer) => offer.item === item)
    .map((offer) => ({ pieces: offer.pieces, price: Math.min(...offer.steps.map((step) => step.price)) }));
  const least = new Float64Array(most + 1).fill(Number.POSITIVE_INFINITY);
  least[0] = 0;
  for (let n = 1; n <= most; n++)
    for (const bag of bags) least[n] = Math.min(least[n] ?? Infinity, (least[Math.max(0, n - bag.pieces)] ?? Infinity) + bag.price);
  return least;
}
