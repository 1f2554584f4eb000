import { globSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { type Book, checkBook } from '@twistwright/books';
import { readBook, writeBook } from '@twistwright/contract';
import { type LineModel, type LineSamples, lineModelOf, planBook, runLine } from '@twistwright/planner';
import { openSolver } from '@twistwright/solver/node';
import { date, mean, standardDeviation } from '@twistwright/units';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';

/** What a worked book says must come out. Without spread in the book the value is exact, else it lies within the simulation's own error. */
const expectsSchema = z.strictObject({
  source: z.string(),
  runs: z.int(),
  gigs: z.record(
    z.string(),
    z.strictObject({
      /** Means over runs. */
      arrived: z.number().optional(),
      varianceOfArrived: z.number().optional(),
      served: z.number().optional(),
      finish: z.number().optional(),
      items: z.record(z.string(), z.number()).optional(),
      /** Shares of all who came: who had to wait at all, who gave up. */
      waited: z.number().optional(),
      gaveUp: z.number().optional(),
      /** Minutes. */
      waitOfAll: z.number().optional(),
      waitOfServed: z.number().optional(),
      /** Share of the time that each artist makes figures. */
      busyOfEach: z.number().optional(),
    }),
  ),
});
type Expected = z.infer<typeof expectsSchema>['gigs'][string];

const today = date('2026-12-01');
const open = (name: string): Book => {
  const read = readBook(readFileSync(join(import.meta.dirname, name), 'utf8'), { name });
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
};
const cases = globSync('*.expects.yaml', { cwd: import.meta.dirname }).map((name) => basename(name, '.expects.yaml'));

test('there are cases, each with its book', () => {
  expect(cases.length).toBeGreaterThanOrEqual(6);
});

describe.each(cases)('%s', (name) => {
  const book = open(`${name}.yaml`);
  const expects = expectsSchema.parse(parse(readFileSync(join(import.meta.dirname, `${name}.expects.yaml`), 'utf8')));
  test('the book has nothing wrong with it, and every gig is expected to be something', () => {
    expect(checkBook(book, { today })).toEqual([]);
    expect(book.gigs.map((gig) => gig.id)).toEqual(Object.keys(expects.gigs));
  });
  test.each(Object.entries(expects.gigs))('%s', (id, expected) => {
    const gig = book.gigs.find((candidate) => candidate.id === id);
    const model = gig === undefined ? undefined : lineModelOf(book, gig);
    if (!model?.ok) throw new Error(`gig ${id} cannot be played: ${JSON.stringify(model)}`);
    const samples = runLine(model.value, { seed: 20_270_101, runs: expects.runs });
    for (const [what, value, found] of measured(expected, model.value, samples)) {
      const far = Math.abs(found.mean - value);
      expect(far, `${what}: ${found.mean} (standard error ${found.error}) for ${value}`).toBeLessThanOrEqual(
        Math.max(3 * found.error, 1e-9),
      );
    }
  });
});

interface Found {
  readonly mean: number;
  readonly error: number;
}
const numbers = (values: ArrayLike<number>): readonly number[] => Array.from(values);
const overRuns = (values: ArrayLike<number>): Found => ({
  mean: mean(values),
  error: standardDeviation(values) / Math.sqrt(values.length),
});
/** Ratio of two sums over runs, with the standard error of a ratio of means (delta method). */
function ratio(above: ArrayLike<number>, below: ArrayLike<number>): Found {
  const base = mean(below);
  const value = mean(above) / base;
  const deviations = numbers(above).map((number, run) => (number - value * (below[run] ?? 0)) / base);
  return { mean: value, error: standardDeviation(deviations) / Math.sqrt(deviations.length) };
}
function measured(expected: Expected, model: LineModel, samples: LineSamples): readonly (readonly [string, number, Found])[] {
  const rows: (readonly [string, number | undefined, Found])[] = [
    ['arrived', expected.arrived, overRuns(samples.arrived)],
    ['served', expected.served, overRuns(samples.served)],
    ['finish', expected.finish, overRuns(samples.finish)],
    ['waited', expected.waited, ratio(samples.waited, samples.arrived)],
    ['gave up', expected.gaveUp, ratio(samples.gaveUp, samples.arrived)],
    ['wait of all', expected.waitOfAll, ratio(samples.waitMinutesOfAll, samples.arrived)],
    ['wait of the served', expected.waitOfServed, ratio(samples.waitMinutes, samples.served)],
    ['variance of arrived', expected.varianceOfArrived, varianceOf(samples.arrived)],
    ...model.artists.map((artist, a) => [`busy share of ${artist.id}`, expected.busyOfEach, busyShare(model, samples, a)] as const),
    ...Object.entries(expected.items ?? {}).map(([item, count]) => [`use of ${item}`, count, usesOf(model, samples, item)] as const),
  ];
  return rows.flatMap(([what, value, found]) => (value === undefined ? [] : [[what, value, found] as const]));
}
/** Variance of Poisson counts; its standard error is about variance x sqrt(2 / n). */
const varianceOf = (values: ArrayLike<number>): Found => {
  const variance = standardDeviation(values) ** 2;
  return { mean: variance, error: variance * Math.sqrt(2 / values.length) };
};
const busyShare = (model: LineModel, samples: LineSamples, artist: number): Found =>
  overRuns(Array.from({ length: samples.runs }, (_, run) => (samples.busy[run * model.artists.length + artist] ?? 0) / model.end));
const usesOf = (model: LineModel, samples: LineSamples, id: string): Found => {
  const at = model.items.findIndex((item) => item.id === id);
  return overRuns(Array.from({ length: samples.runs }, (_, run) => samples.items[run * model.items.length + at] ?? 0));
};

describe('another business: yen, Tokyo time, its own size codes and suppliers', () => {
  const book = open('hoshikawa.yaml');
  test('has nothing wrong with it and is written as it is read', () => {
    expect(checkBook(book, { today })).toEqual([]);
    expect(readBook(writeBook(book, 'yaml'), { name: 'a.yaml' })).toEqual({ ok: true, value: book });
  });
  test('its figures of its own sizes are played', () => {
    const [gig] = book.gigs;
    const model = gig === undefined ? undefined : lineModelOf(book, gig);
    if (!model?.ok) throw new Error(JSON.stringify(model));
    expect(model.value.figures.map((figure) => figure.id)).toEqual(['inu', 'hana']);
    expect(model.value.items.map((item) => item.id).toSorted()).toEqual(['255-matsu', '255-momo', '255-sora', '255-yuki', 'maru-yuki']);
  });
  test('it is planned to the end without touching code: whole yen, both suppliers known, tax on the quote, orders before the gig', async () => {
    const solver = openSolver();
    try {
      const plan = await planBook(book, { today: date('2027-07-01') }, { solver });
      if (!plan.ok) throw new Error(JSON.stringify(plan.error));
      const { shopping, gigs, needs, shoppingProblems } = plan.value;
      expect(shoppingProblems).toEqual([]);
      expect(gigs.map(({ gig }) => gig.id)).toEqual(['natsu']);
      expect([gigs[0]?.charge.net, gigs[0]?.charge.tax?.amount, gigs[0]?.charge.quote]).toEqual([45_480, 4548, 50_028]); // three hours, and three miles beyond the free radius there and back
      expect(needs.items.filter((need) => need.short > 0).map((need) => need.item)).toContain('255-matsu');
      expect(shopping?.total).toBeGreaterThan(0);
      for (const order of shopping?.orders ?? []) {
        expect(['kawa', 'machi']).toContain(order.supplier);
        expect(Number.isInteger(order.total) && order.arrives < date('2027-07-17')).toBe(true);
      }
      expect(shopping?.chance).toBeGreaterThanOrEqual(0.95);
    } finally {
      await solver.close();
    }
  });
});
