/**
 * 0/1 knapsack: J. Burkardt, KNAPSACK_01 data directory, problems p01 to p06 (numbers from memory of the directory; p06's best weight 169
 * read in copies; all optima recomputed). A knapsack is budgeted coverage in which each figure needs one bag of its own.
 */
import { solveCover } from '@twistwright/planner';
import { expect, test } from 'vitest';

const problems = [
  { id: 'p01', capacity: 165, weights: [23, 31, 29, 44, 53, 38, 63, 85, 89, 82], profits: [92, 57, 49, 68, 60, 43, 67, 84, 87, 72], best: 309, used: 165, pick: '1111010000' },
  { id: 'p02', capacity: 26, weights: [12, 7, 11, 8, 9], profits: [24, 13, 23, 15, 16], best: 51, used: 26, pick: '01110' },
  { id: 'p03', capacity: 190, weights: [56, 59, 80, 64, 75, 17], profits: [50, 50, 64, 46, 50, 5], best: 150, used: 190, pick: '110010' },
  { id: 'p04', capacity: 50, weights: [31, 10, 20, 19, 4, 3, 6], profits: [70, 20, 39, 37, 7, 5, 10], best: 107, used: 50, pick: '1001000' },
  { id: 'p05', capacity: 104, weights: [25, 35, 45, 5, 25, 3, 2, 2], profits: [350, 400, 450, 20, 70, 8, 5, 5], best: 900, used: 104, pick: '10111011' },
  { id: 'p06', capacity: 170, weights: [41, 50, 49, 59, 55, 57, 60], profits: [442, 525, 511, 593, 546, 564, 617], best: 1735, used: 169, pick: '0101001' },
]; // biome-ignore format: a table

test.each(problems)('$id: best $best', ({ capacity, weights, profits, best, used, pick }) => {
  const answer = solveCover({ costs: weights, budget: capacity, goals: profits.map((value, bag) => ({ value, alternatives: [[[bag]]] })) });
  expect(answer).toMatchObject({ value: best, bound: best, proven: true, spent: used });
  expect(answer?.bought.join('')).toBe(pick);
});
