import { type CourseRoom, cheapestCourse, courseRoom, type ItemCourse } from './item-course.ts';
import type { PurchaseGrid } from './purchase-grid.ts';

/**
 * Lagrangian bound by item: "who buys in an order pays for its carriage" and "free from this value on" are lifted with multipliers, so that
 * each item's course and each order can be decided alone; the sum is a lower bound for every plan. Multipliers climb by subgradient steps
 * towards a known upper bound (M. Held, P. Wolfe, H. P. Crowder, "Validation of subgradient optimization", Math. Programming 6 (1974) 62-88).
 */
export class OrderBound {
  readonly courses: readonly ItemCourse[];
  /** Best bound so far. */
  bound = -Infinity;
  /** Priced entries of the last step, per item: what courses cost when the multipliers stand for carriage. */
  readonly priced: readonly Float64Array[];
  /** Courses chosen in the last step. */
  readonly chosen: readonly Int16Array[];
  work = 0;
  readonly #grid: PurchaseGrid;
  readonly #share: readonly Float64Array[];
  readonly #credit: Float64Array;
  readonly #push: Float64Array;
  readonly #room: CourseRoom;
  readonly #direction: readonly Float64Array[];
  #pace = 1.5;
  #sinceBetter = 0;
  readonly #bestShare: readonly Float64Array[];

  constructor(grid: PurchaseGrid, courses: readonly ItemCourse[]) {
    this.#grid = grid;
    this.courses = courses;
    this.#share = courses.map((course) => new Float64Array(course.orders.length));
    this.#bestShare = courses.map((course) => new Float64Array(course.orders.length));
    this.#direction = courses.map((course) => new Float64Array(course.orders.length));
    this.#credit = new Float64Array(grid.orders.length);
    this.#push = new Float64Array(grid.orders.length);
    this.#room = courseRoom(courses);
    this.priced = courses.map((course) => new Float64Array(course.units.length));
    this.chosen = courses.map((course) => new Int16Array(course.orders.length).fill(-1));
  }

  /** One step: a bound at the present multipliers, then new multipliers. `target` is the cost of a known plan. */
  step(target: number): number {
    const orders = this.#grid.orders;
    const value = new Float64Array(orders.length);
    const sumOfShares = new Float64Array(orders.length);
    let total = 0;
    for (let i = 0; i < this.courses.length; i++) {
      const course = this.courses[i] as ItemCourse; // i < length
      const share = this.#share[i] as Float64Array;
      const priced = this.priced[i] as Float64Array;
      const chosen = this.chosen[i] as Int16Array;
      for (let s = 0; s < share.length; s++) {
        const order = course.orders[s] as number; // s < stages
        const credit = (this.#credit[order] as number) + (this.#push[order] as number);
        sumOfShares[order] = (sumOfShares[order] as number) + (share[s] as number);
        for (let e = course.start[s] as number; e < (course.start[s + 1] as number); e++)
          priced[e] = (course.cost[e] as number) - credit * (course.value[e] as number) + (share[s] as number);
      }
      this.work += course.work;
      total += cheapestCourse(course, priced, chosen, this.#room);
      for (let s = 0; s < share.length; s++) {
        const entry = chosen[s] as number;
        if (entry >= 0) value[course.orders[s] as number] = (value[course.orders[s] as number] as number) + (course.value[entry] as number);
      }
    }
    const isOpen = new Uint8Array(orders.length);
    const isFree = new Uint8Array(orders.length);
    for (let o = 0; o < orders.length; o++) {
      const order = orders[o];
      if (order === undefined) continue;
      const paid = order.fee + (this.#push[o] as number) * (order.minimum ?? 0);
      const free =
        order.freeOver === undefined
          ? Infinity
          : (this.#credit[o] as number) * order.freeOver + (this.#push[o] as number) * (order.minimum ?? 0);
      const least = Math.min(paid, free) - (sumOfShares[o] as number);
      if (least >= 0) continue;
      total += least;
      isOpen[o] = 1;
      isFree[o] = free < paid ? 1 : 0;
    }
    if (total > this.bound + 1e-9) {
      this.#sinceBetter = total > this.bound + 1e-5 * Math.abs(this.bound) ? 0 : this.#sinceBetter + 1;
      this.bound = total;
      for (const [i, share] of this.#share.entries()) this.#bestShare[i]?.set(share);
    } else this.#sinceBetter++;
    if (this.#sinceBetter >= 12) {
      this.#pace *= 0.7;
      this.#sinceBetter = 0;
    }
    this.#climb(Math.max(target - total, 0.0005 * Math.abs(target)), isOpen, isFree, value);
    return total;
  }

  #climb(distance: number, isOpen: Uint8Array, isFree: Uint8Array, value: Float64Array): void {
    const orders = this.#grid.orders;
    let norm = 0;
    for (let i = 0; i < this.courses.length; i++) {
      const course = this.courses[i] as ItemCourse; // i < length
      const direction = this.#direction[i] as Float64Array;
      const share = this.#share[i] as Float64Array;
      for (let s = 0; s < direction.length; s++) {
        const gradient = ((this.chosen[i]?.[s] ?? -1) >= 0 ? 1 : 0) - (isOpen[course.orders[s] as number] as number);
        const smooth = gradient + 0.6 * (direction[s] as number);
        direction[s] = (share[s] as number) <= 0 && smooth < 0 ? 0 : smooth;
        norm += (direction[s] as number) ** 2;
      }
    }
    // multipliers on values are counted in carriage per free-over value, so that both kinds climb alike
    const scaleOf = (o: number): number => 1 / Math.max(1, orders[o]?.freeOver ?? orders[o]?.minimum ?? 1);
    const pull = new Float64Array(orders.length);
    const press = new Float64Array(orders.length);
    for (const [o, order] of orders.entries()) {
      if (order.freeOver !== undefined) pull[o] = ((isFree[o] as number) * order.freeOver - (value[o] as number)) * scaleOf(o);
      if ((order.minimum ?? 0) > 0) press[o] = ((isOpen[o] as number) * (order.minimum ?? 0) - (value[o] as number)) * scaleOf(o);
      if ((this.#credit[o] as number) <= 0 && (pull[o] as number) < 0) pull[o] = 0;
      if ((this.#push[o] as number) <= 0 && (press[o] as number) < 0) press[o] = 0;
      norm += (pull[o] as number) ** 2 + (press[o] as number) ** 2;
    }
    if (norm === 0) return;
    const step = (this.#pace * distance) / norm;
    for (const [i, direction] of this.#direction.entries()) {
      const share = this.#share[i];
      if (share === undefined) continue;
      for (let s = 0; s < direction.length; s++) share[s] = Math.max(0, (share[s] as number) + step * (direction[s] as number));
    }
    for (const [o, order] of orders.entries()) {
      const most = order.freeOver === undefined ? 0 : Math.min(0.9, order.fee / Math.max(order.freeOver, 1e-9));
      this.#credit[o] = Math.min(most, Math.max(0, (this.#credit[o] as number) + step * scaleOf(o) * (pull[o] as number)));
      this.#push[o] = Math.min(0.99 - most, Math.max(0, (this.#push[o] as number) + step * scaleOf(o) * (press[o] as number)));
    }
  }
}
