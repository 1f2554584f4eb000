import { addDays, date, daysBetween, time, weekdayOf } from '@twistwright/units';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Book, emptyBook } from './book.ts';
import { layDates } from './lay-dates.ts';

const laidOn = date('2026-06-01');
const book: Book = {
  ...emptyBook({ name: 'A business', currency: 'GBP', zone: 'Europe/London' }),
  laidOn,
  gigs: [
    {
      id: 'g',
      name: 'On 2026-06-13',
      kind: 'line',
      day: date('2026-06-13'),
      starts: time('10:00'),
      ends: time('12:00'),
      artists: [],
      menu: [],
    },
  ],
};

test('every date moves by whole weeks, so that the first lies in the last seven days', () => {
  fc.assert(
    fc.property(fc.integer({ min: -2000, max: 4000 }), (days) => {
      const today = addDays(laidOn, days);
      const moved = layDates(book, today);
      const age = daysBetween(moved.laidOn ?? today, today);
      expect(age >= 0 && age < 7).toBe(true);
      const day = moved.gigs[0]?.day ?? today;
      expect(weekdayOf(day)).toBe(6);
      expect(daysBetween(moved.laidOn ?? today, day)).toBe(12);
    }),
    { seed: 4 },
  );
});
test('a day inside a text stays, and a book that was not laid stays as it is', () => {
  expect(layDates(book, date('2027-01-01')).gigs[0]?.name).toBe('On 2026-06-13');
  const { laidOn: _laid, ...own } = book;
  expect(layDates(own, date('2030-01-01'))).toBe(own);
});
