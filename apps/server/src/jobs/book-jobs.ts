import { type Book, checkBook, layDates } from '@twistwright/books';
import { type BookForm, type PriceMapping, readBook, readPrices, writeBook } from '@twistwright/contract';
import type { LocalDate, Problem } from '@twistwright/units';
import { done, doneAsJson, refused } from './outcome.ts';

export function readBookFile({ text, name }: { readonly text: string; readonly name: string }) {
  const read = readBook(text, { name });
  return read.ok ? done(read.value) : refused(422, 'The book file cannot be read; nothing is stored.', read.error);
}

/** A book as somebody's own: an example's dates in the present, and no longer an example. Refused where it is not in order. */
export function ownBook({ book, today }: { readonly book: Book; readonly today: LocalDate }) {
  const { laidOn: _laidOn, ...own } = layDates(book, today);
  const problems = checkBook(own, { today });
  return problems.some((problem) => problem.weight === 'error')
    ? refused(422, 'The book is not in order; nothing is stored.', problems)
    : done({ book: own, problems });
}

interface ChangeOfBook {
  readonly book: Book;
  /** The parts that are to be other than they are. */
  readonly change: Partial<Book>;
  readonly today: LocalDate;
}
/** Errors that a change brings in; what was wrong before does not stand in the way of mending something else. */
export function newProblems({ book, change, today }: ChangeOfBook) {
  const wording = ({ code, sentence }: Problem): string => `${code} ${sentence}`;
  const known = new Set(checkBook(book, { today }).map(wording));
  const after = checkBook({ ...book, ...change }, { today });
  return done(after.filter((problem) => problem.weight === 'error' && !known.has(wording(problem))));
}

export const writeBookFile = ({ book, form }: { readonly book: Book; readonly form: BookForm }) => done(writeBook(book, form));

export const checkWholeBook = ({ book, today }: { readonly book: Book; readonly today: LocalDate }) =>
  doneAsJson({ problems: checkBook(book, { today }) });

interface PriceText {
  readonly text: string;
  readonly book: Book;
  readonly supplier: string;
  readonly mapping?: PriceMapping;
}
export function readPriceList({ text, ...options }: PriceText) {
  const read = readPrices(text, options);
  return read.ok ? done(read.value) : refused(422, 'The price list cannot be read; nothing is stored.', read.error);
}
