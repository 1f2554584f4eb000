import { Worker } from 'node:worker_threads';
import type { Program, Solved, SolveLimits, Solver } from '@twistwright/planner';
import { outcomeOf, type Progress } from './highs-solver.ts';
import { requireSoundProgram } from './program-check.ts';
import type { Job } from './solver-worker.ts';

/** A solver with a thread of its own. Jobs run one after another; `close` ends the thread at once. */
export interface OpenSolver extends Solver {
  close(): Promise<void>;
}

interface Answer {
  readonly id?: number;
  readonly ready?: true;
  readonly progress?: Progress;
  readonly solved?: Solved;
  readonly error?: unknown;
}

/** HiGHS may look at its clock late; after this share of the limit beyond it, the thread is ended. */
const graceShare = 0.04;

/**
 * HiGHS in a worker thread of Node. A time limit is kept from outside: where HiGHS overruns, its thread is ended and the best solution
 * and bound reported so far are the answer. The thread does not keep the process alive; it starts with the first job,
 * or `atOnce`, and then gets ready while the caller does other things.
 */
export function openSolver({ atOnce = false }: { readonly atOnce?: boolean } = {}): OpenSolver {
  let thread: { readonly worker: Worker; readonly ready: Promise<void> } | undefined;
  let queue: Promise<unknown> = Promise.resolve();
  let nextId = 1;
  let isClosed = false;

  const begin = (): { readonly worker: Worker; readonly ready: Promise<void> } => {
    const worker = new Worker(new URL('./solver-worker.ts', import.meta.url));
    const ready = new Promise<void>((resolve, reject) => {
      worker.once('message', () => resolve());
      worker.once('error', reject);
    });
    worker.unref();
    return { worker, ready };
  };
  const end = async (): Promise<void> => {
    const ending = thread;
    thread = undefined;
    await ending?.worker.terminate();
  };
  const solveInTurn = async (program: Program, limits: SolveLimits): Promise<Solved> => {
    if (isClosed) throw new Error('the solver is closed; open a new one');
    thread ??= begin();
    const { worker, ready } = thread;
    worker.ref();
    try {
      await ready;
      return await answerOf(worker, { id: nextId++, program, limits }, end);
    } finally {
      worker.unref();
    }
  };

  if (atOnce) thread = begin();

  return {
    solve(program, limits = {}) {
      const answer = queue.then(() => {
        requireSoundProgram(program);
        return solveInTurn(program, limits);
      });
      queue = answer.catch(() => undefined); // whoever asked hears of the error; the next job runs all the same
      return answer;
    },
    async close() {
      isClosed = true;
      await end();
    },
  };
}

function answerOf(worker: Worker, job: Job, end: () => Promise<void>): Promise<Solved> {
  const { program, limits } = job;
  let best: readonly number[] | undefined;
  let bound = program.sense === 'minimise' ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  return new Promise<Solved>((resolve, reject) => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const settle = (finish: () => void): void => {
      clearTimeout(timer);
      worker.off('message', hear);
      worker.off('error', fail);
      worker.off('exit', gone);
      finish();
    };
    const hear = (answer: Answer): void => {
      if (answer.id !== job.id) return;
      if (answer.progress?.values !== undefined) best = answer.progress.values;
      if (answer.progress?.bound !== undefined) bound = answer.progress.bound;
      const { solved, error } = answer;
      if (solved !== undefined) settle(() => resolve(solved));
      else if (error !== undefined) settle(() => reject(error));
    };
    const fail = (error: unknown): void => settle(() => void end().then(() => reject(error)));
    const gone = (): void => settle(() => reject(new Error('the solver thread ended while it was solving')));
    worker.on('message', hear);
    worker.on('error', fail);
    worker.on('exit', gone);
    if (limits.seconds !== undefined)
      timer = setTimeout(
        () =>
          settle(() => {
            void end();
            resolve(outcomeOf(program, { bound, values: best, start: limits.start }));
          }),
        limits.seconds * 1000 * (1 + graceShare),
      );
    worker.postMessage(job);
  });
}
