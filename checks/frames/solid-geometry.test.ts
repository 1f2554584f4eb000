/**
 * Dihedral angles and radii of the Platonic solids, edge 1: formulas http://www.geocities.ws/qxb4tech/polyhedron.html and CRC Standard Mathematical
 * Tables (https://www.geom.uiuc.edu, node 56), sin(theta/2) = cos(pi/q) / sin(pi/p); digits computed. Catalan edge counts: duals of the Archimedean
 * solids, so corners and faces change places (E. Catalan 1865).
 */
import { type Frame, readyFrame, readyFrames } from '@twistwright/repertoire';
import { describe, expect, test } from 'vitest';

type Place = readonly [number, number, number];
const minus = (a: Place, b: Place): Place => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Place, b: Place): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Place, b: Place): Place => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a: Place): Place => [a[0] / Math.sqrt(dot(a, a)), a[1] / Math.sqrt(dot(a, a)), a[2] / Math.sqrt(dot(a, a))];

function solid(name: string, edgeInches = 1): Frame {
  const made = readyFrame(name, edgeInches);
  if (!made.ok) throw new Error(made.error[0]?.sentence);
  return made.value;
}

function places(frame: Frame): ReadonlyMap<string, Place> {
  return new Map(frame.joints.map(({ name, at }) => [name, at as Place]));
}

/** Solid, faces at a corner, sides of a face, dihedral angle, circumradius, midradius, inradius. */
const table: readonly (readonly [string, number, number, number, number, number, number])[] = [
  ['tetrahedron', 3, 3, 70.5287793655, 0.612372435695795, 0.353553390593274, 0.204124145231932],
  ['cube', 3, 4, 90, 0.866025403784439, Math.SQRT1_2, 0.5],
  ['octahedron', 4, 3, 109.4712206345, Math.SQRT1_2, 0.5, 0.408248290463863],
  ['dodecahedron', 3, 5, 116.5650511771, 1.40125853844407, 1.30901699437495, 1.11351636441161],
];

describe.each(table)('%s', (name, q, p, dihedral, circumradius, midradius, inradius) => {
  const frame = solid(name);
  const at = places(frame);

  test('radii', () => {
    for (const place of at.values()) expect(Math.sqrt(dot(place, place))).toBeCloseTo(circumradius, 12);
    for (const { from, to } of frame.edges) {
      const sum: Place = [0, 1, 2].map((axis) => ((at.get(from)?.[axis] ?? 0) + (at.get(to)?.[axis] ?? 0)) / 2) as unknown as Place;
      expect(Math.sqrt(dot(sum, sum))).toBeCloseTo(midradius, 12);
    }
  });

  test('dihedral angle and inradius, from the two faces at an edge', () => {
    const { from, to } = frame.edges[0] as { from: string; to: string };
    const [a, b] = [at.get(from) as Place, at.get(to) as Place];
    const normals = frame.edges.flatMap((edge) => {
      const next = edge.from === from ? edge.to : edge.to === from ? edge.from : undefined;
      if (next === undefined || next === to) return [];
      const normal = unit(cross(minus(b, a), minus(at.get(next) as Place, a)));
      const height = dot(normal, a);
      const outward: Place = height < 0 ? [-normal[0], -normal[1], -normal[2]] : normal;
      const isFace = [...at.values()].every((place) => dot(place, outward) <= Math.abs(height) + 1e-9);
      return isFace ? [{ outward, height: Math.abs(height) }] : [];
    });
    expect(normals).toHaveLength(2);
    const [first, second] = normals as [(typeof normals)[0], (typeof normals)[0]];
    expect(180 - (Math.acos(dot(first.outward, second.outward)) * 180) / Math.PI).toBeCloseTo(dihedral, 8);
    expect(first.height).toBeCloseTo(inradius, 12);
    expect(Math.sin((dihedral * Math.PI) / 360)).toBeCloseTo(Math.cos(Math.PI / q) / Math.sin(Math.PI / p), 10);
  });
});

test.each(readyFrames.filter(({ kind }) => kind === 'Platonic' || kind === 'Archimedean'))(
  '$name: every edge has the asked length between its places',
  ({ name }) => {
    const frame = solid(name, 4.5);
    const at = places(frame);
    for (const { from, to, lengthInches } of frame.edges) {
      const way = minus(at.get(from) as Place, at.get(to) as Place);
      expect(lengthInches).toBe(4.5);
      expect(Math.sqrt(dot(way, way))).toBeCloseTo(4.5, 9);
    }
  },
);

/** Real root of t^3 = t^2 + t + 1. */
const tribonacci = 1.839286755214161;
/**
 * Catalan solid, corners (faces of its dual), edges, faces (corners of its dual), longest edge as a multiple of the shortest: closed forms
 * from memory, that of the pentagonal hexecontahedron in figures.
 */
const catalan: readonly (readonly [string, number, number, number, number])[] = [
  ['triakis tetrahedron', 8, 18, 12, 5 / 3],
  ['rhombic dodecahedron', 14, 24, 12, 1],
  ['triakis octahedron', 14, 36, 24, 1 + Math.SQRT1_2],
  ['tetrakis hexahedron', 14, 36, 24, 4 / 3],
  ['deltoidal icositetrahedron', 26, 48, 24, 2 - Math.SQRT1_2],
  ['disdyakis dodecahedron', 26, 72, 48, (10 + Math.SQRT2) / 7],
  ['pentagonal icositetrahedron', 38, 60, 24, (1 + tribonacci) / 2],
  ['rhombic triacontahedron', 32, 60, 30, 1],
  ['triakis icosahedron', 32, 90, 60, (15 + Math.sqrt(5)) / 10],
  ['pentakis dodecahedron', 32, 90, 60, (9 - Math.sqrt(5)) / 6],
  ['deltoidal hexecontahedron', 62, 120, 60, (7 + Math.sqrt(5)) / 6],
  ['disdyakis triacontahedron', 62, 180, 120, (7 + Math.sqrt(5)) / 5],
  ['pentagonal hexecontahedron', 92, 150, 60, 1.7498525667362],
];

test.each(catalan)('%s: corners, edges, faces and edge ratio', (name, corners, edges, faces, ratio) => {
  const frame = solid(name);
  expect([frame.joints.length, frame.edges.length]).toEqual([corners, edges]);
  expect(corners - edges + faces).toBe(2);
  expect(Math.max(...frame.edges.map(({ lengthInches }) => lengthInches))).toBeCloseTo(ratio, 6);
});
