import { basename } from 'node:path';
import { type Book, checkBook, layDates } from '@twistwright/books';
import { readPlacedBook, readUsableBook } from '@twistwright/contract';
import type { LocalDate, Problem } from '@twistwright/units';
import type { Arguments } from './arguments.ts';
import type { Outside } from './outside.ts';

/** The book of a file, its dates moved to the present if it is an example; or the problems that stand in the way. */
export type Opened =
  | { readonly ok: true; readonly book: Book; readonly today: LocalDate; readonly warnings: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export async function openBook(path: string, today: LocalDate | undefined, outside: Outside): Promise<Opened> {
  const checked = await checkedBook(path, today, outside);
  if (!checked.ok) return checked;
  const { book, today: day, problems } = checked;
  return problems.some((problem) => problem.weight === 'error')
    ? { ok: false, problems }
    : { ok: true, book, today: day, warnings: problems };
}

/** A book that could be read, with everything that is wrong with it; or why it could not. */
export type Checked =
  | { readonly ok: true; readonly book: Book; readonly today: LocalDate; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export async function checkedBook(path: string, today: LocalDate | undefined, outside: Outside): Promise<Checked> {
  const text = await readText(path, outside);
  if (typeof text !== 'string') return { ok: false, problems: [text] };
  const read = readPlacedBook(text, { name: basename(path) });
  if (!read.ok) return { ok: false, problems: read.error };
  const day = today ?? outside.today(read.value.book.business.zone);
  const book = layDates(read.value.book, day);
  return { ok: true, book, today: day, problems: checkBook(book, { today: day }).map(read.value.placed) };
}

/** As {@link checkedBook}, but entries that cannot be read are left out, with what is wrong with them among the problems. */
export async function usableBook(path: string, today: LocalDate | undefined, outside: Outside): Promise<Checked> {
  const text = await readText(path, outside);
  if (typeof text !== 'string') return { ok: false, problems: [text] };
  const read = readUsableBook(text, { name: basename(path) });
  if (!read.ok) return { ok: false, problems: read.error };
  const day = today ?? outside.today(read.value.book.business.zone);
  const book = layDates(read.value.book, day);
  return { ok: true, book, today: day, problems: [...read.value.problems, ...checkBook(book, { today: day }).map(read.value.placed)] };
}

/** The text of a file, or why there is none. */
export async function readText(path: string, outside: Outside): Promise<string | Problem> {
  try {
    return await outside.readFile(path);
  } catch (error) {
    return {
      code: 'file.unreadable',
      path: [],
      sentence: `The file cannot be read: ${whyUnreadable(error)}.`,
      todo: 'Look at the path; it is taken from the folder in which the command is run.',
      weight: 'error',
    };
  }
}
const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is none of that name',
  EISDIR: 'it is a folder',
  EACCES: 'it may not be opened',
  ERR_STRING_TOO_LONG: 'it is larger than any book or price list',
  ERR_FS_FILE_TOO_LARGE: 'it is larger than any book or price list',
};
function whyUnreadable(error: unknown): string {
  const code = typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '';
  return reasons[code] ?? (error instanceof Error ? error.message : String(error));
}

/** "book.yaml:12:5 sentence" with what to do below it. */
export function problemText(problem: Problem, file: string): string {
  const place =
    problem.line === undefined
      ? problem.path.length === 0
        ? file
        : `${file} ${problem.path.join('.')}`
      : `${file}:${problem.line}${problem.column === undefined ? '' : `:${problem.column}`}`;
  const todo = problem.todo === undefined ? '' : `\n    ${problem.todo}`;
  return `${place}: ${problem.weight === 'warning' ? 'note: ' : ''}${problem.sentence}${todo}`;
}

/** Says what stands in the way, as sentences on the side or as JSON. */
export function refuse(problems: readonly Problem[], file: string, args: Arguments, outside: Outside): 1 {
  if (args.has('json')) outside.out(`${JSON.stringify({ problems }, undefined, 2)}\n`);
  else for (const problem of problems) outside.err(`${problemText(problem, file)}\n`);
  return 1;
}
