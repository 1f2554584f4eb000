import type { Mark, Shape, ShapeBubble, Vector } from '@twistwright/repertoire';
import { BufferAttribute, BufferGeometry } from 'three';
import type { FigureBody } from './drawing-ask.ts';

/** All bubbles of one colour role, or everything drawn in one ink, as one mesh. */
export interface Body {
  readonly key: string;
  readonly role?: string;
  /** Colour of what is drawn on the rubber. */
  readonly ink?: string;
  /** What is still to be made. */
  readonly isGhost?: true;
  readonly geometry: BufferGeometry;
}

const around = 20;
const inCap = 6;

/** A figure as meshes, one for each colour role and ink; with `upToMove` only what is there after so many deeds. */
export function bodiesOf({ shape, marks }: FigureBody, upToMove = Number.POSITIVE_INFINITY): readonly Body[] {
  const roles = new Map<string, Mesh>();
  const ghosts = new Map<string, Mesh>();
  shape.bubbles.forEach((bubble, index) => {
    if (bubble.line.length > 0) addBubble(meshIn(bubble.deed > upToMove ? ghosts : roles, bubble.role), shape, bubble, index);
  });
  const inks = new Map<string, Mesh>();
  if (upToMove >= shape.deeds) for (const mark of marks) addMark(inks, mark);
  return [
    ...[...roles].map(([role, mesh]): Body => ({ key: `role ${role}`, role, geometry: mesh.geometry() })),
    ...[...ghosts].map(([role, mesh]): Body => ({ key: `ghost ${role}`, role, isGhost: true, geometry: mesh.geometry() })),
    ...[...inks].map(([ink, mesh]): Body => ({ key: `ink ${ink}`, ink, geometry: mesh.geometry() })),
  ];
}

function meshIn(meshes: Map<string, Mesh>, key: string): Mesh {
  const mesh = meshes.get(key) ?? new Mesh();
  meshes.set(key, mesh);
  return mesh;
}

const ink = '#15171b';

/** What is drawn on the rubber, as flat buttons a little above it. */
function addMark(inks: Map<string, Mesh>, { kind, at, normal, upright, inches }: Mark): void {
  const half = inches / 2;
  const right = cross(upright, normal);
  const button = (colour: string, across: number, high: number, x: number, y: number, thick: number): void => {
    const middle = plus(at, plus(scaled(right, x * half), scaled(upright, y * half)));
    meshIn(inks, colour).button(middle, [scaled(right, across * half), scaled(upright, high * half), scaled(normal, thick * half)]);
  };
  switch (kind) {
    case 'eye':
      button('#ffffff', 1.25, 1.55, 0, 0, 0.3);
      button(ink, 0.78, 1.05, 0, -0.35, 0.42);
      break;
    case 'nose':
      button(ink, 1, 0.72, 0, 0, 0.5);
      break;
    case 'spot':
      button(ink, 1, 1, 0, 0, 0.2);
      break;
    case 'cheek':
      button('#f48bb6', 1, 1, 0, 0, 0.2);
      break;
    case 'smile':
      for (let k = -6; k <= 6; k++) button(ink, 0.2, 0.2, k / 6, -0.55 + 0.75 * (k / 6) * (k / 6), 0.25);
      break;
    case 'whiskers':
      for (const side of [-1, 1])
        for (const lift of [-0.25, 0.25])
          for (let k = 0; k <= 4; k++) button(ink, 0.1, 0.07, side * (0.4 + 0.15 * k), lift * (0.5 + 0.15 * k), 0.15);
      break;
  }
}

function addBubble(mesh: Mesh, shape: Shape, bubble: ShapeBubble, index: number): void {
  const balls = shape.balls.filter((ball) => ball.bubble === index);
  for (const { at, radius } of balls) {
    if (bubble.form === 'heart') mesh.heart(at, radius, bubble.line);
    else if (bubble.form === 'donut') mesh.sweep(ringOf(at, radius * 0.66), radius * 0.33);
    else if (bubble.form === 'flower') for (const petal of petalsOf(at, radius)) mesh.sweep([petal, petal], radius * 0.42);
    else mesh.sweep([at, at], radius);
  }
  for (const run of runsOf(shape, index)) mesh.sweep(rounded(run.points), run.radius);
}

interface Run {
  readonly points: readonly Vector[];
  readonly radius: number;
}
/** The capsules of a bubble end to end. */
function runsOf(shape: Shape, index: number): readonly Run[] {
  const runs: { points: Vector[]; radius: number }[] = [];
  for (const { a, b, radius, bubble } of shape.capsules) {
    if (bubble !== index) continue;
    const last = runs.at(-1);
    const end = last?.points.at(-1);
    if (last !== undefined && end !== undefined && apart(end, a) < 1e-6 && Math.abs(last.radius - radius) < 1e-6) last.points.push(b);
    else runs.push({ points: [a, b], radius });
  }
  return runs;
}

const petalCount = 5;
const petalsOf = ([x, y, z]: Vector, radius: number): readonly Vector[] =>
  Array.from({ length: petalCount }, (_, k): Vector => {
    const angle = (2 * Math.PI * k) / petalCount;
    return [x, y + 0.58 * radius * Math.cos(angle), z + 0.58 * radius * Math.sin(angle)];
  });

const ringOf = ([x, y, z]: Vector, radius: number): readonly Vector[] =>
  Array.from({ length: 25 }, (_, k): Vector => [x, y + radius * Math.cos((Math.PI * k) / 12), z + radius * Math.sin((Math.PI * k) / 12)]);

const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const scaled = (a: Vector, by: number): Vector => [a[0] * by, a[1] * by, a[2] * by];
const apart = (a: Vector, b: Vector): number => Math.hypot(...minus(a, b));
const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
function unit(a: Vector, instead: Vector): Vector {
  const size = Math.hypot(...a);
  return size < 1e-9 ? instead : [a[0] / size, a[1] / size, a[2] / size];
}

/** A bent line with its corners rounded: Catmull-Rom through its points. */
function rounded(points: readonly Vector[]): readonly Vector[] {
  if (points.length <= 2) return points;
  const at = (index: number): Vector => points[Math.max(0, Math.min(points.length - 1, index))] as Vector;
  const line: Vector[] = [];
  for (let k = 0; k < points.length - 1; k++)
    for (const t of [0, 1 / 3, 2 / 3]) line.push(between(at(k - 1), at(k), at(k + 1), at(k + 2), t));
  return [...line, at(points.length - 1)];
}
function between(a: Vector, b: Vector, c: Vector, d: Vector, t: number): Vector {
  const axis = (k: 0 | 1 | 2): number =>
    0.5 *
    (2 * b[k] + (c[k] - a[k]) * t + (2 * a[k] - 5 * b[k] + 4 * c[k] - d[k]) * t * t + (3 * b[k] - a[k] - 3 * c[k] + d[k]) * t * t * t);
  return [axis(0), axis(1), axis(2)];
}

/** Gathers triangles. */
class Mesh {
  readonly #places: number[] = [];
  readonly #normals: number[] = [];
  readonly #corners: number[] = [];

  /** A round tube along a line with round ends; of two equal points a ball. */
  sweep(line: readonly Vector[], radius: number): void {
    const [first, second] = [line[0] as Vector, line[1] as Vector];
    let along = unit(minus(second, first), [0, 1, 0]);
    let side = unit(cross(along, Math.abs(along[1]) < 0.9 ? [0, 1, 0] : [1, 0, 0]), [1, 0, 0]);
    const rings: { readonly at: Vector; readonly along: Vector; readonly side: Vector; readonly across: number; readonly forth: number }[] =
      [];
    line.forEach((at, k) => {
      const [before, after] = [line[Math.max(0, k - 1)] as Vector, line[Math.min(line.length - 1, k + 1)] as Vector];
      along = unit(minus(after, before), along);
      side = unit(minus(side, scaled(along, dot(side, along))), side);
      const ring = (across: number, forth: number): void => {
        rings.push({ at, along, side, across, forth });
      };
      if (k === 0) for (let c = inCap; c > 0; c--) ring(Math.cos((c / inCap) * (Math.PI / 2)), -Math.sin((c / inCap) * (Math.PI / 2)));
      ring(1, 0);
      if (k === line.length - 1)
        for (let c = 1; c <= inCap; c++) ring(Math.cos((c / inCap) * (Math.PI / 2)), Math.sin((c / inCap) * (Math.PI / 2)));
    });
    const start = this.#places.length / 3;
    for (const ring of rings) this.#ring(ring.at, ring.along, ring.side, ring.across, ring.forth, radius);
    this.#skin(start, rings.length);
  }

  #ring(at: Vector, along: Vector, side: Vector, across: number, forth: number, radius: number): void {
    const up = cross(along, side);
    for (let k = 0; k <= around; k++) {
      const angle = (2 * Math.PI * k) / around;
      const [c, s] = [Math.cos(angle) * across, Math.sin(angle) * across];
      for (const axis of [0, 1, 2] as const) {
        const normal = side[axis] * c + up[axis] * s + along[axis] * forth;
        this.#normals.push(normal);
        this.#places.push(at[axis] + normal * radius);
      }
    }
  }

  #skin(start: number, rings: number): void {
    const row = around + 1;
    for (let r = 0; r < rings - 1; r++)
      for (let k = 0; k < around; k++) {
        const a = start + r * row + k;
        this.#corners.push(a, a + 1, a + row, a + 1, a + row + 1, a + row);
      }
  }

  /** A heart-shaped balloon as wide as `radius` says, its tip where its line begins, seen from ahead and from behind. */
  heart(at: Vector, radius: number, line: readonly Vector[]): void {
    const up = unit(minus(line.at(-1) as Vector, line[0] as Vector), [0, 1, 0]);
    const front = unit(minus([1, 0, 0], scaled(up, up[0])), [0, 0, 1]);
    const right = cross(front, up);
    const rows = 18;
    const start = this.#places.length / 3;
    const pointAt = (v: number, u: number): Vector => {
      const [ring, height] = [Math.sin(v), -Math.cos(v)];
      const [x, z] = [ring * Math.cos(u), ring * Math.sin(u)];
      const wide = Math.abs(x);
      // Sides are lifted, so that a notch is left above and a tip below.
      const y = height * 0.82 + 0.62 * Math.sqrt(wide * wide + 0.02) - 0.3;
      return [x, y, z * 0.55];
    };
    for (let r = 0; r <= rows; r++)
      for (let k = 0; k <= around; k++) {
        const [v, u] = [(Math.PI * r) / rows, (2 * Math.PI * k) / around];
        const point = pointAt(v, u);
        const inner = Math.min(Math.max(v, 0.01), Math.PI - 0.01);
        const normal = unit(
          cross(minus(pointAt(inner, u + 0.01), pointAt(inner, u - 0.01)), minus(pointAt(inner + 0.01, u), pointAt(inner - 0.01, u))),
          [0, 1, 0],
        );
        const outward = dot(normal, [point[0], point[1], point[2]]) < 0 ? -1 : 1;
        for (const axis of [0, 1, 2] as const) {
          this.#places.push(at[axis] + radius * (right[axis] * point[0] + up[axis] * point[1] + front[axis] * point[2]));
          this.#normals.push(outward * (right[axis] * normal[0] + up[axis] * normal[1] + front[axis] * normal[2]));
        }
      }
    this.#skin(start, rows + 1);
  }

  /** A squashed ball with three half axes. */
  button(at: Vector, axes: readonly [Vector, Vector, Vector]): void {
    const rows = 8;
    const start = this.#places.length / 3;
    for (let r = 0; r <= rows; r++)
      for (let k = 0; k <= around; k++) {
        const [v, u] = [(Math.PI * r) / rows, (2 * Math.PI * k) / around];
        const [x, y, z] = [Math.sin(v) * Math.cos(u), Math.sin(v) * Math.sin(u), -Math.cos(v)];
        const [a, b, c] = axes;
        const normal = unit(plus(plus(scaled(a, x / dot(a, a)), scaled(b, y / dot(b, b))), scaled(c, z / dot(c, c))), [0, 1, 0]);
        for (const axis of [0, 1, 2] as const) {
          this.#places.push(at[axis] + a[axis] * x + b[axis] * y + c[axis] * z);
          this.#normals.push(normal[axis]);
        }
      }
    this.#skin(start, rows + 1);
  }

  geometry(): BufferGeometry {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(new Float32Array(this.#places), 3));
    geometry.setAttribute('normal', new BufferAttribute(new Float32Array(this.#normals), 3));
    geometry.setIndex(this.#corners);
    return geometry;
  }
}
