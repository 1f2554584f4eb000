/**
 * Dihedral angles, volumes and circumradii of the Platonic solids with edge 1: CRC Standard Mathematical Tables, as given by the Geometry
 * Center (geom.uiuc.edu, node 56), and sin(theta / 2) = cos(pi / q) / sin(pi / p) for p-gons, q at a joint; digits computed.
 * A frame of balloons twisted after one of them, laid out with no help but lengths and joints, has to come out as that solid.
 */
import { planFrame, type Recipe, readyFrame, recipeOfFrame, type Shape, shapeOf } from '@twistwright/repertoire';
import { describe, expect, test } from 'vitest';

type Place = readonly [number, number, number];
const edge = 6;
const solids = [
  { name: 'tetrahedron', corners: 4, p: 3, q: 3, dihedral: 70.5287793655, volume: 0.117851130197758, circumradius: 0.612372435695795 },
  { name: 'cube', corners: 8, p: 4, q: 3, dihedral: 90, volume: 1, circumradius: 0.866025403784439 },
  { name: 'octahedron', corners: 6, p: 3, q: 4, dihedral: 109.4712206345, volume: 0.471404520791032, circumradius: Math.SQRT1_2 },
  { name: 'dodecahedron', corners: 20, p: 5, q: 3, dihedral: 116.5650511771, volume: 7.66311896062463, circumradius: 1.40125853844407 },
  { name: 'icosahedron', corners: 12, p: 3, q: 5, dihedral: 138.1896851042, volume: 2.18169499062491, circumradius: 0.951056516295154 },
] as const;

/** The recipe of a solid with every direction taken out, so that nothing but the solver shapes it. */
function recipeOf(name: string): Recipe {
  const frame = readyFrame(name, edge);
  if (!frame.ok) throw new Error(name);
  const plan = planFrame(frame.value);
  if (!plan.ok) throw new Error(name);
  const recipe = recipeOfFrame(frame.value, plan.value);
  if (!recipe.ok) throw new Error(name);
  const pieces = recipe.value.pieces.map((piece) => ({
    ...piece,
    run: piece.run.map((move) => {
      if (!('aim' in move)) return move;
      const { aim: _, ...rest } = move;
      return rest as typeof move;
    }),
  }));
  return { ...recipe.value, pieces };
}

const minus = (a: Place, b: Place): Place => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Place, b: Place): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Place, b: Place): Place => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const size = (a: Place): number => Math.hypot(...a);
const distance = (a: Place, b: Place): number => size(minus(a, b));

interface Plane {
  readonly normal: Place;
  readonly height: number;
}

/** Outward planes of the faces at an edge: those that have every corner on one side, with one radius of a hundredth of an edge to spare. */
function facesAt(a: Place, b: Place, corners: readonly Place[], middle: Place): readonly Plane[] {
  const found: Plane[] = [];
  for (const third of corners) {
    const raw = cross(minus(b, a), minus(third, a));
    if (size(raw) < 1e-3 * edge * edge) continue;
    const outward = dot(raw, minus(a, middle)) < 0 ? -1 / size(raw) : 1 / size(raw);
    const normal: Place = [raw[0] * outward, raw[1] * outward, raw[2] * outward];
    const height = dot(normal, a);
    if (corners.some((corner) => dot(normal, corner) > height + 0.01 * edge)) continue;
    if (!found.some((plane) => dot(plane.normal, normal) > 0.9995)) found.push({ normal, height });
  }
  return found;
}

function measured(shape: Shape) {
  const corners = shape.joints.map((joint) => joint.at);
  const middle = [0, 1, 2].map(
    (axis) => corners.reduce((sum, corner) => sum + (corner[axis] as number), 0) / corners.length,
  ) as unknown as Place;
  const edges = shape.bubbles.map((bubble) => [corners[bubble.from] as Place, corners[bubble.to] as Place] as const);
  const angles = edges.map(([a, b]) => {
    const [one, other] = facesAt(a, b, corners, middle) as [Plane, Plane];
    return 180 - (Math.acos(dot(one.normal, other.normal)) * 180) / Math.PI;
  });
  const faces: Plane[] = [];
  for (const [a, b] of edges)
    for (const plane of facesAt(a, b, corners, middle))
      if (!faces.some((known) => dot(known.normal, plane.normal) > 0.9995)) faces.push(plane);
  return { corners, middle, faces, lengths: edges.map(([a, b]) => distance(a, b)), angles };
}

describe.each(solids)('$name', ({ name, corners, p, q, dihedral, volume, circumradius }) => {
  const shape = shapeOf(recipeOf(name));
  const { lengths, angles, faces, middle, corners: places } = measured(shape);

  test('the table and the formula agree', () => {
    expect((2 * Math.asin(Math.cos(Math.PI / q) / Math.sin(Math.PI / p)) * 180) / Math.PI).toBeCloseTo(dihedral, 9);
  });
  test('has its corners and edges, all of one length within 1 %', () => {
    expect(places).toHaveLength(corners);
    expect(lengths).toHaveLength((corners * q) / 2);
    expect(Math.max(...lengths) / Math.min(...lengths)).toBeLessThan(1.01);
    expect(shape.problems).toEqual([]);
  });
  test('has its dihedral angle at every edge within 1 degree', () => {
    for (const angle of angles) expect(Math.abs(angle - dihedral)).toBeLessThan(1);
  });
  test('has its circumradius and its volume within 1 %', () => {
    const scale = lengths.reduce((sum, length) => sum + length, 0) / lengths.length;
    for (const corner of places) expect(Math.abs(distance(corner, middle) / scale / circumradius - 1)).toBeLessThan(0.01);
    expect(faces).toHaveLength((corners * q) / p);
    const faceArea = (p / (4 * Math.tan(Math.PI / p))) * scale ** 2;
    const filled = faces.reduce((sum, face) => sum + ((face.height - dot(face.normal, middle)) * faceArea) / 3, 0);
    expect(Math.abs(filled / scale ** 3 / volume - 1)).toBeLessThan(0.01);
  });
});
