import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readRecipe } from '../notation/read-recipe.ts';
import type { Recipe } from '../recipe.ts';
import { shapeOf } from '../shape/shape-of.ts';
import { cameraOf } from './camera.ts';
import { paintersOrder } from './order.ts';
import { pathThrough, short } from './path.ts';
import { pictureFrame, pictureOf } from './picture-of.ts';
import { rubberOf, rubbers } from './rubber.ts';

function recipeOf(text: string): Recipe {
  const read = readRecipe(text);
  if (!read.ok) throw new Error(read.error[0]?.sentence);
  return read.value;
}

describe('pictureOf', () => {
  const dog = recipeOf(
    'balloon dog: 260 in body\nbubble 3 nose, forward\nbubble 2 ear, up left, x 2 mirrored\nlock\nbubble 5 body, back\n',
  );
  test('example', () =>
    expect(
      pictureOf(
        { pieces: [{ name: 'dog', size: '260', role: 'body', count: 1, run: [{ kind: 'bubble', length: 3 }] }], finishing: [] },
        { body: 'red' },
      ).startsWith('<svg'),
    ).toBe(true));
  test('pictureFrame: the origin of a figure without bubbles is on the floor', () =>
    expect(pictureFrame(shapeOf({ pieces: [], finishing: [] }), cameraOf('front')).shift.y).toBe(212));
  test('uses the rubber of every role, a name or a shade of one’s own', () => {
    expect(pictureOf(dog, { body: 'green' })).toContain(rubbers.green?.body);
    expect(pictureOf(dog, { body: '#123456' })).toContain('#123456');
  });
  test('says what it shows, safely, or is hidden from those who do not see it', () => {
    expect(pictureOf(dog, {}, { title: 'a "dog" <b>' })).toContain('role="img" aria-label="a &quot;dog&quot; &lt;b&gt;"');
    expect(pictureOf(dog, {})).toContain('aria-hidden="true"');
  });
  test('has the size that is asked for', () => expect(pictureOf(dog, {}, { size: 100 })).toContain('width="100" height="110"'));
  test('shows less of the figure earlier on', () => {
    const rims = (upToMove: number): number => pictureOf(dog, { body: 'red' }, { upToMove }).split('#8c0f1b').length;
    expect(rims(0)).toBe(1);
    expect(rims(1)).toBeLessThan(rims(5));
  });
  test('what is new stands out, what was there is pale', () => {
    const body = rubbers.green?.body ?? '';
    const strokes = (options: object): number => pictureOf(dog, { body: 'green' }, options).split(`"${body}"`).length;
    expect(strokes({ upToMove: 3 })).toBeGreaterThan(strokes({ upToMove: 3, newAfterMove: 2 }));
    expect(strokes({ upToMove: 3, newAfterMove: 3 })).toBe(1);
  });
  test('a small picture takes less text', () =>
    expect(pictureOf(dog, {}, { small: true }).length).toBeLessThan(0.5 * pictureOf(dog, {}).length));
  test('a print is drawn', () => {
    const printed = (print: string): string =>
      pictureOf(recipeOf(`balloon a: round-5 in a, printed ${print}\nbubble 4 face, up\n`), { a: 'white' });
    const plain = pictureOf(recipeOf('balloon a: round-5 in a\nbubble 4 face, up\n'), { a: 'white' });
    for (const print of ['eyes', 'smile', 'dots', 'stripes', 'hearts', 'stars'])
      expect(printed(print).length, print).toBeGreaterThan(plain.length);
  });
  test('stands on the floor in a shadow that is no bubble', () =>
    expect(pictureOf(dog, {}).match(/^<svg[^>]*><g[^>]*><g fill="#000" opacity="\.\d+">/u)).not.toBeNull());
  test('eyes are drawn where the recipe puts them', () => {
    const text = 'balloon a: round-5 in face\nbubble 4 face, down\nfinish with marker: eyes and smile on face\n';
    expect(pictureOf(recipeOf(text), {}).split('matrix(').length).toBe(4);
  });
  test('a mouth is drawn in white where black would not show', () => {
    const face = recipeOf('balloon a: round-5 in face\nbubble 4 face, down\nfinish with marker: smile on face\n');
    expect(pictureOf(face, { face: 'yellow' })).toContain('stroke="#15171b"');
    expect(pictureOf(face, { face: 'black' })).not.toContain('stroke="#15171b"');
  });
  test('nothing to make is an empty picture', () => expect(pictureOf({ pieces: [], finishing: [] }, {})).toMatch(/^<svg.*<\/svg>$/u));
});

describe('paintersOrder', () => {
  const thing = (near: number, strand: number, place = 0) => ({ strand, place, covers: [{ x: 0, y: 0, near, radius: 2 }] });
  test('draws the far one first', () => expect(paintersOrder([thing(5, 0), thing(1, 1), thing(3, 2)])).toEqual([1, 2, 0]));
  test('draws what is on rubber after it, however far', () => {
    expect(paintersOrder([{ ...thing(-9, 5), on: 1 }, thing(1, 1)])).toEqual([1, 0]);
  });
  test('keeps the stretches of a bubble together, though one of them would do earlier', () => {
    const far = { strand: 0, place: 0, covers: [{ x: 0, y: 0, near: 0, radius: 2 }] };
    const between = { strand: 1, place: 0, covers: [{ x: 9, y: 0, near: 1, radius: 2 }] };
    const near = { strand: 0, place: 2, covers: [{ x: 9, y: 0, near: 5, radius: 2 }] };
    expect(paintersOrder([far, between, near])).toEqual([1, 0, 2]);
  });
  test('parts the stretches of bubbles that wind round one another, but not for a small thing', () => {
    const at = (x: number, near: number, strand: number, place: number) => ({ strand, place, covers: [{ x, y: 0, near, radius: 2 }] });
    const wound = [at(0, 5, 0, 0), at(20, 0, 0, 2), at(0, 0, 1, 0), at(20, 5, 1, 2)];
    const order = paintersOrder(wound);
    expect(order.indexOf(2)).toBeLessThan(order.indexOf(0));
    expect(order.indexOf(1)).toBeLessThan(order.indexOf(3));
    const twisted = [
      at(0, 5, 0, 0),
      at(20, 0, 0, 2),
      { ...at(0, 0, 1, 0), minor: true as const },
      { ...at(20, 5, 1, 2), minor: true as const },
    ];
    const whole = paintersOrder(twisted);
    expect(Math.abs(whole.indexOf(0) - whole.indexOf(1))).toBe(1);
  });
  test('gives every thing once, also when they go round in a circle', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 }), fc.integer({ min: -5, max: 5 })), {
          maxLength: 40,
        }),
        (spots) => {
          const things = spots.map(([x, y, near], strand) => ({
            strand,
            place: 0,
            covers: [
              { x, y, near, radius: 2 },
              { x: y, y: x, near: -near, radius: 1 },
            ],
          }));
          expect(paintersOrder(things).toSorted((a, b) => a - b)).toEqual(things.map((_, i) => i));
        },
      ),
      { numRuns: 50, seed: 1 },
    );
  });
});

describe('paths and rubber', () => {
  test('numbers are short', () => expect([0.04, -0.26, 12, 0.5, -0.04].map(short)).toEqual(['0', '-.3', '12', '.5', '0']));
  test('a path goes through its points', () => {
    expect(
      pathThrough(
        [
          { x: 1, y: 2 },
          { x: 4, y: 6 },
        ],
        0,
        1,
      ),
    ).toBe('M1 2l3 4');
    expect(pathThrough([{ x: 1, y: 2 }], 0, 0)).toBe('M1 2h.1');
  });
  test('rounding does not add up along a curve', () => {
    const line = Array.from({ length: 30 }, (_, i) => ({ x: i * 1.037, y: (i * i) / 40 }));
    const numbers =
      pathThrough(line, 0, 29)
        .match(/-?\d*\.?\d+/gu)
        ?.map(Number) ?? [];
    let [x, y] = [numbers[0] ?? 0, numbers[1] ?? 0];
    for (let i = 2; i + 5 < numbers.length; i += 6) [x, y] = [x + (numbers[i + 4] ?? 0), y + (numbers[i + 5] ?? 0)];
    expect(x).toBeCloseTo(29 * 1.037, 0);
    expect(y).toBeCloseTo((29 * 29) / 40, 0);
  });
  test('fourteen rubbers, and any shade', () => {
    expect(Object.keys(rubbers)).toHaveLength(14);
    expect(rubberOf('red')?.body).toBe('#d61f2e');
    expect(rubberOf('#336699')).toMatchObject({ body: '#336699', deep: '#1a334d' });
    expect(rubberOf('tartan')).toBeUndefined();
  });
});
