import { expect, test } from 'vitest';
import { checkFrame } from './frame.ts';
import { readyFrame, readyFrames } from './ready-frames.ts';
import { cosineOfTurn, sineOfTurn } from './turn.ts';

const everyName = readyFrames.flatMap(({ name, kind }) => (kind === 'family' ? [5, 6, 9, 40].map((sides) => `${name} ${sides}`) : [name]));

test.each(everyName)('%s is in order, and its edges are as long as its joints are apart', (name) => {
  const made = readyFrame(name, 5);
  expect(made.ok && checkFrame(made.value)).toEqual([]);
  const at = new Map(made.ok ? made.value.joints.map((joint) => [joint.name, joint.at ?? [0, 0, 0]] as const) : []);
  for (const { from, to, lengthInches } of made.ok ? made.value.edges : []) {
    const apart = Math.hypot(...[0, 1, 2].map((axis) => (at.get(from)?.[axis] ?? 0) - (at.get(to)?.[axis] ?? 0)));
    expect(lengthInches).toBeCloseTo(apart, 7);
    expect(lengthInches).toBeGreaterThanOrEqual(5);
  }
});

/** Corners and edges of n-sided families. */
const counts = { prism: [2, 3], antiprism: [2, 4], star: [2, 3] } as const;
test.each(Object.entries(counts))('%s: corners and edges grow with the sides', (family, [corners, edges]) => {
  for (const sides of [5, 8, 13]) {
    const made = readyFrame(`${family} ${sides}`, 5);
    expect(made.ok && [made.value.joints.length, made.value.edges.length]).toEqual([corners * sides, edges * sides]);
  }
});

test('a square antiprism of triangles, a triangular antiprism and a square bipyramid are even', () => {
  for (const name of ['antiprism 3', 'bipyramid 4', 'pyramid 4', 'prism 4']) {
    const made = readyFrame(name, 5);
    expect(made.ok && new Set(made.value.edges.map(({ lengthInches }) => lengthInches))).toEqual(new Set([5]));
  }
});

test.each([
  ['cone 5', 'frame.ready-unknown'],
  ['constructor', 'frame.ready-unknown'],
  ['prism', 'frame.sides'],
  ['prism 2', 'frame.sides'],
  ['prism 5.5', 'frame.sides'],
  ['star 4', 'frame.sides'],
  ['prism 1000000', 'frame.sides'],
])('%s is refused: %s', (name, code) => {
  const made = readyFrame(name, 5);
  expect(made.ok ? undefined : made.error[0]?.code).toBe(code);
});

test('an edge of no length is refused', () => {
  const made = readyFrame('cube', 0);
  expect(made.ok ? undefined : made.error[0]?.code).toBe('frame.edge-length');
});

test('cosine and sine of a turn', () => {
  for (let step = -200; step <= 200; step++) {
    expect(cosineOfTurn(step / 97)).toBeCloseTo(Math.cos((2 * Math.PI * step) / 97), 13);
    expect(sineOfTurn(step / 97)).toBeCloseTo(Math.sin((2 * Math.PI * step) / 97), 13);
  }
});
