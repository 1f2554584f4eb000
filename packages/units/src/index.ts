export * from './calendar.ts';
export { Chance, exp, keyed, keyedUniform, log, normalOf, normalQuantile } from './chance.ts';
export * from './lengths.ts';
export * from './money.ts';
export { exhausted, fail, ok, type Problem, type Result } from './result.ts';
export * from './statistics.ts';
