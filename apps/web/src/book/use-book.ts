import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { Book } from '@twistwright/books';
import type { LocalDate } from '@twistwright/units';
import { createContext, useContext, useState } from 'react';
import { readBook, sendChange } from './book-door.ts';
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

export interface Changing {
  readonly change: (change: Change, onDone?: () => void) => void;
  /** Takes the last change of this page back. */
  readonly undo: (() => void) | undefined;
  readonly isSaving: boolean;
  readonly error: Error | null;
}

/** Changes the book: the page shows it at once, the server keeps it, and a refusal puts things back as they were. */
export function useChangeBook(): Changing {
  const client = useQueryClient();
  const [last, setLast] = useState<Change>();
  const mutation = useMutation({
    mutationFn: sendChange,
    onMutate: async (change: Change) => {
      await client.cancelQueries(bookQuery);
      const before = client.getQueryData<Book | null>(bookQuery.queryKey);
      if (before === undefined || before === null) return { before };
      setLast(undoing(before, change));
      // What is taken away stays until the server has agreed, so that the page about it can say why not.
      if (!('remove' in change)) client.setQueryData(bookQuery.queryKey, bookAfter(before, change));
      return { before };
    },
    onError: (_error, _change, context) => {
      setLast(undefined);
      client.setQueryData(bookQuery.queryKey, context?.before);
    },
    onSettled: () => {
      void client.invalidateQueries(bookQuery);
    },
  });
  return {
    change: (change, onDone) => {
      // A refusal is shown by `error`; the promise would say it a second time.
      mutation.mutateAsync(change).then(onDone, () => undefined);
    },
    undo:
      last === undefined
        ? undefined
        : () => {
            mutation.mutate(last, { onSuccess: () => setLast(undefined) });
          },
    isSaving: mutation.isPending,
    error: mutation.error,
  };
}
