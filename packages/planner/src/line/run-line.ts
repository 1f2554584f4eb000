import { ClassEngine } from './class-engine.ts';
import { LineEngine } from './line-engine.ts';
import type { LineModel } from './line-model.ts';
import { emptySamples, joinSamples, type Keep, keepAll, type LineSamples, lengthStep, store } from './line-samples.ts';
import { PlainEngine } from './plain-engine.ts';
import { prepareLine } from './prepared-line.ts';
import type { RunFindings } from './run-findings.ts';

export interface RunOptions {
  readonly seed: number;
  /** How many runs. */
  readonly runs: number;
  /** Number of the first run; 0 if absent. Runs do not depend on how a range is cut. */
  readonly firstRun?: number;
  readonly keep?: Keep;
}

/**
 * Plays the gig `runs` times and keeps what each run found. Same model, seed and run, same result on every machine. Throws on a model
 * that cannot be played (a bug: mistakes of a book are reported before a model is made of it).
 * @example runLine(model, { seed: 1, runs: 200 }).served
 */
export function runLine(model: LineModel, options: RunOptions): LineSamples {
  const keep = options.keep ?? keepAll;
  const firstRun = options.firstRun ?? 0;
  const engine = engineFor(model, keep);
  const samples = emptySamples(model, options.seed, firstRun, options.runs, keep);
  for (let row = 0; row < options.runs; row++) {
    engine.play(options.seed, firstRun + row);
    store(samples, row, engine);
  }
  if (keep.waits) samples.waitCounts.set(engine.waitCounts);
  return samples;
}

function engineFor(model: LineModel, keep: Keep): RunFindings {
  const line = prepareLine(model);
  const step = keep.lengths ? lengthStep : 0;
  if (model.arrivals.kind === 'class') return new ClassEngine(line, step);
  return line.plain ? new PlainEngine(line, step, keep.waits) : new LineEngine(line, step, keep.waits);
}

/**
 * Runs in growing steps, for an answer at once that gets sharper: yields the samples after `steps[0]` runs, after `steps[1]` in all, …
 * What was run is not run again. Stop by no longer asking.
 * @example for (const samples of runLineInSteps(model, { seed: 1, steps: [200, 2000] })) show(summariseLine(model, samples))
 */
export function* runLineInSteps(
  model: LineModel,
  options: { readonly seed: number; readonly steps: readonly number[]; readonly keep?: Keep },
): Generator<LineSamples, void, void> {
  let done: LineSamples | undefined;
  for (const runs of options.steps) {
    const more = runs - (done?.runs ?? 0);
    if (more <= 0) continue;
    const part = runLine(model, { ...options, firstRun: done?.runs ?? 0, runs: more });
    done = done === undefined ? part : joinSamples([done, part]);
    yield done;
  }
}
