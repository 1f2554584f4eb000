import { emptyBook, type Gig } from '@twistwright/books';
import { date, time } from '@twistwright/units';
import { expect, test } from 'vitest';
import { gigAfter } from './what-if.ts';

const book = {
  ...emptyBook({ name: 'A business', currency: 'EUR', zone: 'Europe/Madrid' }),
  artists: [
    { id: 'a', name: 'A', pace: 1 },
    { id: 'b', name: 'B', pace: 1.2 },
  ],
};
const gig: Gig = {
  id: 'g',
  name: 'G',
  kind: 'line',
  day: date('2026-06-13'),
  starts: time('13:00'),
  ends: time('16:00'),
  artists: ['b'],
  guests: 70,
  menu: [
    { figure: 'dog', share: 3 },
    { figure: 'hat', share: 1 },
  ],
};

test('no change leaves the gig as it is', () => expect(gigAfter(book, gig, {})).toEqual(gig));
test('each change touches its own key only', () => {
  expect(gigAfter(book, gig, { guests: 100 })).toEqual({ ...gig, guests: 100 });
  expect(gigAfter(book, gig, { hours: 2.5 }).ends).toBe('15:30');
  expect(gigAfter(book, gig, { hours: 20 }).ends).toBe('24:00');
  expect(gigAfter(book, gig, { artists: 3 }).artists).toEqual(['b', 'a', 'b']);
  expect(gigAfter(book, gig, { figures: ['dog', 'swan'] }).menu).toEqual([
    { figure: 'dog', share: 3 },
    { figure: 'swan', share: 2 },
  ]);
});
