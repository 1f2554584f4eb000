import type { Book } from '@twistwright/books';
import type { ShoppingPlan, ShoppingRefusal } from '@twistwright/planner';
import type { LocalDate, LocalTime } from '@twistwright/units';

/** What may be played with on the shopping page. */
export interface ShoppingDials {
  /** Chance that something asked for runs out. */
  readonly chance: number;
  readonly daysToSpare: number;
  /** Suppliers that are bought from. */
  readonly suppliers: readonly string[];
  /** Last day that counts. */
  readonly until: LocalDate;
}
export interface ShoppingAsk {
  readonly number: number;
  readonly book: Book;
  readonly today: LocalDate;
  readonly now: LocalTime;
  readonly dials: ShoppingDials;
  /** Chances for the curve beside the one that is chosen. */
  readonly others: readonly number[];
}
export type Found = { readonly ok: true; readonly plan: ShoppingPlan } | { readonly ok: false; readonly refusal: ShoppingRefusal };
export type ShoppingAnswer =
  | { readonly kind: 'progress'; readonly number: number; readonly what: string; readonly done: number; readonly of: number }
  | { readonly kind: 'found'; readonly number: number; readonly chance: number; readonly found: Found }
  | { readonly kind: 'done'; readonly number: number }
  | { readonly kind: 'broken'; readonly number: number; readonly message: string };
