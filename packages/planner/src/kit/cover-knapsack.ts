import type { CoverModel } from './cover-model.ts';
import { free } from './cover-open.ts';

/** Where so much has to be spent at some shops for free shipping, little is left for the bags outside these. */
export interface Outside {
  readonly isOutside: Int8Array;
  /** Most that may be spent outside, fixed bags included. */
  readonly most: number;
}

/**
 * The fractional knapsack over the free bags: dearest profit for the money first. With a limit on what is spent outside the limits are
 * nested, and taking the best ratio first is still best (J. Edmonds, "Submodular functions, matroids, and certain polyhedra",
 * Combinatorial structures and their applications (1970) 69-87).
 */
export class Knapsack {
  readonly #costs: Float64Array;
  /** Free bags, best ratio first. */
  readonly #order: Int32Array;
  #count = 0;
  #money = 0;
  #outsideMoney = Number.POSITIVE_INFINITY;
  #isOutside: Int8Array | undefined;
  readonly #ratio: Float64Array;
  /** How much of each bag is bought, 0 to 1. */
  readonly x: Float64Array;
  /** What one more minor unit of money would bring, in all and for bags outside. */
  #price = 0;
  #outsidePrice = 0;

  constructor(model: CoverModel) {
    this.#costs = model.costs;
    this.#order = new Int32Array(model.bagCount);
    this.#ratio = new Float64Array(model.bagCount);
    this.x = new Float64Array(model.bagCount);
  }

  /** Takes up the free bags; those that were free before keep their order. */
  take(fixed: Int8Array, money: number, outside: Outside | undefined): void {
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
    this.#isOutside = outside?.isOutside;
    this.#outsideMoney = outside?.most ?? Number.POSITIVE_INFINITY;
    if (outside === undefined) return;
    for (let bag = 0; bag < fixed.length; bag++)
      if (fixed[bag] === 1 && outside.isOutside[bag] === 1) this.#outsideMoney -= this.#costs[bag] as number;
  }

  /** Buys for these profits; what the purchase is worth. */
  buy(profit: Float64Array): number {
    this.#sort(profit);
    const [x, order, costs, isOutside, count] = [this.x, this.#order, this.#costs, this.#isOutside, this.#count];
    let [left, outsideLeft] = [this.#money, this.#outsideMoney];
    let worth = 0;
    this.#price = 0;
    this.#outsidePrice = 0;
    let i = 0;
    for (; i < count; i++) {
      const bag = order[i] as number;
      const gain = profit[bag] as number;
      if (gain <= 0) break;
      const cost = costs[bag] as number;
      const limited = isOutside !== undefined && isOutside[bag] === 1;
      const money = limited ? Math.max(0, Math.min(left, outsideLeft)) : left;
      const share = cost <= money ? 1 : money / cost;
      x[bag] = share;
      worth += gain * share;
      left -= cost * share;
      if (limited) {
        outsideLeft -= cost * share;
        if (cost > money && left > 1e-6 && this.#outsidePrice === 0) this.#outsidePrice = this.#ratio[bag] as number;
      }
      if (cost > money && left <= 1e-6) {
        this.#price = this.#ratio[bag] as number;
        i++;
        break;
      }
    }
    for (; i < count; i++) x[order[i] as number] = 0;
    this.#outsidePrice = Math.max(this.#outsidePrice, this.#price);
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
    const price = this.#isOutside?.[bag] === 1 ? this.#outsidePrice : this.#price;
    return (profit[bag] as number) - price * (this.#costs[bag] as number);
  }
  /** No purchase for this money is worth more per minor unit. */
  bestRatio(): number {
    return this.#count === 0 ? 0 : Math.max(0, this.#ratio[this.#order[0] as number] as number);
  }
  get money(): number {
    return this.#money;
  }
}
