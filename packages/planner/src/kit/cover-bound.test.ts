import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CoverBound } from './cover-bound.ts';
import { type CoverProblem, coverModelOf } from './cover-model.ts';
import { CoverState } from './cover-state.ts';

const bagCount = 7;
const bag = fc.nat(bagCount - 1);
const eachBag = <T>(one: fc.Arbitrary<T>): fc.Arbitrary<T[]> => fc.array(one, { minLength: bagCount, maxLength: bagCount });
const problems: fc.Arbitrary<CoverProblem> = fc.record({
  costs: eachBag(fc.integer({ min: 0, max: 30 })),
  budget: fc.integer({ min: 0, max: 120 }),
  goals: fc.array(
    fc.record({
      value: fc.oneof(fc.integer({ min: 0, max: 20 }), fc.double({ min: 0, max: 20, noNaN: true })),
      alternatives: fc.array(fc.array(fc.array(bag, { maxLength: 3 }), { maxLength: 3 }), { maxLength: 4 }),
    }),
    { maxLength: 8 },
  ),
});
const questions = fc.record({
  fixed: eachBag<number>(fc.constantFrom(-1, -1, -1, 0, 1)),
  prices: fc.array(fc.double({ min: 0, max: 12, noNaN: true }), { minLength: 80, maxLength: 80 }),
  beat: fc.constantFrom(-1, -1, 0, 5, 12),
  rounds: fc.constantFrom(1, 2, 15, 16, 30, 120),
});

/** The best of all purchases that keep to what is fixed and to the money. */
function bestOf(problem: CoverProblem, fixed: ArrayLike<number>): number {
  const state = new CoverState(coverModelOf(problem));
  let best = Number.NEGATIVE_INFINITY;
  for (let mask = 0; mask < 2 ** bagCount; mask++) {
    const bought = Array.from({ length: bagCount }, (_, b) => (mask >> b) & 1);
    if (bought.some((has, b) => fixed[b] !== -1 && fixed[b] !== has)) continue;
    state.set(bought);
    if (state.isAffordable()) best = Math.max(best, state.value);
  }
  return best;
}
function asked(problem: CoverProblem, question: typeof questions extends fc.Arbitrary<infer Question> ? Question : never) {
  const model = coverModelOf(problem);
  const money = problem.budget - question.fixed.reduce((sum, is, b) => sum + (is === 1 ? (problem.costs[b] ?? 0) : 0), 0);
  const fixed = Int8Array.from(question.fixed);
  const prices = Float64Array.from({ length: model.rowCount }, (_, row) => question.prices[row % question.prices.length] ?? 0);
  return {
    bounds: new CoverBound(model),
    question: { fixed, money, prices, beat: question.beat, rounds: question.rounds },
  };
}

test('whatever the prices and however many rounds: no purchase is worth more than the bound, nor, where it was ruled out, than the cut', () => {
  fc.assert(
    fc.property(problems, questions, (problem, given) => {
      const { bounds, question } = asked(problem, given);
      if (question.money < 0) return;
      const best = bestOf(problem, given.fixed);
      const { bound } = bounds.bound(question);
      expect(Math.max(bound, given.beat, bounds.largestCut)).toBeGreaterThanOrEqual(best - 1e-9);
      // What is better than the value to beat must still be there among the bags left free.
      if (best > given.beat + 1e-6) expect(bestOf(problem, question.fixed)).toBeCloseTo(best, 9);
    }),
    { seed: 11, numRuns: 2000 },
  );
});

test('the losses hold: with a bag in, or out, no purchase is worth more than the bound less its loss', () => {
  fc.assert(
    fc.property(problems, questions, (problem, given) => {
      const { bounds, question } = asked(problem, given);
      if (question.money < 0) return;
      const { bound, losses } = bounds.bound({ ...question, fixed: question.fixed.slice(), rounds: 1, beat: -1 });
      for (let b = 0; b < bagCount; b++) {
        if (given.fixed[b] !== -1) continue;
        for (const [side, loss] of [losses.ofOut[b] ?? 0, losses.ofIn[b] ?? 0].entries()) {
          expect(loss).toBeGreaterThanOrEqual(-1e-9);
          expect(bound - loss).toBeGreaterThanOrEqual(bestOf(problem, given.fixed.with(b, side)) - 1e-9);
        }
      }
    }),
    { seed: 12, numRuns: 1000 },
  );
});

test('more rounds never loosen the bound, and the prices that are handed back give it again', () => {
  fc.assert(
    fc.property(problems, questions, (problem, given) => {
      const { bounds, question } = asked(problem, given);
      if (question.money < 0) return;
      // Without the bags that are too dear none is fixed on the way, after which the prices would be others.
      const fixed = question.fixed.map((is, b) => (is === -1 && (problem.costs[b] ?? 0) > question.money ? 0 : is));
      const run = (rounds: number, prices: Float64Array): number =>
        bounds.bound({ ...question, fixed: fixed.slice(), prices, rounds, beat: -1 }).bound;
      const once = run(1, question.prices.slice());
      const prices = question.prices.slice();
      const often = run(60, prices);
      expect(often).toBeLessThanOrEqual(once + 1e-9);
      expect(run(1, prices)).toBeCloseTo(often, 9);
    }),
    { seed: 13, numRuns: 300 },
  );
});
