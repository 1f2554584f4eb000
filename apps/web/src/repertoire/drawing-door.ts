import type { DrawingAnswer, DrawingAsk } from './drawing-ask.ts';

type Waiting = (answer: DrawingAnswer) => void;

/** Draws figures away from the page; what was drawn is kept as long as the page is open. */
class DrawingDoor {
  #worker: Worker | undefined;
  readonly #drawn = new Map<string, DrawingAnswer>();
  readonly #waiting = new Map<string, readonly Waiting[]>();

  /** Starts the worker, so that the first figure need not wait for it. */
  warm(): void {
    this.#open();
  }

  known(key: string): DrawingAnswer | undefined {
    return this.#drawn.get(key);
  }

  /** Calls back at once when it is known, else when the worker has it. */
  ask(ask: DrawingAsk, done: Waiting): void {
    const known = this.#drawn.get(ask.key);
    if (known !== undefined) {
      done(known);
      return;
    }
    const waiting = this.#waiting.get(ask.key);
    this.#waiting.set(ask.key, [...(waiting ?? []), done]);
    if (waiting === undefined) this.#open().postMessage(ask);
  }

  #open(): Worker {
    if (this.#worker !== undefined) return this.#worker;
    const worker = new Worker(new URL('./drawing-worker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', ({ data }: MessageEvent<DrawingAnswer>) => {
      if (this.#drawn.size > mostKept) this.#drawn.clear();
      this.#drawn.set(data.key, data);
      const waiting = this.#waiting.get(data.key) ?? [];
      this.#waiting.delete(data.key);
      for (const done of waiting) done(data);
    });
    this.#worker = worker;
    return worker;
  }
}
const mostKept = 2000;

export const drawings = new DrawingDoor();
