import { type Book, type StockMove, stockOf } from '@twistwright/books';
import { counted } from '../words/counted.ts';

export interface LedgerLine {
  readonly id: string;
  readonly day: StockMove['day'];
  readonly what: string;
  readonly where: string;
  /** Pieces more (or fewer) that the book has since. */
  readonly change: number;
  /** Pieces in all places after it. */
  readonly left: number;
}

/** The ledger of one item, latest first: what came, went and was counted, and how many there were after it. */
export function ledgerOf(book: Book, item: string): readonly LedgerLine[] {
  const moves = book.moves.filter((move) => move.item === item).toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
  const lines: LedgerLine[] = [];
  for (const [index, move] of moves.entries()) {
    const before = lines.at(-1)?.left ?? 0;
    const left = stockOf(moves.slice(0, index + 1)).lines.reduce((sum, line) => sum + line.count, 0);
    lines.push({ id: move.id, day: move.day, what: whatOf(book, move), where: whereOf(book, move), change: left - before, left });
  }
  return lines.reverse();
}

function whatOf(book: Book, move: StockMove): string {
  switch (move.kind) {
    case 'arrived':
      return `${counted(move.bags, 'bag')} of ${move.perBag} came in`;
    case 'found':
      return `${move.count} found`;
    case 'opened':
      return `a bag of ${move.perBag} opened`;
    case 'moved':
      return `${move.count} moved`;
    case 'used': {
      const gig = book.gigs.find((entry) => entry.id === move.gig)?.name;
      return `${move.count} used${gig === undefined ? '' : `, ${gig}`}`;
    }
    case 'lost':
      return `${move.count} lost${move.why === undefined ? '' : `, ${move.why}`}`;
    case 'counted':
      return `${move.count} counted`;
  }
}

function whereOf(book: Book, move: StockMove): string {
  const place = (id: string): string => book.places.find((entry) => entry.id === id)?.name ?? id;
  return move.kind === 'moved' ? `${place(move.from)} to ${place(move.to)}` : place(move.place);
}
