/**
 * M/M/c: A. K. Erlang's waiting formula C(c, a) and the mean wait C / (c mu - lambda); worked examples in J. Banks, J. S. Carson, B. L. Nelson,
 * D. M. Nicol, "Discrete-Event System Simulation" (tool crib: 2 servers, 4/3 erlang, mean wait 0.8 services) and F. S. Hillier, G. J. Lieberman,
 * "Introduction to Operations Research" (2 servers, 2/3 erlang: 1/6 wait), both from memory, recomputed from the formula.
 */
import { expect, test } from 'vitest';
import { measure, standardErrorsApart } from './textbook-queue.ts';

const cases: readonly (readonly [servers: number, load: number, waiting: number, wait: number])[] = [
  [2, 2 / 3, 1 / 6, 0.125],
  [2, 4 / 3, 8 / 15, 0.8],
  [3, 2, 4 / 9, 0.4444444444],
  [4, 3, 0.5094339622641509, 0.5094339623],
  [10, 8, 0.4091801507964435, 0.2045900754],
];
for (const [servers, load, waiting, wait] of cases)
  test(`${servers} servers, ${load.toFixed(2)} erlang: ${waiting.toFixed(4)} wait, ${wait.toFixed(4)} services on the average`, () => {
    const found = measure({ servers, service: { kind: 'exponential', mean: 1 }, perMinute: load, minutes: 4000, warmUp: 200 }, 2, 30);
    expect(standardErrorsApart(found.chanceOfWaiting, waiting)).toBeLessThan(3);
    expect(standardErrorsApart(found.wait, wait)).toBeLessThan(3);
    expect(found.wait.error / wait).toBeLessThan(0.03);
  });
