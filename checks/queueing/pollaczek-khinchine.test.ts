/**
 * M/G/1, F. Pollaczek 1930 and A. Y. Khinchine 1932: mean wait = lambda E[S^2] / (2 (1 - rho)), whatever the law of the service S. Examples: lambda
 * 0.8, mean 1 (wait 4, 3, 2 for exponential, Erlang-2, constant); "Able" and "Baker" of J. Banks et al., "Discrete-Event System Simulation" (lambda
 * 1/30; mean 24 and deviation 20 against mean 25 and deviation 2: waits 81.33 and 62.9; the faster one has the longer line), from memory, recomputed.
 */
import type { Duration } from '@twistwright/planner';
import { exp, log } from '@twistwright/units';
import { expect, test } from 'vitest';
import { measure, standardErrorsApart } from './textbook-queue.ts';

/** The gamma and the log-normal with this mean and standard deviation. */
const gamma = (mean: number, deviation: number): Duration => ({ kind: 'gamma', mean, shape: (mean / deviation) ** 2 });
function logNormal(mean: number, deviation: number): Duration {
  const variance = log(1 + (deviation / mean) ** 2);
  return { kind: 'log-normal', median: mean * exp(-variance / 2), sigma: Math.sqrt(variance) };
}
const cases: readonly (readonly [name: string, perMinute: number, service: Duration, wait: number])[] = [
  ['exponential', 0.8, { kind: 'exponential', mean: 1 }, 4],
  ['Erlang-2', 0.8, { kind: 'gamma', mean: 1, shape: 2 }, 3],
  ['constant', 0.8, { kind: 'fixed', minutes: 1 }, 2],
  ['log-normal with the moments of the exponential', 0.8, logNormal(1, 1), 4],
  ['Able, gamma', 1 / 30, gamma(24, 20), 81.3333333],
  ['Able, log-normal', 1 / 30, logNormal(24, 20), 81.3333333],
  ['Baker, gamma', 1 / 30, gamma(25, 2), 62.9],
];
for (const [name, perMinute, service, wait] of cases)
  test(`${name}: mean wait ${wait.toFixed(2)}`, () => {
    const unit = 1 / perMinute;
    const found = measure({ servers: 1, service, perMinute, minutes: 10_000 * unit, warmUp: 400 * unit }, 3, 24);
    expect(standardErrorsApart(found.wait, wait)).toBeLessThan(3);
    expect(found.wait.error / wait).toBeLessThan(0.04);
  });
