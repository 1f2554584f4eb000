export type { CoverGoal, CoverPieces, CoverProblem, CoverSupplier } from './cover-model.ts';
export { type Coverage, type CoverageAnswer, coverageOf, coverProblemOf, solveCoverage } from './coverage-of.ts';
export { type CoverAnswer, type CoverLimits, solveCover } from './solve-cover.ts';
