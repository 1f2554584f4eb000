import { parentPort } from 'node:worker_threads';

/** A thread that does what it is told, also what no job should do. */
const deeds: Readonly<Record<string, (given: unknown) => unknown>> = {
  double: (given) => 2 * Number(given),
  wait: async (given) => {
    // An address of an Int32Array in memory of several threads: waits there until the test wakes it.
    Atomics.wait(given as Int32Array, 0, 0);
    return 'woken';
  },
  endless: () => {
    for (;;);
  },
  fail: () => {
    throw new TypeError('a bug');
  },
  die: () => {
    setTimeout(() => {
      throw new Error('a bug where nobody looks');
    });
    return new Promise(() => undefined);
  },
  exit: () => process.exit(7),
  memory: () => {
    const heap: string[][] = [];
    for (;;) heap.push(Array.from({ length: 100_000 }, (_, i) => `${i} ${heap.length}`));
  },
};

parentPort?.on('message', async ({ deed, given }: { readonly deed: string; readonly given?: unknown }) => {
  try {
    parentPort?.postMessage({ value: await deeds[deed]?.(given) });
  } catch (error) {
    parentPort?.postMessage({ error });
  }
});
