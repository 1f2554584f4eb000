import { describe, expect, test } from 'vitest';
import { airOf } from '../air/air-of.ts';
import { minutesOf } from '../air/minutes-of.ts';
import { formatRecipe } from '../notation/format-recipe.ts';
import { readRecipe } from '../notation/read-recipe.ts';
import { unfold } from '../notation/unfold.ts';
import { writeRecipe } from '../notation/write-recipe.ts';
import { piecesOf } from '../recipe.ts';
import { stepsOf } from '../steps/steps-of.ts';
import { figureTags, plainColours } from './shipped-figure.ts';
import { shippedFigures } from './shipped-figures.ts';

/** Figures that use their balloon to the last inch, and are known to. */
const tight: readonly string[] = ['pair-of-dogs'];

describe('the repertoire that comes with the program', () => {
  test('is big enough, of all kinds, with two show-pieces of more than eight balloons', () => {
    expect(shippedFigures.length).toBeGreaterThanOrEqual(45);
    expect(new Set(shippedFigures.map(({ id }) => id)).size).toBe(shippedFigures.length);
    expect(new Set(shippedFigures.map(({ group }) => group)).size).toBe(12);
    const big = shippedFigures.filter(({ recipe }) => {
      const read = readRecipe(recipe);
      return read.ok && piecesOf(read.value).reduce((sum, { count }) => sum + count, 0) > 8;
    });
    expect(big.length).toBeGreaterThanOrEqual(2);
    expect(big.every(({ tags }) => tags.includes('show-piece'))).toBe(true);
  });
});

describe.each(shippedFigures.map((figure) => [figure.id, figure] as const))('%s', (id, figure) => {
  const read = readRecipe(figure.recipe);
  const recipe = read.ok ? read.value : { pieces: [], finishing: [] };
  test('can be read, survives the round trip and formatting', () => {
    expect(read.ok || read.error).toBe(true);
    expect(readRecipe(writeRecipe(recipe))).toEqual(read);
    const formatted = formatRecipe(figure.recipe);
    expect(formatted.ok && readRecipe(formatted.value)).toEqual(read);
  });
  test('fits its balloons', () => {
    const air = airOf(recipe);
    expect(air.verdict).toBe(tight.includes(id) ? 'tight' : 'fits');
    for (const piece of air.pieces) expect(piece.litres).toBeGreaterThan(0);
  });
  test('hangs together: every balloon is reached from the first', () => {
    const { bubbles } = unfold(recipe);
    const reached = new Set([bubbles[0]?.from]);
    for (let round = 0; round < bubbles.length; round++) {
      for (const { from, to } of bubbles) if (reached.has(from) || reached.has(to)) reached.add(from).add(to);
    }
    expect(bubbles.length).toBeGreaterThan(0);
    expect(bubbles.every(({ from }) => reached.has(from))).toBe(true);
  });
  test('has text for every step, pictures that grow, and covers all bubbles', () => {
    const steps = stepsOf(recipe);
    expect(steps.length).toBeGreaterThan(1);
    for (const [at, { sentence, bubbles }] of steps.entries()) {
      expect(sentence).toMatch(/^[A-Z\d].*[.!?]$/u);
      expect(sentence).not.toMatch(/undefined|NaN/u);
      expect(bubbles).toBeGreaterThanOrEqual(steps[at - 1]?.bubbles ?? 0);
    }
    expect(steps.at(-1)?.bubbles).toBe(unfold(recipe).bubbles.length);
  });
  test('has minutes, difficulty and cautions', () => {
    expect(figure.minutes.median).toBeGreaterThan(0);
    expect(figure.minutes.sigma).toBeGreaterThan(0);
    expect(minutesOf(recipe).minutes / figure.minutes.median).toBeGreaterThan(0.3);
    expect(minutesOf(recipe).minutes / figure.minutes.median).toBeLessThan(3);
    expect([1, 2, 3, 4, 5]).toContain(figure.difficulty);
    expect(figure.tags).toContain('not for under threes');
    expect(figure.tags.every((tag) => figureTags.includes(tag))).toBe(true);
    expect(figure.tags.includes('sword-like')).toBe(/sword|foil/u.test(id));
    expect(figure.tags.includes('wearable')).toBe(figure.group === 'hats' || figure.group === 'bracelets');
  });
  test('has colourways that fill every role with plain colours, shares that add up', () => {
    const roles = [...new Set(recipe.pieces.map(({ role }) => role))].sort();
    expect(figure.colourways.length).toBeGreaterThan(0);
    for (const { fill } of figure.colourways) {
      expect(Object.keys(fill).sort()).toEqual(roles);
      expect(Object.values(fill).every((colour) => plainColours.includes(colour))).toBe(true);
    }
    expect(figure.colourways.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(new Set(figure.colourways.map((way) => way.id)).size).toBe(figure.colourways.length);
  });
});
