import { type Spread, spreadOf } from '@twistwright/units';
import type { LineModel } from './line-model.ts';
import { keepAll, type LineSamples } from './line-samples.ts';
import { runLine } from './run-line.ts';
import { withArtists } from './with-artists.ts';

/** For example 90 % of the served wait at most 15 minutes, and at least 95 % of those who come are served. */
export interface LinePromise {
  readonly waitMinutes: number;
  /** Of the guests who are served, this share waits no longer; 0 to 1. */
  readonly shareWithin: number;
  /** Of the guests who come, this share is served; 0 to 1. */
  readonly shareServed: number;
}
export interface ArtistsTried {
  readonly artists: number;
  /** Per run: the share of the served who waited no longer than promised (1 where nobody was served), and of those who came who were served. */
  readonly shareWithin: Spread;
  readonly shareServed: Spread;
  /** Whether both means keep the promise. */
  readonly isKept: boolean;
}
export interface FewestArtists {
  /** Missing if not even the most allowed keep the promise. */
  readonly artists?: number;
  /** What each number gave, from one artist upward; the luck of the guests is the same in all. */
  readonly tried: readonly ArtistsTried[];
}

/**
 * The fewest artists who keep the promise on the average of the runs: one after another is added (the given ones, then the same again)
 * until it is kept or `most` is reached.
 * @example fewestArtists(model, { waitMinutes: 15, shareWithin: 0.9, shareServed: 0.95 }, { seed: 1, runs: 400, most: 6 }).artists
 */
export function fewestArtists(
  model: LineModel,
  promise: LinePromise,
  options: { readonly seed: number; readonly runs: number; readonly most: number },
): FewestArtists {
  const tried: ArtistsTried[] = [];
  for (let artists = 1; artists <= options.most; artists++) {
    const samples = runLine(
      { ...withArtists(model, artists), promiseMinutes: promise.waitMinutes },
      { seed: options.seed, runs: options.runs, keep: { ...keepAll, items: false, figures: false, lengths: false, waits: false } },
    );
    const outcome = judge(artists, samples, promise);
    tried.push(outcome);
    if (outcome.isKept) return { artists, tried };
  }
  return { tried };
}

function judge(artists: number, samples: LineSamples, promise: LinePromise): ArtistsTried {
  const share = (part: (run: number) => number, whole: Int32Array): Spread =>
    spreadOf(Float64Array.from({ length: samples.runs }, (_, run) => ((whole[run] ?? 0) === 0 ? 1 : part(run) / (whole[run] ?? 1))));
  const shareWithin = share((run) => (samples.served[run] ?? 0) - (samples.waitedLong[run] ?? 0), samples.served);
  const shareServed = share((run) => samples.served[run] ?? 0, samples.arrived);
  const isKept = shareWithin.mean >= promise.shareWithin && shareServed.mean >= promise.shareServed;
  return { artists, shareWithin, shareServed, isKept };
}
