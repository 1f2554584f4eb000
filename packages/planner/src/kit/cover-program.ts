import type { Column, LinearTerm, Program, Row, Solved } from '../solver-port.ts';
import type { CoverProblem } from './cover-model.ts';

/**
 * The same problem for a general mixed-integer solver: bags whole, goals as the sum of their alternatives, a clause used by several
 * alternatives of a goal linked once (which is tighter than each by itself), suppliers by "open" and "spent enough". It holds the own
 * search against an independent one, and proves what that left open. The first columns are the bags.
 */
export function coverProgramOf(problem: CoverProblem): Program {
  const columns: Column[] = [];
  const rows: Row[] = [];
  const column = (name: string, cost: number, whole: boolean, lower = 0, upper = 1): number =>
    columns.push({ name, cost, lower, upper, whole }) - 1;
  const forced = new Set(problem.forcedIn ?? []);
  const out = new Set(problem.takenOut ?? []);
  const bags = problem.costs.map((_, bag) =>
    column(`bag ${bag}`, 0, true, forced.has(bag) ? 1 : 0, out.has(bag) && !forced.has(bag) ? 0 : 1),
  );
  const money: LinearTerm[] = problem.costs.map((cost, bag) => ({ column: bags[bag] ?? 0, factor: cost }));
  for (const [g, goal] of problem.goals.entries()) {
    const byClause = new Map<string, { readonly clause: readonly number[]; readonly alternatives: number[] }>();
    const reached = goal.alternatives.map((clauses, a) => {
      const alternative = column(`goal ${g} by ${a}`, goal.value, false);
      for (const clause of new Map(clauses.map((one) => [keyOf(one), one])).values()) {
        const entry = byClause.get(keyOf(clause)) ?? { clause, alternatives: [] };
        entry.alternatives.push(alternative);
        byClause.set(keyOf(clause), entry);
      }
      return alternative;
    });
    if (reached.length > 0) rows.push({ name: `goal ${g} once`, terms: reached.map((one) => ({ column: one, factor: 1 })), atMost: 1 });
    for (const { clause, alternatives } of byClause.values())
      rows.push({
        name: `goal ${g} needs ${keyOf(clause)}`,
        terms: [
          ...alternatives.map((one) => ({ column: one, factor: 1 })),
          ...[...new Set(clause)].map((bag) => ({ column: bags[bag] ?? 0, factor: -1 })),
        ],
        atMost: 0,
      });
  }
  for (const [bag, first] of (problem.after ?? []).entries())
    if (first >= 0)
      rows.push({
        name: `bag ${bag} after ${first}`,
        terms: [
          { column: bags[bag] ?? 0, factor: 1 },
          { column: bags[first] ?? 0, factor: -1 },
        ],
        atMost: 0,
      });
  addSuppliers(problem, bags, column, rows, money);
  addColours(problem, bags, column, rows);
  rows.push({ name: 'budget', terms: money, atMost: problem.budget });
  return { sense: 'maximise', columns, rows };
}
const keyOf = (clause: readonly number[]): string => [...new Set(clause)].sort((a, b) => a - b).join(' or ');
type AddColumn = (name: string, cost: number, whole: boolean, lower?: number, upper?: number) => number;

function addSuppliers(problem: CoverProblem, bags: readonly number[], column: AddColumn, rows: Row[], money: LinearTerm[]): void {
  for (const [s, supplier] of (problem.suppliers ?? []).entries()) {
    const spent = supplier.spent ?? 0;
    const own = bags.filter((_, bag) => problem.supplierOf?.[bag] === s);
    if (supplier.shipping === 0 || spent >= (supplier.freeFrom ?? Number.POSITIVE_INFINITY)) continue;
    const pays = column(`shipping ${s}`, 0, true, 0);
    money.push({ column: pays, factor: supplier.shipping });
    const enough = supplier.freeFrom === undefined ? undefined : column(`enough ${s}`, 0, true);
    const either = [{ column: pays, factor: -1 }, ...(enough === undefined ? [] : [{ column: enough, factor: -1 }])];
    if (spent > 0) rows.push({ name: `supplier ${s} open`, terms: either, atMost: -1 });
    // What costs nothing needs no shipping: spending is what opens a supplier.
    for (const bag of own)
      if ((problem.costs[bag] ?? 0) > 0)
        rows.push({ name: `supplier ${s} opens for ${bag}`, terms: [{ column: bag, factor: 1 }, ...either], atMost: 0 });
    if (enough !== undefined)
      rows.push({
        name: `supplier ${s} enough`,
        terms: [
          { column: enough, factor: (supplier.freeFrom ?? 0) - spent },
          ...own.map((bag) => ({ column: bag, factor: -(problem.costs[bag] ?? 0) })),
        ],
        atMost: 0,
      });
  }
}

function addColours(problem: CoverProblem, bags: readonly number[], column: AddColumn, rows: Row[]): void {
  if (problem.mostColours === undefined) return;
  const opened = new Map<number, number>();
  for (const [bag, colours] of (problem.coloursOf ?? []).entries())
    for (const colour of colours) {
      if (problem.ownColours?.includes(colour)) continue;
      const open = opened.get(colour) ?? column(`colour ${colour}`, 0, true);
      opened.set(colour, open);
      rows.push({
        name: `bag ${bag} has colour ${colour}`,
        terms: [
          { column: bags[bag] ?? 0, factor: 1 },
          { column: open, factor: -1 },
        ],
        atMost: 0,
      });
    }
  if (opened.size > 0)
    rows.push({ name: 'colours', terms: [...opened.values()].map((open) => ({ column: open, factor: 1 })), atMost: problem.mostColours });
}

/** The purchase in a solver's answer, 0/1 for each bag; undefined if it has none. */
export function boughtIn(problem: CoverProblem, solved: Solved): readonly number[] | undefined {
  if (solved.outcome !== 'optimal' && solved.outcome !== 'stopped') return undefined;
  return problem.costs.map((_, bag) => Math.round(solved.values[bag] ?? 0));
}
