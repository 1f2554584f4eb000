// Plays a range of runs of the typical gig and says when it is done.
import { parentPort } from 'node:worker_threads';
import { runLine } from '@twistwright/planner';
import { typicalGig } from './typical-gig.ts';

parentPort?.on('message', ({ firstRun, runs }: { readonly firstRun: number; readonly runs: number }) => {
  const samples = runLine(typicalGig, { seed: 1, runs, firstRun });
  parentPort?.postMessage(samples.served.reduce((sum, served) => sum + served, 0));
});
