import { type GridOffer, priceAt } from './purchase-grid.ts';

/** Cheapest way to get so many pieces of one item from one supplier in one order. */
export interface BagMenu {
  /** Pieces of each entry, ascending, in units of `unit`. */
  readonly units: Int32Array;
  readonly cost: Float64Array;
  /** Bags per offer of each entry, in the order of `offers`. */
  readonly bags: readonly (readonly number[])[];
  /** The offers it is made of, as indexes of the grid. */
  readonly offers: readonly number[];
}

export const greatestCommonDivisor = (a: number, b: number): number => (b === 0 ? a : greatestCommonDivisor(b, a % b));

/**
 * All amounts from one bag up to `mostUnits` that can be had exactly, each at its least price: a dynamic programme over the offers, so
 * that price breaks and most-bags limits are exact. `unit` divides every bag.
 */
export function bagMenu(
  offers: readonly { readonly offer: GridOffer; readonly index: number }[],
  unit: number,
  mostUnits: number,
): BagMenu {
  let best: (number | undefined)[] = [0];
  let bags: (readonly number[] | undefined)[] = [[]];
  for (const { offer } of offers) {
    const size = offer.pieces / unit;
    const next: (number | undefined)[] = [];
    const nextBags: (readonly number[] | undefined)[] = [];
    for (let from = 0; from <= mostUnits; from++) {
      const base = best[from];
      if (base === undefined) continue;
      const most = Math.min(offer.mostBags ?? Infinity, Math.floor((mostUnits - from) / size));
      for (let n = 0; n <= most; n++) {
        const cost = base + (n === 0 ? 0 : n * priceAt(offer.steps, n));
        const to = from + n * size;
        const known = next[to];
        if (known !== undefined && known <= cost) continue;
        next[to] = cost;
        nextBags[to] = [...(bags[from] ?? []), n];
      }
    }
    best = next;
    bags = nextBags;
  }
  const units: number[] = [];
  for (let u = 1; u <= mostUnits; u++) if (best[u] !== undefined) units.push(u);
  return {
    units: Int32Array.from(units),
    cost: Float64Array.from(units, (u) => best[u] ?? Number.NaN),
    bags: units.map((u) => bags[u] ?? []),
    offers: offers.map(({ index }) => index),
  };
}
