/**
 * HiGHS (J. Hall, I. Galabova and others, highs.dev, MIT licence), an independent branch-and-cut solver: the own search for budgeted
 * coverage must reach the same values, on the smallest of the recorded problems and on random ones with shipping, thresholds of free
 * shipping, limits on colours, second, forced and taken-out bags.
 */
import { readFileSync } from 'node:fs';
import { boughtIn, type CoverProblem, coverageOf, coverProblemOf, coverProgramOf, solveCover } from '@twistwright/planner';
import { openSolver } from '@twistwright/solver/node';
import { Chance } from '@twistwright/units';
import { afterAll, expect, test } from 'vitest';

const solver = openSolver();
afterAll(() => solver.close());

test('40 figures from 25 bags', async () => {
  const coverage = coverageOf(JSON.parse(readFileSync(new URL('../../cases/coverage/40x25.json', import.meta.url), 'utf8')));
  if (!coverage.ok) throw new Error('unreadable');
  const problem = coverProblemOf(coverage.value);
  const solved = await solver.solve(coverProgramOf(problem));
  expect(solved.outcome === 'optimal' ? Math.round(solved.objective) : solved.outcome).toBe(solveCover(problem)?.value);
});

test('15 random problems with everything', async () => {
  let infeasible = 0;
  for (let seed = 1; seed <= 15; seed++) {
    const problem = randomProblem(seed);
    const own = solveCover(problem);
    const solved = await solver.solve(coverProgramOf(problem));
    if (own === undefined) {
      infeasible++;
      expect(solved.outcome).toBe('infeasible');
      continue;
    }
    expect(own.proven).toBe(true);
    expect(solved.outcome).toBe('optimal');
    if (solved.outcome === 'optimal') expect(solved.objective).toBeCloseTo(own.value, 5);
    expect(boughtIn(problem, solved)).toHaveLength(problem.costs.length);
  }
  expect(infeasible).toBeLessThan(5);
}, 120_000);

function randomProblem(seed: number): CoverProblem {
  const chance = new Chance(seed);
  const below = (count: number): number => chance.next() % count;
  const bags = 14;
  const list = <T>(count: number, make: (k: number) => T): readonly T[] => Array.from({ length: count }, (_, k) => make(k));
  return {
    costs: list(bags, () => 300 + below(1200)),
    budget: 2000 + below(5000),
    goals: list(20, () => ({
      value: 1 + below(50),
      alternatives: list(1 + below(3), () => list(1 + below(3), () => list(1 + below(2), () => below(bags)))),
    })),
    suppliers: [{ shipping: 400, freeFrom: 3000 }, { shipping: 300, freeFrom: 2000, spent: below(2) * 500 }, { shipping: 250 }],
    supplierOf: list(bags, () => below(4) - 1),
    coloursOf: list(bags, (bag) => [bag % 6]),
    ownColours: [5],
    mostColours: 2 + below(4),
    after: list(bags, (bag) => (bag === 3 || bag === 9 ? bag - 1 : -1)),
    forcedIn: below(3) === 0 ? [below(bags)] : [],
    takenOut: below(3) === 0 ? [13] : [],
  };
}
