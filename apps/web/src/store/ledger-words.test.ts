import type { Book, StockMove } from '@twistwright/books';
import { date } from '@twistwright/units';
import { expect, test } from 'vitest';
import { ledgerOf } from './ledger-words.ts';

const day = (text: string) => date(`2026-06-${text}`);
const moves: readonly StockMove[] = [
  { id: 'c', day: day('09'), item: '260-red', kind: 'counted', place: 'home', count: 150 },
  { id: 'a', day: day('01'), item: '260-red', kind: 'arrived', place: 'home', bags: 2, perBag: 100 },
  { id: 'm', day: day('05'), item: '260-red', kind: 'moved', from: 'home', to: 'apron', count: 30 },
  { id: 'other', day: day('05'), item: '260-blue', kind: 'found', place: 'home', count: 7 },
  { id: 'u', day: day('06'), item: '260-red', kind: 'used', place: 'apron', count: 12, gig: 'fair' },
];
const book = {
  moves,
  gigs: [{ id: 'fair', name: 'Summer fair' }],
  places: [
    { id: 'home', name: 'shelf at home', kind: 'home' },
    { id: 'apron', name: 'apron', kind: 'apron' },
  ],
} as unknown as Book;

test('the ledger of an item is read from the latest day back; a count shows by how much the book was wrong', () => {
  expect(ledgerOf(book, '260-red').map(({ what, where, change, left }) => `${what}; ${where}; ${change}; ${left}`)).toEqual([
    '150 counted; shelf at home; -20; 168',
    '12 used, Summer fair; apron; -12; 188',
    '30 moved; shelf at home to apron; 0; 200',
    'two bags of 100 came in; shelf at home; 200; 200',
  ]);
  expect(ledgerOf(book, '646-blue')).toEqual([]);
});
