import { type Book, emptyBook, type Gig } from '@twistwright/books';
import { date, money, time } from '@twistwright/units';
import { expect, test } from 'vitest';
import { adviceFor, comingGigs, forecastGig, outlookOf, seedOf } from './index.ts';

const gig = (id: string, day: string, guests: number): Gig => ({
  id,
  name: id,
  kind: 'line',
  day: date(day),
  starts: time('13:00'),
  ends: time('16:00'),
  artists: ['a'],
  guests,
  menu: [
    { figure: 'dog', share: 2 },
    { figure: 'hat', share: 1 },
  ],
});
const book: Book = {
  ...emptyBook({ name: 'A business', currency: 'GBP', zone: 'Europe/London' }),
  colours: [{ id: 'red', name: 'red' }],
  items: [{ id: 'red', kind: 'balloon', size: '260', colour: 'red' }],
  figures: [
    {
      id: 'dog',
      name: 'dog',
      recipe: 'balloon dog: 260 in body',
      minutes: { law: 'log-normal', median: 1.5, sigma: 0.3 },
      colourways: [{ id: 'r', name: 'red', fill: { body: 'red' } }],
    },
    {
      id: 'hat',
      name: 'hat',
      recipe: 'balloon a: 260 in body\nballoon b: 260 in body',
      minutes: { law: 'fixed', minutes: 3 },
      colourways: [{ id: 'r', name: 'red', fill: { body: 'red' } }],
    },
  ],
  artists: [{ id: 'a', name: 'A', pace: 1 }],
  places: [{ id: 'home', name: 'Home', kind: 'home' }],
  moves: [{ id: 'm', day: date('2026-01-01'), item: 'red', kind: 'arrived', place: 'home', bags: 3, perBag: 100, bagPrice: money(900) }],
  gigs: [gig('second', '2026-06-20', 40), gig('first', '2026-06-13', 70), gig('past', '2026-01-13', 70)],
};
const today = date('2026-06-02');

test('coming gigs in order of time; the past stays away', () => {
  expect(comingGigs(book, today).map((g) => g.id)).toEqual(['first', 'second']);
  expect(comingGigs(book, today, date('2026-06-15')).map((g) => g.id)).toEqual(['first']);
});
test('same facts, day and seed: the same outlook; the needs of a gig do not depend on the gigs around it', () => {
  const one = outlookOf(book, { today, runs: 300, seed: 5 });
  const two = outlookOf(book, { today, runs: 300, seed: 5 });
  expect(one).toEqual(two);
  const alone = forecastGig(book, gig('first', '2026-06-13', 70), { runs: 300, seed: 5 });
  expect(one.ok && alone.ok && one.value.gigs[0]?.forecast.summary).toEqual(alone.ok && alone.value.summary);
  expect(seedOf(1, 'first')).not.toBe(seedOf(1, 'second'));
});
test('asking for one gig plans it and counts those before it as needs', () => {
  const outlook = outlookOf(book, { today, runs: 200, gig: 'second' });
  if (!outlook.ok) throw new Error('it can be planned');
  expect(outlook.value.gigs.map((plan) => plan.gig.id)).toEqual(['second']);
  expect(outlook.value.needs.items[0]?.causes.map((cause) => cause.gig).sort()).toEqual(['first', 'second']);
  expect(outlook.value.needs.chanceThen).toBeGreaterThanOrEqual(0.9);
});
test('materials cost what the lots in store cost, and the quote stands on its own', () => {
  const outlook = outlookOf({ ...book, settings: { charge: { hourly: money(9000) } } }, { today, runs: 200, gig: 'first' });
  const charge = outlook.ok ? outlook.value.gigs[0]?.charge : undefined;
  const pieces = outlook.ok ? (outlook.value.gigs[0]?.takes.get('red')?.usual ?? 0) : 0;
  expect(charge?.quote).toBe(27_000);
  expect(charge?.floor.materials.p50).toBeCloseTo(pieces * 9, -1);
});
test('a gig that is not there, and a book without coming gigs, are refused with a sentence', () => {
  expect(outlookOf(book, { today, gig: 'moon' })).toMatchObject({ ok: false, error: [{ code: 'gig.unknown' }] });
  expect(outlookOf(book, { today: date('2030-01-01') })).toMatchObject({ ok: false, error: [{ code: 'gig.none-coming' }] });
  expect(outlookOf({ ...book, artists: [] }, { today, gig: 'first' })).toMatchObject({ ok: false });
});
test('more hands never keep a promise worse, and the closing card falls to nothing at the end', () => {
  const advice = adviceFor(book, gig('busy', '2026-06-13', 140), { seed: 1, runs: 200 });
  if (!advice.ok) throw new Error('it can be advised');
  const shares = advice.value.artists.tried.map((tried) => tried.shareServed.mean);
  for (const [i, share] of shares.entries()) if (i > 0) expect(share).toBeGreaterThan((shares[i - 1] ?? 0) - 0.01);
  expect(advice.value.card[advice.value.card.length - 1]?.mayWait).toBe(0);
  expect((advice.value.card[0]?.mayWait ?? 0) > 40).toBe(true);
});
