import type { Knapsack } from './cover-knapsack.ts';
import type { CoverModel } from './cover-model.ts';
import { free, type OpenPart } from './cover-open.ts';

/**
 * By how much the Lagrangian bound falls, at given prices of the links, when one free bag is put in or out. Besides what the knapsack
 * loses, the bag's own links may then have other prices: none where the bag is in; any where it is out, which shuts the alternatives
 * that need it. A link to one of several bags keeps its price.
 */
export class Losses {
  readonly ofIn: Float64Array;
  readonly ofOut: Float64Array;
  readonly #values: Float64Array;
  /** Row by row of the open part: the cheapest alternative with the row, its own price taken off. */
  readonly #rest: Float64Array;
  /** Alternative by alternative: the sum of its prices. */
  readonly #sums: Float64Array;

  constructor(model: CoverModel) {
    this.#values = model.values;
    this.ofIn = new Float64Array(model.bagCount);
    this.ofOut = new Float64Array(model.bagCount);
    this.#rest = new Float64Array(model.rowCount);
    this.#sums = new Float64Array(model.goalOfAlternative.length);
  }

  weigh(open: OpenPart, links: Float64Array, knapsack: Knapsack, profit: Float64Array, fixed: Int8Array): void {
    const [ofIn, ofOut] = [this.ofIn, this.ofOut];
    for (let bag = 0; bag < fixed.length; bag++) {
      const reduced = fixed[bag] === free ? knapsack.reduced(bag, profit) : 0;
      ofIn[bag] = Math.max(0, -reduced);
      ofOut[bag] = Math.max(0, reduced);
    }
    this.#rest.fill(Number.POSITIVE_INFINITY, 0, open.rowCount);
    let row = 0;
    for (let k = 0; k < open.goalCount; k++) row = this.#weighGoal(k, row, open, links);
  }

  /** The rows of a goal follow each other: from `firstRow` to the row that is returned. */
  #weighGoal(k: number, firstRow: number, open: OpenPart, links: Float64Array): number {
    const { goals, alternativesFrom, rowsFrom, rowList, bagOf } = open;
    const value = this.#values[goals[k] as number] as number;
    const first = alternativesFrom[k] as number;
    const last = alternativesFrom[k + 1] as number;
    let endRow = firstRow;
    let cheapest = Number.POSITIVE_INFINITY;
    for (let a = first; a < last; a++) {
      const [from, to] = [rowsFrom[a] as number, rowsFrom[a + 1] as number];
      let sum = 0;
      for (let r = from; r < to; r++) sum += links[rowList[r] as number] as number;
      this.#sums[a] = sum;
      if (sum < cheapest) cheapest = sum;
      for (let r = from; r < to; r++) {
        const row = rowList[r] as number;
        if (row >= endRow) endRow = row + 1;
        const rest = sum - (links[row] as number);
        if (rest < (this.#rest[row] as number)) this.#rest[row] = rest;
      }
    }
    const gain = Math.max(0, value - cheapest);
    for (let row = firstRow; row < endRow; row++) {
      const bag = bagOf[row] as number;
      if (bag < 0) continue;
      const more = Math.max(0, value - (this.#rest[row] as number) - gain);
      this.ofIn[bag] = (this.ofIn[bag] as number) + (links[row] as number) - more;
      // Only where the cheapest alternative needs the row is anything lost without it.
      if (gain === 0 || (this.#rest[row] as number) + (links[row] as number) > cheapest) continue;
      const other = value - this.#cheapestWithout(row, first, last, open);
      this.ofOut[bag] = (this.ofOut[bag] as number) + Math.min(gain, gain - other);
    }
    return endRow;
  }
  #cheapestWithout(row: number, first: number, last: number, open: OpenPart): number {
    const { rowsFrom, rowList } = open;
    let cheapest = Number.POSITIVE_INFINITY;
    for (let a = first; a < last; a++) {
      if ((this.#sums[a] as number) >= cheapest) continue;
      let needs = false;
      for (let r = rowsFrom[a] as number; r < (rowsFrom[a + 1] as number) && !needs; r++) needs = rowList[r] === row;
      if (!needs) cheapest = this.#sums[a] as number;
    }
    return cheapest;
  }
}
