/**
 * A. K. Erlang, "Solution of some problems in the theory of probabilities of significance in automatic telephone exchanges", Elektroteknikeren
 * 13 (1917): the chance that all c lines are taken when a erlang are offered and nobody waits, B(c, a). Values: closed forms 1/5, 4/19 and the
 * recursion B(k) = a B(k-1) / (k + a B(k-1)). It holds for every service time of the same mean (B. A. Sevastyanov 1957), which is checked too.
 * Nobody waits: patience of zero minutes.
 */
import type { Duration } from '@twistwright/planner';
import { expect, test } from 'vitest';
import { measure, standardErrorsApart } from './textbook-queue.ts';

const exponential: Duration = { kind: 'exponential', mean: 1 };
const cases: readonly (readonly [servers: number, load: number, lost: number, service: Duration])[] = [
  [2, 1, 0.2, exponential],
  [3, 2, 4 / 19, exponential],
  [5, 3, 0.110054347826087, exponential],
  [10, 8, 0.121661064252952, exponential],
  [3, 2, 4 / 19, { kind: 'fixed', minutes: 1 }],
  [3, 2, 4 / 19, { kind: 'gamma', mean: 1, shape: 4 }],
];
for (const [servers, load, lost, service] of cases)
  test(`${servers} servers, ${load} erlang, ${service.kind} service: ${lost.toFixed(4)} are lost`, () => {
    const { chanceOfLeaving, chanceOfWaiting } = measure(
      { servers, service, perMinute: load, patience: { kind: 'fixed', minutes: 0 }, minutes: 2000, warmUp: 50 },
      1,
      20,
    );
    expect(standardErrorsApart(chanceOfLeaving, lost)).toBeLessThan(3);
    expect(chanceOfLeaving.error).toBeLessThan(0.004);
    expect(chanceOfWaiting.mean).toBe(0);
  });
