/**
 * S. M. Ross, "Introduction to Probability Models", the hot-dog stand: open from 8, the rate rises from 5 an hour to 20 at 11, stays till 13 and falls to
 * 12 at 17. Expected between 8:30 and 9:30: 10, so none comes with chance exp(-10); over the day 37.5 + 40 + 64 = 141.5 (from memory, recomputed).
 * Counts are Poisson, so the variance is the mean.
 */
import { runLine } from '@twistwright/planner';
import { mean, spreadOf, standardDeviation } from '@twistwright/units';
import { expect, test } from 'vitest';
import { gigWith, standardErrorsApart } from './textbook-queue.ts';

const knots = [
  { minute: 0, perMinute: 5 / 60 },
  { minute: 180, perMinute: 20 / 60 },
  { minute: 300, perMinute: 20 / 60 },
  { minute: 540, perMinute: 12 / 60 },
];
const customers = (from: number, to: number) =>
  runLine(gigWith({ servers: 1, service: { kind: 'fixed', minutes: 1 }, minutes: to, warmUp: from }, { kind: 'stream', knots }), {
    seed: 6,
    runs: 2000,
  }).arrived;
for (const [name, from, to, expected] of [
  ['8:30 to 9:30', 30, 90, 10],
  ['8 to 11', 0, 180, 37.5],
  ['13 to 17', 300, 540, 64],
  ['the day', 0, 540, 141.5],
] as const)
  test(`${name}: ${expected} customers, and as much variance`, () => {
    const counts = customers(from, to);
    expect(standardErrorsApart(spreadOf(counts), expected)).toBeLessThan(3);
    const variance = standardDeviation(counts) ** 2;
    expect(Math.abs(variance / expected - 1)).toBeLessThan(3 * Math.sqrt(2 / counts.length));
    expect(mean(counts)).toBeGreaterThan(0);
  });
