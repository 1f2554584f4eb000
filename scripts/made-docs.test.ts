import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkBook } from '@twistwright/books';
import { bookJsonSchema, readBook } from '@twistwright/contract';
import { recipeJsonSchema } from '@twistwright/repertoire';
import { date } from '@twistwright/units';
import { describe, expect, test } from 'vitest';
import { problemParts, problemsPage } from './problems-page.ts';

const root = join(import.meta.dirname, '..');
const page = (name: string): string => readFileSync(join(root, 'docs', name), 'utf8');

test('docs/problems.md is what scripts/problems.ts writes', () => {
  expect(page('problems.md')).toBe(problemsPage());
});
test('docs/book.schema.json is what scripts/book-schema.ts writes', () => {
  expect(JSON.parse(page('book.schema.json'))).toEqual(bookJsonSchema());
});
test('docs/recipe.schema.json is what scripts/recipe-schema.ts writes', () => {
  expect(JSON.parse(page('recipe.schema.json'))).toEqual(recipeJsonSchema);
});

test('the book in docs/book.md can be read and has nothing wrong with it', () => {
  const text = /```yaml\n([\s\S]*?)```/.exec(page('book.md'))?.[1] ?? '';
  const read = readBook(text, { name: 'book.yaml' });
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  expect(read.value.gigs.map((gig) => gig.id)).toEqual(['fair']);
  expect(checkBook(read.value, { today: date('2026-06-01') })).toEqual([]);
});

describe('codes of problems', () => {
  const declared = problemParts.flatMap(({ codes }) => Object.entries(codes));
  const known = new Set(declared.map(([code]) => code));
  /** Codes as they stand in a text of ours: as the code of a problem, or as the first argument of what makes one. */
  const used = (text: string): readonly string[] =>
    [
      ...text.matchAll(
        /(?:\bcode: (?:[^'\n]*\? )?|(?:errorAt|warningAt|frameProblem|say|report|refusal)\(\s*)'([a-z]+\.[a-z-]+)'(?: : '([a-z]+\.[a-z-]+)')?/g,
      ),
    ].flatMap((match) => match.slice(1).filter((code) => code !== undefined));
  test('each is part.what in small letters and has one sentence; none is declared twice', () => {
    expect(known.size).toBe(declared.length);
    expect(known.size).toBeGreaterThan(120);
    for (const [code, sentence] of declared) {
      expect(code).toMatch(/^[a-z]+\.[a-z]+(?:-[a-z]+)*$/);
      expect(sentence).toMatch(/^[A-Z].*\.$/);
    }
  });
  test('every one that is used is declared', () => {
    const files = globSync(['packages/*/src/**/*.ts', 'apps/*/src/**/*.{ts,tsx}'], { cwd: root }).filter(
      (file) => !file.includes('.test.'),
    );
    const found = files.flatMap((file) => used(readFileSync(join(root, file), 'utf8')).map((code) => ({ file, code })));
    expect(new Set(found.map(({ code }) => code)).size).toBeGreaterThan(90);
    expect(found.filter(({ code }) => !known.has(code))).toEqual([]);
  });
  test('one that is not declared would be seen', () => {
    expect(used("errorAt(\n  'gig.invented', path, '')")).toEqual(['gig.invented']);
    expect(used("code: budget === 0 ? 'kit.one' : 'kit.two',")).toEqual(['kit.one', 'kit.two']);
  });
});
