/** What the planner asks of a mixed-integer solver. Plain data in, plain data out, so that a model can be kept and replayed. */

export interface LinearTerm {
  /** Index into `Program.columns`. */
  readonly column: number;
  readonly factor: number;
}
export interface Column {
  readonly name: string;
  readonly cost: number;
  /** Default 0. */
  readonly lower?: number;
  /** Default no upper bound. */
  readonly upper?: number;
  readonly whole: boolean;
}
export interface Row {
  readonly name: string;
  readonly terms: readonly LinearTerm[];
  /** At least one of the two; both equal for an equation. */
  readonly atLeast?: number;
  readonly atMost?: number;
}
/** Minimise (or maximise) the sum of cost times column, subject to the rows. */
export interface Program {
  readonly sense: 'minimise' | 'maximise';
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
}
export interface SolveLimits {
  /** Wall-clock limit in seconds; kept within 10 %. */
  readonly seconds?: number;
  /** Stop when proven within this share of the optimum, default 0 (proven optimal). */
  readonly gap?: number;
  /** A known good solution, one value per column, to start from. */
  readonly start?: readonly number[];
}
/** An outcome, never an exception: infeasible, unbounded and out of time are answers. */
export type Solved =
  | {
      readonly outcome: 'optimal' | 'stopped';
      readonly values: readonly number[];
      readonly objective: number;
      /** Proven bound on the optimum; equals `objective` when optimal. */
      readonly bound: number;
    }
  | { readonly outcome: 'infeasible' }
  | { readonly outcome: 'unbounded' }
  | { readonly outcome: 'no answer in time'; readonly bound: number };

export interface Solver {
  solve(program: Program, limits?: SolveLimits): Promise<Solved>;
}
