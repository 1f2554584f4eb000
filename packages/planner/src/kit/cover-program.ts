import type { Column, Program, Row } from '../solver-port.ts';
import type { CoverProblem } from './cover-model.ts';

/**
 * The same problem for a general mixed-integer solver: bags whole, goals as the sum of their alternatives, a clause used by several
 * alternatives of a goal linked once (which is tighter than each by itself). It holds the own search against an independent one. The
 * first columns are the bags.
 */
export function coverProgramOf(problem: CoverProblem): Program {
  const columns: Column[] = problem.costs.map((_, bag) => ({ name: `bag ${bag}`, cost: 0, lower: 0, upper: 1, whole: true }));
  const rows: Row[] = [];
  for (const [g, goal] of problem.goals.entries()) {
    const byClause = new Map<string, { readonly clause: readonly number[]; readonly alternatives: number[] }>();
    const reached = goal.alternatives.map((clauses, a) => {
      const alternative = columns.push({ name: `goal ${g} by ${a}`, cost: goal.value, lower: 0, upper: 1, whole: false }) - 1;
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
          ...[...new Set(clause)].map((bag) => ({ column: bag, factor: -1 })),
        ],
        atMost: 0,
      });
  }
  rows.push({ name: 'budget', terms: problem.costs.map((cost, bag) => ({ column: bag, factor: cost })), atMost: problem.budget });
  return { sense: 'maximise', columns, rows };
}
const keyOf = (clause: readonly number[]): string => [...new Set(clause)].sort((a, b) => a - b).join(' or ');
