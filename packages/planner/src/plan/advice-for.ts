import { type Book, type Gig, planningSettingsOf, type ServicePromise } from '@twistwright/books';
import { ok, type Result, type Spread } from '@twistwright/units';
import { bestMenu, type ClosingCardRow, closingCard, type FewestArtists, fewestArtists, lineModelOf } from '../line/index.ts';
import { seedOf } from './forecast-gig.ts';

export interface AdviceOptions {
  readonly seed: number;
  /** Runs for the artists and the card; a menu is tried on a quarter of them. */
  readonly runs: number;
  /** Most artists that are tried; default 6. */
  readonly most?: number;
}
/** Answers to the questions behind a forecast. */
export interface Advice {
  readonly promise: ServicePromise;
  /** Fewest artists who keep the promise. */
  readonly artists: FewestArtists;
  /** How many may still be waiting at each time. */
  readonly card: readonly ClosingCardRow[];
  /** Chance that everybody on the card is done by the end. */
  readonly cardChance: number;
  /** The menu that gives this crowd the most in this time. */
  readonly menu: {
    readonly keep: readonly string[];
    readonly drop: readonly string[];
    readonly served: Spread;
    readonly servedNow: Spread;
    /** How much more it is worth than the whole menu, as a share. */
    readonly gain: number;
    readonly how: 'every menu tried' | 'search';
  };
}

const cardChance = 0.9;
const usualMost = 6;

/** Pieces made to order wait for nobody: there only what is done in time counts. */
const promiseAt = (gig: Gig, promise: ServicePromise, end: number): ServicePromise =>
  gig.kind === 'made to order' ? { ...promise, waitMinutes: end, shareWithin: 0 } : promise;

/** Fewest artists for the business's promise, the closing card, and the best menu for the crowd and clock of one gig. */
export function adviceFor(book: Book, gig: Gig, options: AdviceOptions): Result<Advice> {
  const model = lineModelOf(book, gig);
  if (!model.ok) return model;
  const promise = promiseAt(gig, planningSettingsOf(book).promise, model.value.end);
  const seed = seedOf(options.seed, gig.id);
  const worth = model.value.figures.map((figure) => book.figures.find((candidate) => candidate.id === figure.id)?.worth ?? 1);
  const menu = bestMenu(model.value, { seed, runs: Math.max(50, Math.round(options.runs / 4)), worth });
  const offered = new Set(menu.best.figures);
  const idOf = (at: number): string => model.value.figures[at]?.id ?? '';
  return ok({
    promise,
    artists: fewestArtists(model.value, promise, { seed, runs: options.runs, most: options.most ?? usualMost }),
    card: closingCard(model.value, { seed, runs: options.runs, chance: cardChance }),
    cardChance,
    menu: {
      keep: menu.best.figures.map(idOf),
      drop: menu.whole.figures.filter((at) => !offered.has(at)).map(idOf),
      served: menu.best.served,
      servedNow: menu.whole.served,
      gain: menu.whole.worth.mean <= 0 ? 0 : menu.best.worth.mean / menu.whole.worth.mean - 1,
      how: menu.how,
    },
  });
}
