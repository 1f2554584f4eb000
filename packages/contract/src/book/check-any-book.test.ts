import { bookProblems, checkBook } from '@twistwright/books';
import { recipeProblems } from '@twistwright/repertoire';
import { date } from '@twistwright/units';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyBook } from '../testing/any-book.ts';
import { readPlacedBook } from './read-book.ts';
import { writeBook } from './write-book.ts';

test('law: any book of the right form is checked to the end; every problem is a declared one, a sentence, and lies in the file', () => {
  const codes = new Set([...Object.keys(bookProblems), ...Object.keys(recipeProblems)]);
  const seen = new Set<string>();
  fc.assert(
    fc.property(anyBook, (book) => {
      const text = writeBook(book, 'yaml');
      const read = readPlacedBook(text, { name: 'any.yaml' });
      if (!read.ok) throw new Error(JSON.stringify(read.error));
      for (const problem of checkBook(read.value.book, { today: date('2026-06-01') })) {
        seen.add(problem.code);
        expect(codes).toContain(problem.code);
        expect(problem.sentence).toMatch(/^\S[\s\S]*[.?]$/);
        const { line = 0, column = 0 } = read.value.placed(problem);
        expect((text.split('\n')[line - 1] ?? '').length).toBeGreaterThanOrEqual(column - 1);
        expect(line).toBeGreaterThan(0);
      }
    }),
    { numRuns: 200, seed: 8 },
  );
  expect(seen.size).toBeGreaterThan(20);
});
