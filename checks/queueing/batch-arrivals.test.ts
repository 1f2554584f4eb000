/**
 * Batches, M^[X]/M/1: L = rho (1 + E[X^2] / E[X]) / (2 (1 - rho)); D. Gross, C. M. Harris, "Fundamentals of Queueing Theory", and L. Kleinrock,
 * "Queueing Systems" (from memory; reproduced from the level-crossing equations). Time in the system per person is L / (lambda E[X]); the wait is that
 * less one service.
 */
import { expect, test } from 'vitest';
import { measure, standardErrorsApart } from './textbook-queue.ts';

const cases: readonly (readonly [lambda: number, mu: number, batches: readonly number[], inSystem: number])[] = [
  [0.2, 1, [0, 1], 2.5],
  [1, 6, [1 / 3, 2 / 3], 0.3230769231],
  [3, 6, [1 / 3, 2 / 3], 1.4],
  [0.1, 1, [0.25, 0.25, 0.25, 0.25], 2.6666666667],
];
for (const [lambda, mu, batches, inSystem] of cases)
  test(`batches ${lambda} a minute, service ${mu} a minute: ${inSystem.toFixed(4)} in the system`, () => {
    const found = measure(
      {
        servers: 1,
        service: { kind: 'exponential', mean: 1 / mu },
        perMinute: lambda,
        batches,
        minutes: 12_000 / lambda,
        warmUp: 300 / lambda,
      },
      5,
      20,
    );
    expect(standardErrorsApart(found.wait, inSystem - 1 / mu)).toBeLessThan(3);
    expect(found.wait.error / inSystem).toBeLessThan(0.03);
  });
