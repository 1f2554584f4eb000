import { emptyBook } from '@twistwright/books';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyBook } from '../testing/any-book.ts';
import { readBook } from './read-book.ts';
import { type BookForm, writeBook } from './write-book.ts';

test.each<BookForm>(['yaml', 'json'])('law: writing as %s and reading gives the same book, and writing that the same text', (form) => {
  fc.assert(
    fc.property(anyBook, (book) => {
      const text = writeBook(book, form);
      const read = readBook(text, { name: `book.${form}` });
      expect(read).toEqual({ ok: true, value: book });
      if (read.ok) expect(writeBook(read.value, form)).toBe(text);
    }),
    { numRuns: 300, seed: 20260601 },
  );
});
test('both forms say the same', () => {
  fc.assert(
    fc.property(anyBook, (book) => {
      expect(readBook(writeBook(book, 'yaml'), { name: 'a.yaml' })).toEqual(readBook(writeBook(book, 'json'), { name: 'a.json' }));
    }),
    { numRuns: 50, seed: 1 },
  );
});
test('keys come in the order of the schema, whatever the order in the book; recipes are blocks of text', () => {
  const book = {
    ...emptyBook({ zone: 'Europe/London', currency: 'GBP', name: 'Six Turns' }),
    figures: [
      {
        colourways: [{ fill: { body: 'red' }, name: 'red', id: 'red' }],
        recipe: 'balloon dog: 260 in body\n  bubble 3 nose, forward\n',
        name: 'Dog',
        id: 'dog',
      },
    ],
  };
  expect(writeBook(book, 'yaml')).toBe(`book: 1

business:
  name: Six Turns
  currency: GBP
  zone: Europe/London
colours: []
items: []

figures:
  - id: dog
    name: Dog
    recipe: |
      balloon dog: 260 in body
        bubble 3 nose, forward
    colourways:
      - { id: red, name: red, fill: { body: red } }
artists: []
places: []
suppliers: []
offers: []
clients: []
gigs: []
needs: []
orders: []
moves: []
`);
});
