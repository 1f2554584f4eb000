import { type Frame, type FrameEdge, readyFrame } from '@twistwright/repertoire';
import { Chance } from '@twistwright/units';

/** A frame with a balloon length that leaves little or nothing over. */
export interface HardFrame {
  readonly name: string;
  readonly frame: Frame;
  readonly balloonInches: number;
}

/**
 * Thirteen hard frames of 30 to 300 edges, the same on every machine. Cubic ones must split into paths of three edges (possible
 * where there is a perfect matching: A. Kotzig 1957, from memory); loops at one hub are bin packing, one of them cut out of full balloons so that
 * nothing may be left over; solids are asked for as equal shares.
 */
export function hardFrames(): readonly HardFrame[] {
  return [
    { name: 'cubic, 30 edges, in threes', frame: randomRegular(20, 3, 1), balloonInches: 3 },
    { name: 'cubic, 60 edges, in threes', frame: randomRegular(40, 3, 2), balloonInches: 3 },
    { name: 'cubic, 150 edges, in threes', frame: randomRegular(100, 3, 3), balloonInches: 3 },
    { name: 'cubic, 300 edges, in threes', frame: randomRegular(200, 3, 4), balloonInches: 3 },
    { name: 'five at a joint, 60 edges, in fives', frame: randomRegular(24, 5, 5), balloonInches: 5 },
    { name: 'five at a joint, 300 edges, in fives', frame: randomRegular(120, 5, 6), balloonInches: 5 },
    { name: 'grid 6 by 6, in eights', frame: grid(6, 6), balloonInches: 8 },
    { name: 'grid 12 by 12, in fourteens', frame: grid(12, 12), balloonInches: 14 },
    { name: 'hub of 60 loops', frame: hubOfLoops(randomLoops(60, 7)), balloonInches: 20 },
    { name: 'hub of 60 loops cut from 20 full balloons', frame: hubOfLoops(fullBalloons(20, 60, 8)), balloonInches: 60 },
    { name: 'snub cube in fives', frame: ready('snub cube'), balloonInches: 5 },
    { name: 'snub dodecahedron in fives', frame: ready('snub dodecahedron'), balloonInches: 5 },
    { name: 'four at a joint, 200 uneven edges', frame: uneven(randomRegular(100, 4, 9), 9), balloonInches: 60 },
  ];
}

function ready(name: string): Frame {
  const made = readyFrame(name, 1);
  if (!made.ok) throw new Error(made.error[0]?.sentence);
  return made.value;
}

/** A random graph with `degree` edges at each of `count` joints and neither loops nor parallel edges: draws again until it is so. */
export function randomRegular(count: number, degree: number, seed: number): Frame {
  const chance = new Chance(seed, count, degree);
  const ends = Array.from({ length: count * degree }, (_, index) => index % count);
  for (;;) {
    shuffle(ends, chance);
    const edges = repaired(ends, chance);
    if (edges !== undefined)
      return frameOf(
        count,
        edges.map(([from, to]) => ({ from: `${from}`, to: `${to}`, lengthInches: 1 })),
      );
  }
}

/** Pairs neighbours in the list; a loop or a parallel edge swaps an end with another pair, a few thousand times at most. */
function repaired(ends: readonly number[], chance: Chance): readonly (readonly [number, number])[] | undefined {
  const pairs = Array.from({ length: ends.length / 2 }, (_, index): [number, number] => [
    ends[2 * index] as number,
    ends[2 * index + 1] as number,
  ]);
  const key = ([a, b]: readonly [number, number]) => (a < b ? `${a} ${b}` : `${b} ${a}`);
  for (let round = 0; round < 5000; round++) {
    const seen = new Set<string>();
    const bad = pairs.find((pair) => {
      if (pair[0] === pair[1] || seen.has(key(pair))) return true;
      seen.add(key(pair));
      return false;
    });
    if (bad === undefined) return pairs;
    const other = pairs[Math.floor(chance.uniform() * pairs.length)] as [number, number];
    [bad[1], other[1]] = [other[1], bad[1]];
  }
  return undefined;
}

function shuffle(list: number[], chance: Chance): void {
  for (let last = list.length - 1; last > 0; last--) {
    const pick = Math.floor(chance.uniform() * (last + 1));
    [list[last], list[pick]] = [list[pick] as number, list[last] as number];
  }
}

/** A grid of `rows` by `columns` joints with edges of one inch. */
export function grid(rows: number, columns: number): Frame {
  const edges: FrameEdge[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const from = `${row * columns + column}`;
      if (column + 1 < columns) edges.push({ from, to: `${row * columns + column + 1}`, lengthInches: 1 });
      if (row + 1 < rows) edges.push({ from, to: `${(row + 1) * columns + column}`, lengthInches: 1 });
    }
  }
  return frameOf(rows * columns, edges);
}

/** Loops through one joint: which of them share a balloon is bin packing. */
export const hubOfLoops = (lengths: readonly number[]): Frame =>
  frameOf(
    1,
    lengths.map((lengthInches) => ({ from: '0', to: '0', lengthInches })),
  );

/** Lengths from 2 to 10 inches in tenths. */
function randomLoops(count: number, seed: number): readonly number[] {
  const chance = new Chance(seed, count);
  return Array.from({ length: count }, () => (20 + Math.floor(chance.uniform() * 81)) / 10);
}

/** Loops in threes that each add up to a full balloon, in half inches, in mixed order. */
function fullBalloons(balloons: number, balloonInches: number, seed: number): readonly number[] {
  const chance = new Chance(seed, balloons);
  const halves = Array.from({ length: balloons }, () => {
    const first = Math.floor(balloonInches * 2 * (0.25 + 0.2 * chance.uniform()));
    const second = Math.floor((balloonInches * 2 - first) * (0.4 + 0.2 * chance.uniform()));
    return [first, second, balloonInches * 2 - first - second];
  }).flat();
  shuffle(halves, chance);
  return halves.map((half) => half / 2);
}

/** The same frame with lengths from 3 to 9 inches in tenths. */
export function uneven(frame: Frame, seed: number): Frame {
  const chance = new Chance(seed, frame.edges.length);
  return { ...frame, edges: frame.edges.map((edge) => ({ ...edge, lengthInches: (30 + Math.floor(chance.uniform() * 61)) / 10 })) };
}

const frameOf = (joints: number, edges: readonly FrameEdge[]): Frame => ({
  joints: Array.from({ length: joints }, (_, index) => ({ name: `${index}` })),
  edges,
});
