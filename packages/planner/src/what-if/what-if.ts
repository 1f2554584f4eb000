import type { Book, ClosingRule, Gig, MenuLine } from '@twistwright/books';
import { clockOf, minuteOf } from '@twistwright/units';

/** A change of mind about a gig; a missing key leaves things as they are. */
export interface WhatIf {
  readonly guests?: number;
  readonly hours?: number;
  /** How many artists; the ones booked first, then others of the book, then more of the pace of the first. */
  readonly artists?: number;
  /** Figure ids kept on the menu, with their shares. */
  readonly figures?: readonly string[];
  readonly closing?: ClosingRule;
  readonly weather?: Gig['weather'];
  readonly stopColourChoice?: boolean;
  readonly overtimeMinutes?: number;
}

/** The gig as it would be after the changes. Hours beyond midnight end at midnight. Figures that were not on the menu get the mean share. */
export function gigAfter(book: Book, gig: Gig, change: WhatIf): Gig {
  const line = {
    ...gig.line,
    ...(change.closing === undefined ? {} : { closing: change.closing }),
    ...(change.stopColourChoice === true ? { colourChoosingMinutes: 0 } : {}),
    ...(change.overtimeMinutes === undefined ? {} : { overtimeMinutes: change.overtimeMinutes }),
  };
  return {
    ...gig,
    ...(change.guests === undefined ? {} : { guests: change.guests }),
    ...(change.hours === undefined ? {} : { ends: clockOf(Math.min(1440, minuteOf(gig.starts) + Math.round(change.hours * 60))) }),
    ...(change.artists === undefined ? {} : { artists: artistsAfter(book, gig, change.artists) }),
    ...(change.figures === undefined ? {} : { menu: menuAfter(gig.menu, change.figures) }),
    ...(change.weather === undefined ? {} : { weather: change.weather }),
    ...(Object.keys(line).length === 0 ? {} : { line }),
  };
}

function artistsAfter(book: Book, gig: Gig, count: number): readonly string[] {
  const others = book.artists.map((artist) => artist.id).filter((id) => !gig.artists.includes(id));
  const known = [...gig.artists, ...others];
  const first = known[0];
  while (known.length < count && first !== undefined) known.push(first);
  return known.slice(0, count);
}

function menuAfter(menu: readonly MenuLine[], figures: readonly string[]): readonly MenuLine[] {
  const mean = menu.length === 0 ? 1 : menu.reduce((sum, line) => sum + line.share, 0) / menu.length;
  return figures.map((figure) => menu.find((line) => line.figure === figure) ?? { figure, share: mean });
}
