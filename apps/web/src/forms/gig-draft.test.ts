import { emptyBook, type Gig } from '@twistwright/books';
import { date, money, time } from '@twistwright/units';
import { expect, test } from 'vitest';
import { gigDraftOf, readGigDraft } from './gig-draft.ts';

const book = {
  ...emptyBook({ name: 'Nine Knots', currency: 'GBP', zone: 'Europe/London' }),
  figures: [{ id: 'dog', name: 'dog', colourways: [{ id: 'brown', name: 'brown', fill: { body: 'brown' } }] }],
};
const today = date('2026-06-01');
const fair: Gig = {
  id: 'fair',
  name: 'Fair',
  kind: 'line',
  day: date('2026-06-13'),
  starts: time('13:00'),
  ends: time('16:00'),
  where: { name: 'the Green', address: '1 Green', miles: 12, driveMinutes: 30 },
  artists: [],
  guests: 70,
  arrivals: { kind: 'stream', profile: [{ minute: 0, weight: 1 }] },
  menu: [{ figure: 'dog', share: 2 }],
  agreement: { state: 'agreed', fee: money(39600), deposit: money(9900), depositPaidOn: date('2026-05-20') },
  line: { hiddenShare: 0.3 },
  weather: 'hot',
  outdoors: true,
  packed: ['260-red@apron'],
};
const forms: readonly Gig[] = [
  fair,
  {
    ...fair,
    kind: 'tables',
    tables: {
      tables: 9,
      foodAfter: { law: 'fixed', minutes: 15 },
      leaveAfter: { law: 'fixed', minutes: 30 },
      walking: { law: 'fixed', minutes: 1 },
    },
  },
  { ...fair, kind: 'strolling', strolling: { walking: { law: 'fixed', minutes: 1 } } },
];
test.each(forms)('a gig that was only looked at is the same afterwards: $kind', (gig) => {
  const { gig: read } = readGigDraft(book, gigDraftOf(book, gig, today), gig, today);
  expect(read).toEqual(gig.kind === 'strolling' ? { ...gig, arrivals: undefined } : gig);
});
test('problems are sentences at their field, and there is no gig then', () => {
  const draft = { ...gigDraftOf(book, fair, today), guests: 'seventy', starts: '16:00', ends: '13:00', fee: 'lots', menu: {} };
  const { gig, read } = readGigDraft(book, draft, fair, today);
  expect(gig).toBeUndefined();
  expect(read.problems).toEqual({
    guests: '“seventy” is not a number. Write it as 70.'.replace('70', '60'),
    ends: '13:00 is not after 16:00. A gig past midnight ends at 24:00 and has overtime, or is two gigs.',
    fee: '“lots” is not an amount in GBP. Write it as 12.50.',
    menu: 'Put at least one figure on the menu.',
  });
});
test('a new gig may not lie in the past', () => {
  const { read } = readGigDraft(
    book,
    { ...gigDraftOf(book, undefined, today), name: 'Old', guests: '5', day: '2026-05-01', menu: { dog: '1' } },
    undefined,
    today,
  );
  expect(read.problems.day).toBe('2026-05-01 is in the past. Choose a day from 2026-06-01 on.');
});
