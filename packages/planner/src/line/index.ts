export { expectedMinutesEach, expectedMinutesFor, meanOf } from './expected-minutes.ts';
export * from './line-model.ts';
export { durationOf, lineModelOf, withStock } from './line-of-gig.ts';
export { joinSamples, type Keep, keepAll, type LineSamples, lengthStep } from './line-samples.ts';
export { type RunOptions, runLine, runLineInSteps } from './run-line.ts';
