import { clockOf } from '@twistwright/units';
import { useEffect, useRef, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import type { Found, ShoppingAnswer, ShoppingAsk, ShoppingDials } from './shopping-ask.ts';

export interface Shopping {
  /** Plans by chance of running out, as far as they are known for these dials. */
  readonly found: ReadonlyMap<number, Found>;
  readonly progress: { readonly what: string; readonly done: number; readonly of: number } | undefined;
  readonly broken: string | undefined;
  /** Ends the work; what was found stays. */
  readonly stop: () => void;
}

/** Plans the shopping in a worker of its own, where the solver may take its time. The plan for the chosen chance comes first. */
export function useShopping(dials: ShoppingDials, others: readonly number[]): Shopping {
  const { book, today } = useBook();
  const worker = useRef<Worker>(undefined);
  const number = useRef(0);
  const [found, setFound] = useState<ReadonlyMap<number, Found>>(new Map());
  const [progress, setProgress] = useState<Shopping['progress']>();
  const [broken, setBroken] = useState<string>();
  const known = useRef<{ readonly key: string; readonly book: unknown; readonly chances: Set<number> }>({
    key: '',
    book,
    chances: new Set(),
  });
  const key = JSON.stringify([dials.daysToSpare, dials.suppliers, dials.until, today]);

  useEffect(() => () => worker.current?.terminate(), []);
  useEffect(() => {
    const isSame = known.current.key === key && known.current.book === book;
    if (!isSame) known.current = { key, book, chances: new Set() };
    if (isSame && known.current.chances.has(dials.chance)) return;
    if (!isSame) setFound(new Map());
    worker.current ??= startWorker((answer) => {
      if (answer.number !== number.current) return;
      if (answer.kind === 'progress') setProgress({ what: answer.what, done: answer.done, of: answer.of });
      if (answer.kind === 'done') setProgress(undefined);
      if (answer.kind === 'broken') {
        setProgress(undefined);
        setBroken(answer.message);
      }
      if (answer.kind === 'found') {
        known.current.chances.add(answer.chance);
        setFound((all) => new Map(all).set(answer.chance, answer.found));
      }
    });
    number.current++;
    const now = new Date();
    const ask: ShoppingAsk = {
      number: number.current,
      book,
      today,
      now: clockOf(now.getHours() * 60 + now.getMinutes()),
      dials,
      others: others.filter((chance) => !known.current.chances.has(chance)),
    };
    setBroken(undefined);
    worker.current.postMessage(ask);
  }, [book, today, dials, others, key]);

  const stop = (): void => {
    worker.current?.terminate();
    worker.current = undefined;
    setProgress(undefined);
  };
  return { found, progress, broken, stop };
}

function startWorker(listen: (answer: ShoppingAnswer) => void): Worker {
  const worker = new Worker(new URL('./shopping-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', (event: MessageEvent<ShoppingAnswer>) => listen(event.data));
  return worker;
}
