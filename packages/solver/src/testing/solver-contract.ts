import type { Program, Solved } from '@twistwright/planner';

/** One law of the port: what must hold of an answer. `check` gives the sentence of what is wrong, or nothing. */
export interface SolverLaw {
  readonly name: string;
  readonly program: Program;
  readonly check: (solved: Solved) => string | undefined;
}

/** Programmes with known answers that every solver behind the port must give. */
export const solverLaws: readonly SolverLaw[] = [
  {
    name: 'finds the whole-number optimum where rounding the fractional one fails',
    program: {
      sense: 'maximise',
      columns: [
        { name: 'a', cost: 5, upper: 10, whole: true },
        { name: 'b', cost: 4, upper: 10, whole: true },
      ],
      rows: [
        { name: 'first', terms: terms(6, 4), atMost: 24 },
        { name: 'second', terms: terms(1, 2), atMost: 6 },
      ],
    },
    check: optimum(20),
  },
  {
    name: 'keeps equations and lower bounds',
    program: {
      sense: 'minimise',
      columns: [
        { name: 'a', cost: 3, lower: 1, upper: 9, whole: true },
        { name: 'b', cost: 2, lower: 2, upper: 9, whole: true },
      ],
      rows: [{ name: 'sum', terms: terms(1, 1), atLeast: 7, atMost: 7 }],
    },
    check: optimum(15),
  },
  {
    name: 'adds up terms that name a column twice',
    program: {
      sense: 'minimise',
      columns: [{ name: 'a', cost: 1, upper: 9, whole: true }],
      rows: [
        {
          name: 'double',
          terms: [
            { column: 0, factor: 1 },
            { column: 0, factor: 1 },
          ],
          atLeast: 7,
        },
      ],
    },
    check: optimum(4),
  },
  {
    name: 'says infeasible as an outcome',
    program: {
      sense: 'minimise',
      columns: [{ name: 'a', cost: 1, upper: 3, whole: true }],
      rows: [{ name: 'too much', terms: terms(1), atLeast: 4 }],
    },
    check: (solved) => (solved.outcome === 'infeasible' ? undefined : `outcome ${solved.outcome}`),
  },
  { name: 'answers an empty programme', program: { sense: 'minimise', columns: [], rows: [] }, check: optimum(0) },
];

/** Malformed programmes: a solver must throw a sentence that contains the words, and answer the next programme as if nothing had been. */
export const malformedPrograms: readonly { readonly name: string; readonly program: Program; readonly words: string }[] = [
  { name: 'a cost of NaN', program: oneColumn(Number.NaN), words: 'must be a finite number, not NaN' },
  { name: 'an infinite cost', program: oneColumn(Number.POSITIVE_INFINITY), words: 'must be a finite number, not Infinity' },
  {
    name: 'a term that names no column',
    program: { ...oneColumn(1), rows: [{ name: 'astray', terms: [{ column: 1, factor: 1 }], atLeast: 0 }] },
    words: 'names column 1, but there are 1 columns',
  },
  { name: 'a row without limits', program: { ...oneColumn(1), rows: [{ name: 'loose', terms: terms(1) }] }, words: 'has no limit' },
];

function oneColumn(cost: number): Program {
  return { sense: 'minimise', columns: [{ name: 'a', cost, upper: 1, whole: true }], rows: [] };
}
function terms(...factors: readonly number[]): readonly { readonly column: number; readonly factor: number }[] {
  return factors.map((factor, column) => ({ column, factor }));
}
function optimum(expected: number): (solved: Solved) => string | undefined {
  return (solved) => {
    if (solved.outcome !== 'optimal') return `outcome ${solved.outcome}`;
    if (Math.abs(solved.objective - expected) > 1e-9) return `objective ${solved.objective}, not ${expected}`;
    return solved.bound === solved.objective ? undefined : `bound ${solved.bound} is not the objective`;
  };
}
