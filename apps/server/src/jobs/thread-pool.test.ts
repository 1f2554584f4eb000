import { afterEach, expect, test } from 'vitest';
import { NotDone, ThreadPool, type ThreadPoolOptions } from './thread-pool.ts';

const module = new URL('../testing/odd-thread.ts', import.meta.url);
const pools: ThreadPool[] = [];
afterEach(async () => {
  await Promise.all(pools.splice(0).map((pool) => pool.close(0)));
});
function open(options: Partial<ThreadPoolOptions> = {}): ThreadPool {
  const pool = new ThreadPool({ module, threads: 1, queue: 4, waitSeconds: 60, megabytes: 64, ...options });
  pools.push(pool);
  return pool;
}
const limits = { seconds: 60 };
const double = (pool: ThreadPool, given: number) => pool.run({ deed: 'double', given }, limits);
/** Memory that a job waits on until it is woken. */
const gate = (): Int32Array => new Int32Array(new SharedArrayBuffer(4));
function wake(at: Int32Array): void {
  Atomics.store(at, 0, 1);
  Atomics.notify(at, 0);
}
const reason = (promise: Promise<unknown>): Promise<unknown> =>
  promise.then(
    () => 'done',
    (error: unknown) => (error instanceof NotDone ? error.reason : error),
  );

test('jobs are done one after another, and each gets its own answer', async () => {
  const pool = open();
  expect(await Promise.all([1, 2, 3, 4, 5].map((given) => double(pool, given)))).toEqual([2, 4, 6, 8, 10]);
  expect([pool.running, pool.waiting]).toEqual([0, 0]);
});
test('no thread starts before there is a job', async () => {
  expect(open({ module: new URL('file:///nowhere.ts') }).running).toBe(0);
});
test('a thread that was made ready beforehand does the first job, alone', async () => {
  const pool = open({ threads: 2 });
  pool.warm();
  pool.warm();
  expect([await double(pool, 4), pool.running]).toEqual([8, 0]);
});
test('two threads: a short job overtakes a long one', async () => {
  const pool = open({ threads: 2 });
  const at = gate();
  const order: string[] = [];
  const long = pool.run({ deed: 'wait', given: at }, limits).then(() => order.push('long'));
  await double(pool, 1).then(() => order.push('short'));
  wake(at);
  await long;
  expect(order).toEqual(['short', 'long']);
});
test('one more than may wait is turned away at once; the others are done', async () => {
  const pool = open({ queue: 1 });
  const at = gate();
  const running = pool.run({ deed: 'wait', given: at }, limits);
  const waiting = double(pool, 1);
  expect(await reason(double(pool, 2))).toBe('full');
  wake(at);
  expect(await Promise.all([running, waiting])).toEqual(['woken', 2]);
});
test('who waits too long is turned away', async () => {
  const pool = open({ waitSeconds: 0.05 });
  const stop = new AbortController();
  const running = reason(pool.run({ deed: 'endless' }, { ...limits, signal: stop.signal }));
  expect(await reason(double(pool, 1))).toBe('full');
  stop.abort();
  expect(await running).toBe('cancelled');
});
test('a job that is cancelled ends at once, running or waiting, and the next one is done', async () => {
  const pool = open();
  const [first, second] = [new AbortController(), new AbortController()];
  const running = reason(pool.run({ deed: 'endless' }, { ...limits, signal: first.signal }));
  const waiting = reason(pool.run({ deed: 'endless' }, { ...limits, signal: second.signal }));
  const next = double(pool, 21);
  second.abort();
  expect([await waiting, pool.running, pool.waiting]).toEqual(['cancelled', 1, 1]);
  first.abort();
  expect([await running, await next]).toEqual(['cancelled', 42]);
  expect(await reason(pool.run({ deed: 'double' }, { ...limits, signal: first.signal }))).toBe('cancelled');
});
test('a job that takes too long is given up, and the next one is done', async () => {
  const pool = open();
  const late = reason(pool.run({ deed: 'endless' }, { seconds: 0.2 }));
  const next = double(pool, 4);
  expect([await late, await next]).toEqual(['late', 8]);
});
test.each([
  ['fail', 'a bug'],
  ['die', 'a bug where nobody looks'],
  ['exit', 'code 7'],
  ['memory', 'memory'],
])('a job that does "%s" is an error with its words, and the pool lives on', async (deed, words) => {
  const pool = open();
  const next = pool.run({ deed }, limits);
  await expect(next).rejects.toThrow(words);
  expect(await double(pool, 3)).toBe(6);
});
test('what cannot be copied to a thread is an error, and the pool lives on', async () => {
  const pool = open();
  await expect(pool.run({ deed: 'double', given: () => 1 }, limits)).rejects.toThrow('could not be cloned');
  expect(await double(pool, 3)).toBe(6);
});
test('a module that does not load is an error for every job, not a crash', async () => {
  const pool = open({ module: new URL('file:///nowhere.ts') });
  await expect(double(pool, 1)).rejects.toThrow('nowhere');
  await expect(double(pool, 1)).rejects.toThrow('nowhere');
});
test('closing waits for what is there and takes nothing new', async () => {
  const pool = open();
  const at = gate();
  const running = pool.run({ deed: 'wait', given: at }, limits);
  const waiting = double(pool, 5);
  const closing = pool.close(60);
  expect(await reason(double(pool, 1))).toBe('closed');
  wake(at);
  expect(await Promise.all([running, waiting, closing])).toEqual(['woken', 10, undefined]);
});
test('closing ends what does not end by itself', async () => {
  const pool = open();
  const running = reason(pool.run({ deed: 'endless' }, limits));
  const waiting = reason(double(pool, 1));
  await pool.close(0.1);
  expect([await running, await waiting]).toEqual(['closed', 'closed']);
});
