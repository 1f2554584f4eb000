import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { bubbleKinds, directions } from '../recipe.ts';
import { formatRecipe } from './format-recipe.ts';
import { readRecipe } from './read-recipe.ts';
import { lineWords, type RecipeWord, recipeWords } from './vocabulary.ts';

const all = recipeWords.flatMap(({ words }) => words);
const page = readFileSync(new URL('../../../../docs/recipes.md', import.meta.url), 'utf8');

/** A recipe in which the example of a word makes sense. */
function around({ word, example }: RecipeWord): string {
  if (example.startsWith('balloon')) return `${example}\n`;
  if (word === 'minutes' || (word === 'finish' && example.startsWith('finish')))
    return `balloon one: 260 in body\n  bubble 3 nose\n${example}\n`;
  if (['leave', 'inflate', 'keep', 'burp', 'tulip', 'apple'].includes(word)) return `balloon one: 260 in body\n  ${example}\n`;
  if (word === 'repeat') return `balloon one: 260 in body\n  ${example}\n    bubble 1\n  end\n`;
  if (word === 'end') return `balloon one: 260 in body\n  repeat x 2\n    bubble 1\n  ${example}\n`;
  const head = 'balloon one: 260 in body\n  bubble 1 nose\n  bubble 1 ear\n  bubble 1 bridge\n';
  if (word === 'join') return `${head}  mark neck\nballoon two: 260 in body\n  ${example}\n`;
  if (word === 'roll') return `${head}  lock\n  ${example}\n`;
  return `${head}  ${example}\n`;
}

describe('the words of the notation', () => {
  test.each(all)('$word: “$example” can be read as it stands', (word) => {
    const read = readRecipe(around(word));
    expect(read.ok || read.error).toBe(true);
    if (word.stands !== 'length') expect(formatRecipe(around(word))).toEqual({ ok: true, value: around(word) });
    expect(word.example).toContain(word.writes);
    expect(word.writes.split(/[\s/]/u)).toContain(word.word);
    expect(word.says.length).toBeLessThanOrEqual(60);
  });
  test('every word that starts a line, every kind of bubble and every direction is told once', () => {
    expect(new Set(lineWords).size).toBe(lineWords.length);
    expect(lineWords).toEqual(expect.arrayContaining([...bubbleKinds]));
    const options = all.filter(({ stands }) => stands === 'option').map(({ word }) => word);
    expect(new Set(options).size).toBe(options.length);
    expect(options).toEqual(expect.arrayContaining([...directions]));
  });
  test.each(all)('$word is explained in docs/recipes.md', ({ word }) => expect(page).toMatch(new RegExp(`\\b${word}\\b`, 'u')));
});
