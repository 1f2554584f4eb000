import type { Knapsack } from './cover-knapsack.ts';
import type { CoverModel } from './cover-model.ts';
import { free } from './cover-open.ts';

const halvings = 12;

/** Bounds a knapsack where only so many new colours may be bought. */
export class FewColours {
  readonly #model: CoverModel;
  readonly #most: number;
  readonly #gain: Float64Array;
  readonly #rank: Int32Array;
  /** For each bag its only new colour; -1 for none or several. */
  readonly #colourOf: Int32Array;
  #room = 0;

  constructor(model: CoverModel) {
    const colours = 1 + Math.max(-1, ...(model.problem.coloursOf ?? []).flat());
    this.#model = model;
    this.#most = model.problem.mostColours ?? Number.POSITIVE_INFINITY;
    this.#gain = new Float64Array(colours);
    this.#rank = Int32Array.from({ length: colours }, (_, c) => c);
    this.#colourOf = new Int32Array(model.bagCount);
  }
  get areLimited(): boolean {
    return this.#most !== Number.POSITIVE_INFINITY;
  }

  /** Takes up which colours the fixed bags bring already. */
  take(fixed: Int8Array): void {
    if (!this.areLimited) return;
    const { coloursOf = [], ownColours = [] } = this.#model.problem;
    const has = new Set(ownColours);
    let bought = 0;
    for (let bag = 0; bag < fixed.length; bag++) {
      if (fixed[bag] !== 1) continue;
      for (const colour of coloursOf[bag] ?? []) {
        if (!has.has(colour)) bought++;
        has.add(colour);
      }
    }
    this.#room = Math.max(0, this.#most - bought);
    for (let bag = 0; bag < fixed.length; bag++) {
      const colours = coloursOf[bag] ?? [];
      const only = colours[0];
      this.#colourOf[bag] = only !== undefined && colours.length === 1 && !has.has(only) ? only : -1;
    }
  }

  /**
   * At a price of money, each colour is worth the sum of what its bags gain, and the best few colours are taken. Valid at any price of
   * money; a few halvings find a good one. Bags of several colours count as one of none (never too low). Never above `unlimited`.
   */
  bound(knapsack: Knapsack, profit: Float64Array, fixed: Int8Array, unlimited: number): number {
    let [low, high] = [0, knapsack.bestRatio()];
    let least = unlimited;
    for (let halving = 0; halving < halvings; halving++) {
      const price = (low + high) / 2;
      const { worth, spent } = this.#at(price, profit, fixed);
      const bound = worth + price * knapsack.money;
      if (bound < least) least = bound;
      if (spent > knapsack.money) low = price;
      else high = price;
    }
    return least;
  }

  /** What the best few colours and the bags of no colour gain at this price of money, and what they cost. */
  #at(price: number, profit: Float64Array, fixed: Int8Array): { readonly worth: number; readonly spent: number } {
    const costs = this.#model.costs;
    let [worth, spent] = [0, 0];
    this.#gain.fill(0);
    for (let bag = 0; bag < fixed.length; bag++) {
      const gain = (profit[bag] as number) - price * (costs[bag] as number);
      if (fixed[bag] !== free || gain <= 0) continue;
      const colour = this.#colourOf[bag] as number;
      if (colour >= 0) this.#gain[colour] = (this.#gain[colour] as number) + gain;
      else {
        worth += gain;
        spent += costs[bag] as number;
      }
    }
    this.#rank.sort((a, b) => (this.#gain[b] as number) - (this.#gain[a] as number) || a - b);
    const inside = new Set(this.#rank.subarray(0, this.#room));
    for (const colour of inside) worth += this.#gain[colour] as number;
    for (let bag = 0; bag < fixed.length; bag++) {
      const cost = costs[bag] as number;
      if (fixed[bag] === free && inside.has(this.#colourOf[bag] as number) && (profit[bag] as number) > price * cost) spent += cost;
    }
    return { worth, spent };
  }
}
