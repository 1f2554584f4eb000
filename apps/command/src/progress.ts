import type { Outside } from './outside.ts';

/** Seconds after which a wait is worth a word, and between two words. */
const firstAfter = 1;
const nextAfter = 5;

/** Says on the side what takes long: nothing within the first second, then a line every few seconds. */
export class Progress {
  readonly #outside: Outside;
  #silentUntil: number;
  constructor(outside: Outside) {
    this.#outside = outside;
    this.#silentUntil = outside.now() + firstAfter;
  }
  /** A line, unless one was said a moment ago. */
  say(line: string): void {
    const now = this.#outside.now();
    if (now < this.#silentUntil) return;
    this.#silentUntil = now + nextAfter;
    this.#outside.err(`${line}\n`);
  }
  /** Waits for the work, and says the line as long as it takes. */
  async during<T>(line: string, work: Promise<T>): Promise<T> {
    const timer = setInterval(() => this.say(line), 250);
    try {
      return await work;
    } finally {
      clearInterval(timer);
    }
  }
}
