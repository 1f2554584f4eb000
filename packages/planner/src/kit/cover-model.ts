/**
 * Budgeted coverage with alternatives, as flat arrays for the search.
 *
 * A *bag* costs money. A *goal* has a value and is reached when one of its *alternatives* is; an alternative is reached when each
 * of its *clauses* is; a clause is a list of bags of which any one is enough. Two forms are special cases: a figure with alternative
 * bag sets (each clause one bag), and a figure with colour roles (one alternative, a clause for each role).
 */
export interface CoverGoal {
  /** Non-negative. */
  readonly value: number;
  /** Each alternative is a list of clauses, each clause a list of bag indices. No alternative = never reached; an empty one = always. */
  readonly alternatives: readonly (readonly (readonly number[])[])[];
}
export interface CoverProblem {
  /** Whole minor units, not negative, as is the budget. */
  readonly costs: readonly number[];
  readonly budget: number;
  readonly goals: readonly CoverGoal[];
}

/** The problem in compressed rows: goal -> alternatives -> rows -> bags, and back from a bag to its rows. */
export interface CoverModel {
  readonly budget: number;
  readonly bagCount: number;
  readonly goalCount: number;
  readonly rowCount: number;
  readonly costs: Float64Array;
  readonly values: Float64Array;
  readonly goalOfAlternative: Int32Array;
  readonly alternativeStart: Int32Array;
  readonly rowsStart: Int32Array;
  readonly rowsOfAlternative: Int32Array;
  readonly bagsStart: Int32Array;
  readonly bagsOfRow: Int32Array;
  /** Clauses with the same bags, whatever goal they belong to, are one for counting: bag -> clauses -> alternatives. */
  readonly clauseCount: number;
  readonly clausesOfBagStart: Int32Array;
  readonly clausesOfBag: Int32Array;
  readonly alternativesOfClauseStart: Int32Array;
  readonly alternativesOfClause: Int32Array;
  readonly valueOfAlways: number;
  /** True if every value is a whole number, so that bounds may be rounded down. */
  readonly wholeValues: boolean;
}

/** Flattens the problem: duplicate clauses of a goal become one row, alternatives that contain another are dropped (it is never cheaper). */
export function coverModelOf(problem: CoverProblem): CoverModel {
  const goalOf: number[] = [];
  const alternativeStart: number[] = [0];
  const rowsStart: number[] = [0];
  const rows: number[] = [];
  const bagsStart: number[] = [0];
  const bags: number[] = [];
  let rowCount = 0;
  let valueOfAlways = 0;
  for (const [g, goal] of problem.goals.entries()) {
    const rowOf = new Map<string, number>();
    const kept = withoutDominated(goal.alternatives.map((clauses) => distinctClauses(clauses)));
    const always = kept.some((clauses) => clauses.length === 0);
    if (always) valueOfAlways += goal.value;
    for (const clauses of always ? [] : kept) {
      if (clauses.some((clause) => clause.length === 0)) continue; // a role that no bag can fill
      for (const clause of clauses) {
        const key = clause.join(',');
        let row = rowOf.get(key);
        if (row === undefined) {
          row = rowCount++;
          rowOf.set(key, row);
          bags.push(...clause);
          bagsStart.push(bags.length);
        }
        rows.push(row);
      }
      rowsStart.push(rows.length);
      goalOf.push(g);
    }
    alternativeStart.push(goalOf.length);
  }
  const bagCount = problem.costs.length;
  const clauses = sharedClauses(bagsStart, bags);
  const clausesOfBag = turned(clauses.start, clauses.bags, bagCount);
  const alternativesOfClause = turned(
    rowsStart,
    rows.map((row) => clauses.ofRow[row] as number),
    clauses.start.length - 1,
  );
  return {
    budget: problem.budget,
    bagCount,
    goalCount: problem.goals.length,
    rowCount,
    costs: Float64Array.from(problem.costs),
    values: Float64Array.from(problem.goals, (goal) => goal.value),
    goalOfAlternative: Int32Array.from(goalOf),
    alternativeStart: Int32Array.from(alternativeStart),
    rowsStart: Int32Array.from(rowsStart),
    rowsOfAlternative: Int32Array.from(rows),
    bagsStart: Int32Array.from(bagsStart),
    bagsOfRow: Int32Array.from(bags),
    clauseCount: clauses.start.length - 1,
    clausesOfBagStart: clausesOfBag.start,
    clausesOfBag: clausesOfBag.list,
    alternativesOfClauseStart: alternativesOfClause.start,
    alternativesOfClause: alternativesOfClause.list,
    valueOfAlways,
    wholeValues: problem.goals.every((goal) => Number.isInteger(goal.value)),
  };
}

function distinctClauses(clauses: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const seen = new Map<string, readonly number[]>();
  for (const clause of clauses) {
    const sorted = clause.length === 1 ? clause : [...new Set(clause)].sort((a, b) => a - b);
    seen.set(sorted.join(','), sorted);
  }
  return [...seen.values()];
}

/** Drops each alternative whose clauses include all clauses of another (of equal ones the first stays). */
function withoutDominated(alternatives: readonly (readonly (readonly number[])[])[]): readonly (readonly (readonly number[])[])[] {
  if (alternatives.length < 2) return alternatives;
  const keys = alternatives.map((clauses) => new Set(clauses.map((clause) => clause.join(','))));
  return alternatives.filter((_, a) => {
    const own = keys[a] ?? new Set();
    return !keys.some((other, b) => b !== a && (other.size < own.size || (other.size === own.size && b < a)) && other.isSubsetOf(own));
  });
}

/** Gives rows with the same bags one clause. */
function sharedClauses(
  bagsStart: readonly number[],
  bags: readonly number[],
): { readonly ofRow: Int32Array; readonly start: readonly number[]; readonly bags: readonly number[] } {
  const ofRow = new Int32Array(bagsStart.length - 1);
  const numberOf = new Map<string, number>();
  const start = [0];
  const list: number[] = [];
  for (let row = 0; row < ofRow.length; row++) {
    const own = bags.slice(bagsStart[row], bagsStart[row + 1]);
    const key = own.join(',');
    let clause = numberOf.get(key);
    if (clause === undefined) {
      clause = numberOf.size;
      numberOf.set(key, clause);
      list.push(...own);
      start.push(list.length);
    }
    ofRow[row] = clause;
  }
  return { ofRow, start, bags: list };
}

/** Turns a compressed relation round: from `row -> entries` to `entry -> rows`. */
function turned(
  start: readonly number[],
  list: readonly number[],
  entries: number,
): { readonly start: Int32Array; readonly list: Int32Array } {
  const counts = new Int32Array(entries + 1);
  for (const entry of list) counts[entry + 1] = (counts[entry + 1] ?? 0) + 1;
  for (let e = 0; e < entries; e++) counts[e + 1] = (counts[e + 1] ?? 0) + (counts[e] ?? 0);
  const at = counts.slice();
  const out = new Int32Array(list.length);
  for (let row = 0; row + 1 < start.length; row++) {
    for (let k = start[row] ?? 0; k < (start[row + 1] ?? 0); k++) {
      const entry = list[k] ?? 0;
      const place = at[entry] ?? 0;
      out[place] = row;
      at[entry] = place + 1;
    }
  }
  return { start: counts, list: out };
}
