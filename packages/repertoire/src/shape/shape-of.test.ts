import { describe, expect, test } from 'vitest';
import { readRecipe } from '../notation/read-recipe.ts';
import type { Recipe } from '../recipe.ts';
import { axisOf } from './axis.ts';
import { type Shape, shapeOf, solvedShape } from './shape-of.ts';
import type { Skeleton } from './skeleton.ts';
import { skeletonOf } from './skeleton-of.ts';

function recipeOf(text: string): Recipe {
  const read = readRecipe(text);
  if (!read.ok) throw new Error(read.error[0]?.sentence);
  return read.value;
}
const shaped = (text: string): Shape => shapeOf(recipeOf(text));

describe('examples', () => {
  const one: Recipe = {
    pieces: [{ name: 'dog', size: '260', role: 'body', count: 1, run: [{ kind: 'bubble', length: 3, aim: ['up'] }] }],
    finishing: [],
  };
  test('shapeOf', () => expect(shapeOf(one).bubbles.length).toBe(1));
  test('skeletonOf', () => expect(skeletonOf(one).bubbles.length).toBe(1));
  test('no balloons, no bubbles', () => expect(shapeOf({ pieces: [], finishing: [] }).bubbles).toEqual([]));
});

describe('shapeOf', () => {
  test('a pair that is locked lies side by side and touches', () => {
    const { bubbles, fit } = shaped('balloon pair: 260 in body\nbubble 3 leg, down left, x 2 mirrored\nlock\n');
    // The second is made on the way back, so its far end is beside the near end of the first.
    const [one, other] = [bubbles[0]?.line[1] ?? [0, 0, 0], bubbles[1]?.line[2] ?? [0, 0, 0]];
    expect(Math.hypot(...[0, 1, 2].map((axis) => (one[axis] ?? 0) - (other[axis] ?? 0)))).toBeCloseTo(2 * 0.78, 1);
    expect(fit.penetration).toBeLessThan(0.05);
  });
  test('legs that point apart stand apart at the feet, legs that do not stay together', () => {
    const feet = (aim: string): number => {
      const { bubbles } = shaped(`balloon dog: 260 in body\nbubble 3 neck, down\nbubble 3 leg, ${aim}\nlock\n`);
      const [one, other] = [bubbles[1]?.line[2] ?? [0, 0, 0], bubbles[2]?.line[1] ?? [0, 0, 0]];
      return Math.hypot(...[0, 1, 2].map((axis) => (one[axis] ?? 0) - (other[axis] ?? 0)));
    };
    expect(feet('down, x 2')).toBeCloseTo(2 * 0.78, 1);
    expect(feet('down down down left, x 2 mirrored')).toBeGreaterThan(2 * 0.78 + 0.3);
    expect(feet('down left, x 2 mirrored')).toBeLessThan(2 * 0.78 + 0.8);
  });
  test.each(['down left', 'down left left', 'down left left left'])(
    'a pair aimed %s and its mirror image hangs down, one on either side',
    (aim) => {
      const { bubbles } = shaped(
        `balloon bear: 260 in body\nbubble 3 neck, down\nbubble 3 arm, ${aim}, x 2 mirrored\nlock\nbubble 3 body, down\n`,
      );
      const [lock, one, other] = [bubbles[1]?.line[0], bubbles[1]?.line[2], bubbles[2]?.line[1]].map((place) => place ?? [0, 0, 0]);
      for (const hand of [one, other]) expect(hand?.[1]).toBeLessThan((lock?.[1] ?? 0) - 1);
      expect((one?.[2] ?? 0) * (other?.[2] ?? 0)).toBeLessThan(0);
    },
  );
  test('three bubbles, one rolled through, are a triangle about one line', () => {
    const { bubbles } = shaped('balloon body: 260 in body\nbubble 4 body, down, x 2\nlock\nroll 4 body, down\n');
    const places = bubbles.map((bubble) => bubble.line[1] ?? [0, 0, 0]);
    for (const [i, a] of places.entries())
      for (const b of places.slice(i + 1)) expect(Math.hypot(a[0] - b[0], a[2] - b[2])).toBeCloseTo(2 * 0.78, 1);
  });
  test('a bend turns by its degrees', () => {
    const line = shaped('balloon cane: 260 in body\nbubble 20 stem, up\nbubble 9 hook, forward, bend 170 down\n').bubbles[1]?.line ?? [];
    const direction = (a = line[0], b = line[1]): readonly number[] => [0, 1, 2].map((axis) => (b?.[axis] ?? 0) - (a?.[axis] ?? 0));
    const [first, last] = [direction(), direction(line.at(-2), line.at(-1))];
    const cosine = first.reduce((sum, value, i) => sum + value * (last[i] ?? 0), 0) / (Math.hypot(...first) * Math.hypot(...last));
    const turn = (Math.acos(cosine) * 180) / Math.PI;
    expect(turn).toBeGreaterThan(120);
  });
  test('a figure that cannot close says which joint and by how much', () => {
    const edge = (from: number, to: number, length: number): Skeleton['bubbles'][number] => ({
      from,
      to,
      form: 'straight',
      length,
      radius: 0.78,
      role: 'body',
      piece: 0,
      size: '260',
      label: `side ${to}`,
      deed: 1,
    });
    const { problems } = solvedShape({
      joints: [{ names: ['foot'] }, { names: [] }, { names: [] }],
      bubbles: [edge(0, 1, 3), edge(1, 2, 3), edge(0, 2, 14)],
      knots: [],
      tucks: [],
      deeds: 1,
    });
    expect(problems[0]?.code).toBe('shape.open');
    expect(problems.map((problem) => problem.sentence).join(' ')).toMatch(
      /“foot”.* cannot close: the side \d .*misses it by \d+\.\d\d in\./u,
    );
  });
  test('a recipe beyond what can be kept apart says so and ends', () => {
    const { problems, bubbles } = shaped(
      'balloon a: 260 in body\nrepeat x 40 around up\nrepeat x 50 around forward\nbubble 2 part, forward\nend\nend\n',
    );
    expect(bubbles).toHaveLength(2000);
    expect(problems.some((problem) => problem.code === 'shape.too-large')).toBe(true);
  });
});

describe('axisOf', () => {
  test('the rubber of a straight bubble reaches just over its twists', () => {
    const axis = axisOf({
      line: [
        [0, 0, 0],
        [0, 1, 0],
        [0, 4, 0],
        [0, 5, 0],
      ],
      form: 'straight',
      radius: 1,
    });
    expect(axis).toEqual([
      [0, 0.76, 0],
      [0, 4.24, 0],
    ]);
  });
  test('a ball is its middle', () =>
    expect(
      axisOf({
        line: [
          [0, 0, 0],
          [0, 1, 0],
          [0, 2, 0],
        ],
        form: 'round',
        radius: 1,
      }),
    ).toEqual([[0, 1, 0]]));
});
