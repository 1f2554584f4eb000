export * from './charge/index.ts';
export * from './line/index.ts';
export * from './needs/index.ts';
export * from './packing/index.ts';
export * from './plan/index.ts';
export * from './say/index.ts';
export * from './shopping/index.ts';
export type { Column, LinearTerm, Program, Row, Solved, SolveLimits, Solver } from './solver-port.ts';
export * from './what-if/index.ts';
