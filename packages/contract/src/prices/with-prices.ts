import type { Book, Offer } from '@twistwright/books';
import type { PriceList } from './read-prices.ts';

export interface WithPricesOptions {
  /** Offers that the list no longer has: kept by default, since a list may be of a part only. */
  readonly gone?: 'keep' | 'drop';
}
/** The book with the prices of a list in it: changed offers in their places, new ones at the end. */
export function withPrices(book: Book, list: Pick<PriceList, 'offers' | 'gone'>, { gone = 'keep' }: WithPricesOptions = {}): Book {
  const fresh = new Map(list.offers.map((offer) => [offer.id, offer]));
  const dropped = new Set(gone === 'drop' ? list.gone.map((offer) => offer.id) : []);
  const kept = book.offers.flatMap((offer): readonly Offer[] => (dropped.has(offer.id) ? [] : [fresh.get(offer.id) ?? offer]));
  const known = new Set(book.offers.map((offer) => offer.id));
  return { ...book, offers: [...kept, ...list.offers.filter((offer) => !known.has(offer.id))] };
}
