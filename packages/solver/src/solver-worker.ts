import { parentPort } from 'node:worker_threads';
import type { Program, SolveLimits } from '@twistwright/planner';
import highsModule from 'highs';
import { type LoadHighs, solveNow } from './highs-solver.ts';

const loadHighs = highsModule as unknown as LoadHighs;

/** Messages of the solver thread: one job in, progress and one answer or error out. */
export interface Job {
  readonly id: number;
  readonly program: Program;
  readonly limits: SolveLimits;
}

const door = parentPort;
if (door === null) throw new Error('the solver worker was started outside a worker thread');
const highs = await loadHighs();
door.on('message', ({ id, program, limits }: Job) => {
  try {
    const solved = solveNow(highs, program, limits, (progress) => door.postMessage({ id, progress }));
    door.postMessage({ id, solved });
  } catch (error) {
    door.postMessage({ id, error });
  }
});
door.postMessage({ ready: true });
