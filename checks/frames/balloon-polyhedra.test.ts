/**
 * E. D. Demaine, M. L. Demaine, V. Hart, "Computational Balloon Twisting: The Theory of Balloon Polyhedra", Proc. 20th Canadian Conference on
 * Computational Geometry (CCCG 2008), Montreal, pp. 139-142; full version https://cccg.ca/proceedings/2008/paper34full.pdf: theorems 1, 2, 4
 * and figure 1 as read; the counts for each solid are computed from theorem 2 and the solids' own edge and corner counts.
 * The companion, same authors, "Balloon Polyhedra" (M. Senechal (ed.), Shaping Space, Springer 2013): a tetrahedron takes more than one.
 */
import { type Frame, type FramePlan, type FrameWishes, planFrame, readyFrame, type Trail, verifyTrails } from '@twistwright/repertoire';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { graph } from './polyhedron-graphs.ts';

function solid(name: string): Frame {
  const made = readyFrame(name, 1);
  if (!made.ok) throw new Error(made.error[0]?.sentence);
  return made.value;
}

function planned(frame: Frame, wishes: FrameWishes = {}): FramePlan {
  const plan = planFrame(frame, wishes);
  if (!plan.ok) throw new Error(plan.error[0]?.sentence);
  expect(verifyTrails(frame, plan.value.trails, wishes.balloonInches)).toEqual([]);
  return plan.value;
}

/** Solid, corners, edges, edges at a corner, odd corners, bloon number. */
const solids: readonly (readonly [string, number, number, number, number, number])[] = [
  ['tetrahedron', 4, 6, 3, 4, 2],
  ['cube', 8, 12, 3, 8, 4],
  ['octahedron', 6, 12, 4, 0, 1],
  ['dodecahedron', 20, 30, 3, 20, 10],
  ['icosahedron', 12, 30, 5, 12, 6],
  ['truncated tetrahedron', 12, 18, 3, 12, 6],
  ['cuboctahedron', 12, 24, 4, 0, 1],
  ['truncated cube', 24, 36, 3, 24, 12],
  ['truncated octahedron', 24, 36, 3, 24, 12],
  ['rhombicuboctahedron', 24, 48, 4, 0, 1],
  ['truncated cuboctahedron', 48, 72, 3, 48, 24],
  ['snub cube', 24, 60, 5, 24, 12],
  ['icosidodecahedron', 30, 60, 4, 0, 1],
  ['truncated dodecahedron', 60, 90, 3, 60, 30],
  ['truncated icosahedron', 60, 90, 3, 60, 30],
  ['rhombicosidodecahedron', 60, 120, 4, 0, 1],
  ['truncated icosidodecahedron', 120, 180, 3, 120, 60],
  ['snub dodecahedron', 60, 150, 5, 60, 30],
];

describe.each(solids)('%s', (name, corners, edges, degree, odd, bloons) => {
  const frame = solid(name);

  test('has its corners and edges, the same number at each corner', () => {
    expect([frame.joints.length, frame.edges.length]).toEqual([corners, edges]);
    const ends = frame.joints.map((joint) => frame.edges.filter(({ from, to }) => from === joint.name || to === joint.name).length);
    expect(new Set(ends)).toEqual(new Set([degree]));
    expect(ends.filter((count) => count % 2 === 1)).toHaveLength(odd);
  });

  test('theorems 1 and 2: bloon number', () => {
    const plan = planned(frame);
    expect([plan.trails.length, plan.leastBalloons, plan.proven]).toEqual([bloons, bloons, true]);
  });

  test('theorem 4: doubloons and at most one demidoubloon', () => {
    const plan = planned(frame, { balloonInches: 2 });
    expect(plan.trails).toHaveLength(Math.ceil(edges / 2));
    expect(plan.trails.filter((trail) => trail.edges.length === 1)).toHaveLength(edges % 2);
    expect(plan.proven).toBe(true);
  });

  test('equal shares of the edges, one for each balloon', () => {
    const plan = planned(frame, { balloonInches: edges / bloons });
    expect(plan.trails.map((trail) => trail.edges.length)).toEqual(Array(bloons).fill(edges / bloons));
  });
});

const edgeLists = fc.array(fc.tuple(fc.nat(7), fc.nat(7)), { minLength: 1, maxLength: 40 });

test('theorem 1: one balloon exactly when there is an Euler trail, on any connected graph', () => {
  fc.assert(
    fc.property(edgeLists, (edges) => {
      const joined = [...edges, ...edges.slice(1).map(([from], index): [number, number] => [edges[index]?.[0] as number, from])];
      const frame = graph(8, joined);
      const odd = frame.joints.filter(({ name }) => joined.filter(([a, b]) => (`${a}` === name) !== (`${b}` === name)).length % 2 === 1);
      expect(planned(frame).trails.length === 1).toBe(odd.length <= 2);
      expect(planned(frame).trails).toHaveLength(Math.max(1, odd.length / 2));
    }),
    { seed: 41, numRuns: 400 },
  );
});

test('theorem 2 over parts: each part takes max(1, odd / 2)', () => {
  const twoSolids = {
    joints: [...named('cube', 'c'), ...named('octahedron', 'o')],
    edges: [...wired('cube', 'c'), ...wired('octahedron', 'o')],
  };
  expect(planned(twoSolids).trails).toHaveLength(4 + 1);
});

test('theorem 4: any connected unit graph with any number of edges, loops and parallel edges included', () => {
  fc.assert(
    fc.property(edgeLists, (edges) => {
      const joined = [...edges, ...edges.slice(1).map(([from], index): [number, number] => [edges[index]?.[0] as number, from])];
      const plan = planned(graph(8, joined), { balloonInches: 2 });
      expect(plan.trails).toHaveLength(Math.ceil(joined.length / 2));
    }),
    { seed: 44, numRuns: 400 },
  );
});

test('figure 1 and the companion: an octahedron is one balloon, a tetrahedron is not', () => {
  expect(planned(solid('octahedron')).trails).toHaveLength(1);
  expect(planned(solid('tetrahedron')).trails.length).toBeGreaterThan(1);
});

test('the one-balloon octahedron printed at http://polygoncraze.blogspot.com (2008): 1 2 3 4 5 2 6 4 1 5 6 3 1, antipodes 1-6, 2-4, 3-5', () => {
  const antipodes = [
    [1, 6],
    [2, 4],
    [3, 5],
  ];
  const edges: [number, number][] = [];
  for (let a = 1; a <= 6; a++)
    for (let b = a + 1; b <= 6; b++) if (!antipodes.some(([c, d]) => c === a && d === b)) edges.push([a - 1, b - 1]);
  const frame = graph(6, edges);
  const joints = [1, 2, 3, 4, 5, 2, 6, 4, 1, 5, 6, 3, 1].map((joint) => joint - 1);
  const numberOf = (a: number, b: number) => edges.findIndex(([c, d]) => (c === a && d === b) || (c === b && d === a));
  const trail: Trail = { joints, edges: joints.slice(1).map((joint, step) => numberOf(joints[step] as number, joint)) };
  expect(edges).toHaveLength(12);
  expect(verifyTrails(frame, [trail], 12)).toEqual([]);
});

const named = (name: string, prefix: string) => solid(name).joints.map((joint) => ({ name: prefix + joint.name }));
const wired = (name: string, prefix: string) =>
  solid(name).edges.map((edge) => ({ ...edge, from: prefix + edge.from, to: prefix + edge.to }));
