import type { Program } from '@twistwright/planner';

/**
 * Throws if the programme is malformed: a cost, factor or limit that is no number, a term that points at no column, a row without a limit.
 * Such a programme is a bug of the caller, never an outcome. Infinite bounds are left out instead of written.
 */
export function requireSoundProgram(program: Program): void {
  for (const [c, column] of program.columns.entries()) {
    requireFinite(column.cost, `the cost of column ${c} (${column.name})`);
    if (column.lower !== undefined) requireFinite(column.lower, `the lower bound of column ${c} (${column.name})`);
    if (column.upper !== undefined) requireFinite(column.upper, `the upper bound of column ${c} (${column.name})`);
  }
  for (const [r, row] of program.rows.entries()) {
    if (row.atLeast === undefined && row.atMost === undefined)
      throw new RangeError(`row ${r} (${row.name}) has no limit: give atLeast, atMost or both`);
    if (row.atLeast !== undefined) requireFinite(row.atLeast, `the lower limit of row ${r} (${row.name})`);
    if (row.atMost !== undefined) requireFinite(row.atMost, `the upper limit of row ${r} (${row.name})`);
    for (const term of row.terms) {
      requireFinite(term.factor, `a factor in row ${r} (${row.name})`);
      if (!Number.isInteger(term.column) || term.column < 0 || term.column >= program.columns.length)
        throw new RangeError(`row ${r} (${row.name}) names column ${term.column}, but there are ${program.columns.length} columns`);
    }
  }
}

function requireFinite(value: number, what: string): void {
  if (!Number.isFinite(value)) throw new RangeError(`${what} must be a finite number, not ${value}; leave a bound out where there is none`);
}

/** The smallest and largest value of each column, with the port's defaults filled in. */
export const lowerOf = (column: Program['columns'][number]): number => column.lower ?? 0;
export const upperOf = (column: Program['columns'][number]): number => column.upper ?? Number.POSITIVE_INFINITY;

/** The objective of the given values. */
export function objectiveOf(program: Program, values: readonly number[]): number {
  let sum = 0;
  for (const [c, column] of program.columns.entries()) sum += column.cost * (values[c] ?? 0);
  return sum;
}

/** True if the values keep every bound, every row and wholeness within `tolerance` (relative to the size of the limit). */
export function keepsAllRows(program: Program, values: readonly number[], tolerance = 1e-6): boolean {
  if (values.length !== program.columns.length) return false;
  for (const [c, column] of program.columns.entries()) {
    const value = values[c] ?? Number.NaN;
    if (!(value >= lowerOf(column) - tolerance && value <= upperOf(column) + tolerance)) return false;
    if (column.whole && Math.abs(value - Math.round(value)) > tolerance) return false;
  }
  for (const row of program.rows) {
    let left = 0;
    for (const term of row.terms) left += term.factor * (values[term.column] ?? 0);
    if (row.atLeast !== undefined && left < row.atLeast - tolerance * Math.max(1, Math.abs(row.atLeast))) return false;
    if (row.atMost !== undefined && left > row.atMost + tolerance * Math.max(1, Math.abs(row.atMost))) return false;
  }
  return true;
}
