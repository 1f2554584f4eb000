import { basename } from 'node:path';
import { type Book, checkBook, layDates } from '@twistwright/books';
import { readBook } from '@twistwright/contract';
import type { LocalDate, Problem } from '@twistwright/units';
import type { Outside } from './outside.ts';

/** The book of a file, its dates moved to the present if it is an example; or the problems that stand in the way. */
export type Opened =
  | { readonly ok: true; readonly book: Book; readonly today: LocalDate; readonly warnings: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export async function openBook(path: string, today: LocalDate | undefined, outside: Outside): Promise<Opened> {
  let text: string;
  try {
    text = await outside.readFile(path);
  } catch (error) {
    const sentence = `${path} cannot be read: ${error instanceof Error ? error.message : String(error)}.`;
    return { ok: false, problems: [{ code: 'file.unreadable', path: [], sentence, weight: 'error' }] };
  }
  const read = readBook(text, { name: basename(path) });
  if (!read.ok) return { ok: false, problems: read.error };
  const day = today ?? outside.today(read.value.business.zone);
  const book = layDates(read.value, day);
  const problems = checkBook(book, { today: day });
  if (problems.some((problem) => problem.weight === 'error')) return { ok: false, problems };
  return { ok: true, book, today: day, warnings: problems };
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
