import type { Book } from '@twistwright/books';
import type { MakeableFigure, MakeableWay, MinutesSpread } from '@twistwright/planner';
import { inWords, listed } from '../words/counted.ts';

/** "1.5 min" and "(1.1 to 2.0)". */
export const minutesWords = ({ p10, p50, p90 }: MinutesSpread): { readonly middle: string; readonly spread: string } => ({
  middle: `${p50.toFixed(1)} min`,
  spread: p10 === p90 ? '' : `(${p10.toFixed(1)} to ${p90.toFixed(1)})`,
});

/** "You can make 34 figures; 28 of them from what is in the case." */
export function makeableSentence(all: readonly MakeableFigure[], from: string): string {
  const can = all.filter((entry) => entry.makes > 0).length;
  const figures = all.length === 1 ? 'one figure' : `${all.length} figures`;
  if (can === all.length) return `You can make ${figures}, ${all.length === 1 ? 'and it' : 'all of them'} from what ${from}.`;
  return `You can make ${figures}; ${can === 0 ? 'none' : can} of them from what ${from}.`;
}

const mostNamed = 3;

/** What keeps the rest from being made: "Lacking are 260 green for the flower and 260 white for the swan." */
export function lackingSentence(all: readonly MakeableFigure[]): string {
  const without = all.filter((entry) => entry.makes === 0);
  if (without.length === 0) return '';
  const named = without
    .slice(0, mostNamed)
    .map(({ figure, ways }) => `${ways[0]?.lacking[0]?.name ?? 'a recipe that can be read'} for ${figure.name.toLowerCase()}`);
  const more = without.length - named.length;
  return `Lacking: ${listed(more > 0 ? [...named, `something for ${inWords(more)} more`] : named)}.`;
}

/** "blue instead of green would do". */
export function substituteWords(book: Book, way: MakeableWay | undefined): string {
  if (way === undefined || way.substitutes.length === 0) return '';
  const nameOf = (id: string): string => book.colours.find((colour) => colour.id === id)?.name.toLowerCase() ?? id;
  return `${listed(way.substitutes.map(({ from, to }) => `${nameOf(to)} instead of ${nameOf(from)}`))} would do`;
}

/**
 * Strokes of the pump, one at least.
 * @example strokesInWords(0.4) // -> '1 stroke'
 * @example strokesInWords(7.6) // -> '8 strokes'
 */
export function strokesInWords(strokes: number): string {
  const whole = Math.max(1, Math.round(strokes));
  return `${whole} ${whole === 1 ? 'stroke' : 'strokes'}`;
}
