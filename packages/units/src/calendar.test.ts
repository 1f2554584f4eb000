import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  addDays,
  clockOf,
  date,
  dayFromNumber,
  dayNumber,
  daysBetween,
  longDate,
  minuteOf,
  readDate,
  readTime,
  time,
  wallClock,
  weekdayOf,
  workingDaysAfter,
  workingDaysBefore,
} from './calendar.ts';

test('day numbers agree with Temporal, both ways', () => {
  fc.assert(
    fc.property(fc.integer({ min: -200_000, max: 200_000 }), (n) => {
      const day = Temporal.PlainDate.from('1970-01-01').add({ days: n });
      expect(dayFromNumber(n)).toBe(day.toString());
      expect(dayNumber(date(day.toString()))).toBe(n);
      expect(weekdayOf(date(day.toString()))).toBe(day.dayOfWeek);
    }),
    { seed: 3 },
  );
});
test('text that is no day or no time is refused', () => {
  expect(['2026-02-30', '2026-2-3', '2026-13-01', 'tomorrow'].map(readDate)).toEqual([undefined, undefined, undefined, undefined]);
  expect(['25:00', '24:01', '9:00', '12:60'].map(readTime)).toEqual([undefined, undefined, undefined, undefined]);
  expect(minuteOf(time('24:00'))).toBe(1440);
  expect(clockOf(938.4)).toBe('15:38');
});
test('working days skip weekends and holidays', () => {
  expect(workingDaysBefore(date('2026-06-13'), 4)).toBe('2026-06-08');
  expect(workingDaysBefore(date('2026-06-13'), 0)).toBe('2026-06-12');
  expect(workingDaysBefore(date('2026-06-12'), 1, new Set([date('2026-06-11')]))).toBe('2026-06-10');
  expect(workingDaysAfter(date('2026-06-05'), 1)).toBe('2026-06-08');
});
test('clocks jump over a time, and show another one twice', () => {
  expect(wallClock(date('2026-03-29'), time('01:30'), 'Europe/London').kind).toBe('gap');
  expect(wallClock(date('2026-10-25'), time('01:30'), 'Europe/London').kind).toBe('twice');
  expect(wallClock(date('2026-06-13'), time('13:00'), 'Europe/London')).toEqual({
    kind: 'plain',
    epochMinutes: Date.UTC(2026, 5, 13, 12) / 60_000,
  });
});
test('sums and words', () => {
  expect(addDays(date('2026-02-28'), 1)).toBe('2026-03-01');
  expect(daysBetween(date('2026-01-01'), date('2027-01-01'))).toBe(365);
  expect(longDate(date('2026-06-13'))).toBe('Saturday 13 June 2026');
});
