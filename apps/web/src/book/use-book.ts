import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { Book } from '@twistwright/books';
import type { LocalDate } from '@twistwright/units';
import { createContext, useContext, useState } from 'react';
import { Overtaken, readBook, sendChange } from './book-door.ts';
import { bookAfter, type Change, undoing } from './change.ts';

export interface OpenBook {
  readonly book: Book;
  readonly today: LocalDate;
}
export const bookQuery = { queryKey: ['book'], queryFn: async (): Promise<Book | null> => (await readBook()) ?? null } as const;

/** The book that is open, on every page that has one. */
export const OpenBookContext = createContext<OpenBook | undefined>(undefined);
export function useBook(): OpenBook {
  const open = useContext(OpenBookContext);
  if (open === undefined) throw new Error('a page that needs the book was shown without one');
  return open;
}

/** The name under which changes of the book are sent. */
const changes = { mutationKey: ['change of the book'] } as const;

/** A change, and the book that whoever asked for it had seen. */
interface Asked {
  readonly change: Change;
  readonly before: Book | undefined;
}
export interface Changing {
  readonly change: (change: Change, onDone?: () => void) => void;
  /** Takes the last change of this page back. */
  readonly undo: (() => void) | undefined;
  readonly isSaving: boolean;
  readonly error: Error | null;
}

/** Changes that were made from here, in order: what somebody did themselves, in another form of the page, is news to nobody. */
const ownChanges: Change[] = [];
/** The book that a form began from, and how many of the own changes had been made by then. */
interface Begun {
  readonly book: Book | undefined;
  readonly changes: number;
}
const bookOf = ({ book, changes: seen }: Begun): Book | undefined =>
  book === undefined ? undefined : ownChanges.slice(seen).reduce(bookAfter, book);

/**
 * Changes the book: the page shows it at once, the server keeps it, and a refusal puts things back as they were. A form that is filled in while others
 * may change the same thing says `fromDraft`: then what it began from counts, not what has come in since.
 */
export function useChangeBook({ fromDraft = false }: { readonly fromDraft?: boolean } = {}): Changing {
  const client = useQueryClient();
  const now = (): Book | undefined => client.getQueryData<Book | null>(bookQuery.queryKey) ?? undefined;
  const [begun, setBegun] = useState((): Begun => ({ book: now(), changes: ownChanges.length }));
  const [last, setLast] = useState<Change>();
  const show = (book: Book): void => {
    client.setQueryData(bookQuery.queryKey, book);
  };
  const mutation = useMutation({
    mutationFn: ({ change, before }: Asked) => sendChange(change, before),
    onMutate: ({ change }: Asked) => {
      // A reading on its way would put the old book back.
      void client.cancelQueries(bookQuery);
      const before = now();
      if (before === undefined) return;
      const back = undoing(before, change);
      setLast(back);
      // What is taken away stays until the server has agreed, so that the page about it can say why not.
      if ('remove' in change) return;
      show(bookAfter(before, change));
      return { back };
    },
    onSuccess: (_nothing, { change }) => void ownChanges.push(change),
    onError: (error, _asked, shown) => {
      setLast(undefined);
      // Who was told that somebody else was faster, and saves once more, means it.
      if (error instanceof Overtaken) setBegun({ book: undefined, changes: ownChanges.length });
      const book = now();
      if (shown !== undefined && book !== undefined) show(bookAfter(book, shown.back));
    },
    onSettled: () => {
      // What the server holds before the last change has reached it is older than what the page shows.
      if (client.isMutating(changes) === 1) void client.invalidateQueries(bookQuery);
    },
    ...changes,
  });
  const asked = (change: Change): Asked => ({ change, before: fromDraft ? bookOf(begun) : now() });
  return {
    change: (change, onDone) => {
      // A refusal is shown by `error`; the promise would say it a second time.
      mutation.mutateAsync(asked(change)).then(onDone, () => undefined);
    },
    undo:
      last === undefined
        ? undefined
        : () => {
            mutation.mutate({ change: last, before: now() }, { onSuccess: () => setLast(undefined) });
          },
    isSaving: mutation.isPending,
    error: mutation.error,
  };
}
