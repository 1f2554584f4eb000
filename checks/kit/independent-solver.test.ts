/**
 * HiGHS (J. Hall, I. Galabova and others, highs.dev, MIT licence), an independent branch-and-cut solver: the own search for budgeted
 * coverage must reach the same values, on the smallest of the recorded problems and on random ones.
 */
import { readFileSync } from 'node:fs';
import { type CoverProblem, coverageOf, coverProblemOf, coverProgramOf, solveCover } from '@twistwright/planner';
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
  expect(solved.outcome === 'optimal' ? Math.round(solved.objective) : solved.outcome).toBe(solveCover(problem).value);
});

test('30 random problems', async () => {
  for (let seed = 1; seed <= 30; seed++) {
    const problem = randomProblem(seed);
    const own = solveCover(problem);
    const solved = await solver.solve(coverProgramOf(problem));
    expect(own.proven).toBe(true);
    expect(solved.outcome).toBe('optimal');
    if (solved.outcome === 'optimal') expect(solved.objective).toBeCloseTo(own.value, 5);
  }
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
  };
}
