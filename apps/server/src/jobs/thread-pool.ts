import { Worker } from 'node:worker_threads';

/** Why a job was not done, where the job itself is not to blame. */
export class NotDone extends Error {
  /** `full`: too many wait, or it waited too long; `late`: it ran longer than it may; `cancelled`: whoever asked has gone; `closed`: the pool ends. */
  readonly reason: 'full' | 'late' | 'cancelled' | 'closed';
  constructor(reason: NotDone['reason'], sentence: string) {
    super(sentence);
    this.name = 'NotDone';
    this.reason = reason;
  }
}

export interface ThreadPoolOptions {
  /** Module that a thread runs: it takes one message a job and posts one {@link Reply}. */
  readonly module: URL;
  /** Most threads; each starts when it is first needed. */
  readonly threads: number;
  /** Most jobs that wait for a thread. */
  readonly queue: number;
  /** Seconds that a job may wait. */
  readonly waitSeconds: number;
  /** Megabytes of heap that one thread may have. */
  readonly megabytes: number;
}
export interface JobLimits {
  /** Seconds that the job may run. */
  readonly seconds: number;
  /** Ends the job, waiting or running. */
  readonly signal?: AbortSignal;
}
/** What a thread posts when a job is over. */
export type Reply = { readonly value: unknown } | { readonly error: unknown };

interface Ticket {
  readonly job: unknown;
  readonly seconds: number;
  readonly done: (reply: Reply) => void;
  timer?: ReturnType<typeof setTimeout>;
}
interface Thread {
  readonly worker: Worker;
  ticket?: Ticket;
}

/**
 * A few threads of Node that do one job each at a time. A job that is cancelled or late ends its thread, and the next one gets a new thread; so does a
 * job that takes its thread down with it. Rejects with {@link NotDone}, or with what the job threw. An idle thread does not keep the process alive.
 */
export class ThreadPool {
  readonly #options: ThreadPoolOptions;
  readonly #threads = new Set<Thread>();
  readonly #waiting = new Set<Ticket>();
  readonly #ending = new Set<Promise<unknown>>();
  #isClosed = false;
  #whenEmpty: (() => void) | undefined;

  constructor(options: ThreadPoolOptions) {
    if (!(options.threads >= 1 && options.queue >= 0))
      throw new RangeError(`a pool of ${options.threads} threads and ${options.queue} places`);
    this.#options = options;
  }

  get running(): number {
    return [...this.#threads].filter((thread) => thread.ticket !== undefined).length;
  }
  get waiting(): number {
    return this.#waiting.size;
  }

  /** Starts a thread, if there is none, so that the first job need not wait for it. */
  warm(): void {
    if (this.#threads.size === 0 && !this.#isClosed) this.#open();
  }

  run(job: unknown, { seconds, signal }: JobLimits): Promise<unknown> {
    if (this.#isClosed) return Promise.reject(closed());
    if (signal?.aborted === true) return Promise.reject(cancelled());
    const { promise, resolve, reject } = Promise.withResolvers<unknown>();
    const ticket: Ticket = {
      job,
      seconds,
      done: (reply) => {
        clearTimeout(ticket.timer);
        signal?.removeEventListener('abort', abort);
        if ('value' in reply) resolve(reply.value);
        else reject(reply.error);
        if (this.running + this.waiting === 0) this.#whenEmpty?.();
      },
    };
    const abort = (): void => this.#giveUp(ticket, cancelled());
    signal?.addEventListener('abort', abort, { once: true });
    this.#take(ticket);
    return promise;
  }

  /** Takes no more jobs, waits for those that are there, at most so many seconds, and ends the threads. */
  async close(seconds: number): Promise<void> {
    this.#isClosed = true;
    if (this.running + this.waiting > 0) {
      const { promise, resolve } = Promise.withResolvers<void>();
      this.#whenEmpty = resolve;
      const timer = setTimeout(resolve, seconds * 1000);
      await promise;
      clearTimeout(timer);
    }
    for (const ticket of [...this.#waiting]) this.#giveUp(ticket, closed());
    for (const thread of [...this.#threads]) this.#end(thread, { error: closed() });
    await Promise.all(this.#ending);
  }

  #take(ticket: Ticket): void {
    const { threads, queue, waitSeconds } = this.#options;
    const idle = this.#idle();
    if (idle !== undefined) this.#start(idle, ticket);
    else if (this.#threads.size < threads) this.#start(this.#open(), ticket);
    else if (this.#waiting.size >= queue) ticket.done({ error: new NotDone('full', `${queue} jobs wait already.`) });
    else {
      this.#waiting.add(ticket);
      const late = new NotDone('full', `It waited ${waitSeconds} s for its turn.`);
      ticket.timer = setTimeout(() => this.#giveUp(ticket, late), waitSeconds * 1000);
    }
  }

  #idle(): Thread | undefined {
    return [...this.#threads].find((thread) => thread.ticket === undefined);
  }

  #open(): Thread {
    const { module, megabytes } = this.#options;
    const worker = new Worker(module, { resourceLimits: { maxOldGenerationSizeMb: megabytes } });
    const thread: Thread = { worker };
    worker.on('message', (reply: Reply) => this.#settle(thread, reply));
    worker.on('messageerror', (error) => this.#end(thread, { error }));
    worker.on('error', (error) => this.#end(thread, { error }));
    worker.on('exit', (code) => this.#end(thread, { error: new Error(`a thread ended by itself with code ${code}`) }));
    worker.unref();
    this.#threads.add(thread);
    return thread;
  }

  #start(thread: Thread, ticket: Ticket): void {
    clearTimeout(ticket.timer);
    thread.ticket = ticket;
    thread.worker.ref();
    ticket.timer = setTimeout(
      () => this.#end(thread, { error: new NotDone('late', `It took longer than ${ticket.seconds} s.`) }),
      ticket.seconds * 1000,
    );
    try {
      thread.worker.postMessage(ticket.job);
    } catch (error) {
      this.#settle(thread, { error }); // a job that cannot be copied never left
    }
  }

  #settle(thread: Thread, reply: Reply): void {
    const { ticket } = thread;
    if (ticket === undefined) return;
    delete thread.ticket;
    thread.worker.unref();
    this.#next();
    ticket.done(reply);
  }

  #giveUp(ticket: Ticket, error: NotDone): void {
    const thread = [...this.#threads].find((one) => one.ticket === ticket);
    if (thread !== undefined) this.#end(thread, { error });
    else if (this.#waiting.delete(ticket)) ticket.done({ error });
  }

  #end(thread: Thread, reply: Reply): void {
    if (!this.#threads.delete(thread)) return;
    const ending = thread.worker.terminate();
    this.#ending.add(ending);
    void ending.finally(() => this.#ending.delete(ending));
    const { ticket } = thread;
    delete thread.ticket;
    this.#next();
    ticket?.done(reply);
  }

  #next(): void {
    for (const ticket of [...this.#waiting]) {
      const idle = this.#idle();
      if (idle === undefined && this.#threads.size >= this.#options.threads) return;
      this.#waiting.delete(ticket);
      this.#start(idle ?? this.#open(), ticket);
    }
  }
}

const cancelled = (): NotDone => new NotDone('cancelled', 'Whoever asked has gone.');
const closed = (): NotDone => new NotDone('closed', 'The server is about to stop.');
