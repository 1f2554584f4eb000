import { type Book, checkBook } from '@twistwright/books';
import type { Collection, Store, Written } from '@twistwright/store';
import type { LocalDate, Problem } from '@twistwright/units';
import { Refusal } from './answers.ts';

/** The book that is kept, or a refusal that says how to begin. */
export async function bookOf(store: Store): Promise<{ readonly book: Book; readonly revision: number }> {
  const kept = await store.read();
  if (kept === undefined) throw new Refusal(404, 'There is no book yet: begin with the demo, an empty business, or a book file.');
  return kept;
}

/** Throws unless the write was made. */
export function written(outcome: Written): number {
  if (outcome.outcome === 'stale')
    throw new Refusal(412, `Somebody else has changed the book since (revision ${outcome.revision}): load it again and repeat the change.`);
  return outcome.revision;
}

/** Problems that the change brings in; what was wrong before does not stand in the way of mending something else. */
export function newProblems(before: Book, after: Book, today: LocalDate): readonly Problem[] {
  const known = new Set(checkBook(before, { today }).map((problem) => `${problem.code} ${problem.sentence}`));
  return checkBook(after, { today }).filter((problem) => problem.weight === 'error' && !known.has(`${problem.code} ${problem.sentence}`));
}

const keyOf = (collection: Collection): 'id' | 'code' => (collection === 'sizes' ? 'code' : 'id');
type Entry = Readonly<Record<string, unknown>>;
export const entriesOf = (book: Book, collection: Collection): readonly Entry[] =>
  (book[collection] ?? []) as readonly unknown[] as readonly Entry[];
export const entryOf = (book: Book, collection: Collection, id: string): Entry | undefined =>
  entriesOf(book, collection).find((entry) => entry[keyOf(collection)] === id);

/** The book after an entry was put in, in its place or last. */
export function bookWith(book: Book, collection: Collection, entry: Entry): Book {
  const key = keyOf(collection);
  const entries = entriesOf(book, collection);
  const isKnown = entries.some((known) => known[key] === entry[key]);
  return { ...book, [collection]: isKnown ? entries.map((known) => (known[key] === entry[key] ? entry : known)) : [...entries, entry] };
}
export const bookWithout = (book: Book, collection: Collection, id: string): Book => ({
  ...book,
  [collection]: entriesOf(book, collection).filter((entry) => entry[keyOf(collection)] !== id),
});
