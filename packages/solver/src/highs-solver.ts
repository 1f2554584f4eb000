import type { Program, Solved, SolveLimits, Solver } from '@twistwright/planner';
import type highsModule from 'highs';
import { keepsAllRows, lowerOf, objectiveOf, requireSoundProgram, upperOf } from './program-check.ts';

// highs 1.15.3 ships ESM at run time but CommonJS-shaped types under NodeNext: its default export is the loader
export type LoadHighs = typeof highsModule.default;
/** A loaded HiGHS module, as its loader hands it over in the browser and in Node alike. */
export type Highs = Awaited<ReturnType<LoadHighs>>;

/** What is known while the solver still runs: the best solution so far and the bound. */
export interface Progress {
  readonly values?: readonly number[];
  readonly bound?: number;
}

/**
 * A loaded HiGHS behind the planner's port. It blocks its thread while it solves, so run it in a worker where a person waits.
 * The time limit is handed to HiGHS, which looks at its clock only now and then; `openSolver` of `@twistwright/solver/node` ends it from
 * outside instead.
 */
export function highsSolver(highs: Highs): Solver {
  return { solve: (program, limits) => Promise.resolve().then(() => solveNow(highs, program, limits)) };
}

/** Solves on this thread. `report` hears of each better solution and bound. Throws on a malformed programme. */
export function solveNow(highs: Highs, program: Program, limits: SolveLimits = {}, report?: (progress: Progress) => void): Solved {
  requireSoundProgram(program);
  if (limits.seconds !== undefined && !(limits.seconds > 0))
    throw new RangeError(`a time limit must be above zero seconds, not ${limits.seconds}`);
  if (program.columns.length === 0) return solveWithoutColumns(program);
  const first = run(highs, program, limits, report);
  if (first !== 'unbounded or infeasible') return first;
  const feasible = run(highs, { ...program, columns: program.columns.map((column) => ({ ...column, cost: 0 })) }, limits);
  if (feasible === 'unbounded or infeasible' || feasible.outcome === 'infeasible') return { outcome: 'infeasible' };
  return feasible.outcome === 'no answer in time' ? feasible : { outcome: 'unbounded' };
}

function solveWithoutColumns(program: Program): Solved {
  return keepsAllRows(program, []) ? { outcome: 'optimal', values: [], objective: 0, bound: 0 } : { outcome: 'infeasible' };
}

function run(
  highs: Highs,
  program: Program,
  limits: SolveLimits,
  report?: (progress: Progress) => void,
): Solved | 'unbounded or infeasible' {
  return highs.withModel(modelOf(highs, program), (model): Solved | 'unbounded or infeasible' => {
    if (model.getDimensions().numCols !== program.columns.length)
      throw new Error(`HiGHS read ${model.getDimensions().numCols} of ${program.columns.length} columns`);
    model.options.set({
      output_flag: false,
      random_seed: 0,
      mip_rel_gap: limits.gap ?? 0,
      mip_abs_gap: 1e-7,
      ...(limits.seconds === undefined ? {} : { time_limit: limits.seconds }),
    });
    if (limits.start !== undefined) model.setSolution({ colValue: requireFullStart(program, limits.start) });
    const { mipImprovingSolution, mipLogging } = highs.constants.callbackType;
    model.run(
      report === undefined
        ? undefined
        : {
            [mipImprovingSolution]: (event) => {
              const values = event.data.mip_solution;
              if (values !== undefined) report({ values: cleaned(program, values) });
            },
            [mipLogging]: (event) => {
              if (event.data.mip_dual_bound !== undefined) report({ bound: event.data.mip_dual_bound });
            },
          },
    );
    const status = model.getModelStatus();
    const known = highs.constants.modelStatus;
    if (status === known.infeasible) return { outcome: 'infeasible' };
    if (status === known.unbounded) return { outcome: 'unbounded' };
    if (status === known.unboundedOrInfeasible) return 'unbounded or infeasible';
    const whole = program.columns.some((column) => column.whole);
    const isProven = status === known.optimal && (!whole || (limits.gap ?? 0) === 0);
    if (isProven) return provenOutcome(program, model.getSolution().colValue);
    const reached = whole ? Number(model.info.get('mip_dual_bound')) : Number.NaN;
    const worst = program.sense === 'minimise' ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
    const values = cleaned(program, model.getSolution().colValue);
    const stops: readonly number[] = [known.optimal, known.timeLimit, known.interrupted, known.iterationLimit, known.solutionLimit];
    if (!stops.includes(status)) throw new Error(`HiGHS ended with status ${status} on a programme of ${program.columns.length} columns`);
    return outcomeOf(program, { bound: Number.isNaN(reached) ? worst : reached, values, start: limits.start });
  });
}

/** Chooses between what was found, the start that was handed in, and nothing; checked against the rows, never taken on trust. */
export function outcomeOf(
  program: Program,
  found: {
    readonly bound: number;
    readonly values?: readonly number[] | undefined;
    readonly start?: readonly number[] | undefined;
  },
): Solved {
  const sign = program.sense === 'minimise' ? 1 : -1;
  const candidates = [found.values, found.start].filter(
    (values): values is readonly number[] => values !== undefined && keepsAllRows(program, values),
  );
  const best = candidates.sort((a, b) => sign * (objectiveOf(program, a) - objectiveOf(program, b)))[0];
  if (best === undefined) return { outcome: 'no answer in time', bound: found.bound };
  const objective = objectiveOf(program, best);
  const bound = sign * Math.min(sign * found.bound, sign * objective);
  const isClosed = sign * (objective - bound) <= 1e-9 * Math.max(1, Math.abs(objective));
  return isClosed
    ? { outcome: 'optimal', values: best, objective, bound: objective }
    : { outcome: 'stopped', values: best, objective, bound };
}

/** A proven solution is never dropped: where whole numbers put back in place break a row by a hair, the solver's own values stand. */
function provenOutcome(program: Program, found: ArrayLike<number>): Solved {
  const rounded = cleaned(program, found);
  const values = keepsAllRows(program, rounded) ? rounded : Array.from(found);
  const objective = objectiveOf(program, values);
  return { outcome: 'optimal', values, objective, bound: objective };
}

function requireFullStart(program: Program, start: readonly number[]): Float64Array {
  if (start.length !== program.columns.length)
    throw new RangeError(`a start needs one value per column: ${program.columns.length}, not ${start.length}`);
  return Float64Array.from(start);
}

/** Whole columns come back as 0.9999999 or 1e-9; put them where they belong. */
function cleaned(program: Program, values: ArrayLike<number>): readonly number[] {
  return program.columns.map((column, c) => {
    const value = values[c] ?? 0;
    return (column.whole ? Math.round(value) : value) + 0;
  });
}

function modelOf(highs: Highs, program: Program): Parameters<Highs['createModel']>[0] & object {
  const numCols = program.columns.length;
  const numRows = program.rows.length;
  const starts = new Int32Array(numRows + 1);
  const indices: number[] = [];
  const values: number[] = [];
  for (const [r, row] of program.rows.entries()) {
    const factors = new Map<number, number>();
    for (const term of row.terms) factors.set(term.column, (factors.get(term.column) ?? 0) + term.factor);
    for (const [column, factor] of factors) {
      if (factor === 0) continue;
      indices.push(column);
      values.push(factor);
    }
    starts[r + 1] = indices.length;
  }
  const { continuous, integer } = highs.constants.variableType;
  return {
    numCols,
    numRows,
    sense: program.sense === 'minimise' ? highs.constants.objectiveSense.minimize : highs.constants.objectiveSense.maximize,
    colCost: Float64Array.from(program.columns, (column) => column.cost),
    colLower: Float64Array.from(program.columns, lowerOf),
    colUpper: Float64Array.from(program.columns, upperOf),
    rowLower: Float64Array.from(program.rows, (row) => row.atLeast ?? Number.NEGATIVE_INFINITY),
    rowUpper: Float64Array.from(program.rows, (row) => row.atMost ?? Number.POSITIVE_INFINITY),
    integrality: program.columns.map((column) => (column.whole ? integer : continuous)),
    matrix: { format: 'csr', numRows, numCols, starts, indices: Int32Array.from(indices), values: Float64Array.from(values) },
  };
}
