/**
 * J. D. C. Little, "A Proof for the Queuing Formula: L = lambda W", Operations Research 9 (1961) 383-387. With numbers: information desk of B. Render,
 * R. M. Stair, M. E. Hanna, "Quantitative Analysis for Management" (20 an hour, 2 minutes each, 2 at the desk): L = 3/4, in line 1/12.
 * And without any law of arrival or service: over a whole gig that starts and ends empty, the people waiting, added up over time, are the minutes waited.
 */
import { runLine } from '@twistwright/planner';
import { spreadOf } from '@twistwright/units';
import { expect, test } from 'vitest';
import { gigWith, measure, standardErrorsApart } from './textbook-queue.ts';

test('information desk: 1/12 waiting, 3/4 there', () => {
  const found = measure({ servers: 2, service: { kind: 'exponential', mean: 2 }, perMinute: 1 / 3, minutes: 30_000, warmUp: 0 }, 7, 20);
  const { samples } = found;
  const notes = samples.lengths.length / samples.runs;
  const waiting = spreadOf(
    Float64Array.from({ length: samples.runs }, (_, run) => {
      const row = samples.lengths.subarray(run * notes, (run + 1) * notes);
      return row.reduce((sum, length) => sum + length, 0) / notes;
    }),
  );
  const busy = spreadOf(
    Float64Array.from({ length: samples.runs }, (_, run) => ((samples.busy[2 * run] ?? 0) + (samples.busy[2 * run + 1] ?? 0)) / 30_000),
  );
  expect(standardErrorsApart(waiting, 1 / 12)).toBeLessThan(3);
  expect(Math.abs(waiting.mean - found.wait.mean / 3)).toBeLessThan(3 * waiting.error);
  expect(standardErrorsApart(busy, 2 / 3)).toBeLessThan(3);
});
test('a gig with a rush, batches, patience: people in line over time are minutes waited', () => {
  const knots = [
    { minute: 0, perMinute: 0 },
    { minute: 120, perMinute: 0.9 },
    { minute: 240, perMinute: 0 },
  ];
  const model = gigWith(
    {
      servers: 1,
      service: { kind: 'gamma', mean: 1.5, shape: 3 },
      batches: [0.6, 0.3, 0.1],
      patience: { kind: 'log-normal', median: 25, sigma: 0.6 },
      minutes: 600,
      warmUp: 0,
    },
    { kind: 'stream', knots },
  );
  const samples = runLine(model, { seed: 8, runs: 3000 });
  const notes = samples.lengths.length / samples.runs;
  const difference = Float64Array.from({ length: samples.runs }, (_, run) => {
    const row = samples.lengths.subarray(run * notes, (run + 1) * notes);
    return 5 * row.reduce((sum, length) => sum + length, 0) - (samples.waitMinutesOfAll[run] ?? 0);
  });
  expect(standardErrorsApart(spreadOf(difference), 0)).toBeLessThan(3);
  expect(spreadOf(samples.waitMinutesOfAll).mean).toBeGreaterThan(500);
});
