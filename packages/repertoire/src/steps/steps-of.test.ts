import { expect, test } from 'vitest';
import { readRecipe } from '../notation/read-recipe.ts';
import { plural, sayInches, sayNumber } from './say.ts';
import { stepsOf } from './steps-of.ts';

const steps = (text: string, colours?: Record<string, string>) => {
  const read = readRecipe(text);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return stepsOf(read.value, colours === undefined ? {} : { colours });
};

test('a dog, as a newcomer would be told', () => {
  const told = steps(
    'balloon dog: 260 in body\nleave 3.5\nbubble 3 nose\nmark face\nbubble 2 ear, x 2\nlock\nbubble rest tail\nballoon eyes: round-5 in eyes, x 2\njoin to face\nbubble 2 eye\nfinish with marker: a smile on nose',
    { body: 'red', eyes: 'white' },
  );
  expect(told.map(({ sentence }) => sentence)).toEqual([
    'Take a red 260. Pump it up, but leave the last 3.5 in without air, and tie it.',
    'Twist a bubble of 3 in for the nose. Remember this twist: it is “face”.',
    'Twist two bubbles of 2 in for the ears. Fold the two side by side and lock them: turn the twist before them and the one after them round one another three times.',
    'All that is left (about 33.5 in) is for the tail.',
    'Take two balloons, each a white 5-inch round. Pump one up to 2 in across and tie it.',
    'Tie its knot to “face”.',
    'This balloon is the eye.',
    'Make and join the other balloon in the same way.',
    'Draw a smile on the nose with the marker.',
  ]);
  expect(told.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
  expect(told.map(({ bubbles }) => bubbles)).toEqual([0, 1, 3, 4, 4, 4, 5, 6, 6]);
  expect(told.map(({ deeds }) => deeds)).toEqual([0, 2, 5, 6, 6, 7, 8, 10, 10]);
});
test('how it is done is told once', () => {
  const told = steps('balloon a: 260 in b\nbubble 2 ear, x 2\nlock\nbubble 3 leg, x 2\nlock\npinch 1 toe\nbubble 2\npinch 1 toe, x 2');
  expect(told.map(({ sentence }) => sentence).slice(2)).toEqual([
    'Twist two bubbles of 3 in for the legs. Fold the two side by side and lock them as before.',
    'Twist a bubble of 1 in for the toe, pull it out a little and turn its two ends round one another three times: a pinch.',
    'Twist a bubble of 2 in.',
    'Twist two bubbles of 1 in for the toes and make each a pinch as before.',
  ]);
});
test('every kind of move has its sentence', () => {
  const told = steps(
    'balloon a: 160 in b\nburp\napple 2 head\nbubble 2, soft\nbubble 2\nlock\nroll 2 belly\npinch 1 eye, split\nfold 4 wing, x 2\nloop 4 ring\nbubble 9 bow, bend 90 up\nlock to knot\ntuck eye into wing\npop ring\nflat 1 gap\nnote Hold on\ntrim\nfinish with sticker: eyes\nfinish with stick: the head on head',
  );
  expect(told.every(({ sentence }) => /^[A-Z].*\.$/u.test(sentence) && !sentence.includes('undefined'))).toBe(true);
  expect(new Set(told.map(({ sentence }) => sentence)).size).toBe(told.length);
});
test('words', () => {
  expect(['front foot', 'ear', 'box', 'berry', '耳', 'lower body'].map(plural)).toEqual([
    'front feet',
    'ears',
    'boxes',
    'berries',
    '耳',
    'lower body',
  ]);
  expect([sayNumber(2), sayNumber(40), sayInches(2.54)]).toEqual(['two', '40', '2.5 in']);
});
