import type { Program, Solver } from '@twistwright/planner';
import fc from 'fast-check';
import highsModule from 'highs';
import { afterAll, describe, expect, it } from 'vitest';
import { highsSolver, type LoadHighs } from './index.ts';
import { openSolver } from './node.ts';
import { bruteForceSolver, malformedPrograms, solverLaws } from './testing/index.ts';

const highs = await (highsModule as unknown as LoadHighs)();
const thread = openSolver();
afterAll(() => thread.close());
const solvers: readonly { readonly name: string; readonly solver: Solver }[] = [
  { name: 'brute force', solver: bruteForceSolver },
  { name: 'HiGHS on this thread', solver: highsSolver(highs) },
  { name: 'HiGHS in a thread of its own', solver: thread },
];

for (const { name, solver } of solvers)
  describe(`the solver contract, kept by ${name}`, () => {
    it.each(solverLaws)('$name', async ({ program, check }) => {
      expect(check(await solver.solve(program))).toBeUndefined();
    });
    it.each(malformedPrograms)('refuses $name and goes on', async ({ program, words }) => {
      await expect(solver.solve(program)).rejects.toThrow(words);
      expect((await solver.solve({ sense: 'minimise', columns: [{ name: 'a', cost: 1, upper: 1, whole: true }], rows: [] })).outcome).toBe(
        'optimal',
      );
    });
  });

const whole = fc.integer({ min: -4, max: 9 });
const smallProgram: fc.Arbitrary<Program> = fc.integer({ min: 1, max: 5 }).chain((count) =>
  fc.record({
    sense: fc.constantFrom('minimise' as const, 'maximise' as const),
    columns: fc.array(
      fc.record({
        name: fc.constant('c'),
        cost: whole,
        lower: fc.integer({ min: -2, max: 0 }),
        upper: fc.integer({ min: 0, max: 3 }),
        whole: fc.constant(true),
      }),
      { minLength: count, maxLength: count },
    ),
    rows: fc.array(
      fc
        .tuple(
          fc.array(whole, { minLength: count, maxLength: count }),
          fc.integer({ min: -6, max: 12 }),
          fc.integer({ min: 0, max: 10 }),
          fc.constantFrom('least', 'most', 'both'),
        )
        .map(([factors, from, width, kind]) => ({
          name: 'r',
          terms: factors.map((factor, column) => ({ column, factor })),
          ...(kind === 'most' ? {} : { atLeast: from }),
          ...(kind === 'least' ? {} : { atMost: from + width }),
        })),
      { maxLength: 4 },
    ),
  }),
);

describe('HiGHS', () => {
  it('agrees with brute force on small programmes', async () => {
    await fc.assert(
      fc.asyncProperty(smallProgram, async (program) => {
        const [truth, found] = await Promise.all([bruteForceSolver.solve(program), highsSolver(highs).solve(program)]);
        expect(found.outcome).toBe(truth.outcome);
        if (truth.outcome === 'optimal' && found.outcome === 'optimal') expect(found.objective).toBeCloseTo(truth.objective, 7);
      }),
      { numRuns: 300, seed: 2 },
    );
  });

  it('tells unbounded from infeasible', async () => {
    const climbing: Program = {
      sense: 'maximise',
      columns: [{ name: 'a', cost: 1, whole: true }],
      rows: [{ name: 'r', terms: [{ column: 0, factor: 1 }], atLeast: 1 }],
    };
    expect((await thread.solve(climbing)).outcome).toBe('unbounded');
    expect(
      (await thread.solve({ ...climbing, rows: [...climbing.rows, { name: 's', terms: [{ column: 0, factor: 1 }], atMost: 0 }] })).outcome,
    ).toBe('infeasible');
  });

  it('starts from a known solution: it is never beaten by what it was given', async () => {
    const program = hardProgram(40, 12);
    const start = program.columns.map(() => 1);
    const solved = await thread.solve(program, { seconds: 0.3, start });
    expect(solved.outcome === 'stopped' || solved.outcome === 'optimal').toBe(true);
    if (solved.outcome === 'stopped') expect(solved.bound).toBeLessThanOrEqual(solved.objective);
    if (solved.outcome === 'stopped' || solved.outcome === 'optimal')
      expect(solved.objective).toBeLessThanOrEqual(program.columns.reduce((sum, column) => sum + column.cost, 0));
  });

  it('ends a solve whose thread would not stop by itself, and solves the next one', async () => {
    const solver = openSolver();
    try {
      const solved = await solver.solve(hardProgram(200, 80), { seconds: 0.4 });
      expect(['stopped', 'no answer in time', 'optimal']).toContain(solved.outcome);
      expect((await solver.solve({ sense: 'minimise', columns: [{ name: 'a', cost: 1, lower: 2, whole: true }], rows: [] })).outcome).toBe(
        'optimal',
      );
    } finally {
      await solver.close();
    }
    await expect(solver.solve({ sense: 'minimise', columns: [], rows: [] })).rejects.toThrow('closed');
  });
});

/** Covering with random-looking weights: easy to satisfy, hard to prove. */
function hardProgram(columns: number, rows: number): Program {
  const weight = (r: number, c: number): number => 1 + ((r * 7919 + c * 104_729 + r * c * 31) % 97);
  return {
    sense: 'minimise',
    columns: Array.from({ length: columns }, (_, c) => ({ name: `c${c}`, cost: 1000 + ((c * 7817) % 101), upper: 1, whole: true })),
    rows: Array.from({ length: rows }, (_, r) => {
      const terms = Array.from({ length: columns }, (_, c) => ({ column: c, factor: weight(r, c) }));
      return { name: `r${r}`, terms, atLeast: Math.floor(terms.reduce((sum, term) => sum + term.factor, 0) / 2.3) };
    }),
  };
}
