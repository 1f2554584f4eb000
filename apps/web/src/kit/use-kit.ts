import { type Book, emptyBook } from '@twistwright/books';
import type { BookKitWishes, KitPlan, NearestKit } from '@twistwright/planner';
import type { Money, Problem } from '@twistwright/units';
import { useEffect, useMemo, useRef, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import type { BudgetRange, CurvePoint, KitAnswer, KitAsk, QuickKit, UnpricedWishes } from './kit-ask.ts';

/** A whole answer, and what it answers. */
export interface PlannedKit {
  readonly plan: KitPlan;
  readonly wishes: BookKitWishes;
}
export interface KitState {
  /** What stands on the page: the quick answer of a moving finger, or the whole one. */
  readonly quick: QuickKit | undefined;
  /** The last whole answer; `isWhole` says whether it is for these wishes. */
  readonly planned: PlannedKit | undefined;
  readonly isWhole: boolean;
  /** Share of requests met without what is forced in and taken out. */
  readonly freeMet: number | undefined;
  readonly range: BudgetRange | undefined;
  readonly points: readonly CurvePoint[];
  readonly refused: readonly Problem[] | undefined;
  /** Where it is refused: what is possible instead. */
  readonly nearest: NearestKit | undefined;
  readonly broken: string | undefined;
}
/** What has been answered; the number is that of the question. */
interface Found extends Omit<KitState, 'isWhole'> {
  readonly quickNumber: number;
  readonly whole: Question | undefined;
  readonly refusedTo: Question | undefined;
}
interface Question {
  readonly number: number;
  readonly book: Book;
  readonly text: string;
  readonly budget: Money | undefined;
}
const nothing: Found = {
  quickNumber: 0,
  whole: undefined,
  refusedTo: undefined,
  quick: undefined,
  planned: undefined,
  freeMet: undefined,
  range: undefined,
  points: [],
  refused: undefined,
  nearest: undefined,
  broken: undefined,
};
/** Milliseconds without a new wish after which the whole answer is asked for. */
const restAfter = 350;

interface Workers {
  /** Answers out of what has been found so far, and does nothing else, so that it is never at work when a finger moves. */
  readonly known: Worker;
  /** Finds better purchases for a budget, and draws the curve. */
  readonly soon: Worker;
  /** Takes its time once the finger rests. */
  readonly rest: Worker;
}

/** Plans a kit in three workers: one follows the finger, one improves on it and draws the curve, one proves. */
export function useKit(wishes: UnpricedWishes, budget: Money | undefined): KitState {
  const book = useKitBook();
  const [found, setFound] = useState<Found>(nothing);
  const latest = useRef<Question>(undefined);
  const workers = useRef<Workers>(undefined);
  const told = useRef<Book>(undefined);
  const text = JSON.stringify(wishes);

  useEffect(
    () => () => {
      told.current = undefined;
      for (const worker of Object.values(workers.current ?? {})) worker.terminate();
      workers.current = undefined;
    },
    [],
  );
  useEffect(() => {
    const take = (answer: KitAnswer): void => {
      const question = latest.current;
      if (question?.number === answer.number) setFound((before) => after(before, answer, question));
    };
    workers.current ??= startWorkers(take);
    const number = (latest.current?.number ?? 0) + 1;
    const unpriced = JSON.parse(text) as UnpricedWishes;
    latest.current = { number, book, text, budget };
    const { known, soon, rest } = workers.current;
    if (told.current !== book)
      for (const worker of [known, soon, rest]) worker.postMessage({ kind: 'book', number, book } satisfies KitAsk);
    told.current = book;
    if (budget !== undefined) known.postMessage({ kind: 'known', number, wishes: unpriced, budget } satisfies KitAsk);
    soon.postMessage({ kind: 'soon', number, wishes: unpriced, budget } satisfies KitAsk);
    if (budget === undefined) return undefined;
    const waiting = setTimeout(
      () => rest.postMessage({ kind: 'full', number, wishes: { ...unpriced, budget } } satisfies KitAsk),
      restAfter,
    );
    return () => clearTimeout(waiting);
  }, [book, text, budget]);
  const isThis = (question: Question | undefined): boolean =>
    question?.book === book && question.text === text && question.budget === budget;
  const isWhole = isThis(found.whole);
  // What was refused before says nothing about what is wished now.
  const refused = isThis(found.refusedTo) ? { refused: found.refused, nearest: found.nearest } : { refused: undefined, nearest: undefined };
  return { ...found, ...refused, isWhole, freeMet: isWhole ? found.freeMet : undefined };
}

const accepted = { refused: undefined, nearest: undefined, broken: undefined } as const;
function after(before: Found, answer: KitAnswer, question: Question): Found {
  const { number, budget } = question;
  switch (answer.kind) {
    case 'known':
      // What has been found since is better.
      if (before.quickNumber === number) return before;
      return { ...before, quick: { ...answer.quick, rules: before.quick?.rules ?? [] }, ...accepted };
    case 'quick':
      if (before.whole?.number === number) return before;
      return { ...before, quickNumber: number, quick: answer.quick, ...accepted };
    case 'range':
      return { ...before, range: answer.range };
    case 'points':
      return { ...before, points: answer.points };
    case 'full':
      if (budget === undefined) return before;
      return {
        ...before,
        quickNumber: number,
        whole: question,
        quick: answer.plan,
        planned: { plan: answer.plan, wishes: { ...(JSON.parse(question.text) as UnpricedWishes), budget } },
        freeMet: answer.freeMet,
        ...accepted,
      };
    case 'refused':
      return { ...before, refused: answer.problems, refusedTo: question, quick: undefined };
    case 'nearest':
      return { ...before, nearest: answer.nearest };
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

function startWorkers(listen: (answer: KitAnswer) => void): Workers {
  const workers: Workers = { known: startKitWorker(listen), soon: startKitWorker(listen), rest: startKitWorker(listen) };
  const { port1, port2 } = new MessageChannel();
  workers.soon.postMessage({ kind: 'port', number: 0, port: port1, use: 'tell' } satisfies KitAsk, [port1]);
  workers.known.postMessage({ kind: 'port', number: 0, port: port2, use: 'listen' } satisfies KitAsk, [port2]);
  return workers;
}
function startKitWorker(listen: (answer: KitAnswer) => void): Worker {
  const worker = new Worker(new URL('./kit-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', (event: MessageEvent<KitAnswer>) => listen(event.data));
  return worker;
}
