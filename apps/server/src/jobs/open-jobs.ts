import { JsonText, Refusal } from '../answers.ts';
import type { Order } from './job-thread.ts';
import type { JobMap } from './jobs.ts';
import type { Done, DoneAsJson, Refused } from './outcome.ts';
import { NotDone, ThreadPool } from './thread-pool.ts';

type InputOf<K extends keyof JobMap> = Parameters<JobMap[K]>[0];
type Came<O> = O extends Done<infer T> ? T : O extends DoneAsJson<infer T> ? JsonText<T> : never;
type OutputOf<K extends keyof JobMap> = Came<Awaited<ReturnType<JobMap[K]>>>;

/** Work that takes longer than a request may hold up the others. */
export interface Jobs {
  /**
   * Does a job in a thread of its own. Throws {@link Refusal}: what the job itself refuses, 503 where too many wait or the server stops, 504 where it
   * takes too long. `signal` ends it.
   */
  run<K extends keyof JobMap>(name: K, input: InputOf<K>, signal?: AbortSignal): Promise<OutputOf<K>>;
  /** Jobs that run, and that wait for a thread. */
  load(): { readonly running: number; readonly waiting: number };
  /** Gets the thread for jobs of a moment ready. */
  warm(): void;
  /** Waits for what runs, at most so many seconds, and ends the threads. */
  close(seconds?: number): Promise<void>;
}
export interface JobsOptions {
  /** Most threads for plans and kits, besides the one for jobs of a moment; each starts when it is first needed. */
  readonly threads: number;
  /** Most jobs that wait for a thread, of either kind. */
  readonly queue: number;
  /** Seconds that one job may run, and that it may wait. */
  readonly seconds: number;
}

const megabytes = 2048;
/** Seconds after which to try again when all threads are busy. */
const retrySeconds = 5;

/** Jobs of a moment: a page or a change waits for them, so they have a thread of their own and never stand behind plans and kits. */
export const shortJobs: ReadonlySet<keyof JobMap> = new Set([
  'readBookFile',
  'writeBookFile',
  'ownBook',
  'newProblems',
  'checkWholeBook',
  'figureShown',
  'figurePicture',
  'figureCard',
  'figureList',
  'menuBoard',
  'recipeProblems',
  'balloonsKnown',
  'balloonTestTried',
]);

export function openJobs({ threads, queue, seconds }: JobsOptions): Jobs {
  const module = new URL('./job-thread.ts', import.meta.url);
  const lane = (most: number): ThreadPool => new ThreadPool({ module, threads: most, queue, waitSeconds: seconds, megabytes });
  const lanes = { long: lane(threads), short: lane(1) };
  return {
    async run(name, input, signal) {
      const order: Order = { name, input };
      const pool = shortJobs.has(name) ? lanes.short : lanes.long;
      try {
        const outcome = (await pool.run(order, { seconds, ...(signal === undefined ? {} : { signal }) })) as
          | Done<unknown>
          | DoneAsJson<unknown>
          | Refused;
        if (outcome.kind === 'refused') throw new Refusal(outcome.status, outcome.sentence, outcome.problems);
        // What came is what this job gives: the names of jobs and their types are one map.
        return (outcome.kind === 'json' ? new JsonText(outcome.json) : outcome.value) as never;
      } catch (error) {
        throw error instanceof NotDone ? refusalOf(error, seconds) : error;
      }
    },
    load: () => ({ running: lanes.long.running + lanes.short.running, waiting: lanes.long.waiting + lanes.short.waiting }),
    warm: () => lanes.short.warm(),
    close: async (within = 0) => {
      await Promise.all([lanes.long.close(within), lanes.short.close(within)]);
    },
  };
}

function refusalOf(error: NotDone, seconds: number): Error {
  switch (error.reason) {
    case 'full':
      return new Refusal(503, `Too much is being worked out at the moment: try again in ${retrySeconds} s.`, [], retrySeconds);
    case 'closed':
      return new Refusal(503, 'The server is about to stop: try again in a moment.', [], retrySeconds);
    case 'late':
      return new Refusal(
        504,
        `That takes longer than ${seconds} s and was given up; nothing was stored. Ask for less, or use the command line.`,
      );
    case 'cancelled':
      return error;
  }
}
