import type { Book, Gig } from '@twistwright/books';
import { ok, percentile, type Result, type Spread, spreadOf } from '@twistwright/units';
import { type LineModel, type LineSamples, lengthStep, lineModelOf, runLine } from '../line/index.ts';

/** One gig played many times. */
export interface Forecast {
  readonly gig: Gig;
  readonly model: LineModel;
  readonly samples: LineSamples;
  readonly summary: ForecastSummary;
}
/** What the runs say, each number with its spread. Counts are guests, times minutes from the start of the gig. */
export interface ForecastSummary {
  readonly runs: number;
  readonly arrived: Spread;
  readonly served: Spread;
  /** Served over arrived. */
  readonly shareServed: Spread;
  readonly turnedAway: Spread;
  readonly notJoined: Spread;
  readonly gaveUp: Spread;
  readonly unserved: Spread;
  readonly disappointed: Spread;
  /** Share of those who came who did not start at once. */
  readonly shareWaited: Spread;
  /** Mean wait of all who came; those who were not served waited until they left or it was over. */
  readonly meanWaitOfAll: Spread;
  /** Mean wait of those served. */
  readonly meanWait: Spread;
  /** Wait of the last one served. */
  readonly lastWait: Spread;
  readonly longestWait: Spread;
  /** Share of the served who waited at most the promised minutes. */
  readonly shareWithin: Spread;
  readonly promiseMinutes: number;
  /** Over all served in all runs: 10th, 50th, 90th percentile of the wait, to the half minute; missing if nobody was served. */
  readonly waits?: { readonly p10: number; readonly p50: number; readonly p90: number };
  readonly longestLine: Spread;
  /** The last one is done. */
  readonly finish: Spread;
  /** First party turned away; the end where none was. */
  readonly closedAt: Spread;
  /** Share of runs in which somebody was turned away. */
  readonly chanceOfClosing: number;
  readonly pops: Spread;
  /** People waiting, every five minutes: in 9 runs of 10 at least `p10`, in 1 of 10 more than `p90`. */
  readonly line: readonly { readonly minute: number; readonly p10: number; readonly p50: number; readonly p90: number }[];
  /** Share of the time at the gig that each artist is making. */
  readonly busy: readonly { readonly artist: string; readonly share: Spread }[];
  /** Figures made, in the order of the menu; empty if not kept. */
  readonly figures: readonly { readonly figure: string; readonly made: Spread }[];
}
export interface ForecastOptions {
  readonly seed: number;
  readonly runs: number;
  /** Pieces of each item that there are; unlimited if missing. */
  readonly limit?: (model: LineModel) => LineModel;
}

/** Seed of one gig: other luck for every gig, the same for the same gig whatever stands around it. FNV-1a (Fowler, Noll, Vo) over its id. */
export function seedOf(seed: number, gig: string): number {
  let hash = 0x811c9dc5 ^ (seed >>> 0);
  for (let i = 0; i < gig.length; i++) hash = Math.imul(hash ^ gig.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

/** Plays a gig of the book with unlimited stock (or `limit`). Fails with sentences where nothing can be played. */
export function forecastGig(book: Book, gig: Gig, options: ForecastOptions): Result<Forecast> {
  const model = lineModelOf(book, gig);
  if (!model.ok) return model;
  const played = options.limit === undefined ? model.value : options.limit(model.value);
  const samples = runLine(played, { seed: seedOf(options.seed, gig.id), runs: options.runs });
  return ok({ gig, model: played, samples, summary: summaryOf(played, samples) });
}

export function summaryOf(model: LineModel, samples: LineSamples): ForecastSummary {
  const { runs } = samples;
  const share = (part: ArrayLike<number>, whole: ArrayLike<number>, empty: number): Spread =>
    spreadOf(Float64Array.from({ length: runs }, (_, r) => ((whole[r] ?? 0) === 0 ? empty : (part[r] ?? 0) / (whole[r] ?? 1))));
  const within = Float64Array.from({ length: runs }, (_, r) => (samples.served[r] ?? 0) - (samples.waitedLong[r] ?? 0));
  const artists = model.artists.length;
  return {
    runs,
    arrived: spreadOf(samples.arrived),
    served: spreadOf(samples.served),
    shareServed: share(samples.served, samples.arrived, 1),
    turnedAway: spreadOf(samples.turnedAway),
    notJoined: spreadOf(samples.notJoined),
    gaveUp: spreadOf(samples.gaveUp),
    unserved: spreadOf(samples.unserved),
    disappointed: spreadOf(samples.disappointed),
    shareWaited: share(samples.waited, samples.arrived, 0),
    meanWaitOfAll: share(samples.waitMinutesOfAll, samples.arrived, 0),
    meanWait: share(samples.waitMinutes, samples.served, 0),
    lastWait: spreadOf(samples.lastWait),
    longestWait: spreadOf(samples.longestWait),
    shareWithin: share(within, samples.served, 1),
    promiseMinutes: model.promiseMinutes ?? 15,
    ...waitsOf(samples.waitCounts),
    longestLine: spreadOf(samples.longestLine),
    finish: spreadOf(samples.finish),
    closedAt: spreadOf(samples.closedAt),
    chanceOfClosing: samples.turnedAway.reduce((sum, count) => sum + Number(count > 0), 0) / runs,
    pops: spreadOf(samples.pops),
    line: lineOf(model, samples),
    busy: model.artists.map((artist, a) => ({
      artist: artist.id,
      share: spreadOf(Float64Array.from({ length: runs }, (_, r) => (samples.busy[r * artists + a] ?? 0) / model.end)),
    })),
    figures:
      samples.figures.length === 0
        ? []
        : model.figures.map((figure, f) => ({ figure: figure.id, made: spreadOf(column(samples.figures, runs, model.figures.length, f)) })),
  };
}

/** One column of a runs x width matrix. */
export const column = (matrix: ArrayLike<number>, runs: number, width: number, at: number): Float64Array =>
  Float64Array.from({ length: runs }, (_, r) => matrix[r * width + at] ?? 0);

function lineOf(model: LineModel, samples: LineSamples): ForecastSummary['line'] {
  if (samples.lengths.length === 0) return [];
  const notes = Math.floor(model.end / lengthStep) + 1;
  return Array.from({ length: notes }, (_, note) => {
    const sorted = column(samples.lengths, samples.runs, notes, note).sort();
    return { minute: note * lengthStep, p10: percentile(sorted, 0.1), p50: percentile(sorted, 0.5), p90: percentile(sorted, 0.9) };
  });
}

/** Percentiles of the wait from the counts of half minutes, in the middle of the cell. */
function waitsOf(counts: Float64Array): Pick<ForecastSummary, 'waits'> {
  const all = counts.reduce((sum, count) => sum + count, 0);
  if (all === 0) return {};
  const at = (wanted: number): number => {
    let sum = 0;
    for (let cell = 0; cell < counts.length; cell++) {
      sum += counts[cell] ?? 0;
      if (sum >= wanted * all) return cell === 0 ? 0 : (cell + 0.5) / 2;
    }
    return counts.length / 2;
  };
  return { waits: { p10: at(0.1), p50: at(0.5), p90: at(0.9) } };
}
