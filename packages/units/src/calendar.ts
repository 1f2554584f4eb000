declare const localDate: unique symbol;
declare const localTime: unique symbol;
/** A day as agreed on the wall calendar, ISO 8601 text `YYYY-MM-DD`. */
export type LocalDate = string & { readonly [localDate]: true };
/** A time as agreed on the wall clock, `HH:MM` from 00:00 to 24:00 (24:00 is the end of the day). */
export type LocalTime = string & { readonly [localTime]: true };
/** IANA time zone name such as `Europe/London`. */
export type ZoneName = string;

/** The day if the text is a real day, else undefined ("2026-02-30" is not). */
export function readDate(text: string): LocalDate | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return undefined;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month) ? (text as LocalDate) : undefined;
}
/** The day; throws on text that is none. For constants and tests. */
export function date(text: string): LocalDate {
  const day = readDate(text);
  if (day === undefined) throw new RangeError(`not a day: ${text}`);
  return day;
}
export function readTime(text: string): LocalTime | undefined {
  const match = /^(\d{2}):(\d{2})$/.exec(text);
  if (!match) return undefined;
  const minutes = Number(match[1]) * 60 + Number(match[2]);
  return Number(match[2]) < 60 && minutes <= 1440 ? (text as LocalTime) : undefined;
}
export function time(text: string): LocalTime {
  const clock = readTime(text);
  if (clock === undefined) throw new RangeError(`not a time of day: ${text}`);
  return clock;
}

const daysInMonth = (year: number, month: number): number =>
  month === 2 ? (year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;

/** Days since 1970-01-01 in the proleptic Gregorian calendar (H. Hinnant, "chrono-Compatible Low-Level Date Algorithms", days_from_civil). */
export function dayNumber(day: LocalDate): number {
  const [y = 0, m = 0, d = 0] = day.split('-').map(Number);
  const year = m <= 2 ? y - 1 : y;
  const era = Math.floor(year / 400);
  const yearOfEra = year - era * 400;
  const dayOfYear = Math.floor((153 * (m + (m > 2 ? -3 : 9)) + 2) / 5) + d - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}
/** Inverse of {@link dayNumber}. */
export function dayFromNumber(days: number): LocalDate {
  const z = days + 719_468;
  const era = Math.floor(z / 146_097);
  const dayOfEra = z - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const mp = Math.floor((5 * dayOfYear + 2) / 153);
  const d = dayOfYear - Math.floor((153 * mp + 2) / 5) + 1;
  const m = mp < 10 ? mp + 3 : mp - 9;
  const y = yearOfEra + era * 400 + (m <= 2 ? 1 : 0);
  return date(`${String(y).padStart(4, '0')}-${String(m).padStart(2, '0')}-${String(d).padStart(2, '0')}`);
}
/** The day `days` later (earlier if negative). */
export const addDays = (day: LocalDate, days: number): LocalDate => dayFromNumber(dayNumber(day) + days);
/** Whole days from `from` to `to`; negative if `to` is earlier. */
export const daysBetween = (from: LocalDate, to: LocalDate): number => dayNumber(to) - dayNumber(from);
/** ISO weekday, 1 = Monday to 7 = Sunday. */
export const weekdayOf = (day: LocalDate): number => ((((dayNumber(day) + 3) % 7) + 7) % 7) + 1;
export const weekdayNames = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;
export const monthNames = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;
/** "Saturday 13 June 2026". */
export function longDate(day: LocalDate): string {
  const [y = 0, m = 1, d = 1] = day.split('-').map(Number);
  return `${weekdayNames[weekdayOf(day) - 1]} ${d} ${monthNames[m - 1]} ${y}`;
}
/** "Thursday 4 June", for dates near today. */
export const shortDate = (day: LocalDate): string => longDate(day).replace(/ \d{4}$/, '');

/** Minutes after midnight, 0 to 1440. */
export const minuteOf = (clock: LocalTime): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
/** Wall-clock text of minutes after midnight, rounded to the minute; beyond a day it goes on from 00:00. */
export function clockOf(minutes: number): LocalTime {
  const whole = Math.round(minutes);
  const inDay = whole === 1440 ? 1440 : ((whole % 1440) + 1440) % 1440;
  return time(`${String(Math.floor(inDay / 60)).padStart(2, '0')}:${String(inDay % 60).padStart(2, '0')}`);
}

/**
 * The day that is `count` working days before `day`. Working days are Monday to Friday and not in `holidays`.
 * Zero gives `day` itself if it is a working day, else the last one before it.
 */
export function workingDaysBefore(day: LocalDate, count: number, holidays: ReadonlySet<LocalDate> = new Set()): LocalDate {
  const works = (d: LocalDate): boolean => weekdayOf(d) <= 5 && !holidays.has(d);
  let at = day;
  while (!works(at)) at = addDays(at, -1);
  for (let left = count; left > 0; ) {
    at = addDays(at, -1);
    if (works(at)) left--;
  }
  return at;
}
/** The day on which something sent on `day` has arrived after `count` working days. */
export function workingDaysAfter(day: LocalDate, count: number, holidays: ReadonlySet<LocalDate> = new Set()): LocalDate {
  const works = (d: LocalDate): boolean => weekdayOf(d) <= 5 && !holidays.has(d);
  let at = day;
  while (!works(at)) at = addDays(at, 1);
  for (let left = count; left > 0; ) {
    at = addDays(at, 1);
    if (works(at)) left--;
  }
  return at;
}

/** What a zone makes of a wall-clock time: `gap` when clocks jump over it, `twice` when it happens two times. */
export function wallClock(
  day: LocalDate,
  clock: LocalTime,
  zone: ZoneName,
): { readonly kind: 'plain' | 'gap' | 'twice'; readonly epochMinutes: number } {
  const plain = Temporal.PlainDate.from(day)
    .toPlainDateTime(clock === '24:00' ? '00:00' : clock)
    .add({ days: clock === '24:00' ? 1 : 0 });
  const earlier = plain.toZonedDateTime(zone, { disambiguation: 'earlier' });
  const later = plain.toZonedDateTime(zone, { disambiguation: 'later' });
  const minutes = earlier.epochMilliseconds / 60_000;
  if (earlier.epochMilliseconds === later.epochMilliseconds) return { kind: 'plain', epochMinutes: minutes };
  return { kind: earlier.toPlainDateTime().equals(plain) ? 'twice' : 'gap', epochMinutes: minutes };
}
/** True if the runtime knows the zone. */
export function isZone(zone: string): boolean {
  try {
    Temporal.PlainDate.from('2026-01-01').toZonedDateTime(zone);
    return true;
  } catch {
    return false; // the only way Temporal says that it does not know a name
  }
}
