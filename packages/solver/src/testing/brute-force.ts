import type { Program, Solved, Solver } from '@twistwright/planner';
import { keepsAllRows, objectiveOf, requireSoundProgram } from '../program-check.ts';

/** The most value combinations that are tried. */
const mostCombinations = 2_000_000;

/**
 * Tries every combination. Only for programmes whose columns are all whole and bounded; the truth that solvers are held against.
 * Throws if the programme is too large for that.
 */
export const bruteForceSolver: Solver = {
  solve: (program) => Promise.resolve().then(() => tryAll(program)),
};

function tryAll(program: Program): Solved {
  requireSoundProgram(program);
  const ranges = program.columns.map((column) => {
    if (!column.whole || column.upper === undefined) throw new RangeError(`brute force needs whole bounded columns; ${column.name} is not`);
    return { from: Math.ceil(column.lower ?? 0), to: Math.floor(column.upper) };
  });
  const combinations = ranges.reduce((product, range) => product * Math.max(0, range.to - range.from + 1), 1);
  if (combinations > mostCombinations) throw new RangeError(`${combinations} combinations are too many to try`);
  const sign = program.sense === 'minimise' ? 1 : -1;
  const values = ranges.map((range) => range.from);
  let best: readonly number[] | undefined;
  for (let n = 0; n < combinations; n++) {
    if (
      keepsAllRows(program, values, 1e-9) &&
      (best === undefined || sign * objectiveOf(program, values) < sign * objectiveOf(program, best))
    )
      best = [...values];
    advance(values, ranges);
  }
  if (best === undefined) return { outcome: 'infeasible' };
  const objective = objectiveOf(program, best);
  return { outcome: 'optimal', values: best, objective, bound: objective };
}

function advance(values: number[], ranges: readonly { readonly from: number; readonly to: number }[]): void {
  for (const [c, range] of ranges.entries()) {
    const value = values[c] ?? 0;
    if (value < range.to) {
      values[c] = value + 1;
      return;
    }
    values[c] = range.from;
  }
}
