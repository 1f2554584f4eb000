import { Chance, log } from '@twistwright/units';
import { type ItemCourse, itemCourse } from './item-course.ts';
import { bagsOf, OpenOrders, type Purchases } from './open-orders.ts';
import { OrderBound } from './order-bound.ts';
import type { GridBag, PurchaseGrid } from './purchase-grid.ts';

export interface SearchEffort {
  readonly seed: number;
  /** Additions to spend on the bound and on the search; the search ends when they are done, so that a seed gives one answer. */
  readonly work: number;
  /** Outer limit: seconds on the clock handed in. */
  readonly seconds?: number;
  readonly now?: () => number;
  /** Stop once within this share of the bound. */
  readonly gap?: number;
  /** Costs of all plans are whole numbers, so a bound may be rounded up. */
  readonly wholeCosts?: boolean;
}
export interface SearchedPurchases {
  readonly plan: readonly GridBag[];
  readonly cost: number;
  /** No plan costs less. */
  readonly bound: number;
  /** True if the clock ended it before the work was done; then another machine may answer differently. */
  readonly endedByClock: boolean;
  readonly work: number;
}

/**
 * Searches over which orders are placed: items choose exact cheapest courses in turn, orders are shut, opened and moved, and a
 * Lagrangian bound by item says how far off the answer can be. `undefined` if nothing can arrive in time for some item or every plan found breaks a least value.
 */
export function searchOrders(grid: PurchaseGrid, effort: SearchEffort): SearchedPurchases | undefined {
  const courses = grid.items.map((_, item) => itemCourse(grid, item));
  if (courses.some((course) => course.hopeless !== undefined)) return undefined;
  return new OrderSearch(grid, courses, effort).run();
}

class OrderSearch {
  readonly #grid: PurchaseGrid;
  readonly #courses: readonly ItemCourse[];
  readonly #effort: SearchEffort;
  readonly #orders: OpenOrders;
  readonly #lagrange: OrderBound;
  readonly #chance: Chance;
  readonly #all: Int32Array;
  readonly #begun: number;
  #best: Purchases | undefined;
  #bestCost = Infinity;
  #endedByClock = false;

  constructor(grid: PurchaseGrid, courses: readonly ItemCourse[], effort: SearchEffort) {
    this.#grid = grid;
    this.#courses = courses;
    this.#effort = effort;
    this.#orders = new OpenOrders(grid, courses);
    this.#lagrange = new OrderBound(grid, courses);
    this.#chance = new Chance(effort.seed, 0, 0x5eed);
    this.#all = Int32Array.from(courses, (_, i) => i).filter((i) => (courses[i]?.top ?? 0) > 0);
    this.#begun = effort.now?.() ?? 0;
  }

  run(): SearchedPurchases | undefined {
    this.#orders.descend(this.#all);
    if (this.#all.some((item) => !this.#orders.isPlanned(item))) return undefined;
    this.#note();
    this.#climb();
    this.#roam();
    if (this.#best === undefined) return undefined;
    return {
      plan: bagsOf(this.#courses, this.#best.chosen),
      cost: this.#bestCost,
      bound: Math.min(this.#bestCost, this.#roundedBound()),
      endedByClock: this.#endedByClock,
      work: this.#work(),
    };
  }

  #work(): number {
    return this.#orders.work + this.#lagrange.work;
  }
  #roundedBound(): number {
    if (this.#courses.some((course) => course.perishes)) return -Infinity;
    return this.#effort.wholeCosts === true ? Math.ceil(this.#lagrange.bound - 1e-6) : this.#lagrange.bound;
  }
  #isDone(share: number): boolean {
    if (this.#bestCost - this.#roundedBound() <= Math.max(1e-9, (this.#effort.gap ?? 0) * Math.abs(this.#bestCost))) return true;
    if (this.#work() >= share * this.#effort.work) return true;
    const { now, seconds } = this.#effort;
    if (now === undefined || seconds === undefined || now() - this.#begun < share * seconds) return false;
    this.#endedByClock = true;
    return true;
  }
  #note(): boolean {
    const cost = this.#orders.total();
    if (!(cost < this.#bestCost - 1e-9) || !this.#orders.keepsMinimums()) return false;
    this.#bestCost = cost;
    this.#best = this.#orders.snapshot();
    return true;
  }

  /** Raises the bound; every few steps the courses it chose are made into a plan. */
  #climb(): void {
    const share = 0.4;
    for (let step = 0; step < 400 && !this.#isDone(share); step++) {
      this.#lagrange.step(this.#bestCost < Infinity ? this.#bestCost : this.#orders.total());
      if (step % 10 !== 9) continue;
      for (const i of this.#all) {
        const chosen = this.#lagrange.chosen[i];
        if (chosen !== undefined) this.#orders.put(i, chosen);
      }
      this.#orders.descend(this.#all);
      this.#note();
    }
    if (this.#best !== undefined) this.#orders.restore(this.#best);
  }

  /** Shuts, opens and moves orders, keeping what is cheaper and, more and more rarely, what is a little dearer. */
  #roam(): void {
    const moves = this.#grid.orders.length;
    if (moves < 2 || this.#all.length === 0) return;
    let current = this.#orders.snapshot();
    let cost = this.#orders.total();
    let sinceBetter = 0;
    while (!this.#isDone(1)) {
      const heat = 0.0012 * this.#bestCost * Math.max(0, 1 - this.#work() / this.#effort.work);
      this.#disturb();
      this.#orders.work += 20 * moves;
      const next = this.#orders.total();
      if (this.#note()) sinceBetter = 0;
      else sinceBetter++;
      if (next < cost - heat * log(this.#chance.uniform())) {
        current = this.#orders.snapshot();
        cost = next;
      } else this.#orders.restore(current);
      if (sinceBetter > 40 * moves && this.#best !== undefined) {
        this.#orders.restore(this.#best);
        current = this.#orders.snapshot();
        cost = this.#bestCost;
        sinceBetter = 0;
      }
    }
  }

  #pick(count: number): number {
    return Math.floor(this.#chance.uniform() * count);
  }

  #disturb(): void {
    const used: number[] = [];
    for (let o = 0; o < this.#grid.orders.length; o++) if ((this.#orders.value[o] as number) > 0) used.push(o); // o < orders
    const kind = this.#chance.uniform();
    const opened = kind < 0.7 ? this.#neighbour(used) : undefined;
    const shut = kind > 0.35 && used.length > 0 ? used[this.#pick(used.length)] : undefined;
    const touched = new Set<number>();
    const { isShut, isLured, itemsOf } = this.#orders;
    if (shut !== undefined && shut !== opened) {
      isShut[shut] = 1;
      for (const i of this.#buyersIn(shut)) touched.add(i);
    }
    if (opened !== undefined) {
      isLured[opened] = 1;
      for (const i of itemsOf[opened] ?? []) touched.add(i);
    }
    const items = shuffled([...touched], this.#chance);
    this.#orders.descend(items, 1);
    if (opened !== undefined) isLured[opened] = 0;
    this.#orders.descend(items, 2);
    this.#orders.descend(shuffled(Array.from(this.#all), this.#chance), 1);
    if (shut !== undefined) isShut[shut] = 0;
  }

  /** An unused order, mostly of a neighbouring period of a used one. */
  #neighbour(used: readonly number[]): number | undefined {
    const orders = this.#grid.orders;
    if (used.length > 0 && this.#chance.uniform() < 0.5) {
      const near = orders[used[this.#pick(used.length)] ?? 0];
      const close = orders.flatMap((order, o) => (near !== undefined && Math.abs(order.arrives - near.arrives) <= 1 ? [o] : []));
      return close[this.#pick(close.length)];
    }
    return this.#pick(orders.length);
  }
  #buyersIn(order: number): readonly number[] {
    return Array.from(this.#orders.itemsOf[order] ?? []).filter((i) => {
      const stage = this.#courses[i]?.orders.indexOf(order) ?? -1;
      return (this.#orders.chosen[i]?.[stage] ?? -1) >= 0;
    });
  }
}

function shuffled(values: number[], chance: Chance): readonly number[] {
  for (let k = values.length - 1; k > 0; k--) {
    const other = Math.floor(chance.uniform() * (k + 1));
    const kept = values[k] as number; // k and other are within the list
    values[k] = values[other] as number;
    values[other] = kept;
  }
  return values;
}
