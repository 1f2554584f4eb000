import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Frame } from './frame.ts';
import { capacityOf, type Network, networkOf } from './network.ts';
import { type FramePlan, type FrameWishes, leastBalloons, planFrame } from './plan-frame.ts';
import { markedTrails } from './popped-trails.ts';
import { readyFrame } from './ready-frames.ts';
import { StretchSearch } from './stretch-search.ts';
import { trailInches, verifyTrails } from './trail.ts';

type Wire = readonly [from: number, to: number, lengthInches: number, colour?: string];

function frameOf(wires: readonly Wire[]): Frame {
  const names = new Set(wires.flatMap((wire) => wire.slice(0, 2)));
  return {
    joints: [...names].map((name) => ({ name: `${name}` })),
    edges: wires.map(([from, to, lengthInches, colour]) => ({
      from: `${from}`,
      to: `${to}`,
      lengthInches,
      ...(colour === undefined ? {} : { colour }),
    })),
  };
}

function planned(frame: Frame, wishes: FrameWishes = {}): FramePlan {
  const plan = planFrame(frame, wishes);
  if (!plan.ok) throw new Error(plan.error[0]?.sentence);
  expect(verifyTrails(frame, plan.value.trails, wishes.balloonInches)).toEqual([]);
  expect(plan.value.leastBalloons).toBeLessThanOrEqual(plan.value.trails.length);
  return plan.value;
}

/** Whether a set of edges can be one trail: it hangs together and at most two joints are odd. */
function isTrail(wires: readonly Wire[], set: number): boolean {
  const inside = wires.filter((_, index) => (set >> index) % 2 === 1);
  const ends = new Map<number, number>();
  for (const [from, to] of inside) for (const joint of [from, to]) ends.set(joint, (ends.get(joint) ?? 0) + 1);
  if ([...ends.values()].filter((count) => count % 2 === 1).length > 2) return false;
  const reached = new Set<number>(inside[0]?.slice(0, 1) as number[]);
  for (let grown = -1; grown !== reached.size; ) {
    grown = reached.size;
    for (const [from, to] of inside) if (reached.has(from) || reached.has(to)) reached.add(from).add(to);
  }
  return reached.size === ends.size;
}

const lengthOf = (wires: readonly Wire[], set: number): number =>
  wires.reduce((sum, [, , length], index) => sum + ((set >> index) % 2 === 1 ? length : 0), 0);

/** How many colours a set of edges has; edges without one do not count. */
const coloursOf = (wires: readonly Wire[], set: number): number =>
  new Set(wires.flatMap(([, , , colour], index) => ((set >> index) % 2 === 1 && colour !== undefined ? [colour] : []))).size;

/** Fewest trails by trying every way to divide the edges. */
function fewestByTrying(wires: readonly Wire[], balloonInches: number, keepColours = false): number {
  const all = 2 ** wires.length - 1;
  const fewest = new Array<number>(all + 1).fill(Number.POSITIVE_INFINITY);
  fewest[0] = 0;
  for (let set = 1; set <= all; set++) {
    for (let part = set; part > 0; part = (part - 1) & set) {
      if (lengthOf(wires, part) > balloonInches || !isTrail(wires, part) || (keepColours && coloursOf(wires, part) > 1)) continue;
      fewest[set] = Math.min(fewest[set] as number, 1 + (fewest[set ^ part] as number));
    }
  }
  return fewest[all] as number;
}

/** Shortest total for `trails` trails by trying every set of edges to double: then at most 2 x `trails` joints may be odd. */
function shortestByTrying(wires: readonly Wire[], trails: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (let twice = 0; twice < 2 ** wires.length; twice++) {
    const ends = new Map<number, number>();
    for (const [index, [from, to]] of wires.entries()) {
      for (const joint of [from, to]) ends.set(joint, (ends.get(joint) ?? 0) + 1 + ((twice >> index) % 2));
    }
    const odd = [...ends.values()].filter((count) => count % 2 === 1).length;
    if (odd <= 2 * trails) best = Math.min(best, lengthOf(wires, 2 ** wires.length - 1) + lengthOf(wires, twice));
  }
  return best;
}

/** Rubber of the shortest way that goes along every edge of each set, edges gone along again popped: shortest ways over joint and set. */
function shortestWays(wires: readonly Wire[]): readonly number[] {
  const all = 2 ** wires.length;
  const shortest = new Array<number>(all).fill(Number.POSITIVE_INFINITY);
  const reached = new Map<string, number>();
  const waiting = [0, 1, 2, 3, 4].map((joint) => ({ joint, set: 0, length: 0 }));
  while (waiting.length > 0) {
    waiting.sort((a, b) => b.length - a.length);
    const { joint, set, length } = waiting.pop() as { joint: number; set: number; length: number };
    const key = `${joint} ${set}`;
    if ((reached.get(key) ?? Number.POSITIVE_INFINITY) <= length) continue;
    reached.set(key, length);
    shortest[set] = Math.min(shortest[set] as number, length);
    for (const [index, [from, to, inches]] of wires.entries()) {
      if (from === joint) waiting.push({ joint: to, set: set | (1 << index), length: length + inches });
      else if (to === joint) waiting.push({ joint: from, set: set | (1 << index), length: length + inches });
    }
  }
  return shortest;
}

/** Fewest balloons with pops by trying every way to divide the edges. */
function fewestWithPops(wires: readonly Wire[], balloonInches: number): number {
  const shortest = shortestWays(wires);
  const all = 2 ** wires.length - 1;
  const fewest = new Array<number>(all + 1).fill(Number.POSITIVE_INFINITY);
  fewest[0] = 0;
  for (let set = 1; set <= all; set++) {
    for (let part = set; part > 0; part = (part - 1) & set) {
      const fits = Math.min(...supersets(shortest, part, all)) <= balloonInches;
      if (fits) fewest[set] = Math.min(fewest[set] as number, 1 + (fewest[set ^ part] as number));
    }
  }
  return fewest[all] as number;
}

/** What ways cost that make at least the edges of a set. */
const supersets = (shortest: readonly number[], part: number, all: number): readonly number[] =>
  shortest.filter((_, set) => (set & part) === part && set <= all);

const wire = fc.tuple(
  fc.nat(4),
  fc.nat(4),
  fc.integer({ min: 4, max: 16 }).map((quarters) => quarters / 4),
);
const wires = fc.array(wire, { minLength: 1, maxLength: 8 });
/** Every edge but the first begins where the one before ended, or began, so that all hang together. */
const connected = wires.map((list): readonly Wire[] => {
  let joint = 0;
  return list.map(([from, to, length]) => {
    const start = joint;
    joint = from % 2 === 0 ? to : start;
    return [start, to, length];
  });
});

describe('against trying everything, on frames of up to eight edges', () => {
  test('limited length', () => {
    let aboveSimpleBound = 0;
    fc.assert(
      fc.property(wires, fc.integer({ min: 16, max: 60 }), (list, quarters) => {
        const balloonInches = quarters / 4;
        const plan = planned(frameOf(list), { balloonInches });
        expect(plan.trails).toHaveLength(fewestByTrying(list, balloonInches));
        expect(plan.proven).toBe(true);
        const simple = leastBalloons(frameOf(list), balloonInches) as number;
        expect(simple).toBeLessThanOrEqual(plan.trails.length);
        if (simple < plan.trails.length) aboveSimpleBound++;
      }),
      { seed: 8, numRuns: 1500 },
    );
    expect(aboveSimpleBound).toBeGreaterThan(10);
  });

  test('shortest total with pops, for one to three balloons', () => {
    fc.assert(
      fc.property(connected, fc.integer({ min: 1, max: 3 }), (list, balloons) => {
        fc.pre(balloons <= list.length);
        const plan = planned(frameOf(list), { pops: { balloons } });
        expect(plan.trails).toHaveLength(balloons);
        expect(plan.totalInches).toBeCloseTo(shortestByTrying(list, balloons), 9);
      }),
      { seed: 9, numRuns: 600 },
    );
  });

  test('a closed tour with pops', () => {
    fc.assert(
      fc.property(connected, (list) => {
        const plan = planned(frameOf(list), { pops: { closed: true } });
        expect(plan.totalInches).toBeCloseTo(shortestByTrying(list, 0), 9);
        expect(plan.trails[0]?.joints.at(-1)).toBe(plan.trails[0]?.joints[0]);
      }),
      { seed: 10, numRuns: 300 },
    );
  });
});

describe('with pops and a limited length', () => {
  test('the fewest, against trying everything on frames of up to six edges', () => {
    let fewerThanPlain = 0;
    fc.assert(
      fc.property(connected, fc.integer({ min: 16, max: 60 }), (list, quarters) => {
        fc.pre(list.length <= 6);
        const balloonInches = quarters / 4;
        const plan = planned(frameOf(list), { balloonInches, pops: {} });
        expect([plan.trails.length, plan.proven]).toEqual([fewestWithPops(list, balloonInches), true]);
        if (plan.trails.length < fewestByTrying(list, balloonInches)) fewerThanPlain++;
      }),
      { seed: 13, numRuns: 600 },
    );
    expect(fewerThanPlain).toBeGreaterThan(10);
  });

  test('the search by stretches alone: that many, and proven not fewer', () => {
    fc.assert(
      fc.property(connected, fc.integer({ min: 16, max: 60 }), (list, quarters) => {
        fc.pre(list.length <= 7);
        const [frame, balloonInches] = [frameOf(list), quarters / 4];
        const search = new StretchSearch(networkOf(frame) as Network, capacityOf(balloonInches));
        const fewest = fewestWithPops(list, balloonInches);
        for (let count = 1; count < fewest; count++) expect(search.answer(count, 'narrow', { left: 1e8 }).outcome).toBe('none');
        const answer = search.answer(fewest, 'narrow', { left: 1e8 });
        const trails = answer.outcome === 'walks' ? markedTrails(answer.doubled, list.length, answer.walks, false) : [];
        expect(verifyTrails(frame, trails, balloonInches)).toEqual([]);
        expect(trails.length).toBe(fewest);
      }),
      { seed: 15, numRuns: 600 },
    );
  });

  test('never more balloons than without pops, never fewer than the rubber needs', () => {
    fc.assert(
      fc.property(wires, fc.integer({ min: 16, max: 60 }), (list, quarters) => {
        const balloonInches = quarters / 4;
        const plan = planned(frameOf(list), { balloonInches, pops: {} });
        expect(plan.trails.length).toBeLessThanOrEqual(fewestByTrying(list, balloonInches));
        expect(plan.trails.length).toBeGreaterThanOrEqual(Math.ceil(lengthOf(list, 2 ** list.length - 1) / balloonInches));
      }),
      { seed: 11, numRuns: 400 },
    );
  });

  test('a cube of 3 inch edges takes one 45 inch balloon instead of four', () => {
    const cube = readyFrame('cube', 3);
    expect(cube.ok && planned(cube.value, { balloonInches: 45 }).trails).toHaveLength(4);
    const popped = cube.ok ? planned(cube.value, { balloonInches: 45, pops: {} }) : undefined;
    expect(popped?.trails).toHaveLength(1);
    expect([popped?.totalInches, popped?.poppedInches, popped?.proven]).toEqual([45, 9, true]);
  });

  test('what is popped was made once before', () => {
    const frame = readyFrame('dodecahedron', 2);
    const plan = frame.ok ? planned(frame.value, { pops: {} }) : undefined;
    const made = new Set<number>();
    for (const trail of plan?.trails ?? []) {
      for (const [step, edge] of trail.edges.entries()) {
        if (trail.popped?.[step]) expect(made.has(edge)).toBe(true);
        made.add(edge);
      }
    }
    expect(made.size).toBe(30);
  });
});

describe('colours', () => {
  const twoTone: readonly Wire[] = [
    [0, 1, 5, 'red'],
    [1, 2, 5, 'blue'],
    [2, 0, 5, 'red'],
    [2, 3, 5, 'blue'],
  ];
  test('each colour is twisted apart, and what that costs is said', () => {
    const plan = planned(frameOf(twoTone));
    expect(plan.colours.toSorted()).toEqual(['blue', 'red']);
    expect(plan.balloonsForColours).toBe(1);
    expect(planned(frameOf(twoTone), { colours: 'ignore' }).trails).toHaveLength(1);
  });

  test('an edge without a colour goes with its neighbour', () => {
    const plan = planned(frameOf([...twoTone, [3, 4, 5], [0, 5, 4], [5, 0, 4]]));
    expect(plan.trails).toHaveLength(2);
    expect(plan.proven).toBe(true);
  });

  test('edges without a colour go where they save most: against trying everything on frames of up to eight edges', () => {
    const colour = fc.constantFrom('red', 'blue', 'green', undefined, undefined, undefined);
    let aboveOneColour = 0;
    fc.assert(
      fc.property(
        connected,
        fc.array(colour, { minLength: 8, maxLength: 8 }),
        fc.integer({ min: 16, max: 120 }),
        (list, colours, quarters) => {
          const wires = list.map(([from, to, length], index): Wire => {
            const its = colours[index];
            return its === undefined ? [from, to, length] : [from, to, length, its];
          });
          const balloonInches = quarters > 80 ? undefined : quarters / 4;
          const plan = planned(frameOf(wires), balloonInches === undefined ? {} : { balloonInches });
          const fewest = fewestByTrying(wires, balloonInches ?? Number.POSITIVE_INFINITY, true);
          expect([plan.trails.length, plan.proven]).toEqual([fewest, true]);
          if (fewest > fewestByTrying(wires, balloonInches ?? Number.POSITIVE_INFINITY)) aboveOneColour++;
        },
      ),
      { seed: 14, numRuns: 600 },
    );
    expect(aboveOneColour).toBeGreaterThan(50);
  });

  test('no balloon has two colours, whatever the frame', () => {
    const coloured = fc.array(fc.tuple(wire, fc.constantFrom('red', 'blue', undefined)), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(coloured, fc.option(fc.integer({ min: 4, max: 30 }), { nil: undefined }), (list, balloonInches) => {
        const frame = frameOf(
          list.map(([[from, to, length], colour]): Wire => (colour === undefined ? [from, to, length] : [from, to, length, colour])),
        );
        const plan = planned(frame, balloonInches === undefined ? {} : { balloonInches });
        for (const [index, trail] of plan.trails.entries()) {
          const colours = new Set(trail.edges.flatMap((edge) => frame.edges[edge]?.colour ?? []));
          expect([...colours]).toEqual(colours.size === 0 ? [] : [plan.colours[index]]);
        }
      }),
      { seed: 12, numRuns: 500 },
    );
  });
});

describe('bad input is told, not thrown', () => {
  const square = frameOf([
    [0, 1, 5],
    [1, 0, 5],
  ]);
  const cases: readonly (readonly [string, Frame, FrameWishes])[] = [
    ['frame.no-edges', { joints: [], edges: [] }, {}],
    ['frame.joint-unknown', { joints: [{ name: 'A' }], edges: [{ from: 'A', to: 'B', lengthInches: 1 }] }, {}],
    ['frame.joint-twice', { joints: [{ name: 'A' }, { name: 'A' }], edges: [{ from: 'A', to: 'A', lengthInches: 1 }] }, {}],
    ...[0, -3, Number.NaN, Number.POSITIVE_INFINITY].map((length) => ['frame.edge-length', frameOf([[0, 1, length]]), {}] as const),
    ['frame.edge-longer-than-balloon', square, { balloonInches: 4 }],
    ['frame.balloon-length', square, { balloonInches: Number.NaN }],
    ['frame.balloons', square, { pops: { balloons: 3 } }],
    ['frame.balloons', square, { pops: { balloons: 0 } }],
    ['frame.balloons', square, { pops: { balloons: 1 }, balloonInches: 20 }],
    ['frame.balloons', square, { pops: { closed: true }, balloonInches: 20 }],
  ];
  test.each(cases)('%s', (code, frame, wishes) => {
    const plan = planFrame(frame, wishes);
    expect(plan.ok ? [] : plan.error.map((problem) => problem.code)).toContain(code);
  });

  test('a million mistakes give twenty sentences', () => {
    const frame: Frame = { joints: [], edges: Array.from({ length: 1_000_000 }, () => ({ from: 'A', to: 'B', lengthInches: -1 })) };
    const plan = planFrame(frame);
    expect(plan.ok ? 0 : plan.error.length).toBe(20);
  });
});

test('the same frame and seed give the same orders', () => {
  const frame = readyFrame('snub dodecahedron', 4);
  const once = frame.ok ? planned(frame.value, { balloonInches: 20 }) : undefined;
  const again = frame.ok ? planned(frame.value, { balloonInches: 20 }) : undefined;
  expect(once).toEqual(again);
});

const ringOf = (count: number): Frame => ({
  joints: Array.from({ length: count }, (_, index) => ({ name: `${index}` })),
  edges: Array.from({ length: count }, (_, index) => ({ from: `${index}`, to: `${(index + 1) % count}`, lengthInches: 1 })),
});

test('a million edges in a ring', () => {
  const ring = ringOf(1_000_000);
  const { trails } = planned(ring);
  expect(trails).toHaveLength(1);
  expect(trails.reduce((sum, trail) => sum + trailInches(ring, trail), 0)).toBe(1_000_000);
});

test('a million loops at one hub', () => {
  const loop = { from: 'A', to: 'A', lengthInches: 1 };
  expect(planned({ joints: [{ name: 'A' }], edges: Array.from({ length: 1_000_000 }, () => loop) }).trails).toHaveLength(1);
});

test('a hundred thousand parts, and a long ring in short balloons', () => {
  const ring = ringOf(200_000);
  const pairs: Frame = { joints: ring.joints, edges: ring.edges.filter((_, index) => index % 2 === 0) };
  expect(planned(pairs).trails).toHaveLength(100_000);
  expect(planned(pairs, { balloonInches: 60 }).trails).toHaveLength(100_000);
  const limited = planned(ring, { balloonInches: 60 });
  expect([limited.trails.length, limited.proven]).toEqual([Math.ceil(200_000 / 60), true]);
});
