import { type Book, planningSettingsOf } from '@twistwright/books';
import { clockOf, daysBetween, type LocalDate, shortDate, weekdayNames, weekdayOf } from '@twistwright/units';
import { counted, inWords, ordinal, sentence } from '../words/counted.ts';
import type { Clash, DiaryDay, TiredHands } from './diary-days.ts';

/** The one sentence of the diary. */
export function diarySentence(days: readonly DiaryDay[], today: LocalDate, ready: number): string {
  const gigs = days.reduce((sum, day) => sum + day.gigs.length, 0);
  const last = days.at(-1);
  if (last === undefined) return 'No gig is coming.';
  const weeks = Math.max(1, Math.ceil((daysBetween(today, last.day) + 1) / 7));
  const first = `${sentence(counted(gigs, 'gig'))} in ${weeks === 1 ? 'one week' : `${inWords(weeks)} weeks`}.`;
  const readyPart =
    ready === 0 ? 'None is ready' : ready === gigs ? 'All are ready' : `${sentence(inWords(ready))} ${ready === 1 ? 'is' : 'are'} ready`;
  const second = days.find((day) => day.clashes.length > 0 || day.tired.length > 0);
  return second === undefined ? `${first} ${readyPart}.` : `${first} ${readyPart}, and ${dayName(second.day)} needs a second look.`;
}

/** "Saturday the 13th". */
export const dayName = (day: LocalDate): string => `${weekdayNames[weekdayOf(day) - 1]} the ${ordinal(Number(day.slice(8)))}`;

export function clashSentence(book: Book, clash: Clash): string {
  const name = book.artists.find((artist) => artist.id === clash.artist)?.name ?? clash.artist;
  if (clash.atOnce)
    return `${name} is wanted at ${clash.second.name} from ${clash.second.starts} while ${clash.first.name} lasts until ${clash.first.ends}. Move one, or give one to somebody else.`;
  const minutes = Math.round(clash.to - clash.from);
  return `The way to ${placeOf(clash.second)} starts ${minutes} minutes before ${name} is back from ${placeOf(clash.first)}, at ${clockOf(clash.to)}. Go straight from there, or give one to somebody else.`;
}

export function tiredSentence(book: Book, tired: TiredHands): string {
  const name = book.artists.find((artist) => artist.id === tired.artist)?.name ?? tired.artist;
  return `${name} would make figures for ${Number(tired.hours.toFixed(1))} hours that day; more than ${planningSettingsOf(book).handHoursPerDay} are hard on the hands.`;
}

const placeOf = (gig: { readonly name: string; readonly where?: { readonly name: string } }): string => gig.where?.name ?? gig.name;

/** "Nothing from the 8th to the 12th." between two days that have gigs; undefined where they touch. */
export function gapSentence(after: LocalDate, before: LocalDate): string | undefined {
  const free = daysBetween(after, before) - 1;
  if (free < 3) return undefined;
  return `Nothing for ${free} days, until ${shortDate(before)}.`;
}
