import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { bookProblems } from '@twistwright/books';
import { bookJsonSchema } from '@twistwright/contract';
import { recipeProblems } from '@twistwright/repertoire';
import { expect, test } from 'vitest';
import { problemsPage } from './problems-page.ts';

const page = (name: string): string => readFileSync(join(import.meta.dirname, '../docs', name), 'utf8');

test('docs/problems.md is what scripts/problems.ts writes', () => {
  expect(page('problems.md')).toBe(problemsPage());
});
test('docs/book.schema.json is what scripts/book-schema.ts writes', () => {
  expect(JSON.parse(page('book.schema.json'))).toEqual(bookJsonSchema());
});
test('every code is part.what in small letters and has one sentence; none is declared twice', () => {
  const codes = [...Object.entries(bookProblems), ...Object.entries(recipeProblems)];
  expect(codes.length).toBeGreaterThan(80);
  expect(new Set(codes.map(([code]) => code)).size).toBe(codes.length);
  for (const [code, sentence] of codes) {
    expect(code).toMatch(/^[a-z]+\.[a-z]+(?:-[a-z]+)*$/);
    expect(sentence).toMatch(/^[A-Z].*\.$/);
  }
});
