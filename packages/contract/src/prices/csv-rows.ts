import { errorAt } from '@twistwright/books';
import { fail, ok, type Problem, type Result } from '@twistwright/units';
import Papa from 'papaparse';

export type Separator = ',' | ';' | '\t' | '|';
const separators: readonly Separator[] = [',', ';', '\t', '|'];

export interface CsvRow {
  /** Line of the file on which it starts, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}
export interface CsvRows {
  readonly separator: Separator;
  readonly rows: readonly CsvRow[];
}

/**
 * The rows of a CSV text (RFC 4180, and with other separators). The separator is found out if it is not given.
 * @example readCsv('a;b\r\n1;"2;3"\r\n') // -> { ok: true, value: { separator: ';', rows: [{ line: 1, cells: ['a', 'b'] }, { line: 2, cells: ['1', '2;3'] }] } }
 */
export function readCsv(text: string, separator?: Separator): Result<CsvRows> {
  const clean = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const delimiter = separator ?? guessSeparator(clean);
  const parsed = Papa.parse<string[]>(clean, { delimiter, skipEmptyLines: false });
  const rows: CsvRow[] = [];
  let line = 1;
  for (const cells of parsed.data) {
    rows.push({ line, cells });
    line += 1 + cells.reduce((sum, cell) => sum + lineEndsIn(cell), 0);
  }
  if (/\n$|\r$/.test(clean) && rows.at(-1)?.cells.join('') === '') rows.pop(); // what follows the last line end is no row
  const problems = parsed.errors.filter((error) => error.type === 'Quotes').map((error) => problemOf(error.row, rows));
  return problems.length > 0 ? fail(problems) : ok({ separator: delimiter, rows });
}

/** Rows from which the separator is guessed. */
const guessRows = 60;
/** The separator with which most rows have one and the same number of cells, two or more; of equals the one with more cells. */
function guessSeparator(text: string): Separator {
  const scores = separators.map((separator) => {
    const { data } = Papa.parse<string[]>(text, { delimiter: separator, preview: guessRows, skipEmptyLines: 'greedy' });
    const counts = new Map<number, number>();
    for (const row of data) if (row.length > 1) counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
    const [cells, rows] = [...counts].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0] ?? [1, 0];
    return { separator, cells, rows };
  });
  return scores.sort((a, b) => b.rows - a.rows || b.cells - a.cells)[0]?.separator ?? ',';
}
const lineEndsIn = (cell: string): number => (cell.includes('\n') ? cell.split('\n').length - 1 : cell.split('\r').length - 1);

function problemOf(row: number | undefined, rows: readonly CsvRow[]): Problem {
  const line = rows[row ?? 0]?.line ?? 1;
  return {
    ...errorAt(
      'file.syntax',
      [],
      `A quotation mark on line ${line} is not closed, or stands inside a cell.`,
      'Put the cell in quotes and double those in it.',
    ),
    line,
  };
}
