export { type BreakEven, breakEven, marginOfMarkUp, markUpOfMargin } from './break-even.ts';
export { checkKit, type KitProblemCode, kitProblemCodes } from './check-kit.ts';
export type { CoverGoal, CoverProblem } from './cover-model.ts';
export { coverProgramOf } from './cover-program.ts';
export {
  type Coverage,
  type CoverageAnswer,
  type CoverageProblemCode,
  coverageOf,
  coverageProblemCodes,
  coverProblemOf,
  solveCoverage,
} from './coverage-of.ts';
export { curveThrough } from './curve-through.ts';
export { describeKit } from './describe-kit.ts';
export { bagsOfKit, foundBefore } from './found-before.ts';
export { type Growth, type GrowthProblem, growthOf, growthProblemCodes, type Milestone } from './growth.ts';
export { growthPurchasesOf } from './growth-purchases.ts';
export { bagsByOffer, type KitCurve, type KitCurvePoint, kitCurve } from './kit-curve.ts';
export { lastingOf, metWithin, mostHoursFollowed } from './kit-lasting.ts';
export { type KitModel, kitModelOf } from './kit-model.ts';
export { type BookKitWishes, kitDraftOf, kitProblemOf } from './kit-of-book.ts';
export * from './kit-problem.ts';
export { type KitReport, type KitReportOptions, kitReportOf, reportOn } from './kit-report.ts';
export { type RuleOutcome, rulesOfThumb } from './kit-rules.ts';
export { mendKit } from './mend-kit.ts';
export { type NextPurchase, nextPurchases } from './next-purchases.ts';
export type { KitSearched } from './search-kit.ts';
export { type CoverAnswer, type CoverLimits, solveCover } from './solve-cover.ts';
export { type FoundKit, findKit, firstKit, type KitLimits, leastBudget } from './solve-kit.ts';
