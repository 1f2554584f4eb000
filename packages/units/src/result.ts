/** What went wrong with an input, as a sentence for a person: where it is, what is wrong, what to do. */
export interface Problem {
  /** Permanent code, declared once in `problem-codes.ts`, for example `item.unknown`. */
  readonly code: string;
  /** Where in the book or request, outermost key first, for example `['gigs', 2, 'menu', 0, 'figure']`. */
  readonly path: readonly (string | number)[];
  /** One sentence with the values in it. */
  readonly sentence: string;
  /** What would put it right, one sentence. */
  readonly todo?: string;
  /** `error`: nothing can be computed from this; `warning`: it can, and the answer says so. */
  readonly weight: 'error' | 'warning';
  /** Place in the file it was read from, 1-based, where there is a file. */
  readonly line?: number;
  readonly column?: number;
}

/** Either a value or the reasons why there is none. Refusals are values; bugs throw. */
export type Result<T, E = readonly Problem[]> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: E };

export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });
export const fail = <E>(error: E): { readonly ok: false; readonly error: E } => ({ ok: false, error });

/** Marks a branch that the types rule out; throws with the value if it is reached all the same. */
export function exhausted(value: never): never {
  throw new Error(`a case was forgotten: ${JSON.stringify(value)}`);
}
