import { type Book, type Stock, stockOf } from '@twistwright/books';
import type { LocalDate } from '@twistwright/units';

/** What one piece of an item costs, and where that is taken from. */
export interface PieceCost {
  /** Minor units with fractions. */
  readonly cost: number;
  readonly from: 'lots in store' | 'cheapest offer';
  /** Offer id, where it is an offer. */
  readonly offer?: string;
}

/**
 * Cost of a piece of every item that has one: the mean over the lots in store whose price is known, else the cheapest offer per piece at its
 * single-bag price. Items with neither are missing.
 */
export function pieceCosts(book: Book, today?: LocalDate, stock: Stock = stockOf(book.moves, today)): ReadonlyMap<string, PieceCost> {
  const costs = new Map<string, PieceCost>();
  for (const offer of book.offers) {
    if (!(offer.count > 0)) continue;
    const cost = offer.price / offer.count;
    const known = costs.get(offer.item);
    if (known === undefined || cost < known.cost) costs.set(offer.item, { cost, from: 'cheapest offer', offer: offer.id });
  }
  const lots = new Map<string, { pieces: number; worth: number }>();
  for (const line of stock.lines)
    for (const lot of line.lots) {
      if (lot.pieceCost === undefined) continue;
      const sum = lots.get(line.item) ?? { pieces: 0, worth: 0 };
      lots.set(line.item, { pieces: sum.pieces + lot.count, worth: sum.worth + lot.count * lot.pieceCost });
    }
  for (const [item, { pieces, worth }] of lots) if (pieces > 0) costs.set(item, { cost: worth / pieces, from: 'lots in store' });
  return costs;
}
