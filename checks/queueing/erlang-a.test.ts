/**
 * Erlang-A, M/M/n+M: O. Garnett, A. Mandelbaum, M. Reiman, "Designing a Call Center with Impatient Customers", Manufacturing & Service
 * Operations Management 4 (2002) 208-227: 50 agents, 48 calls a minute, a minute each, patience 2 minutes: 3.1 % leave, mean wait 3.7 s (printed
 * values from memory; the digits here from the formulas, recomputed). Further rows recomputed from the same formulas.
 */
import { expect, test } from 'vitest';
import { measure, standardErrorsApart } from './textbook-queue.ts';

const cases: readonly (readonly [lambda: number, mu: number, n: number, theta: number, waiting: number, leaving: number, wait: number])[] =
  [
    [48, 1, 50, 0.5, 0.467774068554, 0.0309122491622, 3.7094699 / 60],
    [4, 1, 5, 1, 0.37116306482, 0.102576048608, 0.102576048608],
    [10, 1, 10, 0.25, 0.693384387864, 0.0837698209456, 0.335079283782],
    [0.3, 0.125, 3, 0.1, 0.445724202347, 0.142759124133, 1.42759124133],
  ];
for (const [lambda, mu, n, theta, waiting, leaving, wait] of cases)
  test(`${n} servers, ${lambda} a minute, patience ${1 / theta}: ${(100 * leaving).toFixed(1)} % leave`, () => {
    const found = measure(
      {
        servers: n,
        service: { kind: 'exponential', mean: 1 / mu },
        perMinute: lambda,
        patience: { kind: 'exponential', mean: 1 / theta },
        minutes: 10_000 / lambda,
        warmUp: 500 / lambda,
      },
      4,
      20,
    );
    expect(standardErrorsApart(found.chanceOfWaiting, waiting)).toBeLessThan(3);
    expect(standardErrorsApart(found.chanceOfLeaving, leaving)).toBeLessThan(3);
    expect(standardErrorsApart(found.wait, wait)).toBeLessThan(3);
    expect(found.chanceOfLeaving.error / leaving).toBeLessThan(0.06);
  });
