import { addDays, daysBetween, type LocalDate, readDate } from '@twistwright/units';
import type { Book } from './book.ts';

/**
 * An example book moved to the present: every date in it moves by the same whole number of weeks, so that `laidOn` comes to lie in the
 * seven days up to `today` and weekdays stay what they are. A book without `laidOn` is returned as it is.
 */
export function layDates(book: Book, today: LocalDate): Book {
  if (book.laidOn === undefined) return book;
  const days = Math.floor(daysBetween(book.laidOn, today) / 7) * 7;
  return days === 0 ? book : (moveDates(book, days) as Book);
}

function moveDates(value: unknown, days: number): unknown {
  if (typeof value === 'string') {
    const day = readDate(value);
    return day === undefined ? value : addDays(day, days);
  }
  if (Array.isArray(value)) return value.map((entry) => moveDates(entry, days));
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([key, entry]) => [key, moveDates(entry, days)]));
  return value;
}
