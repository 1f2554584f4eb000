import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { dog } from '../figures/dog.ts';
import { checkRecipe } from './check-recipe.ts';
import { formatRecipe } from './format-recipe.ts';
import { readRecipe } from './read-recipe.ts';
import { writeRecipe } from './write-recipe.ts';

const page = readFileSync(new URL('../../../../docs/recipes.md', import.meta.url), 'utf8');
const blocks = [...page.matchAll(/```(\w+)\n([\s\S]*?)```/gu)].map((match) => ({ kind: match[1], text: match[2] ?? '' }));

describe('docs/recipes.md', () => {
  const recipes = blocks.filter((block) => block.kind === 'recipe');
  test('has examples', () => expect(recipes.length).toBeGreaterThanOrEqual(8));
  test.each(recipes)('example %# can be read, is in its plain form and survives the round trip', ({ text }) => {
    const read = readRecipe(text);
    expect(read.ok || read.error).toBe(true);
    expect(formatRecipe(text)).toEqual({ ok: true, value: text });
    expect(read.ok && readRecipe(writeRecipe(read.value))).toEqual(read);
  });
  test('the dog of the page is the dog that comes with the program', () => expect(`\n${recipes[0]?.text}`).toBe(dog.recipe));
  test('problems are answered as shown', () => {
    const asked = blocks.flatMap((block, at) => (block.kind === 'problems' ? [{ text: block.text, answer: blocks[at + 1] }] : []));
    expect(asked.length).toBeGreaterThanOrEqual(4);
    for (const { text, answer } of asked) {
      const said = checkRecipe(text).map(
        ({ line, column, sentence, todo }) => `${line}:${column} ${[sentence, todo].filter(Boolean).join(' ')}\n`,
      );
      expect(answer).toEqual({ kind: 'answer', text: said.join('') });
    }
  });
});
