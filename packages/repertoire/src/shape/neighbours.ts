import { type Body, type Capsules, pairKey } from './body.ts';
import { closest } from './closest.ts';

/** Capsules near enough to touch before the list is made again. `low` and `high` trim each axis near a joint that both share. */
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

/** Two stretches of one bubble with less balloon than this between them, in radii, are one bend: half a turn round the bubble's own edge. */
const bentRadii = 3.3;

/** Growing stores: the lists of a run are made a few times in the same room. */
class Numbers {
  held = new Int32Array(256);
  count = 0;
  push(value: number): void {
    if (this.count === this.held.length) {
      const more = new Int32Array(this.count * 2);
      more.set(this.held);
      this.held = more;
    }
    this.held[this.count++] = value;
  }
}

class Reals {
  held = new Float64Array(512);
  count = 0;
  push(value: number): void {
    if (this.count === this.held.length) {
      const more = new Float64Array(this.count * 2);
      more.set(this.held);
      this.held = more;
    }
    this.held[this.count++] = value;
  }
}

/** Steps along the second and third axis to the rows of boxes beside a row that come after it, so that each pair of boxes is seen once. */
const rowsAhead: readonly number[] = [1, 0, -1, 1, 0, 1, 1, 1];

/** At most this many boxes along an axis; a body that is larger gets larger boxes. */
const boxesAlong = 48;

/**
 * Finds neighbours again and again while a body moves. A grid of boxes as wide as the longest reach makes the work proportional to the
 * capsules, not to their pairs; boxes and capsules are visited in a fixed order. How two axes are trimmed depends on joints and lengths,
 * not on places, so it is worked out once.
 */
export class NeighbourSearch {
  readonly #body: Body;
  readonly #count: number;
  readonly #known = new Map<number, Trim>();
  readonly #free = new Numbers();
  readonly #meeting = new Numbers();
  readonly #trims = new Reals();
  readonly #middle: Float64Array;
  /** Half the length of each capsule, round ends included. */
  readonly #half: Float64Array;
  /** Half the width of each capsule's own box along each axis. */
  readonly #box: Float64Array;
  /** Middle and box again in the order of the grid, so that the capsules of neighbouring boxes lie in a row. */
  readonly #place: Float64Array;
  readonly #wide: Float64Array;
  readonly #order: Int32Array;
  readonly #cellOf: Int32Array;
  readonly #close = new Float64Array(5);
  #starts = new Int32Array(64);

  constructor(body: Body) {
    this.#body = body;
    this.#count = body.capsules.a.length;
    const real = (): Float64Array => new Float64Array(3 * this.#count);
    [this.#middle, this.#box, this.#place, this.#wide] = [real(), real(), real(), real()];
    this.#half = new Float64Array(this.#count);
    this.#order = new Int32Array(this.#count);
    this.#cellOf = new Int32Array(this.#count);
  }

  /** Pairs of capsules whose axes may come within touching distance while no point moves further than `slack`. Holds until the next call. */
  find(slack: number): Neighbours {
    const [free, meeting, trims] = [this.#free, this.#meeting, this.#trims];
    [free.count, meeting.count, trims.count] = [0, 0, 0];
    if (this.#count > 0) this.#visit(this.#fill(this.#measure() + slack), slack);
    return { free: free.held, freeCount: free.count / 2, meeting: meeting.held, trims: trims.held, meetingCount: meeting.count / 2 };
  }

  /** Middles and boxes of all capsules; returns the longest reach. */
  #measure(): number {
    const { points, capsules } = this.#body;
    const [middle, box, half] = [this.#middle, this.#box, this.#half];
    let widest = 0;
    for (let i = 0; i < this.#count; i++) {
      const p = 3 * (capsules.a[i] as number);
      const q = 3 * (capsules.b[i] as number);
      const radius = capsules.radius[i] as number;
      let squared = 0;
      for (let axis = 0; axis < 3; axis++) {
        const u = points[p + axis] as number;
        const v = points[q + axis] as number;
        middle[3 * i + axis] = (u + v) / 2;
        box[3 * i + axis] = (u > v ? u - v : v - u) / 2 + radius;
        squared += (u - v) * (u - v);
      }
      const reach = Math.sqrt(squared) / 2 + radius;
      half[i] = reach;
      if (2 * reach > widest) widest = 2 * reach;
    }
    return widest;
  }

  /** Sorts the capsules into boxes at least `wanted` wide; returns how many boxes there are along each axis. */
  #fill(wanted: number): readonly [number, number, number] {
    const [middle, order, cellOf] = [this.#middle, this.#order, this.#cellOf];
    const count = this.#count;
    const low = [0, 0, 0];
    const span = [0, 0, 0];
    for (let axis = 0; axis < 3; axis++) {
      let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
      for (let i = axis; i < 3 * count; i += 3) {
        const value = middle[i] as number;
        if (value < least) least = value;
        if (value > most) most = value;
      }
      low[axis] = least;
      span[axis] = most - least;
    }
    const width = Math.max(wanted, Math.max(...span) / boxesAlong, 1e-9);
    const [along, across, deep] = span.map((size) => Math.floor(size / width) + 1) as [number, number, number];
    const cells = along * across * deep;
    if (this.#starts.length < cells + 1) this.#starts = new Int32Array(cells + 1);
    else this.#starts.fill(0, 0, cells + 1);
    const starts = this.#starts;
    const boxAt = (i: number, axis: number): number => Math.floor(((middle[3 * i + axis] as number) - (low[axis] as number)) / width);
    for (let i = 0; i < count; i++) {
      const cell = (boxAt(i, 2) * across + boxAt(i, 1)) * along + boxAt(i, 0);
      cellOf[i] = cell;
      starts[cell] = (starts[cell] as number) + 1;
    }
    // From counts to ends; filling from behind turns ends into starts.
    for (let cell = 1; cell <= cells; cell++) starts[cell] = (starts[cell] as number) + (starts[cell - 1] as number);
    for (let i = count - 1; i >= 0; i--) {
      const cell = cellOf[i] as number;
      const at = (starts[cell] as number) - 1;
      starts[cell] = at;
      order[at] = i;
    }
    for (let u = 0; u < count; u++)
      for (let axis = 0; axis < 3; axis++) {
        const from = 3 * (order[u] as number) + axis;
        this.#place[3 * u + axis] = middle[from] as number;
        this.#wide[3 * u + axis] = this.#box[from] as number;
      }
    return [along, across, deep];
  }

  /** Compares what lies in the same box, in the next one of its row, and in the boxes beside in the four rows ahead. */
  #visit([along, across, deep]: readonly [number, number, number], slack: number): void {
    const starts = this.#starts;
    const cells = along * across * deep;
    for (let cell = 0; cell < cells; cell++) {
      const from = starts[cell] as number;
      const to = starts[cell + 1] as number;
      if (from === to) continue;
      const x = cell % along;
      const row = cell - x;
      const y = (row / along) % across;
      const first = x > 0 ? x - 1 : 0;
      const beyond = (x + 1 < along ? x + 1 : x) + 1;
      const end = starts[row + beyond] as number;
      for (let u = from; u < to; u++) this.#compare(u, u + 1, end, slack);
      for (let k = 0; k < rowsAhead.length; k += 2) {
        const aheadY = y + (rowsAhead[k] as number);
        const other = row + along * ((rowsAhead[k] as number) + across * (rowsAhead[k + 1] as number));
        if (aheadY < 0 || aheadY >= across || other >= cells) continue;
        const [start, stop] = [starts[other + first] as number, starts[other + beyond] as number];
        if (start < stop) for (let u = from; u < to; u++) this.#compare(u, start, stop, slack);
      }
    }
  }

  #compare(u: number, from: number, to: number, slack: number): void {
    const [place, wide] = [this.#place, this.#wide];
    const x = place[3 * u] as number;
    const y = place[3 * u + 1] as number;
    const z = place[3 * u + 2] as number;
    const wideX = (wide[3 * u] as number) + slack;
    const wideY = (wide[3 * u + 1] as number) + slack;
    const wideZ = (wide[3 * u + 2] as number) + slack;
    for (let v = from; v < to; v++) {
      const dx = x - (place[3 * v] as number);
      if ((dx < 0 ? -dx : dx) >= wideX + (wide[3 * v] as number)) continue;
      const dy = y - (place[3 * v + 1] as number);
      if ((dy < 0 ? -dy : dy) >= wideY + (wide[3 * v + 1] as number)) continue;
      const dz = z - (place[3 * v + 2] as number);
      if ((dz < 0 ? -dz : dz) >= wideZ + (wide[3 * v + 2] as number)) continue;
      this.#meet(u, v, dx * dx + dy * dy + dz * dz, slack);
    }
  }

  #meet(u: number, v: number, squared: number, slack: number): void {
    const i = this.#order[u] as number;
    const j = this.#order[v] as number;
    const reach = (this.#half[i] as number) + (this.#half[j] as number) + slack;
    if (squared >= reach * reach) return;
    const first = Math.min(i, j);
    const second = Math.max(i, j);
    const trim = this.#trim(first, second);
    if (trim === 'one') return;
    if (trim === 'apart') {
      this.#free.push(first);
      this.#free.push(second);
    } else this.#meetTrimmed(first, second, trim, slack);
  }

  /** What is left of axes that meet is mostly far from touching, though the axes are near. */
  #meetTrimmed(i: number, j: number, trim: Exclude<Trim, string>, slack: number): void {
    const { radius } = this.#body.capsules;
    const trims = this.#trims;
    const at = trims.count;
    for (let k = 0; k < 4; k++) trims.push(trim[k] as number);
    const reach = (radius[i] as number) + (radius[j] as number) + slack;
    if (closest(this.#body, i, j, trims.held, at, this.#close) < reach * reach) {
      this.#meeting.push(i);
      this.#meeting.push(j);
    } else trims.count = at;
  }

  #trim(i: number, j: number): Trim {
    const { capsules } = this.#body;
    // Most pairs share no joint, which is seen sooner than it is looked up.
    if (shareNothing(capsules, i, j)) return 'apart';
    const key = pairKey(i, j);
    const held = this.#known.get(key);
    if (held !== undefined) return held;
    const trim = trimOf(capsules, i, j);
    this.#known.set(key, trim);
    return trim;
  }
}

/** Shares of two axes that may collide, low and high of each. */
type Trim = 'apart' | 'one' | readonly [number, number, number, number];

/** Nothing that could trim the two: neither a bubble, nor a joint, nor joints that are near one another. */
function shareNothing({ bubble, startJoint, endJoint, through, near }: Capsules, i: number, j: number): boolean {
  if (bubble[i] === bubble[j] || through !== undefined || near !== undefined) return false;
  const start = startJoint[j];
  const end = endJoint[j];
  return startJoint[i] !== start && startJoint[i] !== end && endJoint[i] !== start && endJoint[i] !== end;
}

/**
 * How much of two axes may collide. `apart`: all of both. `one`: nothing, they are one stretch of balloon or both lie where a joint
 * squeezes them. Otherwise the shares of each axis that are far enough from the joints that both bubbles share.
 */
function trimOf(capsules: Capsules, i: number, j: number): Trim {
  const sameBubble = capsules.bubble[i] === capsules.bubble[j];
  const [startI, endI] = [capsules.startJoint[i], capsules.endJoint[i]];
  if (shareNothing(capsules, i, j)) return 'apart';
  if (capsules.through?.has(pairKey(capsules.bubble[i] as number, capsules.bubble[j] as number))) return 'one';
  const bundle = capsules.bundle[i] as number;
  if (!sameBubble && bundle >= 0 && bundle === capsules.bundle[j]) return 'apart';
  const squeezed = Math.max(capsules.squeeze[i] as number, capsules.squeeze[j] as number);
  if (sameBubble) {
    const [one, other] = [Math.min(i, j), Math.max(i, j)];
    const between = (capsules.toStart[other] as number) - (capsules.toStart[one] as number) - lengthOf(capsules, one);
    if (between < bentRadii * (capsules.radius[i] as number)) return 'one';
    if (startI !== endI) return 'apart';
    const around = (capsules.toStart[one] as number) + (capsules.toEnd[other] as number);
    return around < 1.5 * squeezed ? 'one' : 'apart';
  }
  let meets = false;
  let [lowI, highI, lowJ, highJ] = [0, 1, 0, 1];
  const ends = [
    [capsules.startJoint, capsules.toStart, true],
    [capsules.endJoint, capsules.toEnd, false],
  ] as const;
  for (const [jointI, arcI, fromStartI] of ends)
    for (const [jointJ, arcJ, fromStartJ] of ends) {
      const [one, other] = [jointI[i] as number, jointJ[j] as number];
      const between = one === other ? 0 : capsules.near?.get(pairKey(one, other));
      if (between === undefined) continue;
      meets = true;
      const cutI = (squeezed - between - (arcI[i] as number)) / lengthOf(capsules, i);
      const cutJ = (squeezed - between - (arcJ[j] as number)) / lengthOf(capsules, j);
      if (fromStartI) lowI = Math.max(lowI, cutI);
      else highI = Math.min(highI, 1 - cutI);
      if (fromStartJ) lowJ = Math.max(lowJ, cutJ);
      else highJ = Math.min(highJ, 1 - cutJ);
    }
  if (!meets) return 'apart';
  return lowI > highI || lowJ > highJ ? 'one' : [lowI, highI, lowJ, highJ];
}

const lengthOf = (capsules: Capsules, i: number): number => Math.max(capsules.length[i] as number, 1e-9);
