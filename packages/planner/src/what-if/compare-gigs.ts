import { type Book, type Gig, planningSettingsOf } from '@twistwright/books';
import { type Money, ok, type Result, type Spread } from '@twistwright/units';
import { chargeFor, pieceCosts } from '../charge/index.ts';
import type { Take } from '../packing/index.ts';
import { type ForecastSummary, forecastGig, materialsOf, takesOf } from '../plan/index.ts';
import { gigAfter, type WhatIf } from './what-if.ts';

/** What one side of a comparison comes to. */
export interface WhatIfSide {
  readonly gig: Gig;
  readonly forecast: ForecastSummary;
  /** Pieces to take, by item id. */
  readonly takes: ReadonlyMap<string, Take>;
  /** What the client pays, tax included. */
  readonly quote: Money;
  /** Earned per true hour of one artist, minor units. */
  readonly hourly: Spread;
}
/** A gig as it stands, and as it would be. */
export interface WhatIfOutcome {
  readonly before: WhatIfSide;
  readonly after: WhatIfSide;
}

/** Plays a gig as it stands and after a change, everybody with the same luck. Fails with sentences where one of the two cannot be played. */
export function compareGigs(
  book: Book,
  gig: Gig,
  change: WhatIf,
  options: { readonly seed?: number; readonly runs?: number } = {},
): Result<WhatIfOutcome> {
  const settings = planningSettingsOf(book);
  const { seed = settings.seed, runs = settings.runs } = options;
  const costs = pieceCosts(book);
  const weight = new Map([...costs].map(([item, { cost }]) => [item, cost]));
  const play = (side: Gig): Result<WhatIfSide> => {
    const forecast = forecastGig(book, side, { seed, runs });
    if (!forecast.ok) return forecast;
    const { quote, hourly } = chargeFor(book, side, materialsOf(forecast.value, costs));
    const takes = takesOf(forecast.value, 1 - settings.chanceOfRunningOut, weight);
    return ok({ gig: side, forecast: forecast.value.summary, takes, quote, hourly });
  };
  const before = play(gig);
  if (!before.ok) return before;
  const after = play(gigAfter(book, gig, change));
  return after.ok ? ok({ before: before.value, after: after.value }) : after;
}
