import { type CourseRoom, cheapestCourse, courseRoom, type ItemCourse } from './item-course.ts';
import type { GridBag, PurchaseGrid } from './purchase-grid.ts';

/** One course per item, and what the orders come to together. */
export interface Purchases {
  /** Chosen entry of each stage of each item, -1 for none. */
  readonly chosen: readonly Int16Array[];
  /** Value of goods per order. */
  readonly value: Float64Array;
}

/** The bags that the chosen courses stand for. */
export function bagsOf(courses: readonly ItemCourse[], chosen: readonly Int16Array[]): readonly GridBag[] {
  return courses.flatMap((course, i) =>
    Array.from(course.orders).flatMap((order, s) => {
      const entry = chosen[i]?.[s] ?? -1;
      if (entry < 0) return [];
      const menu = course.menus[s];
      return (menu?.bags[entry - (course.start[s] ?? 0)] ?? []).flatMap((bags, k) =>
        bags === 0 ? [] : [{ order, offer: menu?.offers[k] ?? -1, bags }],
      );
    }),
  );
}

/**
 * Descent over items: each item in turn takes the course that is cheapest given what all the others buy, carriage and least values
 * counted exactly. Orders can be shut, or be made to look as if their carriage were paid already.
 */
export class OpenOrders {
  readonly courses: readonly ItemCourse[];
  readonly chosen: readonly Int16Array[];
  readonly value: Float64Array;
  /** Orders in which nothing may be bought. */
  readonly isShut: Uint8Array;
  /** Orders whose carriage is left out of the account for the moment. */
  readonly isLured: Uint8Array;
  /** Additions done so far: the measure of work, the same on every machine. */
  work = 0;
  readonly #room: CourseRoom;
  readonly #cost: Float64Array;
  readonly #fresh: Int16Array;
  readonly #fee: Float64Array;
  readonly #freeOver: Float64Array;
  readonly #minimum: Float64Array;
  readonly #planned: Uint8Array;
  /** Items that can be bought in each order. */
  readonly itemsOf: readonly Int32Array[];

  constructor(grid: PurchaseGrid, courses: readonly ItemCourse[]) {
    this.courses = courses;
    this.chosen = courses.map((course) => new Int16Array(course.orders.length).fill(-1));
    this.value = new Float64Array(grid.orders.length);
    this.isShut = new Uint8Array(grid.orders.length);
    this.isLured = new Uint8Array(grid.orders.length);
    this.#room = courseRoom(courses);
    this.#cost = new Float64Array(Math.max(1, ...courses.map((course) => course.units.length)));
    this.#fresh = new Int16Array(Math.max(1, ...courses.map((course) => course.orders.length)));
    this.#fee = Float64Array.from(grid.orders, (order) => order.fee);
    this.#freeOver = Float64Array.from(grid.orders, (order) => order.freeOver ?? Infinity);
    this.#minimum = Float64Array.from(grid.orders, (order) => order.minimum ?? 0);
    this.#planned = new Uint8Array(courses.length);
    this.itemsOf = grid.orders.map((_, o) => Int32Array.from(courses.flatMap((course, i) => (course.orders.includes(o) ? [i] : []))));
  }

  /** Carriage of an order with goods of this value, plus what is missing to the least value, so that descent fills it or leaves it. */
  extra(order: number, value: number): number {
    if (value <= 0) return 0;
    const missing = Math.max(0, (this.#minimum[order] as number) - value); // order < orders
    const fee = this.isLured[order] === 1 || value >= (this.#freeOver[order] as number) ? 0 : (this.#fee[order] as number);
    return fee + missing;
  }

  /** Chooses the item's course anew; true if that made the whole cheaper. */
  improve(item: number): boolean {
    const course = this.courses[item];
    const chosen = this.chosen[item];
    if (course === undefined || chosen === undefined) throw new RangeError(`no item ${item}`);
    const stages = course.orders.length;
    if (stages === 0) return false;
    let now = course.constant;
    for (let s = 0; s < stages; s++) {
      const order = course.orders[s] as number; // s < stages
      const entry = chosen[s] as number; // as above
      const mine = entry < 0 ? 0 : (course.value[entry] as number);
      const others = this.value[order] as number;
      const rest = mine === 0 ? others : Math.max(0, others - mine);
      const before = this.extra(order, rest);
      if (entry >= 0) now += (course.cost[entry] as number) + this.extra(order, others) - before;
      for (let e = course.start[s] as number; e < (course.start[s + 1] as number); e++)
        this.#cost[e] =
          this.isShut[order] === 1 ? Infinity : (course.cost[e] as number) + this.extra(order, rest + (course.value[e] as number)) - before;
    }
    this.work += course.work;
    const then = cheapestCourse(course, this.#cost, this.#fresh, this.#room);
    if (then === Infinity) return false;
    const isBarred = course.orders.some((order, s) => this.isShut[order] === 1 && (chosen[s] ?? -1) >= 0);
    if (!isBarred && this.isPlanned(item) && then >= now - 1e-9) return false;
    this.put(item, this.#fresh);
    return true;
  }

  /** True once the item has a course that covers its demand. */
  isPlanned(item: number): boolean {
    return this.#planned[item] === 1;
  }

  /** Sets an item's course and keeps the values of the orders right. */
  put(item: number, next: Int16Array): void {
    const course = this.courses[item];
    const chosen = this.chosen[item];
    if (course === undefined || chosen === undefined) throw new RangeError(`no item ${item}`);
    for (let s = 0; s < course.orders.length; s++) {
      const order = course.orders[s] as number; // s < stages
      const old = chosen[s] as number;
      const fresh = next[s] as number;
      if (old === fresh) continue;
      const value =
        (this.value[order] as number) - (old < 0 ? 0 : (course.value[old] as number)) + (fresh < 0 ? 0 : (course.value[fresh] as number));
      this.value[order] = Math.abs(value) < 1e-7 ? 0 : value;
      chosen[s] = fresh;
    }
    this.#planned[item] = 1;
  }

  /** Lets the items choose in turn until none gets cheaper. */
  descend(items: Int32Array | readonly number[], mostRounds = 6): void {
    for (let round = 0; round < mostRounds; round++) {
      let changed = false;
      for (let k = 0; k < items.length; k++) if (this.improve(items[k] as number)) changed = true; // k < length
      if (!changed) return;
    }
  }

  /** Goods, keeping and carriage of all; what is missing to a least value counts as cost. */
  total(): number {
    let sum = 0;
    for (let i = 0; i < this.courses.length; i++) {
      const course = this.courses[i] as ItemCourse; // i < length
      const chosen = this.chosen[i] as Int16Array;
      sum += course.constant;
      for (let s = 0; s < chosen.length; s++) if ((chosen[s] as number) >= 0) sum += course.cost[chosen[s] as number] as number;
    }
    for (let o = 0; o < this.value.length; o++) sum += this.extra(o, this.value[o] as number);
    return sum;
  }

  /** True if every order is empty or worth its supplier's least value. */
  keepsMinimums(): boolean {
    for (let o = 0; o < this.value.length; o++)
      if ((this.value[o] as number) > 0 && (this.value[o] as number) < (this.#minimum[o] as number)) return false;
    return true;
  }
  snapshot(): Purchases {
    return { chosen: this.chosen.map((course) => course.slice()), value: this.value.slice() };
  }
  restore(purchases: Purchases): void {
    for (let i = 0; i < this.chosen.length; i++) (this.chosen[i] as Int16Array).set(purchases.chosen[i] as Int16Array); // same length
    this.value.set(purchases.value);
  }
}
