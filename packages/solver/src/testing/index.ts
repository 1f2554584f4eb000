export { bruteForceSolver } from './brute-force.ts';
export { malformedPrograms, type SolverLaw, solverLaws } from './solver-contract.ts';
