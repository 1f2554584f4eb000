import type { Separator } from './csv-rows.ts';

/** A spreadsheet takes a cell that begins so for a formula. Plain numbers are no danger. RFC 4180 says nothing of it; this is our own rule. */
const formulaStart = /^[=+\-@\t\r]/;
const plainNumber = /^[+-]?\d+(?:[.,]\d+)?$/;

/**
 * CSV text after RFC 4180: cells with separator, quote or line end in double quotes, lines end with CR LF. A text that a spreadsheet would
 * take for a formula gets an apostrophe in front.
 * @example writeCsv([['item', 'count'], ['=1+1', '-3']]) // -> 'item,count\r\n\'=1+1,-3\r\n'
 */
export function writeCsv(rows: readonly (readonly string[])[], separator: Separator = ','): string {
  return rows.map((row) => `${row.map((cell) => quoted(guarded(cell), separator)).join(separator)}\r\n`).join('');
}
const guarded = (cell: string): string => (formulaStart.test(cell) && !plainNumber.test(cell) ? `'${cell}` : cell);
const quoted = (cell: string, separator: Separator): string =>
  cell.includes(separator) || /["\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
