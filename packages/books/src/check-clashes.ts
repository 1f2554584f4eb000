import { addDays, isZone, type LocalDate, type LocalTime, type Problem, wallClock, type ZoneName } from '@twistwright/units';
import type { Book } from './book.ts';
import type { Gig } from './gig.ts';
import { warningAt } from './problem-codes.ts';

/** Time at a gig with what belongs to it, in minutes since 1970. */
interface Busy {
  readonly gig: Gig;
  readonly index: number;
  /** Start of setting up, and end of packing up. */
  readonly from: number;
  readonly to: number;
  readonly drive: number;
}

/** Gigs of one artist for which there is not time enough between them: setting up, packing up and driving counted. */
export function checkClashes(book: Book, today: LocalDate): readonly Problem[] {
  const setUp = book.settings?.charge?.setUpMinutes ?? 0;
  const strike = book.settings?.charge?.strikeMinutes ?? 0;
  const zoneOf = (gig: Gig): ZoneName => gig.zone ?? book.business.zone;
  const coming = book.gigs.flatMap((gig, index): readonly Busy[] => {
    if (gig.day < addDays(today, -1) || !isZone(zoneOf(gig)) || gig.ends <= gig.starts) return [];
    const at = (clock: LocalTime): number => wallClock(gig.day, clock, zoneOf(gig)).epochMinutes;
    const early = gig.agreement?.earlyMinutes ?? 0;
    return [{ gig, index, from: at(gig.starts) - Math.max(setUp, early), to: at(gig.ends) + strike, drive: gig.where?.driveMinutes ?? 0 }];
  });
  coming.sort((a, b) => a.from - b.from);
  return book.artists.flatMap((artist) => {
    const own = coming.filter(({ gig }) => gig.artists.includes(artist.id));
    return own.slice(1).flatMap((later, index) => {
      const before = own[index];
      return before === undefined ? [] : clash(artist.name, before, later);
    });
  });
}

/** How far two places are apart is not known; from home to each it is. Straight it is at least the difference, by home the sum. */
function clash(artist: string, before: Busy, later: Busy): readonly Problem[] {
  const gap = later.from - before.to;
  const straight = Math.abs(later.drive - before.drive);
  const byHome = later.drive + before.drive;
  if (gap >= byHome) return [];
  const pair = `${artist} has "${before.gig.name}" until ${before.gig.ends} and "${later.gig.name}" from ${later.gig.starts} on ${later.gig.day}`;
  const path = ['gigs', later.index] as const;
  if (gap < 0)
    return [
      warningAt(
        'gig.clash',
        path,
        `${pair}: the two overlap, setting up and packing up counted.`,
        'Move one of them, or send somebody else.',
      ),
    ];
  if (gap < straight)
    return [
      warningAt(
        'gig.clash',
        path,
        `${pair}: ${Math.floor(gap)} minutes are left for a drive of at least ${straight}.`,
        'Move one of them, or send somebody else.',
      ),
    ];
  return [
    warningAt(
      'gig.clash',
      path,
      `${pair}: ${Math.floor(gap)} minutes are left, and the way by home takes ${byHome}.`,
      'Drive straight from one to the other, with everything for both in the car.',
    ),
  ];
}
