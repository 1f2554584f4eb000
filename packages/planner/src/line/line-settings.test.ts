import { expect, test } from 'vitest';
import { bestMenu } from './best-menu.ts';
import { closingCard } from './closing-card.ts';
import { expectedMinutesEach } from './expected-minutes.ts';
import { fewestArtists } from './fewest-artists.ts';
import type { LineFigure, LineModel } from './line-model.ts';
import { runLine } from './run-line.ts';

const fixed = (minutes: number) => ({ kind: 'fixed' as const, minutes });
const figure = (id: string, minutes: number, share = 1, more: Partial<LineFigure> = {}): LineFigure => ({
  id,
  share,
  making: fixed(minutes),
  colourways: [{ id: 'only', share: 1, colour: 0, lines: [{ item: 0, count: 1 }] }],
  ...more,
});
/** Ten guests at the start, one artist, two minutes each, an hour. */
const ten: LineModel = {
  end: 60,
  arrivals: { kind: 'at start', guests: 10 },
  patience: { kind: 'endless' },
  serving: 'shared line',
  artists: [{ id: 'one', pace: 1 }],
  closing: { kind: 'none' },
  items: [{ id: 'long red', popChance: 0 }],
  figures: [figure('dog', 2)],
  ifShort: { otherColour: 0, otherFigure: 0, search: 'by share' },
  pops: 'each piece',
};
const two = [...ten.artists, { id: 'two', pace: 1 }];
/** The one run of a gig without chance. */
const once = (model: LineModel) => {
  const samples = runLine(model, { seed: 1, runs: 1 });
  const of = (name: 'served' | 'unserved' | 'gaveUp' | 'turnedAway' | 'disappointed' | 'arrived' | 'returned' | 'longestLine' | 'pops') =>
    samples[name][0];
  return {
    of,
    finish: samples.finish[0],
    lastWait: samples.lastWait[0],
    waits: samples.waitMinutes[0],
    items: [...samples.items],
    figures: [...samples.figures],
    lengths: [...samples.lengths],
    closedAt: samples.closedAt[0],
    busy: [...samples.busy],
  };
};
const perMinute = (rate: number, end: number): LineModel['arrivals'] => ({
  kind: 'stream',
  knots: [
    { minute: 0, perMinute: rate },
    { minute: end, perMinute: rate },
  ],
});

test('ten at the start, two minutes each: served one after another', () => {
  const found = once(ten);
  expect([found.of('served'), found.finish, found.lastWait, found.waits, found.of('longestLine')]).toEqual([10, 20, 18, 90, 9]);
  expect(found.lengths.slice(0, 5)).toEqual([9, 7, 4, 2, 0]);
  expect([found.items, found.figures, found.busy]).toEqual([[10], [10], [20]]);
});
test('two artists, shared or with own lines, halve it; pace, helper and weather stretch the making', () => {
  expect(once({ ...ten, artists: two }).finish).toBe(10);
  expect(once({ ...ten, artists: two, serving: 'own lines' }).finish).toBe(10);
  expect(once({ ...ten, artists: [{ id: 'slow', pace: 1.5 }] }).finish).toBe(30);
  expect(once({ ...ten, helper: { makingFactor: 0.5, drawsFaces: false } }).finish).toBe(10);
  expect(once({ ...ten, weather: { makingFactor: 2, popFactor: 1 } }).finish).toBe(40);
});
test('choosing, colours, handing over and drawing take their time; a helper draws', () => {
  const [only] = ten.figures[0]?.colourways ?? [];
  if (only === undefined) throw new Error('no colourway');
  const figures = [figure('dog', 2, 1, { drawingMinutes: 0.25, colourways: [only, { ...only, id: 'blue', colour: 1 }] })];
  const talking: LineModel = { ...ten, figures, choosing: fixed(0.5), colourChoosing: fixed(0.25), handingOver: fixed(0.5) };
  expect(once(talking).finish).toBe(35);
  expect(once({ ...talking, helper: { makingFactor: 1, drawsFaces: true } }).finish).toBe(32.5);
  expect(expectedMinutesEach(talking)).toBe(3.5);
});
test('breaks are taken when the guest of that moment is done; who comes later and leaves earlier is not there', () => {
  expect(once({ ...ten, artists: [{ id: 'one', pace: 1, breaks: [{ minute: 5, minutes: 10 }] }] }).finish).toBe(30);
  expect(once({ ...ten, artists: [{ id: 'one', pace: 1, from: 7 }] }).finish).toBe(27);
  const leaving = once({ ...ten, artists: [{ id: 'one', pace: 1, until: 9 }] });
  expect([leaving.of('served'), leaving.of('unserved'), leaving.finish]).toEqual([5, 5, 10]);
});
test('tired hands: each fresh hour as usual, then slower', () => {
  const found = once({ ...ten, artists: [{ id: 'one', pace: 1, fatigue: { perHour: 6, freshMinutes: 2 } }] });
  // 2, 2, then 2 x (1 + (4 - 2) x 6 / 60) = 2.4, then 2 x (1 + 4.4 / 10) = 2.88 and so on
  expect(found.finish).toBeCloseTo(
    Array.from({ length: 10 }).reduce<number>((worked) => worked + 2 * (1 + Math.max(0, worked - 2) / 10), 0),
    9,
  );
});
test('nobody is started after the end, unless in the overtime that is allowed', () => {
  const short = { ...ten, end: 11 };
  expect([once(short).of('served'), once(short).of('unserved')]).toEqual([6, 4]);
  expect(once({ ...short, overtimeMinutes: 4 }).of('served')).toBe(8);
});
test('closing: at a fixed time, or when the work ahead is longer than the time left', () => {
  const coming: LineModel = { ...ten, end: 120, arrivals: perMinute(0.5, 120) };
  const fixedTime = runLine({ ...coming, closing: { kind: 'fixed', minute: 60 } }, { seed: 1, runs: 50 });
  expect(fixedTime.closedAt.every((minute) => minute === 60)).toBe(true);
  const ahead = runLine({ ...coming, closing: { kind: 'work ahead', keptBackMinutes: 10 } }, { seed: 1, runs: 200 });
  expect(Math.max(...ahead.unserved)).toBe(0);
  expect(Math.max(...ahead.finish)).toBeLessThanOrEqual(112);
  expect(Math.max(...ahead.turnedAway)).toBeGreaterThan(0);
});
test('patience: who waits longer leaves', () => {
  const found = once({ ...ten, patience: fixed(7) });
  expect([found.of('served'), found.of('gaveUp'), found.lastWait]).toEqual([4, 6, 6]);
  expect(found.lengths.slice(0, 3)).toEqual([9, 7, 0]);
});
test('a listed guest gets the piece that is meant for them', () => {
  const figures = [figure('dog', 2), figure('dragon', 8, 0)];
  const guests = [{ figure: 1 }, {}, {}];
  expect(once({ ...ten, figures, arrivals: { kind: 'list', parties: [{ minute: 3, guests }] } }).figures).toEqual([2, 1]);
});
test('pre-made figures are handed out at once, but their balloons are gone', () => {
  const found = once({ ...ten, preMade: [{ figure: 0, colourway: 0, count: 4 }], handingOver: fixed(0.5) });
  expect([found.finish, found.items, found.figures, found.of('served')]).toEqual([0.5 * 10 + 12, [10], [10], 10]);
});
test('hidden guests come on top; one each forbids another figure, not a repair', () => {
  expect(once({ ...ten, hiddenShare: 1 }).of('arrived')).toBe(20);
  const returns = { repeatChance: 1, repeatAfter: fixed(1), repairChance: 0, repairAfter: fixed(1), oneEach: true };
  expect(once({ ...ten, returns }).of('returned')).toBe(0);
  expect(once({ ...ten, returns: { ...returns, repairChance: 1 } }).of('served')).toBe(30);
  expect(once({ ...ten, returns: { ...returns, oneEach: false } }).of('served')).toBe(30);
});
test('out of stock: another colour, else another figure, else disappointed', () => {
  const way = (item: number) => ({ id: `way ${item}`, share: item === 0 ? 1 : 0, colour: item, lines: [{ item, count: 1 }] });
  const items = [0, 1, 2].map((i) => ({ id: `item ${i}`, stock: 4, popChance: 0 }));
  const figures = [figure('dog', 2, 1, { colourways: [way(0), way(1)] }), figure('cat', 2, 0, { colourways: [{ ...way(2), share: 1 }] })];
  const short: LineModel = { ...ten, items, figures };
  expect(once(short).of('disappointed')).toBe(6);
  expect(once({ ...short, ifShort: { otherColour: 1, otherFigure: 0, search: 'by share' } }).of('served')).toBe(8);
  const both = once({ ...short, ifShort: { otherColour: 1, otherFigure: 1, search: 'next in order' } });
  expect([both.items, both.figures, both.of('disappointed')]).toEqual([[4, 4, 2], [8, 2], 0]);
  expect(once({ ...short, ifShort: { otherColour: 1, otherFigure: 1, search: 'by share' } }).figures).toEqual([8, 2]);
});
test('pops: each piece is made again, with chance p / (1 - p) more on the average', () => {
  const popping = { ...ten, items: [{ id: 'thin', popChance: 0.2 }], figures: [figure('dog', 2, 1, { redoMinutes: 1 })] };
  const samples = runLine(popping, { seed: 2, runs: 4000 });
  const pops = samples.pops.reduce((sum, count) => sum + count, 0) / 40_000;
  expect(Math.abs(pops - 0.25)).toBeLessThan(3 * Math.sqrt(0.3125 / 40_000));
  for (let run = 0; run < 100; run++) {
    expect(samples.items[run]).toBe(10 + (samples.pops[run] ?? 0));
    expect(samples.finish[run]).toBeCloseTo(20 + (samples.pops[run] ?? 0), 9);
  }
});
test('tables: the artist works table after table and goes when the food comes', () => {
  const parties = [0, 1, 2].map((minute) => ({ minute, guests: [{}, {}, {}] }));
  const tables: LineModel = {
    ...ten,
    serving: 'tables',
    arrivals: { kind: 'list', parties },
    tables: { walking: fixed(1) },
    patience: fixed(12),
  };
  const found = once(tables);
  // walk 1, three guests till 7; walk till 8, three till 14, but the food came at 13, when the third is being made; the last table's food came at 14
  expect([found.of('served'), found.of('gaveUp'), found.finish]).toEqual([6, 3, 14]);
  expect(once({ ...tables, tables: { walking: fixed(1), count: 1, stayingMinutes: 20 } }).of('served')).toBe(3);
});
test('strolling: walk, make for a group, walk on', () => {
  const strolling: LineModel = { ...ten, arrivals: { kind: 'found', walking: fixed(3) }, partySizes: [0, 1] };
  const found = once(strolling);
  // every 7 minutes two guests: groups found at 3, 10, 17, ... 59, of which the last one has one guest started before the end
  expect([found.of('arrived'), found.of('served'), found.of('unserved')]).toEqual([18, 17, 1]);
  expect(once({ ...strolling, arrivals: { kind: 'found', walking: fixed(3), guests: 5 } }).of('served')).toBe(5);
  expect(once({ ...strolling, artists: two }).of('served')).toBe(34);
});
test('class: everybody makes the figures of the programme as long as time lasts', () => {
  const arrivals = { kind: 'class' as const, learners: 8, figures: [0, 1, 0], tries: 3, slowness: 5 };
  const found = once({ ...ten, figures: [figure('dog', 5), figure('sword', 8)], arrivals });
  // 25 minutes, 40 minutes, and then the hour is over
  expect([found.figures, found.items, found.finish, found.of('served')]).toEqual([[8, 8], [48], 65, 8]);
});
test('what if: a changed menu leaves the arrivals alone, more guests keep the others', () => {
  const stroll: LineModel = { ...ten, end: 120, arrivals: perMinute(0.4, 120), figures: [figure('dog', 2), figure('cat', 3)] };
  const base = runLine(stroll, { seed: 3, runs: 300 });
  const without = runLine({ ...stroll, figures: [figure('dog', 2), figure('cat', 3, 1, { offered: false })] }, { seed: 3, runs: 300 });
  expect(without.arrived).toEqual(base.arrived);
  const more = runLine({ ...stroll, arrivals: perMinute(0.45, 120) }, { seed: 3, runs: 300 });
  expect(more.arrived.every((arrived, run) => arrived >= (base.arrived[run] ?? 0))).toBe(true);
});
test('what if: taking a figure off the menu changes only the guests who wished for it', () => {
  const figures = ['dog', 'cat', 'swan'].map((id, i) => figure(id, 2, 1, { colourways: [{ id, share: 1, colour: 0, lines: [{ item: i, count: 1 }] }] })); // biome-ignore format: short
  const items = figures.map(({ id }) => ({ id, popChance: 0 }));
  const all = runLine({ ...ten, figures, items }, { seed: 4, runs: 200 });
  const dropped = figures.map((each, i) => ({ ...each, offered: i !== 1 }));
  const fewer = runLine({ ...ten, figures: dropped, items }, { seed: 4, runs: 200 });
  for (let run = 0; run < 200; run++) {
    expect(fewer.figures[3 * run]).toBeGreaterThanOrEqual(all.figures[3 * run] ?? 0);
    expect(fewer.figures[3 * run + 1]).toBe(0);
    expect(fewer.figures[3 * run + 2]).toBeGreaterThanOrEqual(all.figures[3 * run + 2] ?? 0);
  }
});
test('an unsure crowd spreads wider than a sure one around the same middle', () => {
  const sure: LineModel = { ...ten, end: 120, arrivals: perMinute(0.5, 120) };
  const unsure: LineModel = { ...sure, arrivals: { ...perMinute(0.5, 120), shape: 10 } as LineModel['arrivals'] };
  const [a, b] = [sure, unsure].map((model) => runLine(model, { seed: 5, runs: 4000 }).arrived);
  const moments = (values: Int32Array | undefined) => {
    const all = [...(values ?? [])];
    const middle = all.reduce((sum, value) => sum + value, 0) / all.length;
    return { middle, variance: all.reduce((sum, value) => sum + (value - middle) ** 2, 0) / all.length };
  };
  expect(Math.abs(moments(a).middle - 60)).toBeLessThan(0.4);
  expect(Math.abs(moments(b).middle - 60)).toBeLessThan(1);
  expect(moments(b).variance / (60 + 60 ** 2 / 10)).toBeCloseTo(1, 0);
});
test('fewest artists for a promise', () => {
  const busy: LineModel = { ...ten, end: 60, arrivals: { kind: 'at start', guests: 60 } };
  const promise = { waitMinutes: 30, shareWithin: 0.9, shareServed: 0.95 };
  // sixty guests of two minutes: one serves 30, two serve 60 with half of them within 30 minutes, three 90 % within 36, four all within 30
  const found = fewestArtists(busy, promise, { seed: 1, runs: 5, most: 6 });
  expect([found.artists, found.tried.map((each) => each.isKept)]).toEqual([4, [false, false, false, true]]);
  expect(fewestArtists(busy, promise, { seed: 1, runs: 5, most: 2 }).artists).toBeUndefined();
});
test('the closing card falls with the clock and rises with the risk', () => {
  const varied: LineModel = {
    ...ten,
    end: 120,
    artists: [{ id: 'one', pace: 1.1, breaks: [{ minute: 60, minutes: 10 }], fatigue: { perHour: 0.1, freshMinutes: 30 } }, ...ten.artists],
    figures: [figure('dog', 2, 1, { making: { kind: 'log-normal', median: 2, sigma: 0.4 } })],
  };
  const card = (chance: number) => closingCard(varied, { seed: 1, runs: 300, chance }).map((row) => row.mayWait);
  const [safe, bold] = [card(0.95), card(0.5)];
  safe.forEach((mayWait, row) => {
    expect(mayWait).toBeLessThanOrEqual(safe[row - 1] ?? Number.POSITIVE_INFINITY);
    expect(mayWait).toBeLessThanOrEqual(bold[row] ?? 0);
  });
  expect(safe.at(-1)).toBe(0);
  expect(safe[0]).toBeGreaterThan(60);
});
test('best menu: the slow figure goes when the crowd is large, all stay when it is small', () => {
  const figures = [figure('dog', 1, 3), figure('sword', 1, 3), figure('dragon', 9, 2)];
  const crowd = (guests: number): LineModel => ({ ...ten, arrivals: { kind: 'at start', guests }, figures });
  const large = bestMenu(crowd(60), { seed: 1, runs: 40 });
  expect([large.best.figures, large.how, large.menus]).toEqual([[0, 1], 'every menu tried', 7]);
  expect(large.best.worth.mean).toBeGreaterThan(large.whole.worth.mean);
  expect(bestMenu(crowd(6), { seed: 1, runs: 40 }).best.figures).toEqual([0, 1, 2]);
  const searched = bestMenu(crowd(60), { seed: 1, runs: 40, triesAtMost: 2 });
  expect([searched.best.figures, searched.how]).toEqual([[0, 1], 'search']);
  expect(bestMenu(crowd(60), { seed: 1, runs: 40, always: [2] }).best.figures).toContain(2);
  expect(bestMenu(crowd(6), { seed: 1, runs: 40, most: 1 }).best.figures).toHaveLength(1);
});
test('a model that cannot be played is a bug and says where', () => {
  const bad: readonly (readonly [model: LineModel, words: string])[] = [
    [{ ...ten, end: Number.NaN }, 'end'],
    [{ ...ten, artists: [] }, 'artists'],
    [{ ...ten, figures: [figure('dog', Number.POSITIVE_INFINITY)] }, 'making'],
    [{ ...ten, figures: [figure('dog', 2, 0)] }, 'share'],
    [{ ...ten, items: [] }, 'item 0'],
    [{ ...ten, items: [{ id: 'red', popChance: 1.5 }] }, 'popChance'],
    [{ ...ten, arrivals: perMinute(-1, 60) }, 'perMinute'],
    [{ ...ten, arrivals: perMinute(1e9, 60) }, 'parties'],
    [{ ...ten, arrivals: { kind: 'found', walking: fixed(0) } }, 'walking'],
  ];
  for (const [model, words] of bad) expect(() => runLine(model, { seed: 1, runs: 1 })).toThrow(words);
});
