import type { Book } from '@twistwright/books';
import type { Collection, Store, Written } from '@twistwright/store';
import { Refusal } from './answers.ts';

/** A book as it was read, with its revision. */
export interface KeptBook {
  readonly book: Book;
  readonly revision: number;
}

/** The book of a store, read again only when its revision has moved on. */
export class BookShelf {
  readonly #store: Store;
  #last: KeptBook | undefined;
  #turn: Promise<unknown> = Promise.resolve();
  constructor(store: Store) {
    this.#store = store;
  }

  /** The book that is kept, or undefined before there is one. */
  async kept(): Promise<KeptBook | undefined> {
    const revision = await this.#store.revision();
    if (revision === undefined) return undefined;
    if (this.#last?.revision === revision) return this.#last;
    this.#last = await this.#store.read();
    return this.#last;
  }

  /** The book that is kept, or a refusal that says how to begin. */
  async read(): Promise<KeptBook> {
    const kept = await this.kept();
    if (kept === undefined) throw new Refusal(404, 'There is no book yet: begin with the demo, an empty business, or a book file.');
    return kept;
  }

  /**
   * Makes one change: `write` looks at the book and stores, if its revision is still the one it looked at. Changes of one process come one after another.
   * Where another process was faster it looks again, so that nothing of theirs is lost and every check is of the book that the change goes into; a writer
   * who said which revision was seen (`seen`) is refused with 412 instead.
   */
  change(seen: number | undefined, write: (kept: KeptBook) => Promise<Written>): Promise<number> {
    const made = this.#turn.then(() => this.#changeNow(seen, write));
    this.#turn = made.catch(() => undefined); // whoever asked hears of the error; the next change is made all the same
    return made;
  }

  async #changeNow(seen: number | undefined, write: (kept: KeptBook) => Promise<Written>): Promise<number> {
    for (let turn = 0; turn < turns; turn++) {
      const kept = await this.read();
      if (seen !== undefined && seen !== kept.revision) throw stale(kept.revision);
      const outcome = await write(kept);
      if (outcome.outcome === 'written') return outcome.revision;
      if (seen !== undefined) throw stale(outcome.revision);
    }
    throw new Refusal(409, 'Too many people write at once; nothing is stored. Try again in a moment.');
  }
}
/** Times that a change is tried while other processes are faster. */
const turns = 20;

export const stale = (revision: number): Refusal =>
  new Refusal(
    412,
    `Somebody else has changed the book since (it is at revision ${revision} now): load it again and repeat the change. Nothing is stored.`,
  );

const keyOf = (collection: Collection): 'id' | 'code' => (collection === 'sizes' ? 'code' : 'id');
type Entry = Readonly<Record<string, unknown>>;
export const entriesOf = (book: Book, collection: Collection): readonly Entry[] =>
  (book[collection] ?? []) as readonly unknown[] as readonly Entry[];
export const entryOf = (book: Book, collection: Collection, id: string): Entry | undefined =>
  entriesOf(book, collection).find((entry) => entry[keyOf(collection)] === id);

/** A list of the book after an entry was put in, in its place or last. */
export function listWith(book: Book, collection: Collection, entry: Entry): Partial<Book> {
  const key = keyOf(collection);
  const entries = entriesOf(book, collection);
  const isKnown = entries.some((known) => known[key] === entry[key]);
  return { [collection]: isKnown ? entries.map((known) => (known[key] === entry[key] ? entry : known)) : [...entries, entry] };
}
export const listWithout = (book: Book, collection: Collection, id: string): Partial<Book> => ({
  [collection]: entriesOf(book, collection).filter((entry) => entry[keyOf(collection)] !== id),
});
