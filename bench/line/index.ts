import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { type Keep, type LineModel, type LineSamples, runLine } from '@twistwright/planner';
import { standardDeviation } from '@twistwright/units';
import type { Measured } from '../measure.ts';
import { referenceModel } from './reference/reference-model.ts';
import { typicalGig } from './typical-gig.ts';

const itemsOnly: Keep = { items: true, figures: false, lengths: false, waits: false };
const countsOnly: Keep = { ...itemsOnly, items: false };

/** Line simulation: against the same model in C++, growth, a slider's first answer, two workers. */
export async function benchLine(): Promise<readonly Measured[]> {
  return [...againstReference(), ...typical(), ...growth(), ...(await workers()), ...steadiness()];
}

/** Processor time of the call, microseconds. */
function processorTime(call: () => void): number {
  const before = process.cpuUsage();
  call();
  const { user, system } = process.cpuUsage(before);
  return user + system;
}
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
const repeated = (times: number, call: () => number): number => median(Array.from({ length: times }, call));

function againstReference(): readonly Measured[] {
  const folder = mkdtempSync(join(tmpdir(), 'line-'));
  try {
    const program = compileReference(folder);
    if (program === undefined) return [];
    return [...sameCounts(program, folder), ...ratio(program)];
  } finally {
    rmSync(folder, { recursive: true });
  }
}
/** The C++ program, compiled; undefined where there is no compiler. */
function compileReference(folder: string): string | undefined {
  const program = join(folder, 'reference');
  try {
    execFileSync('g++', ['-O2', join(import.meta.dirname, 'reference/reference.cpp'), '-o', program], { stdio: 'pipe' });
    return program;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return undefined;
    throw error;
  }
}
function sameCounts(program: string, folder: string): readonly Measured[] {
  const runs = 20_000;
  const dump = join(folder, 'counts.txt');
  execFileSync(program, ['R', String(runs), '1', dump], { stdio: 'pipe' });
  const rows = readFileSync(dump, 'utf8').trim().split('\n');
  const samples = runLine(referenceModel, { seed: 1, runs, keep: itemsOnly });
  const same = rows.filter((row, run) => row === rowOf(samples, run)).length;
  return [{ what: 'reference model: runs with the same counts as C++', value: same, unit: 'of 20,000', goal: 'all', met: same === runs }];
}
/** A run as the reference program writes it. */
function rowOf(samples: LineSamples, run: number): string {
  const { arrived, turnedAway, notJoined, gaveUp, unserved, disappointed, served, waitedLong, longestLine } = samples;
  const counts = [arrived, turnedAway, notJoined, gaveUp, unserved, disappointed, served, waitedLong, longestLine].map((of) => of[run]);
  const minutes = [samples.waitMinutes[run]?.toFixed(6), samples.finish[run]?.toFixed(6)];
  return [...counts, ...minutes, ...samples.items.subarray(run * 40, (run + 1) * 40)].join(' ');
}
function ratio(program: string): readonly Measured[] {
  const runs = 10_000;
  const ours: number[] = [];
  const theirs: number[] = [];
  for (let round = 0; round < 6; round++) {
    const own = processorTime(() => void runLine(referenceModel, { seed: 1, runs, keep: itemsOnly })) / runs;
    const said = /us\/rep ([\d.]+)/.exec(execFileSync(program, ['R', String(runs), '1'], { encoding: 'utf8' }));
    if (round === 0) continue; // the first round warms up
    ours.push(own);
    theirs.push(Number(said?.[1]));
  }
  const times = median(ours) / median(theirs);
  return [
    { what: 'reference model: processor time of our engine over C++ -O2', value: times, unit: 'x', goal: 'at most 1.5', met: times <= 1.5 },
    { what: 'reference model: one afternoon, 148 guests, our engine', value: median(ours), unit: 'us' },
  ];
}

function typical(): readonly Measured[] {
  runLine(typicalGig, { seed: 1, runs: 2000 });
  const seconds = repeated(5, () => processorTime(() => void runLine(typicalGig, { seed: 1, runs: 10_000, keep: itemsOnly }))) / 1e6;
  const slider = repeated(21, () => processorTime(() => void runLine(typicalGig, { seed: 1, runs: 200 }))) / 1e3;
  return [
    {
      what: 'typical gig with every habit: 10,000 afternoons on one core',
      value: seconds,
      unit: 's',
      goal: 'at most 0.4',
      met: seconds <= 0.4,
    },
    { what: "typical gig: 200 runs, a slider's first answer", value: slider, unit: 'ms' },
  ];
}

/** Processor time per guest who came, nanoseconds. */
function perGuest(model: LineModel, runs: number): number {
  let guests = 0;
  const time = processorTime(() => {
    guests = runLine(model, { seed: 1, runs, keep: countsOnly }).arrived.reduce((sum, arrived) => sum + arrived, 0);
  });
  return (1000 * time) / guests;
}
/** Time per guest of one model over that of another, the two in turn, so that both meet the engine as warm and the machine as busy. */
function timesAsMuch(model: LineModel, runs: number, other: LineModel, otherRuns: number): number {
  const ratios: number[] = [];
  for (let round = 0; round < 8; round++) {
    const times = perGuest(model, runs) / perGuest(other, otherRuns);
    if (round > 0) ratios.push(times); // the first round warms up
  }
  return median(ratios);
}
/** The gig with its time stretched and its rates raised. */
function grown(model: LineModel, longer: number, denser: number): LineModel {
  if (model.arrivals.kind !== 'stream') throw new Error('only a stream can be grown');
  const knots = model.arrivals.knots.map(({ minute, perMinute }) => ({ minute: minute * longer, perMinute: perMinute * denser }));
  return { ...model, end: model.end * longer, arrivals: { kind: 'stream', knots } };
}
const handsOf = (model: LineModel, count: number): LineModel => ({
  ...model,
  artists: Array.from({ length: count }, (_, i) => ({ id: `artist ${i}`, pace: 1 })),
});

function growth(): readonly Measured[] {
  const rows: Measured[] = [];
  for (const [name, gig] of [
    ['plain gig', { ...referenceModel, draws: 'by purpose' }],
    ['gig with every habit', typicalGig],
  ] as const) {
    for (const times of [3, 10]) {
      const longer = timesAsMuch(grown(gig, times, 1), Math.ceil(1000 / times), gig, 1000);
      const isGoal = times === 10;
      rows.push({
        what: `${name}, ${times} times the guests in ${times} times the hours: time per guest against one`,
        value: longer,
        unit: 'x',
        ...(isGoal ? { goal: 'at most 1.3', met: longer <= 1.3 } : {}),
      });
    }
    rows.push({
      what: `${name}, 10 times the guests and the artists in the same hours: per guest against one`,
      value: timesAsMuch(handsOf(grown(gig, 1, 10), 10 * gig.artists.length), 100, gig, 1000),
      unit: 'x',
    });
    for (const artists of [4, 16])
      rows.push({
        what: `${name}, ${artists} artists: per guest against one artist`,
        value: timesAsMuch(handsOf(gig, artists), 1000, handsOf(gig, 1), 1000),
        unit: 'x',
      });
  }
  return rows;
}

async function workers(): Promise<readonly Measured[]> {
  const runs = 20_000;
  const pool = [0, 1].map(() => new Worker(new URL('./line-worker.ts', import.meta.url)));
  const ask = (worker: Worker, firstRun: number, count: number): Promise<number> =>
    new Promise((resolve, reject) => {
      worker.once('error', reject);
      worker.once('message', (served: number) => {
        worker.off('error', reject);
        resolve(served);
      });
      worker.postMessage({ firstRun, runs: count });
    });
  const [first, second] = pool as [Worker, Worker];
  try {
    await Promise.all(pool.map((worker) => ask(worker, 0, 2000)));
    const alone: number[] = [];
    const together: number[] = [];
    for (let round = 0; round < 5; round++) {
      const start = performance.now();
      const one = await ask(first, 0, runs);
      const middle = performance.now();
      const halves = await Promise.all([ask(first, 0, runs / 2), ask(second, runs / 2, runs / 2)]);
      together.push(performance.now() - middle);
      alone.push(middle - start);
      if (halves[0] + halves[1] !== one) throw new Error(`halves served ${halves.join(' + ')}, the whole ${one}`);
    }
    const faster = median(alone) / median(together);
    return [
      {
        what: 'two workers against one, 20,000 runs, same guests served',
        value: faster,
        unit: 'x',
        goal: 'at least 1.8',
        met: faster >= 1.8,
      },
    ];
  } finally {
    await Promise.all(pool.map((worker) => worker.terminate()));
  }
}

/** How much common random numbers steady a what-if: variance of a difference with other luck over that with the same luck. */
function steadiness(): readonly Measured[] {
  const more = grown(typicalGig, 1, 1.1);
  const served = (model: LineModel, seed: number): Int32Array => runLine(model, { seed, runs: 4000, keep: countsOnly }).served;
  const [base, same, other] = [served(typicalGig, 1), served(more, 1), served(more, 2)];
  const spread = (a: Int32Array): number => standardDeviation(Float64Array.from(a, (value, run) => value - (base[run] ?? 0))) ** 2;
  return [
    {
      what: 'what if a tenth more come: variance of the difference, other luck over the same luck',
      value: spread(other) / spread(same),
      unit: 'x',
    },
  ];
}
