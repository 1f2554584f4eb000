import type { Book, Gig, Item, StockMove } from '@twistwright/books';
import fc from 'fast-check';
import { expect, expectTypeOf, test } from 'vitest';
import type { z } from 'zod';
import { anyBook } from '../testing/any-book.ts';
import { bookJsonSchema } from './book-json-schema.ts';
import { bookSchema } from './book-schema.ts';
import type { itemSchema } from './figure-schema.ts';
import type { gigSchema } from './gig-schema.ts';
import type { stockMoveSchema } from './supply-schema.ts';

/** What a type is without `readonly`, all the way down, as schemas give it; brands stay. */
type Plain<T> = T extends string | number | boolean | undefined
  ? T
  : T extends readonly (infer E)[]
    ? Plain<E>[]
    : { -readonly [K in keyof T]: Plain<T[K]> };

test('schemas give exactly the domain types, neither more nor less', () => {
  expectTypeOf<Plain<z.output<typeof bookSchema>>>().toEqualTypeOf<Plain<Book>>();
  expectTypeOf<Plain<z.output<typeof gigSchema>>>().toEqualTypeOf<Plain<Gig>>();
  expectTypeOf<Plain<z.output<typeof itemSchema>>>().toEqualTypeOf<Plain<Item>>();
  expectTypeOf<Plain<z.output<typeof stockMoveSchema>>>().toEqualTypeOf<Plain<StockMove>>();
});
test('law: any book of the right form passes and comes out as it went in', () => {
  fc.assert(
    fc.property(anyBook, (book) => {
      expect(bookSchema.parse(book)).toEqual(book);
    }),
    { numRuns: 100, seed: 3 },
  );
});
test('a key that is there and undefined is not a key that is missing', () => {
  const book = { book: 1, business: { name: 'a', currency: 'GBP', zone: 'UTC', town: undefined } };
  expect(bookSchema.safeParse(book).success).toBe(false);
});
test('the JSON Schema refuses unknown keys everywhere, and asks for version and business only', () => {
  const schema = bookJsonSchema() as { readonly $defs: Readonly<Record<string, { readonly required?: readonly string[] }>> };
  expect(schema.$defs.Book?.required).toEqual(['book', 'business']);
  const open: string[] = [];
  const visit = (value: unknown, path: string): void => {
    if (typeof value !== 'object' || value === null) return;
    const node = value as Readonly<Record<string, unknown>>;
    if (node.type === 'object' && node.properties !== undefined && node.additionalProperties !== false) open.push(path);
    for (const [key, part] of Object.entries(node)) visit(part, `${path}.${key}`);
  };
  visit(schema, '');
  expect(open).toEqual([]);
  expect(Object.keys(schema.$defs).length).toBeGreaterThan(15);
});
