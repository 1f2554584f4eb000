import type { Book, BookList, Business, Settings } from '@twistwright/books';

export type EntryOf<L extends BookList> = NonNullable<Book[L]>[number];

/** One change of the book. */
export type Change =
  | { readonly [L in BookList]: { readonly list: L; readonly put: EntryOf<L> } }[BookList]
  | { readonly list: BookList; readonly remove: string }
  | { readonly business: Business }
  | { readonly settings: Settings };

/** The book after a change: an entry with a known id takes the old one's place, a new one stands at the end. */
export function bookAfter(book: Book, change: Change): Book {
  if ('business' in change) return { ...book, business: change.business };
  if ('settings' in change) return { ...book, settings: change.settings };
  const entries: readonly { readonly id: string }[] = book[change.list] ?? [];
  if ('remove' in change) return { ...book, [change.list]: entries.filter((entry) => entry.id !== change.remove) };
  const isKnown = entries.some((entry) => entry.id === change.put.id);
  return {
    ...book,
    [change.list]: isKnown ? entries.map((entry) => (entry.id === change.put.id ? change.put : entry)) : [...entries, change.put],
  };
}

/** The part of a book that a change is about; undefined where there is none yet. */
export function touched(book: Book, change: Change): unknown {
  if ('business' in change) return book.business;
  if ('settings' in change) return book.settings ?? {};
  const id = 'remove' in change ? change.remove : change.put.id;
  const entries: readonly { readonly id: string }[] = book[change.list] ?? [];
  return entries.find((entry) => entry.id === id);
}

/** The change that takes this one back. */
export function undoing(book: Book, change: Change): Change {
  if ('business' in change) return { business: book.business };
  if ('settings' in change) return { settings: book.settings ?? {} };
  const id = 'remove' in change ? change.remove : change.put.id;
  const entries: readonly { readonly id: string }[] = book[change.list] ?? [];
  const before = entries.find((entry) => entry.id === id);
  return before === undefined ? { list: change.list, remove: id } : ({ list: change.list, put: before } as Change);
}

/** An id for a new entry: the name in plain letters, with a number where that is taken. */
export function newId(name: string, taken: readonly { readonly id: string }[]): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  const base = plain === '' ? 'entry' : plain;
  const ids = new Set(taken.map((entry) => entry.id));
  let id = base;
  for (let number = 2; ids.has(id); number++) id = `${base}-${number}`;
  return id;
}
