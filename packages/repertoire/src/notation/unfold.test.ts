import { describe, expect, test } from 'vitest';
import { readRecipe } from './read-recipe.ts';
import { unfold } from './unfold.ts';
import { turned, turnOf, vectorOf } from './vector.ts';

const unfolded = (text: string) => {
  const read = readRecipe(text);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return unfold(read.value);
};
const edges = (text: string) => unfolded(text).bubbles.map(({ from, to }) => `${from}-${to}`);
const body = (lines: string) => `balloon a: 260 in body\n${lines}`;

describe('joints', () => {
  test('bubbles in a row', () => expect(edges(body('bubble 1\nbubble 1'))).toEqual(['0-1', '1-2']));
  test('loops start and end in one twist', () =>
    expect(edges(body('bubble 1\npinch 1\nfold 4\nloop 4'))).toEqual(['0-1', '1-1', '1-1', '1-1']));
  test('a locked pair has two joints', () =>
    expect(edges(body('bubble 1\nbubble 2, x 2\nlock\nbubble 1'))).toEqual(['0-1', '1-2', '2-1', '1-3']));
  test('lock last counts pinches', () =>
    expect(edges(body('bubble 3\npinch 1\nbubble 2\npinch 1\nbubble 3\nlock last 5\nbubble 1'))).toEqual([
      '0-1',
      '1-1',
      '1-2',
      '2-2',
      '2-0',
      '0-3',
    ]));
  test('rolled through: three bubbles between the same two joints', () =>
    expect(edges(body('bubble 4, x 2\nlock\nroll 4\nbubble 1'))).toEqual(['0-1', '1-0', '0-1', '1-2']));
  test('a ring by its knot', () => expect(edges(body('bubble 4, x 3\nlock to knot'))).toEqual(['0-1', '1-2', '2-0']));
  test('split: two halves with a joint between', () => {
    expect(edges(body('bubble 2\npinch 1, split'))).toEqual(['0-1', '1-2', '2-1']);
    expect(unfolded(body('bubble 3, split')).bubbles.map(({ share, length }) => [share, length])).toEqual([
      [0.5, 3],
      [0.5, 3],
    ]);
  });
  test('a popped bubble stays in the list, marked', () => {
    expect(unfolded(body('bubble 4 leg\nbubble 2 bridge\nbubble 4 leg\npop bridge')).bubbles.map((bubble) => bubble.popped)).toEqual([
      undefined,
      true,
      undefined,
    ]);
  });
  test('pieces are joined at marks, copies too', () => {
    const text = `${body('bubble 2\nmark n\nbubble 3')}\nballoon b: 160 in c, x 2\njoin to n\nbubble 1\n`;
    expect(edges(text)).toEqual(['0-1', '1-2', '1-3', '1-4']);
    expect(unfolded(text).marks).toEqual(new Map([['n', 1]]));
  });
});

describe('directions', () => {
  const aims = (text: string) => unfolded(text).bubbles.map(({ aim }) => aim?.map((part) => Number(part.toFixed(6)) + 0));
  test('a free end is pointed at, also by the first bubble', () => {
    expect(aims(body('bubble 3, forward\nbubble 5\nbubble 3, up'))).toEqual([[-1, 0, 0], undefined, [0, 0, 1]]);
  });
  test('a knot that is tied to something is not free', () => {
    expect(aims(`${body('mark k\nbubble 3\nbubble 2')}\nballoon b: 260 in c\njoin to k\nbubble 3, up\nbubble 2`)[2]).toEqual([0, 0, 1]);
  });
  test('both of a locked pair point away from their lock, the second mirrored', () => {
    const half = Number(Math.sqrt(0.5).toFixed(6));
    expect(aims(body('bubble 1\nbubble 2, up left, x 2 mirrored\nlock')).slice(1)).toEqual([
      [0, half, half],
      [0, half, -half],
    ]);
  });
  test('copies around a direction', () => {
    expect(aims(body('loop 4, forward, x 4 around up'))).toEqual([
      [1, 0, 0],
      [0, 1, 0],
      [-1, 0, 0],
      [0, -1, 0],
    ]);
  });
  test('groups in groups turn together', () => {
    expect(aims(body('repeat x 2 around up\nloop 4, left, x 2 mirrored\nend'))).toEqual([
      [0, 1, 0],
      [0, -1, 0],
      [0, -1, 0],
      [0, 1, 0],
    ]);
  });
  test('turns agree with sine and cosine', () => {
    for (let i = -50; i <= 50; i++) {
      expect(turnOf(i / 37).cosine).toBeCloseTo(Math.cos((2 * Math.PI * i) / 37), 14);
      expect(turnOf(i / 37).sine).toBeCloseTo(Math.sin((2 * Math.PI * i) / 37), 14);
    }
    expect(turned(vectorOf(['left']), 'forward', 0.25)).toEqual([0, 0, 1]);
  });
});

test('deeds are what is done one after the other, with how many bubbles there are then', () => {
  const { deeds } = unfolded('balloon a: 260 in b, x 2\nbubble 2, x 2\nlock');
  expect(deeds.map(({ copy, move, bubbles }) => [copy, move.kind, bubbles])).toEqual([
    [0, 'bubble', 1],
    [0, 'bubble', 2],
    [0, 'lock', 2],
    [1, 'bubble', 3],
    [1, 'bubble', 4],
    [1, 'lock', 4],
  ]);
});
