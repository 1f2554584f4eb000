export { bruteForceSolver } from './brute-force.ts';
export { brokenLaws, malformedPrograms, type SolverLaw, solverLaws } from './solver-contract.ts';
