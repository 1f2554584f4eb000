import { emptyBook } from '@twistwright/books';
import { date } from '@twistwright/units';
import { expect, test } from 'vitest';
import { bookAfter, type Change, newId, touched, undoing } from './change.ts';
import { todayIn } from './today.ts';

const book = {
  ...emptyBook({ name: 'Nine Knots', currency: 'GBP', zone: 'UTC' }),
  clients: [
    { id: 'a', name: 'A' },
    { id: 'b', name: 'B' },
  ],
};

test('a known entry keeps its place, a new one stands at the end, a removed one is gone', () => {
  expect(bookAfter(book, { list: 'clients', put: { id: 'a', name: 'Anna' } }).clients).toEqual([
    { id: 'a', name: 'Anna' },
    { id: 'b', name: 'B' },
  ]);
  expect(bookAfter(book, { list: 'clients', put: { id: 'c', name: 'C' } }).clients.at(-1)).toEqual({ id: 'c', name: 'C' });
  expect(bookAfter(book, { list: 'clients', remove: 'a' }).clients).toEqual([{ id: 'b', name: 'B' }]);
});
const changes: readonly Change[] = [
  { list: 'clients', put: { id: 'a', name: 'Anna' } },
  { list: 'clients', put: { id: 'c', name: 'C' } },
  { list: 'clients', remove: 'b' },
  { business: { name: 'Ten Knots', currency: 'GBP', zone: 'UTC' } },
];
test.each(changes)('undoing a change gives the same entries again: %j', (change) => {
  const again = bookAfter(bookAfter(book, change), undoing(book, change));
  expect([...again.clients].sort((x, y) => (x.id < y.id ? -1 : 1))).toEqual(book.clients);
  expect(again.business).toEqual(book.business);
});
test('ids are plain letters and never taken twice', () => {
  expect(newId('Großes Fest & Café!', [])).toBe('gro-es-fest-cafe');
  expect(newId('Fair', [{ id: 'fair' }, { id: 'fair-2' }])).toBe('fair-3');
  expect(newId('…', [])).toBe('entry');
});
test('today is the day in the zone of the business', () => {
  const moment = new Date('2026-06-13T23:30:00Z');
  expect(todayIn('UTC', moment)).toBe(date('2026-06-13'));
  expect(todayIn('Asia/Tokyo', moment)).toBe(date('2026-06-14'));
  expect(todayIn('America/Los_Angeles', moment)).toBe(date('2026-06-13'));
});

test('what a change is about is that entry, whatever else is changed', () => {
  const change: Change = { list: 'clients', put: { id: 'a', name: 'Anna' } };
  const elsewhere = bookAfter(book, { list: 'clients', put: { id: 'b', name: 'Bert' } });
  expect(touched(elsewhere, change)).toEqual(touched(book, change));
  expect(touched(bookAfter(book, change), change)).not.toEqual(touched(book, change));
  expect(touched(book, { list: 'clients', put: { id: 'new', name: 'New' } })).toBeUndefined();
  expect(touched(book, { settings: {} })).toEqual({});
});
