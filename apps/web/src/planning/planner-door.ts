import type { Book } from '@twistwright/books';
import type { LocalDate } from '@twistwright/units';
import type { Answer, Ask } from './ask.ts';

type Listener = (answer: Answer) => void;

/** The one worker that plans, for all pages. It starts when the first page asks, or before that. */
class PlannerDoor {
  #worker: Worker | undefined;
  #number = 0;
  #open: { readonly book: Book; readonly today: LocalDate } | undefined;
  readonly #listeners = new Set<Listener>();

  /** Tells the worker which book it is about; the same book is told once. */
  open(book: Book, today: LocalDate): void {
    if (this.#open?.book === book && this.#open.today === today) return;
    this.#open = { book, today };
    this.#post({ kind: 'open', book, today });
  }
  /** Asks, and gives the number that the answers carry. */
  ask(question: DistributiveOmit<Exclude<Ask, { kind: 'open' }>, 'number'>): number {
    this.#number++;
    this.#post({ ...question, number: this.#number } as Ask);
    return this.#number;
  }
  listen(listener: Listener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }
  /** The worker, which may so fetch its code before there is anything to ask. */
  start(): Worker {
    this.#worker ??= this.#begin();
    return this.#worker;
  }
  #post(ask: Ask): void {
    this.start().postMessage(ask);
  }
  #begin(): Worker {
    const worker = new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', (event: MessageEvent<Answer>) => {
      for (const listener of this.#listeners) listener(event.data);
    });
    return worker;
  }
}
type DistributiveOmit<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never;

export const plannerDoor = new PlannerDoor();
