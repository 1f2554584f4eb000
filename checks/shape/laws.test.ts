/**
 * Laws that every shape and picture keeps, over all shipped figures. Bubbles are rubber that can neither vanish nor pass through other
 * rubber, and a twist is one place: common practice, no published source.
 */
import { pictureOfShape, readRecipe, type Shape, shapeOf, shippedFigures } from '@twistwright/repertoire';
import { describe, expect, test } from 'vitest';

type Place = readonly [number, number, number];

const figures = shippedFigures.map((figure) => {
  const recipe = readRecipe(figure.recipe);
  if (!recipe.ok) throw new Error(`${figure.id}: ${recipe.error[0]?.sentence}`);
  return { id: figure.id, recipe: recipe.value, shape: shapeOf(recipe.value), fill: figure.colourways[0]?.fill ?? {} };
});

/** Figures whose recipe is not the same on both sides; all others come out alike left and right. */
const oneSided = ['crown', 'number-one', 'palm-island', 'parrot', 'pumpkin', 'snake'];

function extentOf(shape: Shape): number {
  const points = shape.bubbles.flatMap((bubble) => bubble.line);
  return Math.max(
    ...[0, 1, 2].map((axis) => Math.max(...points.map((p) => p[axis] as number)) - Math.min(...points.map((p) => p[axis] as number))),
  );
}

/** How far the worst bubble is from the mirror image of another, as a share of the figure's size. */
function unevenness(shape: Shape): number {
  const mirrored = ([x, y, z]: Place): Place => [x, y, -z];
  const far = (one: readonly Place[], other: readonly Place[]): number =>
    Math.max(...one.map((p, i) => Math.hypot(...[0, 1, 2].map((axis) => (p[axis] as number) - ((other[i] as Place)[axis] as number)))));
  const misses = shape.bubbles.map((bubble) => {
    const image = bubble.line.map(mirrored);
    const likely = shape.bubbles.filter((other) => other.line.length === image.length && other.form === bubble.form);
    return Math.min(...likely.flatMap((other) => [far(image, other.line), far(image, other.line.toReversed())]));
  });
  return Math.max(...misses) / extentOf(shape);
}

describe.each(figures)('$id', ({ id, recipe, shape, fill }) => {
  test('every place is a finite number', () => {
    for (const bubble of shape.bubbles)
      for (const place of bubble.line) for (const value of place) expect(Number.isFinite(value)).toBe(true);
  });
  test('joints close within 2 % of a radius and bubbles keep their length within 0.5 %', () => {
    expect(shape.problems).toEqual([]);
    expect(shape.fit.lengthError).toBeLessThanOrEqual(0.005);
    expect(shape.fit.gap.inches).toBeLessThanOrEqual(0.02 * Math.min(...shape.bubbles.map((bubble) => bubble.radius)));
  });
  test('no bubble enters another by more than 5 % of a radius', () => expect(shape.fit.penetration).toBeLessThanOrEqual(0.05));
  test('stands on the floor', () => {
    const lowest = Math.min(
      ...shape.capsules.flatMap(({ a, b, radius }) => [a[1] - radius, b[1] - radius]),
      ...shape.balls.map(({ at, radius }) => at[1] - radius),
    );
    expect(lowest).toBeCloseTo(0, 9);
  });
  test('left and right are alike within 3 % where the recipe is', () => {
    if (!oneSided.includes(id)) expect(shape.symmetric).toBe(true);
    if (shape.symmetric) expect(unevenness(shape)).toBeLessThan(0.03);
  });
  test('the same recipe gives the same bits again', () => expect(shapeOf(recipe)).toEqual(shape));
  test('its picture is small, finite, safe to set into a page, and not empty', () => {
    const picture = pictureOfShape(shape, recipe.finishing, fill, { title: id });
    expect(picture.length).toBeLessThan(40_000);
    expect(picture).not.toMatch(/NaN|Infinity|undefined|<style|<script| id=/u);
    expect(picture.match(/<path|<circle/gu)?.length).toBeGreaterThan(2);
    expect(picture.split('<g').length).toBe(picture.split('</g>').length);
  });
  test('the figure so far grows with every deed and ends as the figure', () => {
    const sizes = Array.from(
      { length: shape.deeds + 1 },
      (_, upToMove) => shape.bubbles.filter((bubble) => bubble.deed <= upToMove).length,
    );
    expect(sizes).toEqual(sizes.toSorted((a, b) => a - b));
    expect(pictureOfShape(shape, recipe.finishing, fill, { upToMove: shape.deeds })).toBe(pictureOfShape(shape, recipe.finishing, fill));
  });
});
