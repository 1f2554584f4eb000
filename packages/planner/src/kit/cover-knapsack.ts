import type { CoverModel } from './cover-model.ts';
import { free } from './cover-open.ts';

/** The fractional knapsack over the free bags: most profit for the money first. */
export class Knapsack {
  readonly #costs: Float64Array;
  /** Free bags, best ratio first. */
  readonly #order: Int32Array;
  #count = 0;
  #money = 0;
  readonly #ratio: Float64Array;
  /** How much of each bag is bought, 0 to 1. */
  readonly x: Float64Array;
  /** What one more minor unit of money would bring. */
  #price = 0;

  constructor(model: CoverModel) {
    this.#costs = model.costs;
    this.#order = new Int32Array(model.bagCount);
    this.#ratio = new Float64Array(model.bagCount);
    this.x = new Float64Array(model.bagCount);
  }

  /** Takes up the free bags; those that were free before keep their order. */
  take(fixed: Int8Array, money: number): void {
    const order = this.#order;
    const [was, x] = [this.#count, this.x];
    let count = 0;
    for (let i = 0; i < was; i++) {
      const bag = order[i] as number;
      if (fixed[bag] === free) {
        order[count++] = bag;
        x[bag] = 2;
      }
    }
    for (let bag = 0; bag < fixed.length; bag++) if (fixed[bag] === free && x[bag] !== 2) order[count++] = bag;
    x.fill(0);
    this.#count = count;
    this.#money = money;
  }

  /** Buys for these profits; what the purchase is worth. */
  buy(profit: Float64Array): number {
    this.#sort(profit);
    const [x, order, costs, count] = [this.x, this.#order, this.#costs, this.#count];
    let left = this.#money;
    let worth = 0;
    this.#price = 0;
    let i = 0;
    for (; i < count; i++) {
      const bag = order[i] as number;
      const gain = profit[bag] as number;
      if (gain <= 0) break;
      const cost = costs[bag] as number;
      if (cost > left) {
        x[bag] = left / cost;
        worth += gain * (left / cost);
        this.#price = this.#ratio[bag] as number;
        i++;
        break;
      }
      x[bag] = 1;
      worth += gain;
      left -= cost;
    }
    for (; i < count; i++) x[order[i] as number] = 0;
    return worth;
  }
  #sort(profit: Float64Array): void {
    const [order, ratio, costs, count] = [this.#order, this.#ratio, this.#costs, this.#count];
    // The order changes little from round to round, which insertion sort likes.
    for (let i = 0; i < count; i++) {
      const bag = order[i] as number;
      const gain = profit[bag] as number;
      const own = gain <= 0 ? -1 : gain / Math.max(costs[bag] as number, 1e-9);
      ratio[bag] = own;
      let at = i - 1;
      while (at >= 0 && (ratio[order[at] as number] as number) < own) {
        order[at + 1] = order[at] as number;
        at--;
      }
      order[at + 1] = bag;
    }
  }

  /** What the bag brings above what its money is worth elsewhere. */
  reduced(bag: number, profit: Float64Array): number {
    return (profit[bag] as number) - this.#price * (this.#costs[bag] as number);
  }
}
