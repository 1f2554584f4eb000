import type { Gig } from '@twistwright/books';
import { useCallback, useEffect, useRef, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import type { AdviceAnswer, AdviceAsk } from './advice-worker.ts';

export interface AskedAdvice {
  readonly answer: AdviceAnswer | undefined;
  readonly isWorking: boolean;
  readonly ask: () => void;
  readonly stop: () => void;
}

/** Advice takes a while, so it is asked for, in a worker of its own that can be ended. Another gig, or a change of this one, forgets it. */
export function useAdvice(gig: Gig): AskedAdvice {
  const { book } = useBook();
  const worker = useRef<Worker>(undefined);
  const [answer, setAnswer] = useState<AdviceAnswer>();
  const [isWorking, setIsWorking] = useState(false);
  const end = useCallback((): void => {
    worker.current?.terminate();
    worker.current = undefined;
    setIsWorking(false);
  }, []);
  const gigText = JSON.stringify(gig);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a changed gig or book makes the advice stale
  useEffect(() => {
    setAnswer(undefined);
    return end;
  }, [gigText, book, end]);
  const ask = (): void => {
    end();
    const started = new Worker(new URL('./advice-worker.ts', import.meta.url), { type: 'module' });
    started.addEventListener('message', (event: MessageEvent<AdviceAnswer>) => {
      setAnswer(event.data);
      end();
    });
    worker.current = started;
    setIsWorking(true);
    const question: AdviceAsk = { book, gig };
    started.postMessage(question);
  };
  return { answer, isWorking, ask, stop: end };
}
