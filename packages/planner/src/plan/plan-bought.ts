import type { Book } from '@twistwright/books';
import { type BookKitWishes, foundBefore, kitProblemOf, reportOn } from '../kit/index.ts';
import type { KitPlan } from './plan-kit.ts';

/**
 * A first kit that was planned before, with all that is said beside it, on what the book says now: for papers about the very kit that
 * somebody has seen, without another search. How far it is from the best is not known.
 * @param bags bags by offer, as {@link bagsOfKit} reads them off a kit
 * @returns undefined where the kit is not to be had like this any more
 */
export function planBought(
  book: Book,
  wishes: BookKitWishes,
  bags: ReadonlyMap<string, number>,
  options: { readonly runs?: number; readonly seed?: number } = {},
): KitPlan | undefined {
  const problem = kitProblemOf(book, wishes);
  const found = problem.ok ? foundBefore(problem.value, bags) : undefined;
  return problem.ok && found !== undefined ? reportOn(problem.value, found, options) : undefined;
}
