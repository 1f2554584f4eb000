import { type Camera, marksOf, pictureFrame, readRecipe, shapeOf, shippedFigures, type Vector } from '@twistwright/repertoire';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bodyOf, buffersOf, type FigureBody } from './bodies-of.ts';
import type { Surface } from './surface.ts';
import { windowOf } from './turned-view.ts';
import { cross, dot, minus, nearestOn, plus, sizeOf } from './vectors.ts';

function made(text: string): { readonly shape: ReturnType<typeof shapeOf>; readonly body: FigureBody } {
  const read = readRecipe(text);
  if (!read.ok) throw new Error(read.error[0]?.sentence);
  const shape = shapeOf(read.value);
  return { shape, body: bodyOf(shape, marksOf(read.value.finishing, shape)) };
}
const figures = shippedFigures.map(({ id, recipe }) => ({ id, ...made(recipe) }));
const at = ({ places }: Surface, corner: number): Vector => [...places.subarray(3 * corner, 3 * corner + 3)] as unknown as Vector;
const normalAt = ({ normals }: Surface, corner: number): Vector => [...normals.subarray(3 * corner, 3 * corner + 3)] as unknown as Vector;

function triangles({ corners }: Surface): readonly (readonly [number, number, number])[] {
  return Array.from(
    { length: corners.length / 3 },
    (_, k) => [...corners.subarray(3 * k, 3 * k + 3)] as unknown as [number, number, number],
  );
}

describe('bodyOf', () => {
  test.each([
    ['a bubble', 'a: 260 in body\n  bubble 6 part, forward\n'],
    ['a bent one', 'a: 260 in body\n  bubble 14 part, forward, bend 120 up\n'],
    ['a pinch', 'a: 260 in body\n  bubble 3 part, forward\n  pinch 1.5 ear, up\n  bubble 3 part, forward\n'],
    ['a round', 'a: round-5 in body\n  bubble 5 head\n'],
    ['a heart', 'a: heart-6 in body\n  bubble 6 heart, up\n'],
    ['a flower', 'a: flower-6 in body\n  bubble 6 flower, up\n'],
    ['a ring', 'a: ring-5 in body\n  bubble 5 ring, up\n'],
    ['a tulip', 'a: 260 in body\n  tulip 2.5 flower, up\n  bubble 9 stem, down\n'],
  ])('%s is closed and looks outwards', (_, recipe) => {
    const { body } = made(`balloon ${recipe}`);
    const [{ surface }] = body.bodies.filter(({ role }) => role === 'body') as [{ surface: Surface }];
    const edges = new Map<string, number>();
    const name = (corner: number): string =>
      at(surface, corner)
        .map((value) => Math.round(1000 * value))
        .join(' ');
    for (const [a, b, c] of triangles(surface)) {
      const [p, q, r] = [at(surface, a), at(surface, b), at(surface, c)];
      const [u, v] = [minus(q, p), minus(r, p)];
      const face = cross(u, v);
      if (sizeOf(face) > 1e-5)
        expect(dot(face, plus(plus(normalAt(surface, a), normalAt(surface, b)), normalAt(surface, c)))).toBeGreaterThan(0);
      const names = [name(a), name(b), name(c)];
      if (new Set(names).size < 3) continue;
      for (const k of [0, 1, 2]) {
        const [from, to] = [names[k] ?? '', names[(k + 1) % 3] ?? ''];
        const key = from < to ? `${from} | ${to}` : `${to} | ${from}`;
        edges.set(key, (edges.get(key) ?? 0) + (from < to ? 1 : -1));
      }
    }
    expect(edges.size).toBeGreaterThan(100);
    expect([...edges].filter(([, sum]) => sum !== 0)).toEqual([]);
  });
  test.each(figures)('$id: every deed adds to what is there, and the last has all of it', ({ shape, body }) => {
    for (const { surface } of body.bodies) {
      const { stages, corners } = surface;
      expect(stages.map(({ deed }) => deed)).toEqual(stages.map(({ deed }) => deed).toSorted((one, other) => one - other));
      expect(stages.at(-1)?.corners ?? 0).toBe(corners.length);
      expect(stages.every(({ deed }) => deed <= shape.deeds)).toBe(true);
      for (const part of [surface.places, surface.normals, surface.runs, surface.light]) expect(part.every(Number.isFinite)).toBe(true);
    }
    expect(new Set(buffersOf(body)).size).toBe(5 * body.bodies.length);
  });
  test('what is printed or drawn lies on the rubber, at most a sixteenth of a radius above it', () => {
    const { shape, body } = made(
      'balloon worm: 260 in body, printed dots\n  bubble 6 head, forward\n  bubble 8 body, back up\nfinish with marker: eyes and smile on head, 0.1 minutes\n',
    );
    const inks = body.bodies.filter(({ ink }) => ink !== undefined);
    expect(inks.map(({ ink }) => ink).toSorted()).toEqual(['black', 'pen', 'shade', 'white']);
    for (const { surface } of inks)
      for (let corner = 0; corner < surface.light.length; corner++) {
        const place = at(surface, corner);
        const heights = shape.bubbles.map(({ line, radius }) => {
          const near = nearestOn(line, place);
          return sizeOf([place[0] - near[0], place[1] - near[1], place[2] - near[2]]) / radius;
        });
        expect(Math.min(...heights)).toBeGreaterThan(0.98);
        expect(Math.min(...heights)).toBeLessThan(1.0625);
      }
  });
  test.each([
    ['heart-6', 3, 3 * 0.5],
    ['ring-5', 2.5, 0.33 * 2.5],
  ])('a %s is as wide as the balloon and as thick as it should be', (size, half, deep) => {
    const surface = made(`balloon it: ${size} in body\n  bubble ${2 * half} part, up\n`).body.bodies.find(
      ({ role }) => role === 'body',
    )?.surface;
    const corners = Array.from({ length: surface?.light.length ?? 0 }, (_, corner) => at(surface as Surface, corner));
    const reach = (axis: 0 | 1 | 2): number =>
      Math.max(...corners.map((place) => place[axis])) - Math.min(...corners.map((place) => place[axis]));
    expect(reach(0)).toBeCloseTo(2 * deep, 1);
    expect(Math.abs(reach(2) - 2 * half)).toBeLessThan(0.1 * half);
  });
});

describe('windowOf', () => {
  const size = { width: 300, height: 330 };
  const shown = ({ body, turn }: { readonly body: FigureBody; readonly turn: { about: number; over: number } }) => {
    const { placed, left, right, top, bottom } = windowOf(body, turn, size);
    return ([x, y, z]: Vector): { readonly x: number; readonly y: number } => {
      const row = (k: number): number => placed[4 * k] * x + placed[4 * k + 1] * y + placed[4 * k + 2] * z + placed[4 * k + 3];
      return { x: (200 * (row(0) - left)) / (right - left), y: (220 * (top - row(1))) / (top - bottom) };
    };
  };
  const flat = ({ shape, camera }: { readonly shape: ReturnType<typeof shapeOf>; readonly camera: Camera }) => {
    const { scale, shift } = pictureFrame(shape, camera);
    return (point: Vector) => ({ x: shift.x + scale * dot(point, camera.right), y: shift.y - scale * dot(point, camera.up) });
  };
  test('a figure that is not turned lies exactly where its flat picture has it', () => {
    for (const { shape, body } of figures) {
      const [one, other] = [shown({ body, turn: { about: 0, over: 0 } }), flat({ shape, camera: body.camera })];
      for (const { line } of shape.bubbles)
        for (const point of line) {
          expect(one(point).x).toBeCloseTo(other(point).x, 6);
          expect(one(point).y).toBeCloseTo(other(point).y, 6);
        }
    }
  });
  test('nothing is cut off however a figure is turned', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...figures),
        fc.double({ min: -7, max: 7, noNaN: true }),
        fc.double({ min: -1.4, max: 1.4, noNaN: true }),
        ({ body }, about, over) => {
          const place = shown({ body, turn: { about, over } });
          for (const { role, surface } of body.bodies) {
            if (role === undefined) continue;
            for (let corner = 0; corner < surface.light.length; corner += 23) {
              const { x, y } = place(at(surface, corner));
              expect(Math.min(x, y)).toBeGreaterThan(0);
              expect(x).toBeLessThan(200);
              expect(y).toBeLessThan(220);
            }
          }
        },
      ),
      { numRuns: 150, seed: 5 },
    );
  });
});
