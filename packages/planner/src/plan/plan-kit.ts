import type { Book } from '@twistwright/books';
import { fail, type Money, ok, type Problem, type Result } from '@twistwright/units';
import {
  type BookKitWishes,
  checkKit,
  describeKit,
  findKit,
  growthPurchasesOf,
  type Kit,
  type KitCurve,
  type KitLasting,
  type KitLimits,
  kitCurve,
  kitProblemOf,
  lastingOf,
  leastBudget,
  type NextPurchase,
  nextPurchases,
  rulesOfThumb,
} from '../kit/index.ts';

/** A first kit with what a newcomer asks about it. */
export interface KitPlan {
  readonly kit: Kit;
  /** How far it goes when guests really come. */
  readonly lasting: KitLasting;
  /** Best next purchases, in order. */
  readonly next: readonly NextPurchase[];
  /** What two rules of thumb would meet for the same money. */
  readonly rules: readonly {
    readonly rule: 'every colour once' | 'most popular figures first';
    readonly spent: Money;
    readonly met: number;
  }[];
  /** What comes after it, in order, for `growKit`. */
  readonly growthPurchases: ReturnType<typeof growthPurchasesOf>;
  /** What could not be planned, such as a figure that no offer makes possible. */
  readonly warnings: readonly Problem[];
  /** Money against requests met; missing where it was not asked for. */
  readonly curve?: KitCurve;
}
export interface PlanKitOptions extends KitLimits {
  /** Runs for how long the kit lasts; default 400. */
  readonly runs?: number;
  /** Budgets on the curve; none if missing. */
  readonly curvePoints?: number;
}

/** What a newcomer should buy first out of a coach's book (PRODUCT.md, First kit). */
export function planKit(book: Book, wishes: BookKitWishes, options: PlanKitOptions = {}): Result<KitPlan> {
  const problem = kitProblemOf(book, wishes);
  if (!problem.ok) return problem;
  const found = findKit(problem.value, options);
  if (!found.ok) return withNearest(found.error, () => leastBudget(problem.value), wishes.budget);
  const { model, bought } = found.value;
  const curve = options.curvePoints === undefined ? undefined : kitCurve(problem.value, options.curvePoints);
  const kit = describeKit(found.value);
  return ok({
    kit,
    lasting: lastingOf(model, bought, options.runs ?? 400, options.seed ?? 1),
    next: nextPurchases(model, bought),
    rules: rulesOfThumb(model).map(({ rule, spent, met }) => ({ rule, spent, met })),
    growthPurchases: growthPurchasesOf(found.value, kit),
    warnings: checkKit(problem.value),
    ...(curve?.ok === true ? { curve: curve.value } : {}),
  });
}

/** Refusals carry what would be possible; nothing is added where the search has said so already. */
function withNearest(problems: readonly Problem[], least: () => Money | undefined, budget: Money): Result<KitPlan> {
  if (problems.some((problem) => problem.todo !== undefined)) return fail(problems);
  const needed = least();
  return fail(
    needed === undefined || needed <= budget
      ? problems
      : problems.map((problem) => ({ ...problem, todo: `The cheapest kit that works costs ${needed} minor units.` })),
  );
}
