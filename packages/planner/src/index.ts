export type { Column, LinearTerm, Program, Row, Solved, SolveLimits, Solver } from './solver-port.ts';
