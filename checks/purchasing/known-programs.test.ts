/**
 * Whole-number programmes with published optima, through the solver port. MIPLIB 3, p0033 (H. Crowder, E. L. Johnson, M. W. Padberg,
 * "Solving Large-Scale Zero-One Linear Programming Problems", Operations Research 31, 1983): 3089, linear relaxation 2520.57 (read in the
 * catalogue file). J. Burkardt's KNAPSACK_01 data directory, p01-p06 (numbers from memory, solved again). OR-Library mknap1, problem 1: 3800. Covering of
 * the lines of the affine spaces AG(2,3) and AG(3,3) (D. R. Fulkerson, G. L. Nemhauser, L. E. Trotter 1974): 5 and 18, solved again.
 */
import type { Program } from '@twistwright/planner';
import { openSolver } from '@twistwright/solver/node';
import { bruteForceSolver } from '@twistwright/solver/testing';
import { afterAll, describe, expect, it } from 'vitest';

const solver = openSolver();
afterAll(() => solver.close());

const numbers = (text: string): readonly number[] => text.trim().split(/\s+/).map(Number);
const yesOrNo = (costs: readonly number[]): Program['columns'] =>
  costs.map((cost, c) => ({ name: `x${c + 1}`, cost, upper: 1, whole: true }));

/** Reads "300x3+300x4-285x5" as terms. */
const termsOf = (text: string): { readonly column: number; readonly factor: number }[] =>
  [...text.matchAll(/([+-]?)(\d*)x(\d+)/g)].map(([, sign, factor, column]) => ({
    column: Number(column) - 1,
    factor: (sign === '-' ? -1 : 1) * (factor === '' ? 1 : Number(factor)),
  }));
const length =
  '300x3+300x4+285x5+285x6+265x8+265x9+230x12+230x13+190x14+200x22+400x23+200x24+400x25+200x26+400x27+200x28+400x29+200x30+400x31';
const p0033: Program = {
  sense: 'minimise',
  columns: yesOrNo(
    numbers(
      '171 171 171 171 163 162 163 69 69 183 183 183 183 49 183 258 517 250 500 250 500 159 318 159 318 159 318 159 318 114 228 159 318',
    ),
  ),
  rows: (
    [
      ['x1+x2+x3+x4', 1],
      ['x5+x6+x7', 1],
      ['x8+x9', 1],
      ['x10+x11+x12+x13+x15', 1],
      ['-230x10-200x16-400x17', -5],
      [length, 2700],
      ['-300x4-200x30-400x31', -100],
      ['-300x1-285x6-265x9-190x14-200x26-400x27', -900],
      ['-300x1-300x3-285x6-265x9-230x13-190x14-200x26-400x27-200x28-400x29', -1656],
      ['-285x5-265x8-230x11-200x22-400x23', -335],
      ['-285x5-265x8-230x11-230x12-200x22-400x23-200x24-400x25', -1026],
      ['-300x2-200x18-400x19', -5],
      ['-300x2-200x18-400x19-200x20-400x21', -500],
      ['-285x7-200x32-400x33', -270],
    ] as const
  )
    .map(([text, atMost], r): Program['rows'][number] => ({ name: `r${r}`, terms: termsOf(text), atMost }))
    .concat([{ name: 'at least', terms: termsOf(length), atLeast: 2600 }]),
};

describe('MIPLIB p0033', () => {
  it('has 33 columns and the optimum 3089, given by the published solution too', async () => {
    expect(p0033.columns).toHaveLength(33);
    const solved = await solver.solve(p0033);
    expect(solved).toMatchObject({ outcome: 'optimal', objective: 3089, bound: 3089 });
    const ones = [1, 7, 8, 10, 14, 18, 19, 23, 25, 26, 27, 28, 29, 30];
    expect(ones.reduce((sum, x) => sum + (p0033.columns[x - 1]?.cost ?? 0), 0)).toBe(3089);
  });
  it('has the linear bound 2520.57', async () => {
    const solved = await solver.solve({ ...p0033, columns: p0033.columns.map((column) => ({ ...column, whole: false })) });
    expect(solved.outcome === 'optimal' ? solved.objective : 0).toBeCloseTo(2520.5717391304, 6);
  });
});

describe('0/1 knapsacks', () => {
  it.each([
    {
      name: 'p01',
      capacity: 165,
      weights: '23 31 29 44 53 38 63 85 89 82',
      profits: '92 57 49 68 60 43 67 84 87 72',
      best: 309,
      pick: '1111010000',
    },
    { name: 'p02', capacity: 26, weights: '12 7 11 8 9', profits: '24 13 23 15 16', best: 51, pick: '01110' },
    { name: 'p03', capacity: 190, weights: '56 59 80 64 75 17', profits: '50 50 64 46 50 5', best: 150, pick: '110010' },
    { name: 'p04', capacity: 50, weights: '31 10 20 19 4 3 6', profits: '70 20 39 37 7 5 10', best: 107, pick: '1001000' },
    { name: 'p05', capacity: 104, weights: '25 35 45 5 25 3 2 2', profits: '350 400 450 20 70 8 5 5', best: 900, pick: '10111011' },
    { name: 'p06', capacity: 170, weights: '41 50 49 59 55 57 60', profits: '442 525 511 593 546 564 617', best: 1735, pick: '0101001' },
  ])('$name: $best', async ({ capacity, weights, profits, best, pick }) => {
    const program: Program = {
      sense: 'maximise',
      columns: yesOrNo(numbers(profits)),
      rows: [{ name: 'capacity', terms: numbers(weights).map((factor, column) => ({ column, factor })), atMost: capacity }],
    };
    for (const kind of [solver, bruteForceSolver]) {
      const solved = await kind.solve(program);
      expect(solved).toMatchObject({ outcome: 'optimal', objective: best });
      if (solved.outcome === 'optimal') expect(solved.values.join('')).toBe(pick);
    }
  });
  it('mknap1 problem 1: 3800 with items 2, 3 and 6', async () => {
    const rows = [
      [80, '8 12 13 64 22 41'],
      [96, '8 12 13 75 22 41'],
      [20, '3 6 4 18 6 4'],
      [36, '5 10 8 32 6 12'],
      [44, '5 13 8 42 6 20'],
      [48, '5 13 8 48 6 20'],
      [10, '0 0 0 0 8 0'],
      [18, '3 0 4 0 8 0'],
      [22, '3 2 4 0 8 4'],
      [24, '3 2 4 8 8 4'],
    ] as const;
    const solved = await solver.solve({
      sense: 'maximise',
      columns: yesOrNo(numbers('100 600 1200 2400 500 2000')),
      rows: rows.map(([atMost, text], r) => ({
        name: `r${r}`,
        terms: numbers(text).map((factor, column) => ({ column, factor })),
        atMost,
      })),
    });
    expect(solved).toMatchObject({ outcome: 'optimal', objective: 3800, values: [0, 1, 1, 0, 0, 1] });
  });
});

describe('covering the lines of affine spaces', () => {
  it.each([
    { dimension: 2, points: 9, lines: 12, fewest: 5 },
    { dimension: 3, points: 27, lines: 117, fewest: 18 },
  ])('AG($dimension,3): $fewest points meet all $lines lines', async ({ dimension, points, lines, fewest }) => {
    const digits = (point: number): readonly number[] => Array.from({ length: dimension }, (_, d) => Math.floor(point / 3 ** d) % 3);
    const all: (readonly number[])[] = [];
    for (let a = 0; a < points; a++)
      for (let b = a + 1; b < points; b++)
        for (let c = b + 1; c < points; c++)
          if (digits(a).every((digit, d) => (digit + (digits(b)[d] ?? 0) + (digits(c)[d] ?? 0)) % 3 === 0)) all.push([a, b, c]);
    expect(all).toHaveLength(lines);
    const solved = await solver.solve({
      sense: 'minimise',
      columns: yesOrNo(Array.from({ length: points }, () => 1)),
      rows: all.map((line, r) => ({ name: `line ${r}`, terms: line.map((column) => ({ column, factor: 1 })), atLeast: 1 })),
    });
    expect(solved).toMatchObject({ outcome: 'optimal', objective: fewest });
  });
});
