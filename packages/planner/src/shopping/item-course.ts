import { type BagMenu, bagMenu, greatestCommonDivisor } from './bag-menu.ts';
import { netOf, type PurchaseGrid } from './purchase-grid.ts';

/**
 * One item's purchases as a course through stages, one stage per possible order in the order of arrival, where each stage buys nothing or
 * one entry of a menu. The state is how far the item's demand is covered, in bag units, so a dynamic programme finds the cheapest course
 * exactly for whatever the entries are said to cost.
 */
export interface ItemCourse {
  readonly item: number;
  /** Order of each stage. */
  readonly orders: Int32Array;
  /** Entries of stage s are those from `start[s]` to `start[s + 1]`. */
  readonly start: Int32Array;
  readonly units: Int32Array;
  /** Price of the entry's goods. */
  readonly value: Float64Array;
  /** Price plus the cost of keeping its pieces from arrival to the end. */
  readonly cost: Float64Array;
  readonly menus: readonly BagMenu[];
  /** Units that must be covered once the stage is over, before a later period begins; 0 within a period. */
  readonly floor: Int32Array;
  /** Highest state that the stage's pieces can reach before they go off. */
  readonly cap: Int32Array;
  /** Highest state of interest; more is as good as this. */
  readonly top: number;
  /** Part of the holding cost that no purchase changes. */
  readonly constant: number;
  /** Period by which nothing can cover the demand; missing if it can be covered. */
  readonly hopeless?: number;
  /** Bags go off within the horizon: the course is then a safe one, perhaps not the cheapest, and bounds do not hold. */
  readonly perishes: boolean;
  /** Work of one pass: additions in the inner loop. */
  readonly work: number;
}

export function itemCourse(grid: PurchaseGrid, item: number): ItemCourse {
  const facts = grid.items[item];
  if (facts === undefined) throw new RangeError(`no item ${item}`);
  const net = netOf(facts.demand, facts.supply);
  const holding = Array.from({ length: grid.periods }, (_, p) => facts.holding?.[p] ?? 0);
  const keepFrom = suffixSums(holding);
  const needed = prefixSums(net.short);
  const total = needed[grid.periods - 1] ?? 0;
  const offers = grid.offers.map((offer, index) => ({ offer, index })).filter(({ offer }) => offer.item === item);
  const perishes = offers.some(({ offer }) => offer.keeps !== undefined && offer.keeps < grid.periods - 1);
  const unit = perishes || offers.length === 0 ? 1 : offers.map(({ offer }) => offer.pieces).reduce(greatestCommonDivisor);
  const largest = Math.max(1, ...offers.map(({ offer }) => offer.pieces / unit));
  const largestStep = Math.max(0, ...offers.map(({ offer }) => ((offer.steps.at(-1)?.fromBags ?? 1) - 1) * (offer.pieces / unit)));
  const top = total === 0 ? 0 : Math.ceil(total / unit) + largest - 1;
  const stages = grid.orders
    .map((order, index) => ({ order, index }))
    .filter(({ order }) => order.arrives < grid.periods && total > 0 && offers.some(({ offer }) => offer.supplier === order.supplier))
    .sort((a, b) => a.order.arrives - b.order.arrives || a.index - b.index);
  const bySupplier = new Map<number, BagMenu>();
  const menuOf = (supplier: number): BagMenu => {
    const known = bySupplier.get(supplier);
    if (known !== undefined) return known;
    const menu = bagMenu(
      offers.filter(({ offer }) => offer.supplier === supplier),
      unit,
      top + Math.max(largest, largestStep),
    );
    bySupplier.set(supplier, menu);
    return menu;
  };
  const menus = stages.map(({ order }) => menuOf(order.supplier));
  const start = new Int32Array(stages.length + 1);
  for (const [s, menu] of menus.entries()) start[s + 1] = (start[s] ?? 0) + menu.units.length;
  const keepOf = (s: number): number => keepFrom[stages[s]?.order.arrives ?? 0] ?? 0;
  const floorBefore = (period: number): number => (period < 0 ? 0 : Math.ceil((needed[period] ?? 0) / unit));
  const floor = Int32Array.from(stages, ({ order }, s) => {
    const next = stages[s + 1]?.order.arrives ?? grid.periods;
    return next > order.arrives ? floorBefore(next - 1) : 0;
  });
  const constant =
    net.left.reduce((sum, left, p) => sum + left * (holding[p] ?? 0), 0) - needed.reduce((sum, n, p) => sum + n * (holding[p] ?? 0), 0);
  const firstArrival = stages[0]?.order.arrives ?? grid.periods;
  const hopeless = needed.findIndex((n, p) => n > 0 && p < firstArrival);
  const cap = Int32Array.from(stages, ({ order }) => {
    const keeps = Math.min(
      Infinity,
      ...offers.filter(({ offer }) => offer.supplier === order.supplier).map(({ offer }) => offer.keeps ?? Infinity),
    );
    return order.arrives + keeps >= grid.periods - 1 ? top : Math.ceil((needed[order.arrives + keeps] ?? 0) / unit);
  });
  const units = Int32Array.from(menus.flatMap((menu) => Array.from(menu.units)));
  return {
    item,
    orders: Int32Array.from(stages, ({ index }) => index),
    start,
    units,
    value: Float64Array.from(menus.flatMap((menu) => Array.from(menu.cost))),
    cost: Float64Array.from(menus.flatMap((menu, s) => Array.from(menu.cost, (cost, e) => cost + (menu.units[e] ?? 0) * unit * keepOf(s)))),
    menus,
    floor,
    cap,
    top,
    constant,
    ...(hopeless >= 0 ? { hopeless } : {}),
    perishes,
    work: units.length * (top + 1) + 40 * stages.length + 100,
  };
}

const prefixSums = (values: readonly number[]): readonly number[] => {
  let sum = 0;
  return values.map((value) => {
    sum += value;
    return sum;
  });
};
const suffixSums = (values: readonly number[]): readonly number[] => prefixSums([...values].reverse()).toReversed();

/** Room for the dynamic programmes of many courses, made once. */
export interface CourseRoom {
  readonly best: Float64Array;
  readonly before: Float64Array;
  readonly choice: Int16Array;
  /** State before the noted choice. */
  readonly source: Int16Array;
}
export function courseRoom(courses: readonly ItemCourse[]): CourseRoom {
  const width = Math.max(1, ...courses.map((course) => course.top + 1));
  const cells = Math.max(1, ...courses.map((course) => (course.top + 1) * course.orders.length));
  return { best: new Float64Array(width), before: new Float64Array(width), choice: new Int16Array(cells), source: new Int16Array(cells) };
}

/**
 * Cheapest course when entry e costs `cost[e]` (Infinity where it may not be bought). Writes the chosen entry of each stage into `chosen`
 * (-1 for none) and gives the cost; Infinity if the demand cannot be covered.
 */
export function cheapestCourse(course: ItemCourse, cost: Float64Array, chosen: Int16Array, room: CourseRoom): number {
  const { top, start, units, floor, cap } = course;
  const { best, before, choice, source } = room;
  const width = top + 1;
  const stages = course.orders.length;
  if (course.hopeless !== undefined) return Infinity;
  best.fill(Infinity, 0, width);
  best[0] = 0;
  for (let s = 0; s < stages; s++) {
    const from = start[s] ?? 0;
    const to = start[s + 1] ?? 0;
    const row = s * width;
    const high = cap[s] ?? top;
    if (high < top) relaxCapped(course, cost, s, room);
    else {
      before.set(best);
      for (let state = 0; state < width; state++) choice[row + state] = -1;
      for (let e = from; e < to; e++) {
        const price = cost[e] as number; // within start[s] to start[s + 1]
        if (price === Infinity) continue;
        const step = units[e] as number; // as above
        const within = e - from;
        for (let state = step; state < top; state++) {
          const candidate = (before[state - step] as number) + price; // 0 <= state - step < width
          if (candidate < (best[state] as number)) {
            best[state] = candidate;
            choice[row + state] = within;
            source[row + state] = state - step;
          }
        }
        for (let state = step >= top ? 0 : top - step; state <= top; state++) {
          const candidate = (before[state] as number) + price; // state <= top
          if (candidate < (best[top] as number)) {
            best[top] = candidate;
            choice[row + top] = within;
            source[row + top] = state;
          }
        }
      }
    }
    const least = floor[s] ?? 0;
    for (let state = 0; state < least && state < width; state++) best[state] = Infinity;
  }
  let end = 0;
  for (let state = 1; state < width; state++) if ((best[state] as number) < (best[end] as number)) end = state;
  const value = best[end] as number;
  if (value === Infinity) return Infinity;
  traceBack(course, chosen, room, end);
  return value + course.constant;
}

/** A stage whose pieces go off before the end: they cover no further than the cap. */
function relaxCapped(course: ItemCourse, cost: Float64Array, s: number, room: CourseRoom): void {
  const { top, start, units, cap } = course;
  const { best, before, choice } = room;
  const width = top + 1;
  const high = cap[s] ?? top;
  before.set(best);
  for (let state = 0; state < width; state++) choice[s * width + state] = -1;
  for (let e = start[s] ?? 0; e < (start[s + 1] ?? 0); e++)
    for (let state = 0; state < high; state++) {
      const target = Math.min(high, state + (units[e] ?? 0));
      const candidate = (before[state] ?? Infinity) + (cost[e] ?? Infinity);
      if (candidate < (best[target] ?? Infinity)) {
        best[target] = candidate;
        choice[s * width + target] = e - (start[s] ?? 0);
        room.source[s * width + target] = state;
      }
    }
}

/** Walks back from the cheapest end through the noted entries and the states they came from. */
function traceBack(course: ItemCourse, chosen: Int16Array, room: CourseRoom, end: number): void {
  const width = course.top + 1;
  let state = end;
  for (let s = course.orders.length - 1; s >= 0; s--) {
    const within = room.choice[s * width + state] ?? -1;
    chosen[s] = within < 0 ? -1 : (course.start[s] ?? 0) + within;
    if (within >= 0) state = room.source[s * width + state] ?? 0;
  }
}
