export { type BestMenu, type BestMenuOptions, bestMenu, type MenuTried } from './best-menu.ts';
export { type ClosingCardOptions, type ClosingCardRow, closingCard } from './closing-card.ts';
export { expectedMinutesEach, expectedMinutesFor, meanOf } from './expected-minutes.ts';
export { type ArtistsTried, type FewestArtists, fewestArtists, type LinePromise } from './fewest-artists.ts';
export * from './line-model.ts';
export { durationOf, lineModelOf, withStock } from './line-of-gig.ts';
export { joinSamples, type Keep, keepAll, type LineSamples, lengthStep } from './line-samples.ts';
export { type RunOptions, runLine, runLineInSteps } from './run-line.ts';
export { withArtists } from './with-artists.ts';
