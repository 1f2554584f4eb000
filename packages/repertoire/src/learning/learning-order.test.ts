import { expect, test } from 'vitest';
import { shippedFigures } from '../figures/shipped-figures.ts';
import { readRecipe } from '../notation/read-recipe.ts';
import { learningOrder } from './learning-order.ts';
import { techniquesOf } from './techniques.ts';

const figures = shippedFigures.map(({ id, recipe, difficulty, minutes }) => {
  const read = readRecipe(recipe);
  if (!read.ok) throw new Error(id);
  return { id, recipe: read.value, difficulty, minutes: minutes.median };
});

test('every figure once; what one adds was not used before and is used by it', () => {
  const lessons = learningOrder(figures);
  expect(lessons.map(({ id }) => id).sort()).toEqual(figures.map(({ id }) => id).sort());
  const known = new Set<string>();
  for (const { adds, uses } of lessons) {
    expect(adds).toEqual(uses.filter((technique) => !known.has(technique)));
    for (const technique of adds) known.add(technique);
  }
});
test('no figure left over at any point would have been less new', () => {
  const lessons = learningOrder(figures);
  const difficulty = new Map(figures.map((figure) => [figure.id, figure.difficulty]));
  const known = new Set<string>();
  let hardest = 1;
  for (const [at, { id, adds }] of lessons.entries()) {
    const news = (uses: readonly string[], hard: number) =>
      uses.filter((technique) => !known.has(technique)).length + Math.max(0, hard - hardest);
    for (const later of lessons.slice(at))
      expect(news(later.uses, difficulty.get(later.id) ?? 0)).toBeGreaterThanOrEqual(news(adds, difficulty.get(id) ?? 0));
    for (const technique of adds) known.add(technique);
    hardest = Math.max(hardest, difficulty.get(id) ?? 0);
  }
});
test('what is much harder waits, though its twists are known: the show-pieces come last', () => {
  const order = learningOrder(figures).map(({ id }) => id);
  for (const { id } of figures.filter(({ difficulty }) => difficulty === 5))
    expect(order.slice(order.indexOf(id)).every((later) => figures.find((figure) => figure.id === later)?.difficulty === 5)).toBe(true);
  expect(order.indexOf('dog')).toBeLessThan(10);
});
test('what hands have already comes first, whatever the order of the list', () => {
  const lessons = learningOrder(figures, ['basic twist', 'lock']);
  expect(lessons[0]?.adds).toEqual([]);
  expect(learningOrder(figures.toReversed(), ['basic twist', 'lock'])).toEqual(lessons);
});
test('techniques in order of first use', () => {
  const read = readRecipe(
    'balloon a: 260 in b\nbubble 3\npinch 1, split\nrepeat x 2\nbubble 9, bend 90 up\nbubble 2\nlock\nend\nballoon e: round-5 in e\nbubble 3',
  );
  expect(read.ok && techniquesOf(read.value)).toEqual(['basic twist', 'pinch', 'split', 'bend', 'lock']);
});
