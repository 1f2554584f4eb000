import { type Book, emptyBook, type Gig } from '@twistwright/books';
import { date, money, time } from '@twistwright/units';
import { expect, test } from 'vitest';
import { diaryDays, gigOnDay } from './diary-days.ts';
import { clashSentence, diarySentence, gapSentence, tiredSentence } from './diary-words.ts';
import { marksOf } from './gig-marks.ts';

const gig = (id: string, starts: string, ends: string, more: Partial<Gig> = {}): Gig => ({
  id,
  name: id,
  kind: 'line',
  day: date('2026-06-13'),
  starts: time(starts),
  ends: time(ends),
  artists: ['joss'],
  menu: [],
  ...more,
});
const bookOf = (...gigs: readonly Gig[]): Book => ({
  ...emptyBook({ name: 'Nine Knots', currency: 'GBP', zone: 'Europe/London' }),
  settings: { charge: { setUpMinutes: 15, strikeMinutes: 10 } },
  artists: [{ id: 'joss', name: 'Joss', pace: 1 }],
  gigs,
});
const picnic = gig('Picnic', '10:00', '11:30', { where: { name: 'Saint Orla', driveMinutes: 45 } });
const fair = gig('Fair', '13:00', '16:00', { where: { name: 'the Green', driveMinutes: 60 } });

test('leaving and coming home: driving, setting up and striking, or being early where that is longer', () => {
  expect(gigOnDay(bookOf(), picnic)).toMatchObject({ leaves: 600 - 15 - 45, starts: 600, ends: 690, home: 690 + 10 + 45 });
  expect(gigOnDay(bookOf(), { ...picnic, agreement: { state: 'agreed', earlyMinutes: 30 } }).leaves).toBe(600 - 30 - 45);
});
test('the drive to one gig before the way home from another is a clash of the same artist only', () => {
  const [day] = diaryDays(bookOf(picnic, fair), date('2026-06-01'));
  expect(day?.clashes).toMatchObject([{ from: 780 - 15 - 60, to: 745, artist: 'joss', atOnce: false }]);
  expect(clashSentence(bookOf(), day?.clashes[0] as never)).toBe(
    'The way to the Green starts 40 minutes before Joss is back from Saint Orla, at 12:25. Go straight from there, or give one to somebody else.',
  );
  const apart = diaryDays(bookOf(picnic, { ...fair, artists: ['otis'] }), date('2026-06-01'));
  expect(apart[0]?.clashes).toEqual([]);
});
test('two gigs at once are said as such', () => {
  const book = bookOf(picnic, gig('Party', '11:00', '12:00'));
  const [day] = diaryDays(book, date('2026-06-01'));
  expect(day?.clashes[0]?.atOnce).toBe(true);
  expect(clashSentence(book, day?.clashes[0] as never)).toMatch(/^Joss is wanted at Party from 11:00 while Picnic lasts until 11:30\./);
});
test('hands that make figures for too long are seen', () => {
  const book = bookOf(gig('Long', '10:00', '16:00'));
  const [day] = diaryDays(book, date('2026-06-01'));
  expect(day?.tired).toEqual([{ artist: 'joss', hours: 6, most: 5 }]);
  expect(tiredSentence(book, day?.tired[0] as never)).toContain('for 6 hours that day; more than 5');
});
test('past gigs are not coming; the sentence counts gigs, weeks and what is ready', () => {
  expect(diaryDays(bookOf(picnic), date('2026-06-14'))).toEqual([]);
  expect(diarySentence([], date('2026-06-01'), 0)).toBe('No gig is coming.');
  const days = diaryDays(bookOf(picnic, fair), date('2026-06-02'));
  expect(diarySentence(days, date('2026-06-02'), 1)).toBe(
    'Two gigs in two weeks. One is ready, and Saturday the 13th needs a second look.',
  );
});
test('a gap is said from three free days on', () => {
  expect(gapSentence(date('2026-06-13'), date('2026-06-16'))).toBeUndefined();
  expect(gapSentence(date('2026-06-07'), date('2026-06-13'))).toBe('Nothing for 5 days, until Saturday 13 June.');
});
test('marks: every state has its own word', () => {
  const words = (of: Gig, clashes = false, outlook?: Parameters<typeof marksOf>[3]): readonly string[] =>
    marksOf(of, date('2026-06-08'), clashes, outlook).map((mark) => `${mark.word} (${mark.state})`);
  expect(words(fair)).toEqual(['not agreed (open)', 'staffed (done)', 'not counted yet (open)', 'pack on Friday (open)']);
  expect(
    words({ ...fair, artists: [], agreement: { state: 'agreed', deposit: money(5000) } }, false, {
      short: 3,
      awaited: 0,
      packingLines: 22,
      packedLines: 14,
    }),
  ).toEqual(['deposit not in (part)', 'no artist (open)', '3 items short (stop)', 'packed 14 of 22 (part)']);
  expect(words({ ...fair, agreement: { state: 'agreed' } }, true, { short: 0, awaited: 2, packingLines: 2, packedLines: 2 })).toEqual([
    'agreed (done)',
    'times clash (stop)',
    'on its way (part)',
    'packed (done)',
  ]);
});
