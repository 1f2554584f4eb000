import type { LineModel } from './line-model.ts';
import type { RunFindings } from './run-findings.ts';

/** What is kept of every run beyond the counts. Everything but `figures` if absent. */
export interface Keep {
  /** Items used, run by run: the joint samples that needs and shopping stand on. */
  readonly items: boolean;
  /** Figures made, run by run. */
  readonly figures: boolean;
  /** The length of the line every {@link lengthStep} minutes. */
  readonly lengths: boolean;
  /** How often each wait came up. */
  readonly waits: boolean;
}
export const keepAll: Keep = { items: true, figures: true, lengths: true, waits: true };
/** Minutes between two notes of the length of the line. */
export const lengthStep = 5;

/** One number a run. All counts are guests, all times minutes. `arrived` = turned away + not joined + gave up + unserved + disappointed + served. */
export const countNames = [
  'arrived',
  'returned',
  'hidden',
  'turnedAway',
  'notJoined',
  'gaveUp',
  'unserved',
  'disappointed',
  'served',
  'waited',
  'waitedLong',
  'longestLine',
  'pops',
] as const;
export const minuteNames = ['waitMinutes', 'waitMinutesOfAll', 'lastWait', 'longestWait', 'finish', 'closedAt'] as const;
export type CountName = (typeof countNames)[number];
export type MinuteName = (typeof minuteNames)[number];

/**
 * What the runs `firstRun` up to `firstRun + runs` (not included) found, run by run.
 * `returned` (guests who came back, part of arrived), `hidden` (nobody had counted them, part of arrived), `waited` (did not start at once),
 * `waitedLong` (served, but after more than the promise), `longestLine` (people waiting), `pops` (balloons made again),
 * `waitMinutes` (sum over the served), `waitMinutesOfAll` (sum over all who joined), `lastWait` (of the last one served),
 * `finish` (the last one is done), `closedAt` (the first party was turned away; the end if none was).
 */
export interface LineSamples extends Readonly<Record<CountName, Int32Array>>, Readonly<Record<MinuteName, Float64Array>> {
  readonly seed: number;
  readonly firstRun: number;
  readonly runs: number;
  /** Minutes worked, runs x artists. */
  readonly busy: Float64Array;
  /** Items used, runs x items, popped ones included; empty if not kept. */
  readonly items: Int32Array;
  /** Figures made, runs x figures; empty if not kept. */
  readonly figures: Int32Array;
  /** People waiting every {@link lengthStep} minutes from 0, runs x notes; empty if not kept. */
  readonly lengths: Int32Array;
  /** Over all runs: how many of the served waited 0 to 1/2 minute, 1/2 to 1, … and 600 or more; empty if not kept. */
  readonly waitCounts: Float64Array;
}

export function emptySamples(model: LineModel, seed: number, firstRun: number, runs: number, keep: Keep): LineSamples {
  const counts = Object.fromEntries(countNames.map((name) => [name, new Int32Array(runs)])) as Record<CountName, Int32Array>;
  const minutes = Object.fromEntries(minuteNames.map((name) => [name, new Float64Array(runs)])) as Record<MinuteName, Float64Array>;
  return {
    seed,
    firstRun,
    runs,
    ...counts,
    ...minutes,
    busy: new Float64Array(runs * model.artists.length),
    items: new Int32Array(keep.items ? runs * model.items.length : 0),
    figures: new Int32Array(keep.figures ? runs * model.figures.length : 0),
    lengths: new Int32Array(keep.lengths ? runs * (Math.floor(model.end / lengthStep) + 1) : 0),
    waitCounts: new Float64Array(keep.waits ? 1201 : 0),
  };
}

/** Writes what the run found into row `row` of the samples. Spelled out, since a loop over names would cost as much as a tenth of a run. */
export function store(samples: LineSamples, row: number, found: RunFindings): void {
  samples.arrived[row] = found.arrived;
  samples.returned[row] = found.returned;
  samples.hidden[row] = found.hidden;
  samples.turnedAway[row] = found.turnedAway;
  samples.notJoined[row] = found.notJoined;
  samples.gaveUp[row] = found.gaveUp;
  samples.unserved[row] = found.unserved;
  samples.disappointed[row] = found.disappointed;
  samples.served[row] = found.served;
  samples.waited[row] = found.waited;
  samples.waitedLong[row] = found.waitedLong;
  samples.longestLine[row] = found.longestLine;
  samples.pops[row] = found.pops;
  samples.waitMinutes[row] = found.waitMinutes;
  samples.waitMinutesOfAll[row] = found.waitMinutesOfAll;
  samples.lastWait[row] = found.lastWait;
  samples.longestWait[row] = found.longestWait;
  samples.finish[row] = found.finish;
  samples.closedAt[row] = found.closedAt;
  samples.busy.set(found.busy, row * found.busy.length);
  if (samples.items.length > 0) samples.items.set(found.used, row * found.used.length);
  if (samples.figures.length > 0) samples.figures.set(found.made, row * found.made.length);
  if (samples.lengths.length > 0) samples.lengths.set(found.lengths, row * found.lengths.length);
}

/** Joins the samples of neighbouring ranges of runs of one model and seed, in order. Throws if a range is missing or comes twice. */
export function joinSamples(parts: readonly LineSamples[]): LineSamples {
  const sorted = [...parts].sort((a, b) => a.firstRun - b.firstRun);
  const [first] = sorted;
  if (first === undefined) throw new RangeError('no samples to join');
  let next = first.firstRun;
  for (const part of sorted) {
    if (part.firstRun !== next || part.seed !== first.seed)
      throw new RangeError(`samples from run ${part.firstRun} of seed ${part.seed} do not follow run ${next} of seed ${first.seed}`);
    next += part.runs;
  }
  const ints = (of: (part: LineSamples) => Int32Array): Int32Array => endToEnd(sorted.map(of), (length) => new Int32Array(length));
  const floats = (of: (part: LineSamples) => Float64Array): Float64Array => endToEnd(sorted.map(of), (length) => new Float64Array(length));
  const waitCounts = first.waitCounts.map((_, cell) => sorted.reduce((sum, part) => sum + (part.waitCounts[cell] ?? 0), 0));
  return {
    seed: first.seed,
    firstRun: first.firstRun,
    runs: next - first.firstRun,
    ...(Object.fromEntries(countNames.map((name) => [name, ints((part) => part[name])])) as Record<CountName, Int32Array>),
    ...(Object.fromEntries(minuteNames.map((name) => [name, floats((part) => part[name])])) as Record<MinuteName, Float64Array>),
    busy: floats((part) => part.busy),
    items: ints((part) => part.items),
    figures: ints((part) => part.figures),
    lengths: ints((part) => part.lengths),
    waitCounts,
  };
}

function endToEnd<T extends Int32Array | Float64Array>(parts: readonly T[], make: (length: number) => T): T {
  const whole = make(parts.reduce((length, part) => length + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
