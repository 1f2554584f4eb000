import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LineEngine } from './line-engine.ts';
import type { LineModel } from './line-model.ts';
import { countNames, emptySamples, joinSamples, keepAll, type LineSamples, lengthStep, minuteNames, store } from './line-samples.ts';
import { PlainEngine } from './plain-engine.ts';
import { prepareLine } from './prepared-line.ts';
import { runLine, runLineInSteps } from './run-line.ts';

const minutes = fc.double({ min: 0.2, max: 6, noNaN: true });
const duration = fc.oneof(
  fc.record({ kind: fc.constant('log-normal' as const), median: minutes, sigma: fc.double({ min: 0, max: 0.8, noNaN: true }) }),
  fc.record({ kind: fc.constant('gamma' as const), mean: minutes, shape: fc.double({ min: 0.5, max: 9, noNaN: true }) }),
  fc.record({ kind: fc.constant('exponential' as const), mean: minutes }),
  fc.record({ kind: fc.constant('fixed' as const), minutes }),
);
const logNormal = fc.record({
  kind: fc.constant('log-normal' as const),
  median: minutes,
  sigma: fc.double({ min: 0, max: 0.8, noNaN: true }),
});
const share = fc.double({ min: 0.05, max: 1, noNaN: true });
const items = fc.array(
  fc.record(
    { id: fc.constant('item'), stock: fc.integer({ min: 0, max: 40 }), popChance: fc.double({ min: 0, max: 0.3, noNaN: true }) },
    { requiredKeys: ['id', 'popChance'] },
  ),
  { minLength: 4, maxLength: 4 },
);
const colourway = fc.record({
  id: fc.constant('way'),
  share,
  colour: fc.integer({ min: 0, max: 2 }),
  lines: fc.uniqueArray(fc.record({ item: fc.integer({ min: 0, max: 3 }), count: fc.integer({ min: 1, max: 3 }) }), {
    selector: (line) => line.item,
    maxLength: 3,
  }),
});
const figuresWith = (making: fc.Arbitrary<LineModel['figures'][number]['making']>) =>
  fc.array(
    fc.record({
      id: fc.constant('figure'),
      share,
      making,
      drawingMinutes: fc.double({ min: 0, max: 1, noNaN: true }),
      redoMinutes: fc.double({ min: 0, max: 1, noNaN: true }),
      colourways: fc.array(colourway, { minLength: 1, maxLength: 3 }),
    }),
    { minLength: 1, maxLength: 4 },
  );
const closing: fc.Arbitrary<LineModel['closing']> = fc.oneof(
  fc.constant({ kind: 'none' as const }),
  fc.record({ kind: fc.constant('fixed' as const), minute: fc.double({ min: 0, max: 120, noNaN: true }) }),
  fc.record({ kind: fc.constant('work ahead' as const), keptBackMinutes: fc.double({ min: 0, max: 10, noNaN: true }) }),
);
const streamArrivals: fc.Arbitrary<LineModel['arrivals']> = fc
  .tuple(fc.double({ min: 0, max: 1.5, noNaN: true }), fc.double({ min: 0, max: 1.5, noNaN: true }), fc.boolean())
  .map(([first, last, unsure]) => ({
    kind: 'stream' as const,
    knots: [
      { minute: 0, perMinute: first },
      { minute: 60, perMinute: last },
      { minute: 120, perMinute: 0.1 },
    ],
    ...(unsure ? { shape: 4 } : {}),
  }));
const common = {
  end: fc.constant(120),
  partySizes: fc.constant([0.5, 0.3, 0.2]),
  closing,
  items,
  ifShort: fc.record({
    otherColour: fc.double({ min: 0, max: 1, noNaN: true }),
    otherFigure: fc.double({ min: 0, max: 1, noNaN: true }),
    search: fc.constantFrom('next in order' as const, 'by share' as const),
  }),
  pops: fc.constantFrom('each piece' as const, 'each line' as const),
};
/** Models that the plain engine may play. */
const plainModel: fc.Arbitrary<LineModel> = fc.record(
  {
    ...common,
    overtimeMinutes: fc.constantFrom(0, 20),
    arrivals: streamArrivals,
    joining: fc.record({ free: fc.integer({ min: 0, max: 5 }), scale: minutes }),
    patience: fc.oneof(fc.constant({ kind: 'endless' as const }), duration),
    serving: fc.constant('shared line' as const),
    artists: fc.array(
      fc.record({ id: fc.constant('artist'), pace: fc.double({ min: 0.5, max: 2, noNaN: true }), from: fc.constantFrom(0, 15) }),
      { minLength: 1, maxLength: 3 },
    ),
    figures: figuresWith(logNormal),
    warmUpMinutes: fc.constantFrom(0, 30),
    draws: fc.constantFrom('by purpose' as const, 'two streams' as const),
    choosing: fc.record({ kind: fc.constant('fixed' as const), minutes: fc.constantFrom(0, 0.3) }),
    colourChoosing: fc.record({ kind: fc.constant('fixed' as const), minutes: fc.constantFrom(0.1, 0.3) }),
  },
  { requiredKeys: ['end', 'arrivals', 'patience', 'serving', 'artists', 'closing', 'items', 'figures', 'ifShort', 'pops'] },
);
/** Models with everything. */
const anyModel: fc.Arbitrary<LineModel> = fc.record(
  {
    ...common,
    overtimeMinutes: fc.constantFrom(0, 20),
    hiddenShare: fc.constantFrom(0, 0.15, 1.2),
    arrivals: fc.oneof(
      streamArrivals,
      fc.record({ kind: fc.constant('at start' as const), guests: fc.integer({ min: 0, max: 60 }) }),
      fc.record({
        kind: fc.constant('list' as const),
        parties: fc.array(
          fc.record({
            minute: fc.double({ min: 0, max: 119, noNaN: true }),
            guests: fc.array(fc.constantFrom({}, { figure: 0 }, { figure: 0, colourway: 0 }), { minLength: 1, maxLength: 4 }),
          }),
          { maxLength: 20 },
        ),
      }),
      fc.record({ kind: fc.constant('found' as const), walking: duration, guests: fc.constantFrom(10, 1000) }),
      fc.record({
        kind: fc.constant('class' as const),
        learners: fc.integer({ min: 0, max: 12 }),
        figures: fc.constant([0, 0]),
        tries: fc.constantFrom(1, 2.5),
        slowness: fc.constantFrom(1, 4),
      }),
    ),
    joining: fc.record({ free: fc.integer({ min: 0, max: 5 }), scale: minutes }),
    patience: fc.oneof(fc.constant({ kind: 'endless' as const }), duration),
    serving: fc.constantFrom('shared line' as const, 'own lines' as const, 'tables' as const),
    tables: fc.record({ walking: duration, count: fc.constantFrom(0, 5), stayingMinutes: fc.constant(20) }),
    artists: fc.array(
      fc.record(
        {
          id: fc.constant('artist'),
          pace: fc.double({ min: 0.5, max: 2, noNaN: true }),
          from: fc.constantFrom(0, 15),
          until: fc.constantFrom(60, 100),
          breaks: fc.constantFrom([{ minute: 40, minutes: 10 }], [{ minute: 0, minutes: 5 }]),
          fatigue: fc.record({ perHour: fc.constantFrom(0.05, 0.3), freshMinutes: fc.constantFrom(0, 60) }),
        },
        { requiredKeys: ['id', 'pace'] },
      ),
      { minLength: 1, maxLength: 3 },
    ),
    figures: figuresWith(duration),
    copycat: fc.record({
      figures: fc.record({ added: fc.constantFrom(0, 0.3), keeps: fc.constantFrom(0.7, 1) }),
      colours: fc.record({ added: fc.constantFrom(0, 0.3), keeps: fc.constantFrom(0.7, 1) }),
    }),
    weather: fc.record({ makingFactor: fc.constantFrom(1, 1.8), popFactor: fc.constantFrom(1, 2) }),
    helper: fc.record({ makingFactor: fc.constantFrom(0.8, 1), drawsFaces: fc.boolean() }),
    preMade: fc.constantFrom([{ figure: 0, colourway: 0, count: 7 }]),
    returns: fc.record({
      repeatChance: fc.constantFrom(0, 0.3),
      repeatAfter: duration,
      repairChance: fc.constantFrom(0, 0.2),
      repairAfter: duration,
      oneEach: fc.boolean(),
    }),
    warmUpMinutes: fc.constantFrom(0, 30),
    choosing: duration,
    colourChoosing: duration,
    handingOver: duration,
  },
  { requiredKeys: ['end', 'arrivals', 'patience', 'serving', 'artists', 'closing', 'items', 'figures', 'ifShort', 'pops'] },
);

function play(engine: LineEngine | PlainEngine, model: LineModel, seed: number, runs: number): LineSamples {
  const samples = emptySamples(model, seed, 0, runs, keepAll);
  for (let run = 0; run < runs; run++) {
    engine.play(seed, run);
    store(samples, run, engine);
  }
  samples.waitCounts.set(engine.waitCounts);
  return samples;
}
const sum = (samples: LineSamples, run: number): number =>
  (['turnedAway', 'notJoined', 'gaveUp', 'unserved', 'disappointed', 'served'] as const).reduce(
    (total, name) => total + (samples[name][run] ?? 0),
    0,
  );

test('law: everybody who came was turned away, did not join, gave up, was not served, disappointed or served', () => {
  fc.assert(
    fc.property(anyModel, fc.integer({ min: 0, max: 1e6 }), (model, seed) => {
      const samples = runLine(model, { seed, runs: 5 });
      for (let run = 0; run < 5; run++) {
        expect(sum(samples, run)).toBe(samples.arrived[run]);
        expect(samples.waitedLong[run]).toBeLessThanOrEqual(samples.served[run] ?? 0);
        expect(samples.longestWait[run]).toBeGreaterThanOrEqual(samples.lastWait[run] ?? 0);
      }
    }),
    { seed: 11, numRuns: 400 },
  );
});
test('law: both engines find the same in every run of every plain line', () => {
  fc.assert(
    fc.property(plainModel, fc.integer({ min: 0, max: 1e6 }), (model, seed) => {
      const line = prepareLine(model);
      expect(line.plain).toBe(true);
      const plain = play(new PlainEngine(line, lengthStep, true), model, seed, 6);
      const general = play(new LineEngine(line, lengthStep, true), model, seed, 6);
      for (const name of countNames) expect([name, [...plain[name]]]).toEqual([name, [...general[name]]]);
      for (const name of minuteNames)
        for (let run = 0; run < 6; run++) expect(plain[name][run]).toBeCloseTo(general[name][run] ?? Number.NaN, 9);
      expect(plain.items).toEqual(general.items);
      expect(plain.figures).toEqual(general.figures);
      expect(plain.lengths).toEqual(general.lengths);
      expect(plain.waitCounts).toEqual(general.waitCounts);
    }),
    { seed: 12, numRuns: 300 },
  );
});
test('law: with one artist it is the same whether the line is shared or the own', () => {
  fc.assert(
    fc.property(anyModel, fc.integer({ min: 0, max: 1e6 }), (model, seed) => {
      const [artist] = model.artists;
      fc.pre(artist !== undefined && artist.until === undefined && model.arrivals.kind !== 'found');
      const alone = { ...model, artists: artist === undefined ? [] : [artist] };
      const shared = runLine({ ...alone, serving: 'shared line' }, { seed, runs: 3 });
      const own = runLine({ ...alone, serving: 'own lines' }, { seed, runs: 3 });
      for (const name of countNames) expect([name, [...own[name]]]).toEqual([name, [...shared[name]]]);
      expect(own.items).toEqual(shared.items);
      expect(own.lengths).toEqual(shared.lengths);
    }),
    { seed: 13, numRuns: 200 },
  );
});
test('law: a range of runs does not depend on how it is cut', () => {
  fc.assert(
    fc.property(anyModel, fc.integer({ min: 1, max: 7 }), (model, cut) => {
      const whole = runLine(model, { seed: 5, runs: 8 });
      const parts = [runLine(model, { seed: 5, runs: 8 - cut, firstRun: cut }), runLine(model, { seed: 5, runs: cut })];
      expect(joinSamples(parts)).toEqual(whole);
    }),
    { seed: 14, numRuns: 60 },
  );
});
test('law: no more of an item is used than there is, and no figure is made that lacks one', () => {
  fc.assert(
    fc.property(anyModel, (model) => {
      const samples = runLine({ ...model, warmUpMinutes: 0 }, { seed: 6, runs: 4 });
      const width = model.items.length;
      for (let run = 0; run < 4; run++)
        model.items.forEach((item, i) => {
          const used = samples.items[run * width + i] ?? -1;
          expect(used).toBeGreaterThanOrEqual(0);
          expect(used).toBeLessThanOrEqual(item.stock ?? Number.POSITIVE_INFINITY);
        });
    }),
    { seed: 15, numRuns: 200 },
  );
});
test('steps give the samples of all runs so far', () => {
  const model = fc.sample(anyModel, { seed: 3, numRuns: 1 })[0];
  if (model === undefined) throw new Error('no model');
  const steps = [...runLineInSteps(model, { seed: 2, steps: [3, 3, 10] })];
  expect(steps.map((samples) => samples.runs)).toEqual([3, 10]);
  expect(steps[1]).toEqual(runLine(model, { seed: 2, runs: 10 }));
});
