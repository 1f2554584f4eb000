import { type Book, chargeSettingsOf, type Gig, planningSettingsOf } from '@twistwright/books';
import { type LocalDate, minuteOf } from '@twistwright/units';

/** A gig with its drive, in minutes of its day. */
export interface GigOnDay {
  readonly gig: Gig;
  readonly leaves: number;
  readonly starts: number;
  readonly ends: number;
  readonly home: number;
}
/** A stretch in which one artist is wanted at two gigs, or on the road for one while still at the other. */
export interface Clash {
  readonly from: number;
  readonly to: number;
  readonly first: Gig;
  readonly second: Gig;
  readonly artist: string;
  /** Both gigs are on at the same time, or overtime and setting up run into one another; not only the way home. */
  readonly atOnce: boolean;
}
/** More hours of making on one day than the business wants to ask of one pair of hands. */
export interface TiredHands {
  readonly artist: string;
  readonly hours: number;
  readonly most: number;
}
export interface DiaryDay {
  readonly day: LocalDate;
  readonly gigs: readonly GigOnDay[];
  readonly clashes: readonly Clash[];
  readonly tired: readonly TiredHands[];
}

/** When one leaves for a gig and is home again: driving there and back, setting up and striking, and being early where that was asked for. */
export function gigOnDay(book: Book, gig: Gig): GigOnDay {
  const charge = chargeSettingsOf(book);
  const starts = minuteOf(gig.starts);
  const ends = minuteOf(gig.ends) + (gig.line?.overtimeMinutes ?? 0);
  const drive = gig.where?.driveMinutes ?? 0;
  const before = Math.max(gig.agreement?.earlyMinutes ?? 0, charge.setUpMinutes ?? 0);
  return { gig, leaves: starts - before - drive, starts, ends: minuteOf(gig.ends), home: ends + (charge.strikeMinutes ?? 0) + drive };
}

/** The days from `from` on that have a gig, each with its clashes. */
export function diaryDays(book: Book, from: LocalDate): readonly DiaryDay[] {
  const coming = book.gigs.filter((gig) => gig.day >= from);
  const days = [...new Set(coming.map((gig) => gig.day))].sort();
  return days.map((day) => {
    const gigs = coming
      .filter((gig) => gig.day === day)
      .map((gig) => gigOnDay(book, gig))
      .sort((a, b) => a.starts - b.starts);
    return { day, gigs, clashes: clashesOf(gigs), tired: tiredHands(book, gigs) };
  });
}

function clashesOf(gigs: readonly GigOnDay[]): readonly Clash[] {
  return gigs.flatMap((second, index) =>
    gigs.slice(0, index).flatMap((first): readonly Clash[] => {
      const artist = second.gig.artists.find((id) => first.gig.artists.includes(id));
      if (artist === undefined || second.leaves >= first.home) return [];
      return [
        {
          from: Math.max(first.leaves, second.leaves),
          to: Math.min(first.home, second.home),
          first: first.gig,
          second: second.gig,
          artist,
          atOnce: second.starts < first.ends,
        },
      ];
    }),
  );
}

function tiredHands(book: Book, gigs: readonly GigOnDay[]): readonly TiredHands[] {
  const most = planningSettingsOf(book).handHoursPerDay;
  const hours = new Map<string, number>();
  for (const { gig, starts, ends } of gigs)
    for (const artist of new Set(gig.artists)) hours.set(artist, (hours.get(artist) ?? 0) + (ends - starts) / 60);
  return [...hours].filter(([, sum]) => sum > most).map(([artist, sum]) => ({ artist, hours: sum, most }));
}
