import type { Book } from '@twistwright/books';
import { expect, test } from 'vitest';
import { sayMix } from './say-kit.ts';

const book: Pick<Book, 'items' | 'colours'> = {
  colours: [{ id: 'rose', name: 'deep rose' }],
  items: [
    { id: '260-rose', kind: 'balloon', size: '260', colour: 'rose' },
    { id: '260-sky', kind: 'balloon', size: '260', colour: 'sky' },
  ],
};
test('a mixed bag says what to count on, and what may be missing', () => {
  const rose = { item: '260-rose', expected: 10, atLeast: 6, chanceOfNone: 0.0000143 };
  const sky = { item: '260-sky', expected: 3, atLeast: 1, chanceOfNone: 0.05 };
  expect(sayMix(book, {})).toBeUndefined();
  expect(sayMix(book, { mix: [rose] })).toBe('Colours by chance: at least 6 deep rose, each in 9 of 10 purchases.');
  expect(sayMix(book, { mix: [rose, sky] })).toBe(
    'Colours by chance: at least 6 deep rose and 1 sky, each in 9 of 10 purchases; no sky at all in 1 of 20.',
  );
});
