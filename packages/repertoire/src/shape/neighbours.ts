import { type Body, pairKey } from './body.ts';
import { closest } from './closest.ts';
import { type Trims, trimsOf } from './trim.ts';

/** Capsules near enough to touch before the list is made again. `trims` cut each axis short near a joint that both share. */
export interface Neighbours {
  /** Pairs without a shared joint: two numbers a pair. */
  readonly free: Int32Array;
  readonly freeCount: number;
  /** Pairs that meet at a joint: two numbers a pair, four trims a pair (low and high of the first, of the second; shares of the axis). */
  readonly meeting: Int32Array;
  readonly trims: Float64Array;
  readonly meetingCount: number;
}

/** How far from a shared joint a bubble is let into others, in radii: there the rubber is squeezed flat. */
export const squeezedRadii = 4;

/** Both axes over their whole length. */
const wholly = Float64Array.of(0, 1, 0, 1);

/** Marks along an axis; each takes one bit more, which a subtraction borrows where it takes a greater mark from a smaller one. */
const marks = 512;
const markBits = 10;
const borrows = marks | (marks << markBits) | (marks << (2 * markBits));

/**
 * Finds neighbours again and again while a body moves. Capsules are gone through along the body's longest axis, so that each is compared
 * with those beside it alone (sweep and prune: D. Baraff, "Dynamic simulation of non-penetrating rigid bodies", Cornell University 1992), and one
 * comparison is two subtractions, because a capsule's box is kept as three small numbers in one. Pairs come out in the order of their
 * numbers: how they were found is a matter of speed alone. How two axes are trimmed depends on joints and lengths, not on places, so
 * it is worked out once.
 */
export class NeighbourSearch {
  readonly #body: Body;
  readonly #count: number;
  readonly #trims: Trims;
  readonly #free = new Pairs();
  readonly #meeting = new Pairs();
  readonly #close = new Float64Array(5);
  /** Length of each axis. */
  readonly #long: Float64Array;
  /** Middle of each capsule's own box, and half its width, along each axis. */
  readonly #middle: Float64Array;
  readonly #half: Float64Array;
  /** Capsules as they begin along the longest axis; and in that order where each begins and ends, along that axis and along all three. */
  readonly #order: Int32Array;
  readonly #begins: Float64Array;
  readonly #ends: Float64Array;
  readonly #lows: Int32Array;
  readonly #highs: Int32Array;

  constructor(body: Body) {
    const count = body.capsules.a.length;
    this.#body = body;
    this.#count = count;
    this.#trims = trimsOf(body.capsules);
    [this.#middle, this.#half] = [new Float64Array(3 * count), new Float64Array(3 * count)];
    this.#long = new Float64Array(count);
    [this.#begins, this.#ends] = [new Float64Array(count), new Float64Array(count)];
    [this.#lows, this.#highs] = [new Int32Array(count), new Int32Array(count)];
    this.#order = Int32Array.from({ length: count }, (_, i) => i);
  }

  /** Pairs of capsules whose axes may come within touching distance while no point moves further than half of `slack`. */
  find(slack: number): Neighbours {
    this.#free.clear();
    this.#meeting.clear();
    this.#arrange(slack);
    this.#compare(slack);
    const [free, meeting] = [this.#free.inOrder(), this.#meeting.inOrder()];
    const trims = new Float64Array(2 * meeting.length);
    for (let k = 0; k < meeting.length; k += 2) {
      const at = 4 * this.#find(meeting[k] as number, meeting[k + 1] as number);
      trims.set(this.#trims.cuts.subarray(at, at + 4), 2 * k);
    }
    return { free, freeCount: free.length / 2, meeting, trims, meetingCount: meeting.length / 2 };
  }

  /** Boxes of all capsules, half the slack wider on every side, and the order in which they begin along the longest axis. */
  #arrange(slack: number): void {
    const { points, capsules } = this.#body;
    const [middle, half] = [this.#middle, this.#half];
    const least = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    const most = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let i = 0; i < this.#count; i++) {
      const p = 3 * (capsules.a[i] as number);
      const q = 3 * (capsules.b[i] as number);
      const beyond = (capsules.radius[i] as number) + slack / 2;
      let squared = 0;
      for (let axis = 0; axis < 3; axis++) {
        const u = points[p + axis] as number;
        const v = points[q + axis] as number;
        squared += (u - v) * (u - v);
        const at = (u + v) / 2;
        const wide = (u > v ? u - v : v - u) / 2 + beyond;
        middle[3 * i + axis] = at;
        half[3 * i + axis] = wide;
        if (at - wide < (least[axis] as number)) least[axis] = at - wide;
        if (at + wide > (most[axis] as number)) most[axis] = at + wide;
      }
      this.#long[i] = Math.sqrt(squared);
    }
    const span = most.map((end, axis) => Math.max(end - (least[axis] as number), 1e-9));
    this.#sort(span.indexOf(Math.max(...span)));
    this.#mark(least, span);
  }

  /** Puts the capsules in the order in which they begin along an axis: by insertion, since little changes from one search to the next. */
  #sort(axis: number): void {
    const [middle, half, order, begins, ends] = [this.#middle, this.#half, this.#order, this.#begins, this.#ends];
    for (let u = 0; u < this.#count; u++) {
      const i = order[u] as number;
      const begin = (middle[3 * i + axis] as number) - (half[3 * i + axis] as number);
      let at = u;
      for (; at > 0 && (begins[at - 1] as number) > begin; at--) {
        begins[at] = begins[at - 1] as number;
        order[at] = order[at - 1] as number;
      }
      begins[at] = begin;
      order[at] = i;
    }
    for (let u = 0; u < this.#count; u++) {
      const at = 3 * (order[u] as number) + axis;
      ends[u] = (middle[at] as number) + (half[at] as number);
    }
  }

  /** Where each box begins and ends along the three axes, three marks in one number, each rounded down: boxes that overlap still do. */
  #mark(least: readonly number[], span: readonly number[]): void {
    const [middle, half, order, lows, highs] = [this.#middle, this.#half, this.#order, this.#lows, this.#highs];
    for (let u = 0; u < this.#count; u++) {
      const from = 3 * (order[u] as number);
      let low = 0;
      let high = borrows;
      for (let axis = 0; axis < 3; axis++) {
        const scale = (marks - 1) / (span[axis] as number);
        const place = ((middle[from + axis] as number) - (least[axis] as number)) * scale;
        const wide = (half[from + axis] as number) * scale + 1e-6;
        low |= Math.max(0, Math.floor(place - wide)) << (axis * markBits);
        high |= Math.min(marks - 1, Math.floor(place + wide)) << (axis * markBits);
      }
      lows[u] = low;
      highs[u] = high;
    }
  }

  #compare(slack: number): void {
    const [order, begins, ends, lows, highs] = [this.#order, this.#begins, this.#ends, this.#lows, this.#highs];
    const count = this.#count;
    for (let u = 0; u < count; u++) {
      const end = ends[u] as number;
      const low = lows[u] as number;
      const high = highs[u] as number;
      for (let v = u + 1; v < count && (begins[v] as number) <= end; v++)
        if ((((highs[v] as number) - low) & (high - (lows[v] as number)) & borrows) === borrows)
          this.#meet(order[u] as number, order[v] as number, slack);
    }
  }

  #meet(u: number, v: number, slack: number): void {
    const i = Math.min(u, v);
    const j = Math.max(u, v);
    const { cuts } = this.#trims;
    const { radius } = this.#body.capsules;
    const reach = (radius[i] as number) + (radius[j] as number) + slack;
    const k = this.#find(i, j);
    if (k < 0) {
      if (closest(this.#body, i, j, wholly, 0, this.#close) < reach * reach) this.#free.add(i, j);
    } else if (this.#mayMeet(i, j, 4 * k, reach) && closest(this.#body, i, j, cuts, 4 * k, this.#close) < reach * reach)
      this.#meeting.add(i, j);
  }

  /** Place of a pair among the trimmed ones, or -1. */
  #find(i: number, j: number): number {
    const { from, other } = this.#trims;
    const end = from[i + 1] as number;
    for (let k = from[i] as number; k < end; k++) if (other[k] === j) return k;
    return -1;
  }

  /** Whether the balls around what is left of two axes come within reach: mostly they do not, and that is seen without a division. */
  #mayMeet(i: number, j: number, at: number, reach: number): boolean {
    const { points, capsules } = this.#body;
    const { cuts } = this.#trims;
    const lowI = cuts[at] as number;
    const highI = cuts[at + 1] as number;
    const lowJ = cuts[at + 2] as number;
    const highJ = cuts[at + 3] as number;
    if (lowI > highI || lowJ > highJ) return false;
    const a = 3 * (capsules.a[i] as number);
    const b = 3 * (capsules.b[i] as number);
    const c = 3 * (capsules.a[j] as number);
    const d = 3 * (capsules.b[j] as number);
    const s = (lowI + highI) / 2;
    const t = (lowJ + highJ) / 2;
    let squared = 0;
    for (let axis = 0; axis < 3; axis++) {
      const one = (points[a + axis] as number) * (1 - s) + (points[b + axis] as number) * s;
      const off = one - (points[c + axis] as number) * (1 - t) - (points[d + axis] as number) * t;
      squared += off * off;
    }
    const within = reach + ((highI - lowI) * (this.#long[i] as number) + (highJ - lowJ) * (this.#long[j] as number)) / 2;
    return squared < within * within;
  }
}

/** Pairs of capsules in a store that grows, each as one number that sorts by its first, then by its second. */
class Pairs {
  #held = new Float64Array(256);
  #count = 0;

  clear(): void {
    this.#count = 0;
  }

  add(i: number, j: number): void {
    if (this.#count === this.#held.length) {
      const more = new Float64Array(2 * this.#count);
      more.set(this.#held);
      this.#held = more;
    }
    this.#held[this.#count++] = pairKey(i, j);
  }

  /** Two numbers a pair. */
  inOrder(): Int32Array {
    const keys = this.#held.subarray(0, this.#count).sort();
    const pairs = new Int32Array(2 * keys.length);
    for (let k = 0; k < keys.length; k++) {
      const key = keys[k] as number;
      const first = Math.floor(key / 65536);
      pairs[2 * k] = first;
      pairs[2 * k + 1] = key - 65536 * first;
    }
    return pairs;
  }
}
