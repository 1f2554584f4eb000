import { expect, test } from 'vitest';
import { z } from 'zod';
import { shippedFigures } from '../figures/shipped-figures.ts';
import { readRecipe } from './read-recipe.ts';
import { recipeJsonSchema } from './recipe-json-schema.ts';

const schema = z.fromJSONSchema(recipeJsonSchema as unknown as Parameters<typeof z.fromJSONSchema>[0]);

test('every shipped recipe is of the schema', () => {
  for (const figure of shippedFigures) {
    const read = readRecipe(figure.recipe);
    expect(read.ok && schema.safeParse(read.value).success, figure.id).toBe(true);
  }
  expect(shippedFigures.length).toBeGreaterThan(44);
});
test.each([
  [{}],
  [{ pieces: [{ name: 'a', size: '260', role: 'b', count: 0, run: [] }], finishing: [] }],
  [{ pieces: [{ name: 'a', size: '260', role: 'b', count: 1, run: [{ kind: 'bubble' }] }], finishing: [] }],
  [{ pieces: [{ name: 'a', size: '260', role: 'b', count: 1, run: [{ kind: 'bubble', length: 0 }] }], finishing: [] }],
  [{ pieces: [{ name: 'a', size: '260', role: 'b', count: 1, run: [{ kind: 'lock', last: 2, to: 'n' }] }], finishing: [] }],
  [{ pieces: [], finishing: [], more: 1 }],
])('%j is not', (value) => {
  expect(schema.safeParse(value).success).toBe(false);
});
