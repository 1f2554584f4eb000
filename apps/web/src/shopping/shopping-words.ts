import type { ShoppingLine } from '@twistwright/planner';
import { type LocalDate, shortDate } from '@twistwright/units';
import { inWords, ordinal } from '../words/counted.ts';

/** Why bags are there: which gigs, and how much would be missing. */
export function whySentence({ because }: ShoppingLine, nameOf: (gig: string) => string): string {
  const shown = because.causes.length === 3 ? 3 : 2;
  const causes = because.causes.slice(0, shown).map((cause) => {
    const what = cause.gig === undefined ? (cause.reason ?? 'entered by hand') : nameOf(cause.gig);
    return `${what} on the ${ordinal(Number(cause.day.slice(8)))}`;
  });
  const more = because.causes.length > shown ? ` and ${inWords(because.causes.length - shown)} more` : '';
  return `${causes.join(', ')}${more}; up to ${because.short} short`;
}

/** "Friday 27 November, 12:00". */
export const orderBySentence = (day: LocalDate, before: string | undefined): string =>
  `${shortDate(day)}${before === undefined ? '' : `, ${before}`}`;
