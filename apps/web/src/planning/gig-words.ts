import type { Gig } from '@twistwright/books';
import type { ForecastSummary } from '@twistwright/planner';
import { minuteOf, type Spread } from '@twistwright/units';
import { counted, occasionOf } from '../words/counted.ts';
import type { NeedView } from './gig-view.ts';

/** "56 to 68", or one number where both ends are the same. */
export const between = (spread: Pick<Spread, 'p10' | 'p90'>, digits = 0): string => {
  const [low, high] = [spread.p10.toFixed(digits), spread.p90.toFixed(digits)];
  return low === high ? low : `${low} to ${high}`;
};

/** What one try of a gig is called: afternoon. */
export const occasionOfGig = (gig: Gig): string => occasionOf(minuteOf(gig.starts), minuteOf(gig.ends));

/** Whether the promise of the book is kept, and how many artists would keep it. */
export function promiseSentence(
  forecast: ForecastSummary,
  promise: { readonly shareWithin: number; readonly shareServed: number },
  artistsNeeded: number | undefined,
): string {
  const share = (value: number): string => `${Math.round(value * 100)} in 100`;
  const isKept = forecast.shareWithin.mean >= promise.shareWithin && forecast.shareServed.mean >= promise.shareServed;
  const said = `${share(forecast.shareWithin.mean)} of those served wait at most ${forecast.promiseMinutes} minutes, and ${share(forecast.shareServed.mean)} of those who come are served`;
  if (isKept) return `${said}: your promise is kept.`;
  const asked = `you promise ${share(promise.shareWithin)} and ${share(promise.shareServed)}`;
  if (artistsNeeded === undefined) return `${said}; ${asked}.`;
  return artistsNeeded === 0
    ? `${said}; ${asked}. More artists alone do not keep it.`
    : `${said}; ${asked}. It takes ${counted(artistsNeeded, 'artist')}.`;
}

/** Chance in tries: "9 afternoons of 10". */
export function surelyIn(chanceOfRunningOut: number, occasion: string): string {
  const of = [10, 20, 50, 100].find((tries) => Math.abs(chanceOfRunningOut * tries - Math.round(chanceOfRunningOut * tries)) < 1e-9) ?? 100;
  return `${Math.round((1 - chanceOfRunningOut) * of)} ${occasion}s of ${of}`;
}

/** What stands beside a need: "takes 18 (13 to 23); you have 14, and 6 go before". */
export function needNote(need: NeedView): string {
  const order = need.onOrder > 0 ? ` and ${need.onOrder} on order` : '';
  const before = need.before > 0 ? `; ${need.before} go before` : '';
  return `takes ${Math.round(need.takes.p50)} (${between(need.takes)}); you have ${need.have}${order}${before}`;
}
