/**
 * Theorem 3 of E. D. Demaine, M. L. Demaine, V. Hart, "Computational Balloon Twisting", CCCG 2008: the shortest total for k balloons with pops
 * is a Chinese postman problem (M.-K. Kuan 1962; J. Edmonds and E. L. Johnson, Mathematical Programming 5 (1973) 88-124). Lengths for
 * unit edges computed; in general, for a solid whose corners are alike and odd: closed E + V/2, k open balloons E + V/2 - k.
 */
import { type Frame, type FrameWishes, planFrame, readyFrame, verifyTrails } from '@twistwright/repertoire';
import { expect, test } from 'vitest';
import { koenigsberg } from './polyhedron-graphs.ts';

function total(frame: Frame, pops: NonNullable<FrameWishes['pops']>): number {
  const plan = planFrame(frame, { pops });
  if (!plan.ok) throw new Error(plan.error[0]?.sentence);
  expect(verifyTrails(frame, plan.value.trails)).toEqual([]);
  expect(plan.value.trails).toHaveLength(pops.balloons ?? 1);
  expect(plan.value.totalInches - plan.value.poppedInches).toBe(frame.edges.length);
  if (pops.closed) expect(plan.value.trails[0]?.joints.at(-1)).toBe(plan.value.trails[0]?.joints[0]);
  return plan.value.totalInches;
}

function solid(name: string): Frame {
  const made = readyFrame(name, 1);
  if (!made.ok) throw new Error(made.error[0]?.sentence);
  return made.value;
}

/** Frame, closed tour, then 1, 2, 3, ... open balloons. */
const table: readonly (readonly [string, Frame, number, readonly number[]])[] = [
  ['tetrahedron', solid('tetrahedron'), 8, [7, 6]],
  ['cube', solid('cube'), 16, [15, 14, 13, 12]],
  ['dodecahedron', solid('dodecahedron'), 40, [39, 38, 37, 36, 35, 34, 33, 32, 31, 30]],
  ['icosahedron', solid('icosahedron'), 36, [35, 34, 33, 32, 31, 30]],
  ['Koenigsberg', koenigsberg, 9, [8, 7]],
];

test.each(table)('%s', (_, frame, closed, open) => {
  expect(total(frame, { closed: true })).toBe(closed);
  expect(open.map((__, index) => total(frame, { balloons: index + 1 }))).toEqual(open);
});

test.each(['truncated tetrahedron', 'truncated cube', 'snub cube', 'truncated icosahedron', 'snub dodecahedron', 'prism 7'])(
  '%s: corners alike and odd, so E + V/2 closed and E + V/2 - k open',
  (name) => {
    const frame = solid(name);
    const closed = frame.edges.length + frame.joints.length / 2;
    expect(total(frame, { closed: true })).toBe(closed);
    for (const balloons of [1, 2, 5]) expect(total(frame, { balloons })).toBe(closed - balloons);
  },
);
