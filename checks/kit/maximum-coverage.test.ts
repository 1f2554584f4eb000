/**
 * S. Khuller, A. Moss, J. Naor, "The budgeted maximum coverage problem", Information Processing Letters 70 (1999) 39-45: taking the best
 * value per cost first is unboundedly bad. Item A of value 1 and cost 1, item B of value p and cost p + 1, budget p + 1.
 * PAAL library documentation, budgeted maximum coverage example: sets {1}, {2}, {0,1}, {2,3,4} at 1, 1, 5, 5, elements worth 3 5 1 1 1,
 * budget 10; recomputed optimum 11, value-per-cost greedy 9.
 */
import { solveCover } from '@twistwright/planner';
import { expect, test } from 'vitest';

test.each([2, 10, 1000, 1_000_000])('the greedy trap with p = %d', (p) => {
  const answer = solveCover({
    costs: [1, p + 1],
    budget: p + 1,
    goals: [
      { value: 1, alternatives: [[[0]]] },
      { value: p, alternatives: [[[1]]] },
    ],
  });
  expect(answer).toMatchObject({ value: p, bound: p, proven: true, bought: [0, 1] });
});

test('the PAAL example: 11, where greedy gets 9', () => {
  const sets = [[1], [2], [0, 1], [2, 3, 4]];
  const costs = [1, 1, 5, 5];
  const worth = [3, 5, 1, 1, 1];
  // An element is covered by any set that holds it: one clause.
  const goals = worth.map((value, element) => ({ value, alternatives: [[sets.flatMap((set, s) => (set.includes(element) ? [s] : []))]] }));
  expect(solveCover({ costs, budget: 10, goals })).toMatchObject({ value: 11, bound: 11, proven: true, bought: [0, 0, 1, 1], spent: 10 });
  expect(greedy(sets, costs, worth, 10)).toBe(9);
});

function greedy(sets: readonly (readonly number[])[], costs: readonly number[], worth: readonly number[], budget: number): number {
  const covered = new Set<number>();
  const gain = (s: number): number => (sets[s] ?? []).reduce((sum, element) => sum + (covered.has(element) ? 0 : (worth[element] ?? 0)), 0);
  let left = budget;
  const open = new Set(sets.keys());
  for (;;) {
    const best = [...open]
      .filter((s) => (costs[s] ?? 0) <= left && gain(s) > 0)
      .sort((a, b) => gain(b) / (costs[b] ?? 1) - gain(a) / (costs[a] ?? 1))[0];
    if (best === undefined) return [...covered].reduce((sum, element) => sum + (worth[element] ?? 0), 0);
    left -= costs[best] ?? 0;
    open.delete(best);
    for (const element of sets[best] ?? []) covered.add(element);
  }
}
