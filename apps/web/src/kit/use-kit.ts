import { type Book, emptyBook } from '@twistwright/books';
import type { BookKitWishes, KitPlan } from '@twistwright/planner';
import type { Money, Problem } from '@twistwright/units';
import { useEffect, useMemo, useRef, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import type { BudgetRange, CurvePoint, KitAnswer, KitAsk, QuickKit, UnpricedWishes } from './kit-ask.ts';

export interface KitState {
  /** What stands on the page: the quick answer of a moving finger, or the whole one. */
  readonly quick: QuickKit | undefined;
  /** The last whole answer; `isWhole` says whether it is for these wishes. */
  readonly plan: KitPlan | undefined;
  readonly isWhole: boolean;
  /** Share of requests met without what is forced in and taken out. */
  readonly freeMet: number | undefined;
  readonly range: BudgetRange | undefined;
  readonly points: readonly CurvePoint[];
  readonly refused: readonly Problem[] | undefined;
  readonly broken: string | undefined;
}
type Found = KitState & { readonly number: number };
const nothing: Found = {
  number: 0,
  quick: undefined,
  plan: undefined,
  isWhole: false,
  freeMet: undefined,
  range: undefined,
  points: [],
  refused: undefined,
  broken: undefined,
};
/** Milliseconds without a new wish after which the whole answer is asked for. */
const restAfter = 350;

/**
 * Plans a kit in two workers: one answers while the slider moves and draws the curve, the other takes its time once the finger rests.
 */
export function useKit(wishes: UnpricedWishes, budget: Money | undefined): KitState {
  const book = useKitBook();
  const [found, setFound] = useState<Found>(nothing);
  const number = useRef(0);
  const workers = useRef<{ readonly soon: Worker; readonly rest: Worker }>(undefined);
  const told = useRef<Book>(undefined);
  const text = JSON.stringify(wishes);

  useEffect(
    () => () => {
      told.current = undefined;
      workers.current?.soon.terminate();
      workers.current?.rest.terminate();
      workers.current = undefined;
    },
    [],
  );
  useEffect(() => {
    const take = (answer: KitAnswer): void => {
      if (answer.number === number.current) setFound((before) => after(before, answer));
    };
    workers.current ??= { soon: startKitWorker(take), rest: startKitWorker(take) };
    number.current++;
    const asked = number.current;
    const unpriced = JSON.parse(text) as UnpricedWishes;
    const { soon, rest } = workers.current;
    if (told.current !== book)
      for (const worker of [soon, rest]) worker.postMessage({ kind: 'book', number: asked, book } satisfies KitAsk);
    told.current = book;
    soon.postMessage({ kind: 'soon', number: asked, wishes: unpriced, budget } satisfies KitAsk);
    setFound((before) => ({ ...before, number: asked, isWhole: false, freeMet: undefined, broken: undefined }));
    if (budget === undefined) return undefined;
    const waiting = setTimeout(
      () => rest.postMessage({ kind: 'full', number: asked, wishes: { ...unpriced, budget } } satisfies KitAsk),
      restAfter,
    );
    return () => clearTimeout(waiting);
  }, [book, text, budget]);
  return found;
}

function after(before: Found, answer: KitAnswer): Found {
  switch (answer.kind) {
    case 'quick':
      return { ...before, quick: answer.quick, refused: undefined };
    case 'range':
      return { ...before, range: answer.range };
    case 'points':
      return { ...before, points: answer.points };
    case 'full':
      return { ...before, quick: answer.plan, plan: answer.plan, isWhole: true, freeMet: answer.freeMet, refused: undefined };
    case 'refused':
      return { ...before, refused: answer.problems, quick: undefined, isWhole: false };
    case 'broken':
      return { ...before, broken: answer.message };
    case 'other':
      return before;
  }
}

/** Another kit, planned anew on the prices of the book, to hold beside the one on the page. */
export function useOtherKit(wishes: BookKitWishes | undefined): KitPlan | undefined {
  const book = useKitBook();
  const [found, setFound] = useState<{ readonly text: string; readonly plan: KitPlan }>();
  const text = wishes === undefined ? undefined : JSON.stringify(wishes);
  useEffect(() => {
    if (text === undefined) return undefined;
    const worker = startKitWorker((answer) => {
      if (answer.kind === 'other') setFound({ text, plan: answer.plan });
    });
    worker.postMessage({ kind: 'book', number: 1, book } satisfies KitAsk);
    worker.postMessage({ kind: 'other', number: 1, wishes: JSON.parse(text) as BookKitWishes } satisfies KitAsk);
    return () => worker.terminate();
  }, [book, text]);
  return useMemo(() => (found?.text === text ? found?.plan : undefined), [found, text]);
}

/** The parts of the book that a kit rests on; the same object as long as they are the same, whatever else changes. */
function useKitBook(): Book {
  const { business, settings, sizes, colours, items, figures, suppliers, offers, gigs } = useBook().book;
  return useMemo(
    () => ({
      ...emptyBook(business),
      ...(settings === undefined ? {} : { settings }),
      ...(sizes === undefined ? {} : { sizes }),
      colours,
      items,
      figures,
      suppliers,
      offers,
      gigs,
    }),
    [business, settings, sizes, colours, items, figures, suppliers, offers, gigs],
  );
}

function startKitWorker(listen: (answer: KitAnswer) => void): Worker {
  const worker = new Worker(new URL('./kit-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', (event: MessageEvent<KitAnswer>) => listen(event.data));
  return worker;
}
