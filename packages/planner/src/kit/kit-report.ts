import { ok, type Problem, type Result } from '@twistwright/units';
import { checkKit } from './check-kit.ts';
import { describeKit } from './describe-kit.ts';
import { growthPurchasesOf } from './growth-purchases.ts';
import { lastingOf } from './kit-lasting.ts';
import type { Kit, KitLasting, KitProblem } from './kit-problem.ts';
import { type RuleOutcome, rulesOfThumb } from './kit-rules.ts';
import { shopsOutOfReach } from './least-orders.ts';
import { type NextPurchase, nextPurchases } from './next-purchases.ts';
import { type FoundKit, findKit, type KitLimits } from './solve-kit.ts';

/** Everything that the First kit page and the printed list say about one budget; plain data. */
export interface KitReport {
  readonly kit: Kit;
  readonly lasting: KitLasting;
  readonly next: readonly NextPurchase[];
  /** What two rules of thumb would meet for the same money. */
  readonly rules: readonly Omit<RuleOutcome, 'bought'>[];
  readonly growthPurchases: ReturnType<typeof growthPurchasesOf>;
  /** What could not be planned, such as a figure that no offer makes possible. */
  readonly warnings: readonly Problem[];
}

export interface KitReportOptions extends KitLimits {
  /** Runs for how long the kit lasts; 400, or 100 for an answer that is wanted soon, if missing. */
  readonly runs?: number;
}

/** The kit with all that is said beside it; refused as {@link findKit} refuses. */
export function kitReportOf(problem: KitProblem, limits: KitReportOptions = {}): Result<KitReport> {
  const found = findKit(problem, limits);
  if (!found.ok) return found;
  return ok(reportOn(problem, found.value, limits));
}

/** What is said beside a purchase that has been found. */
export function reportOn(problem: KitProblem, found: FoundKit, limits: Pick<KitReportOptions, 'effort' | 'runs' | 'seed'> = {}): KitReport {
  const { model, bought } = found;
  const kit = describeKit(found);
  return {
    kit,
    lasting: lastingOf(model, bought, limits.runs ?? (limits.effort === 'soon' ? 100 : 400), limits.seed ?? 1),
    next: nextPurchases(model, bought),
    rules: rulesOfThumb(model).map(({ rule, spent, met }) => ({ rule, spent, met })),
    growthPurchases: growthPurchasesOf(found, kit),
    warnings: [...checkKit(problem), ...shopsOutOfReach(model, bought)],
  };
}
