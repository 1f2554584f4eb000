export { type Highs, highsSolver, type LoadHighs } from './highs-solver.ts';
export { requireSoundProgram } from './program-check.ts';
