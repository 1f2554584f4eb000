import { emptyBook, type Gig } from '@twistwright/books';
import { date, time } from '@twistwright/units';
import { expect, test } from 'vitest';
import { compareGigs } from './compare-gigs.ts';

const recipe = 'balloon dog: 260 in body\n  leave 3.5\n  bubble 3 nose';
const book = {
  ...emptyBook({ name: 'A business', currency: 'EUR', zone: 'Europe/Madrid' }),
  colours: [{ id: 'red', name: 'red' }],
  items: [{ id: '260-red', kind: 'balloon' as const, size: '260', colour: 'red' }],
  figures: [{ id: 'dog', name: 'Dog', recipe, colourways: [{ id: 'red', name: 'Red', fill: { body: 'red' } }] }],
  artists: [{ id: 'a', name: 'A', pace: 1 }],
};
const gig: Gig = {
  id: 'g',
  name: 'G',
  kind: 'line',
  day: date('2026-06-13'),
  starts: time('13:00'),
  ends: time('15:00'),
  artists: ['a'],
  guests: 40,
  menu: [{ figure: 'dog', share: 1 }],
};
const options = { seed: 3, runs: 60 };

test('no change: both sides are the same to the last bit', () => {
  const compared = compareGigs(book, gig, {}, options);
  if (!compared.ok) throw new Error(compared.error[0]?.sentence);
  expect(compared.value.after).toEqual(compared.value.before);
});
test('more guests: more come and more balloons are taken, the gig as it stands stays as it was', () => {
  const compared = compareGigs(book, gig, { guests: 80 }, options);
  const before = compareGigs(book, gig, {}, options);
  if (!compared.ok || !before.ok) throw new Error('both can be played');
  expect(compared.value.before).toEqual(before.value.before);
  expect(compared.value.after.forecast.arrived.mean).toBeGreaterThan(1.5 * compared.value.before.forecast.arrived.mean);
  expect(compared.value.after.takes.get('260-red')?.enough).toBeGreaterThan(compared.value.before.takes.get('260-red')?.enough ?? 0);
});
test('a side that cannot be played is refused', () => {
  expect(compareGigs(book, gig, { figures: ['nothing'] }, options).ok).toBe(false);
});
