/**
 * Equal-length constructions of the Platonic solids (the question of theorem 6 of E. D. Demaine, M. L. Demaine, V. Hart, CCCG 2008). The
 * certificates were computed beforehand, in the labels of a public graph library; for cubic graphs A. Kotzig (1957, from memory): a cubic
 * graph splits into paths of three edges exactly when it has a perfect matching.
 */
import { type Frame, planFrame, readyFrame, type Trail, verifyTrails } from '@twistwright/repertoire';
import { expect, test } from 'vitest';
import { cubeGraph, dodecahedronGraph, graph, icosahedronGraph, sameGraph, tetrahedronGraph } from './polyhedron-graphs.ts';

const certificates: readonly (readonly [string, Frame, number, string])[] = [
  ['tetrahedron', tetrahedronGraph, 3, '0-3-2-1, 2-0-1-3'],
  ['cube', cubeGraph, 3, '0-1-7-6, 3-0-4-7, 1-2-3-5, 2-6-5-4'],
  ['icosahedron', icosahedronGraph, 5, '0-1-6-3-9-8, 1-2-8-0-5-6, 2-9-10-11-0-7, 3-4-10-7-11-5, 4-5-1-8-7-9, 10-3-2-6-4-11'],
  [
    'dodecahedron',
    dodecahedronGraph,
    3,
    '0-1-8-9, 1-2-6-7, 2-3-4-5, 3-19-18-17, 4-17-16-15, 6-5-15-14, 8-7-14-13, 10-9-13-12, 11-10-0-19, 16-12-11-18',
  ],
];

test.each(certificates)('%s: the known certificate is right', (name, frame, share, text) => {
  const made = readyFrame(name, 1);
  expect(made.ok && sameGraph(made.value, frame)).toBe(true);
  const trails = text.split(', ').map((walk) => trailAlong(frame, walk.split('-').map(Number)));
  expect(verifyTrails(frame, trails, share)).toEqual([]);
  expect(new Set(trails.map((trail) => trail.edges.length))).toEqual(new Set([share]));
});

test.each(certificates)('%s: we find one too', (_, frame, share, text) => {
  const plan = planFrame(frame, { balloonInches: share });
  expect(plan.ok && plan.value.trails.length).toBe(text.split(', ').length);
  expect(plan.ok && verifyTrails(frame, plan.value.trails, share)).toEqual([]);
});

test('a cubic graph without a perfect matching does not split into threes, and that is proven', () => {
  const bulb = [
    [1, 2],
    [1, 3],
    [2, 4],
    [2, 5],
    [3, 4],
    [3, 5],
    [4, 5],
  ] as const;
  const edges = [0, 1, 2].flatMap((arm) => [[0, 1 + 5 * arm] as const, ...bulb.map(([a, b]) => [a + 5 * arm, b + 5 * arm] as const)]);
  const frame = graph(16, edges);
  const plan = planFrame(frame, { balloonInches: 3 });
  expect(edges).toHaveLength(24);
  expect(plan.ok && [plan.value.trails.length, plan.value.leastBalloons, plan.value.proven]).toEqual([9, 9, true]);
  expect(plan.ok && verifyTrails(frame, plan.value.trails, 3)).toEqual([]);
});

function trailAlong(frame: Frame, joints: readonly number[]): Trail {
  const edges = joints.slice(1).map((to, step) => {
    const from = `${joints[step]}`;
    return frame.edges.findIndex((edge) => (edge.from === from && edge.to === `${to}`) || (edge.to === from && edge.from === `${to}`));
  });
  return { joints, edges };
}
