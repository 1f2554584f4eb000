import type { Book } from '@twistwright/books';
import { fail, type Money, money, ok, type Problem, type Result, showMoney } from '@twistwright/units';
import {
  type BookKitWishes,
  bagsByOffer,
  curveThrough,
  type FoundKit,
  findKit,
  type KitCurve,
  type KitLimits,
  type KitProblem,
  type KitReport,
  type KitReportOptions,
  kitCurve,
  kitDraftOf,
  kitProblemOf,
  kitReportOf,
  leastBudget,
  mendKit,
} from '../kit/index.ts';

/** A first kit with what a newcomer asks about it. */
export interface KitPlan extends KitReport {
  /** Money against requests met; missing where it was not asked for. */
  readonly curve?: KitCurve;
}
export interface PlanKitOptions extends KitReportOptions {
  /** Budgets on the curve; none if missing. */
  readonly curvePoints?: number;
}

/** What a newcomer should buy first out of a coach's book, for the money there is. */
export function planKit(book: Book, wishes: BookKitWishes, options: PlanKitOptions = {}): Result<KitPlan> {
  const problem = kitProblemOf(book, wishes);
  return problem.ok ? planProblem(problem.value, options) : problem;
}

function planProblem(problem: KitProblem, options: PlanKitOptions): Result<KitPlan> {
  const report = kitReportOf(problem, { ...options, ...startOf(problem, options) });
  if (!report.ok) return withNearest(report.error, () => leastBudget(problem), problem);
  const curve = options.curvePoints === undefined ? undefined : kitCurve(problem, options.curvePoints);
  if (curve?.ok !== true) return ok(report.value);
  const { kit } = report.value;
  const chosen = {
    budget: kit.budget,
    spent: kit.spent,
    met: kit.met,
    metAtMost: kit.metAtMost,
    figures: kit.figures.filter((figure) => figure.met > 0).length,
  };
  return ok({ ...report.value, curve: { ...curve.value, points: curveThrough(curve.value.points, chosen) } });
}

/** The nearest kit to one that is refused, and what was changed for it, a sentence each. */
export interface NearestKit {
  readonly plan: KitPlan;
  readonly changes: readonly string[];
}

/**
 * What is possible where {@link planKit} refuses: without the figures, offers, shops and wishes that cannot be used, with all figures asked
 * for alike where nobody asks for any, and with the least money that is enough. Undefined where nothing is left.
 */
export function nearestKit(book: Book, wishes: BookKitWishes, options: PlanKitOptions = {}): NearestKit | undefined {
  const mended = mendKit(kitDraftOf(book, wishes).problem);
  if (mended === undefined) return undefined;
  const plan = planProblem(mended.problem, options);
  return plan.ok ? { plan: plan.value, changes: mended.changes } : undefined;
}

/** Smaller budgets that are looked at first. */
const rungs = 6;

/**
 * A purchase to begin with: soon found for smaller budgets, each from the one before. What grows with the money is often better than what is
 * found at once for all of it.
 */
function startOf(problem: KitProblem, options: PlanKitOptions): Pick<KitLimits, 'start'> {
  if (options.effort === 'soon' || options.start !== undefined) return options.start === undefined ? {} : { start: options.start };
  const { budget } = problem.wishes;
  const least = leastBudget(problem) ?? budget;
  let start: ReadonlyMap<string, number> | undefined;
  for (let rung = 1; rung < rungs && least < budget; rung++) {
    const smaller = money(Math.round(least + ((budget - least) * rung) / rungs));
    const found = findKit(
      { ...problem, wishes: { ...problem.wishes, budget: smaller } },
      { effort: 'soon', ...(options.seed === undefined ? {} : { seed: options.seed }), ...(start === undefined ? {} : { start }) },
    );
    if (found.ok) start = boughtOffers(found.value);
  }
  return start === undefined ? {} : { start };
}

/** Bags by offer, to begin another search with. */
export const boughtOffers = ({ model, bought }: FoundKit): ReadonlyMap<string, number> => bagsByOffer(model, bought);

/** Refusals carry what would be possible; nothing is added where the search has said so already. */
function withNearest(
  problems: readonly Problem[],
  least: () => Money | undefined,
  { currency, wishes: { budget } }: KitProblem,
): Result<KitPlan> {
  if (problems.some((problem) => problem.todo !== undefined)) return fail(problems);
  const needed = least();
  return fail(
    needed === undefined || needed <= budget
      ? problems
      : problems.map((problem) => ({ ...problem, todo: `The cheapest kit that works costs ${showMoney(needed, currency)}.` })),
  );
}
