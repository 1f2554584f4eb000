import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type CoverProblem, coverModelOf } from './cover-model.ts';
import { CoverState } from './cover-state.ts';
import { solveCover } from './solve-cover.ts';

/** Tries every purchase. */
function bestOfAll(problem: CoverProblem): number {
  const model = coverModelOf(problem);
  let best = 0;
  for (let mask = 0; mask < 2 ** model.bagCount; mask++) {
    const bought = Array.from({ length: model.bagCount }, (_, bag) => (mask >> bag) & 1);
    const state = new CoverState(model);
    state.set(bought);
    if (state.isAffordable()) best = Math.max(best, state.value);
  }
  return best;
}

const bagCount = 7;
const bag = fc.nat(bagCount - 1);
const problems: fc.Arbitrary<CoverProblem> = fc.record({
  costs: fc.array(fc.integer({ min: 0, max: 30 }), { minLength: bagCount, maxLength: bagCount }),
  budget: fc.integer({ min: 0, max: 90 }),
  goals: fc.array(
    fc.record({
      value: fc.oneof(fc.integer({ min: 0, max: 20 }), fc.double({ min: 0, max: 20, noNaN: true })),
      alternatives: fc.array(fc.array(fc.array(bag, { maxLength: 3 }), { maxLength: 3 }), { maxLength: 3 }),
    }),
    { maxLength: 8 },
  ),
});

test('agrees with trying every purchase', () => {
  fc.assert(
    fc.property(problems, (problem) => {
      const answer = solveCover(problem);
      expect(answer.proven).toBe(true);
      expect(answer.value).toBeCloseTo(bestOfAll(problem), 6);
      expect(answer.spent).toBeLessThanOrEqual(problem.budget);
    }),
    { seed: 3, numRuns: 900 },
  );
});

test('the same problem and seed give the same answer, and a limit on nodes a true bound', () => {
  const goals = Array.from({ length: 30 }, (_, g) => ({
    value: 3 + ((g * 7) % 11),
    alternatives: [[[g % 12], [(g * 5 + 1) % 12]], [[(g * 3 + 2) % 12]]],
  }));
  const problem: CoverProblem = { costs: Array.from({ length: 12 }, (_, b) => 5 + ((b * 4) % 9)), budget: 30, goals };
  const proven = solveCover(problem);
  expect(solveCover(problem)).toEqual(proven);
  const soon = solveCover(problem, { nodes: 0, moves: 1 });
  expect(soon.bound).toBeGreaterThanOrEqual(proven.value);
  expect(soon.value).toBeLessThanOrEqual(proven.value);
});

test('a time limit ends the search with a true bound', () => {
  const goals = Array.from({ length: 120 }, (_, g) => ({
    value: 1 + ((g * 37) % 29),
    alternatives: [
      [[g % 40], [(g * 7 + 3) % 40]],
      [[(g * 11 + 5) % 40], [(g * 3 + 1) % 40]],
    ],
  }));
  const problem: CoverProblem = { costs: Array.from({ length: 40 }, (_, b) => 20 + ((b * 13) % 17)), budget: 300, goals };
  const proven = solveCover(problem);
  let clock = 0;
  const stopped = solveCover(problem, { now: () => clock++, milliseconds: 3, moves: 40 });
  expect(proven.proven).toBe(true);
  expect(stopped.nodes).toBeLessThan(proven.nodes);
  expect(stopped.bound).toBeGreaterThanOrEqual(proven.value);
  expect(stopped.value).toBeLessThanOrEqual(proven.value);
});
