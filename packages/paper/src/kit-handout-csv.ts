import type { Book } from '@twistwright/books';
import type { KitPlan } from '@twistwright/planner';
import { decimalOf, money } from '@twistwright/units';
import Papa from 'papaparse';
import { shopsOf } from './kit-handout-list.ts';

/** The list as CSV (RFC 4180): a line a thing to buy, with an empty column to tick; carriage as a line of its own. */
export function kitCsv(book: Book, plan: KitPlan): string {
  const { currency } = book.business;
  const rows = shopsOf(book, plan).flatMap((shop) => [
    ...shop.rows.map((row) => ['', shop.name, row.what, String(row.bags), String(row.pieces), decimalOf(row.price, currency), row.why]),
    ...((shop.carriage ?? 0) > 0 ? [['', shop.name, 'carriage', '', '', decimalOf(shop.carriage ?? money(0), currency), '']] : []),
  ]);
  return `${Papa.unparse([['bought', 'where', 'what', 'bags', 'pieces', `price ${currency}`, 'why'], ...rows], { newline: '\r\n', escapeFormulae: true })}\r\n`;
}
