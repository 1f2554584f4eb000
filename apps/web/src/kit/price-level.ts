import type { Book } from '@twistwright/books';
import { exponentOf, type Money, money } from '@twistwright/units';

/** Steps that suit the prices of a book, in minor units: a pound and ten pence where a hundred balloons cost about ten pounds. */
export interface PriceLevel {
  /** For fees and travel. */
  readonly step: Money;
  /** For tips. */
  readonly smallStep: Money;
}

/**
 * How large money is in a book, read from what a hundred balloons cost there (the middle offer), so that sliders and first guesses suit
 * yen, krone and pound alike. A book without balloons to buy has steps of one unit of its currency.
 */
export function priceLevelOf({ items, offers, business }: Pick<Book, 'items' | 'offers' | 'business'>): PriceLevel {
  const balloons = new Set(items.flatMap((item) => (item.kind === 'balloon' ? [item.id] : [])));
  const hundreds = offers
    .flatMap(({ item, count, price }) => (balloons.has(item) && count > 0 ? [(100 * price) / count] : []))
    .sort((a, b) => a - b);
  const middle = hundreds[Math.floor(hundreds.length / 2)] ?? 10 * 10 ** exponentOf(business.currency);
  const step = roundNumber(middle / 10);
  return { step: money(step), smallStep: money(Math.max(1, roundNumber(step / 10))) };
}

/**
 * The nearest of 1, 2, 5, 10, 20, ... on a scale of ratios, at least 1.
 * @example roundNumber(93) // -> 100
 */
export function roundNumber(value: number): number {
  if (!(value > 1)) return 1;
  const power = 10 ** Math.floor(Math.log10(value));
  const away = (of: number): number => Math.abs(Math.log(of / value));
  return [1, 2, 5, 10].map((factor) => factor * power).reduce((best, one) => (away(one) < away(best) ? one : best));
}
