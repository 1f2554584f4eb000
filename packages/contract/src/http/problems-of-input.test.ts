import { expect, test } from 'vitest';
import { z } from 'zod';
import { bookSchema } from '../book/book-schema.ts';
import { problemsOfInput } from './problems-of-input.ts';

test('what is no set of keys is told so; only a book is asked to begin with its version', () => {
  const wishes = z.strictObject({ hours: z.number() });
  const sentences = (schema: z.ZodType, value: unknown): readonly string[] =>
    problemsOfInput(schema, value).map(({ sentence }) => sentence);
  expect(sentences(wishes, [])).toEqual(['This has to be a set of keys, not an empty list.']);
  expect(sentences(wishes, 'twelve')).toEqual(['This has to be a set of keys, not "twelve".']);
  expect(sentences(bookSchema, [])).toEqual(['This is no book: a book is a set of keys.']);
  expect(problemsOfInput(wishes, { hours: 12 })).toEqual([]);
});
