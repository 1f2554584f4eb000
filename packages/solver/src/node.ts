export { type OpenSolver, openSolver } from './solver-thread.ts';
