import { type Body, type Capsules, pairKey } from './body.ts';

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

/** Growing store of whole numbers; the solver makes its lists a few times in a run and reuses the room. */
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

/**
 * Pairs of capsules whose axes may come within touching distance while no point moves further than `slack`. A grid of boxes as wide as
 * the longest reach makes the work proportional to the capsules, not to their pairs; boxes and capsules are visited in a fixed order.
 */
export function neighboursOf(body: Body, slack: number): Neighbours {
  const { points, capsules } = body;
  const count = capsules.a.length;
  const middle = new Float64Array(3 * count);
  const half = new Float64Array(count);
  /** Half the width of each capsule's own box along each axis. */
  const box = new Float64Array(3 * count);
  let widest = 0;
  for (let i = 0; i < count; i++) {
    const p = 3 * (capsules.a[i] as number);
    const q = 3 * (capsules.b[i] as number);
    let squared = 0;
    for (let axis = 0; axis < 3; axis++) {
      const u = points[p + axis] as number;
      const v = points[q + axis] as number;
      middle[3 * i + axis] = (u + v) / 2;
      box[3 * i + axis] = (u > v ? u - v : v - u) / 2 + (capsules.radius[i] as number);
      squared += (u - v) * (u - v);
    }
    half[i] = Math.sqrt(squared) / 2 + (capsules.radius[i] as number);
    widest = Math.max(widest, 2 * (half[i] as number));
  }
  const grid = gridOf(middle, count, widest + slack);
  const free = new Numbers();
  const meeting = new Numbers();
  const trims: number[] = [];
  const visit = (i: number, j: number): void => {
    const dx = (middle[3 * i] as number) - (middle[3 * j] as number);
    const dy = (middle[3 * i + 1] as number) - (middle[3 * j + 1] as number);
    const dz = (middle[3 * i + 2] as number) - (middle[3 * j + 2] as number);
    if ((dx < 0 ? -dx : dx) - (box[3 * i] as number) - (box[3 * j] as number) >= slack) return;
    if ((dy < 0 ? -dy : dy) - (box[3 * i + 1] as number) - (box[3 * j + 1] as number) >= slack) return;
    if ((dz < 0 ? -dz : dz) - (box[3 * i + 2] as number) - (box[3 * j + 2] as number) >= slack) return;
    const reach = (half[i] as number) + (half[j] as number) + slack;
    if (dx * dx + dy * dy + dz * dz >= reach * reach) return;
    const first = Math.min(i, j);
    const second = Math.max(i, j);
    const trim = trimOf(capsules, first, second);
    if (trim === 'apart') {
      free.push(first);
      free.push(second);
    } else if (trim !== 'one') {
      meeting.push(first);
      meeting.push(second);
      trims.push(...trim);
    }
  };
  for (let cell = 0; cell < grid.cells; cell++) {
    const from = grid.starts[cell] as number;
    const to = grid.starts[cell + 1] as number;
    for (let u = from; u < to; u++) for (let v = u + 1; v < to; v++) visit(grid.order[u] as number, grid.order[v] as number);
    if (from === to) continue;
    for (const other of grid.after(cell))
      for (let u = from; u < to; u++)
        for (let v = grid.starts[other] as number; v < (grid.starts[other + 1] as number); v++)
          visit(grid.order[u] as number, grid.order[v] as number);
  }
  return {
    free: free.held,
    freeCount: free.count / 2,
    meeting: meeting.held,
    trims: Float64Array.from(trims),
    meetingCount: meeting.count / 2,
  };
}

interface Grid {
  readonly cells: number;
  readonly starts: Int32Array;
  readonly order: Int32Array;
  readonly after: (cell: number) => readonly number[];
}

/** Half of the 26 boxes around a box, so that each pair of boxes is seen once. */
const ahead: readonly (readonly [number, number, number])[] = [
  [1, 0, 0],
  [-1, 1, 0],
  [0, 1, 0],
  [1, 1, 0],
  [-1, -1, 1],
  [0, -1, 1],
  [1, -1, 1],
  [-1, 0, 1],
  [0, 0, 1],
  [1, 0, 1],
  [-1, 1, 1],
  [0, 1, 1],
  [1, 1, 1],
];

/** At most this many boxes along an axis; a body that is larger gets larger boxes. */
const boxesAlong = 48;

function gridOf(middle: Float64Array, count: number, wanted: number): Grid {
  const low = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const high = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < 3 * count; i++) {
    const axis = i % 3;
    low[axis] = Math.min(low[axis] as number, middle[i] as number);
    high[axis] = Math.max(high[axis] as number, middle[i] as number);
  }
  const span = Math.max(0, ...[0, 1, 2].map((axis) => (high[axis] as number) - (low[axis] as number)));
  const width = Math.max(wanted, span / boxesAlong, 1e-9);
  const sides = [0, 1, 2].map((axis) => Math.max(1, Math.floor(((high[axis] as number) - (low[axis] as number)) / width) + 1)) as [
    number,
    number,
    number,
  ];
  const cells = count === 0 ? 0 : sides[0] * sides[1] * sides[2];
  const cellOf = new Int32Array(count);
  const starts = new Int32Array(cells + 1);
  for (let i = 0; i < count; i++) {
    const at = [0, 1, 2].map((axis) => Math.floor(((middle[3 * i + axis] as number) - (low[axis] as number)) / width)) as [
      number,
      number,
      number,
    ];
    const cell = (at[2] * sides[1] + at[1]) * sides[0] + at[0];
    cellOf[i] = cell;
    starts[cell + 1] = (starts[cell + 1] as number) + 1;
  }
  for (let cell = 0; cell < cells; cell++) starts[cell + 1] = (starts[cell + 1] as number) + (starts[cell] as number);
  const filled = starts.slice();
  const order = new Int32Array(count);
  for (let i = 0; i < count; i++) {
    const cell = cellOf[i] as number;
    order[filled[cell] as number] = i;
    filled[cell] = (filled[cell] as number) + 1;
  }
  const after = (cell: number): readonly number[] => {
    const x = cell % sides[0];
    const y = Math.floor(cell / sides[0]) % sides[1];
    const z = Math.floor(cell / (sides[0] * sides[1]));
    const found: number[] = [];
    for (const [dx, dy, dz] of ahead) {
      const u = x + dx;
      const v = y + dy;
      const w = z + dz;
      if (u < 0 || v < 0 || u >= sides[0] || v >= sides[1] || w >= sides[2]) continue;
      found.push((w * sides[1] + v) * sides[0] + u);
    }
    return found;
  };
  return { cells, starts, order, after };
}

type Trim = 'apart' | 'one' | readonly [number, number, number, number];

/**
 * How much of two axes may collide. `apart`: all of both. `one`: nothing, they are one stretch of balloon or both lie where a joint
 * squeezes them. Otherwise the shares of each axis that are far enough from the joints that both bubbles share.
 */
export function trimOf(capsules: Capsules, i: number, j: number): Trim {
  const sameBubble = capsules.bubble[i] === capsules.bubble[j];
  const [startI, endI, startJ, endJ] = [capsules.startJoint[i], capsules.endJoint[i], capsules.startJoint[j], capsules.endJoint[j]];
  if (
    !sameBubble &&
    capsules.through === undefined &&
    capsules.near === undefined &&
    startI !== startJ &&
    startI !== endJ &&
    endI !== startJ &&
    endI !== endJ
  )
    return 'apart';
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
