import { parentPort } from 'node:worker_threads';
import { keepCompiled } from '../keep-compiled.ts';
import type { JobMap } from './jobs.ts';
import type { Reply } from './thread-pool.ts';

/** One job as it comes in. */
export interface Order {
  readonly name: keyof JobMap;
  readonly input: unknown;
}

keepCompiled();
const { jobs } = await import('./jobs.ts');
const door = parentPort;
if (door === null) throw new Error('the thread of the jobs was started outside a worker thread');
door.on('message', async ({ name, input }: Order) => {
  door.postMessage(await replyTo(name, input));
});

async function replyTo(name: Order['name'], input: unknown): Promise<Reply> {
  try {
    // Each job takes its own input; the door's other side is typed by `Jobs.run`.
    return { value: await jobs[name](input as never) };
  } catch (error) {
    return { error };
  }
}
