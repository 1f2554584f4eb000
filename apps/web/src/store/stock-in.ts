import { type Book, countsByItem, stockOf } from '@twistwright/books';
import type { LocalDate } from '@twistwright/units';

/** Pieces of every item in one place, or in all places where none is named. */
export function stockIn(book: Book, today: LocalDate, place: string): ReadonlyMap<string, number> {
  const stock = stockOf(book.moves, today);
  return countsByItem(place === '' ? stock : { ...stock, lines: stock.lines.filter((line) => line.place === place) });
}
