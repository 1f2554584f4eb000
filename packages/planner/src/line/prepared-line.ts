import { exp, log, normalQuantile } from '@twistwright/units';
import { expectedMinutesEach, meanOf } from './expected-minutes.ts';
import type { Duration, LineModel, Patience, RateKnot } from './line-model.ts';
import { assertSound } from './sound-model.ts';

/** Kinds of {@link Duration} as numbers, for the inner loop. */
export const durationKind = { none: 0, fixed: 1, exponential: 2, gamma: 3, logNormal: 4, endless: 5 } as const;

/** A duration flattened: `first` is minutes, mean or the logarithm of the median; `second` is shape or sigma. */
export interface FlatDuration {
  readonly kind: number;
  readonly first: number;
  readonly second: number;
}
export function flatten(duration: Duration | Patience | undefined): FlatDuration {
  if (duration === undefined) return { kind: durationKind.none, first: 0, second: 0 };
  switch (duration.kind) {
    case 'endless':
      return { kind: durationKind.endless, first: 0, second: 0 };
    case 'fixed':
      return { kind: durationKind.fixed, first: duration.minutes, second: 0 };
    case 'exponential':
      return { kind: durationKind.exponential, first: duration.mean, second: 0 };
    case 'gamma':
      return { kind: durationKind.gamma, first: duration.mean, second: duration.shape };
    case 'log-normal':
      return { kind: durationKind.logNormal, first: log(duration.median), second: duration.sigma };
  }
}

/** Running totals of the shares, scaled so that the last is exactly 1; equal shares where all are 0. */
export function cumulative(given: readonly number[]): Float64Array {
  const shares = given.some((share) => share > 0) ? given : given.map(() => 1);
  const total = shares.reduce((sum, share) => sum + share, 0);
  const totals = new Float64Array(shares.length);
  let sum = 0;
  for (const [i, share] of shares.entries()) {
    sum += share;
    totals[i] = sum / total;
  }
  for (let i = shares.length - 1; i >= 0; i--) {
    totals[i] = 1;
    if ((shares[i] ?? 0) > 0) break;
  }
  return totals;
}
/** For each 64th of the unit interval the first index whose running total lies above it: where a search may begin (Chen and Asau 1974). */
export function guideTo(totals: Float64Array): Uint16Array {
  return Uint16Array.from({ length: 64 }, (_, cell) =>
    Math.max(
      0,
      totals.findIndex((total) => total > cell / 64),
    ),
  );
}

/** Stands for stock that never runs out. */
export const endlessStock = 1 << 30;

/** A {@link LineModel} laid out in flat arrays, made once and read by every run. */
export type PreparedLine = ReturnType<typeof prepareLine>;

export function prepareLine(model: LineModel) {
  assertSound(model);
  const colourways = model.figures.flatMap((figure) => figure.colourways);
  const lines = colourways.flatMap((colourway) => colourway.lines);
  const popFactor = model.weather?.popFactor ?? 1;
  const popChance = Float64Array.from(model.items, (item) => Math.min(0.99, item.popChance * popFactor));
  const makings = model.figures.map((figure) => flatten(figure.making));
  const firstColourway = Int32Array.of(0, ...runningCounts(model.figures.map((figure) => figure.colourways.length)));
  const firstLine = Int32Array.of(0, ...runningCounts(colourways.map((colourway) => colourway.lines.length)));
  const shares = cumulative(model.figures.map((figure) => figure.share));
  const artists = model.artists;
  const sizes = cumulative(model.partySizes ?? [1]);
  const knots = model.arrivals.kind === 'stream' ? model.arrivals.knots : [];
  return {
    model,
    twoStreams: model.draws === 'two streams',
    end: model.end,
    lastStart: model.end + (model.overtimeMinutes ?? 0),
    warmUp: model.warmUpMinutes ?? 0,
    promise: model.promiseMinutes ?? 15,
    sizes,
    hiddenShare: model.hiddenShare ?? 0,
    hiddenWhole: Math.floor(model.hiddenShare ?? 0),
    hiddenRest: (model.hiddenShare ?? 0) - Math.floor(model.hiddenShare ?? 0),
    freeLength: model.joining?.free ?? Number.POSITIVE_INFINITY,
    joinChance: joinChances(model.joining),
    room: model.room ?? Number.POSITIVE_INFINITY,
    patience: flatten(model.patience),
    surePatience: surePatience(model.patience),
    choosing: flatten(model.choosing),
    colourChoosing: flatten(model.colourChoosing),
    handingOver: flatten(model.handingOver),
    talkIsFixed: [model.choosing, model.colourChoosing, model.handingOver].every((time) => time === undefined || time.kind === 'fixed'),
    talkBefore: Float64Array.from(
      model.figures,
      (figure) => meanOf(model.choosing) + (figure.colourways.length > 1 ? meanOf(model.colourChoosing) : 0),
    ),
    talkAfter: meanOf(model.handingOver),
    // arrivals
    knotMinutes: Float64Array.from(knots, (knot) => knot.minute),
    knotRates: Float64Array.from(knots, (knot) => knot.perMinute),
    knotSlopes: slopesOf(knots),
    highestRate: knots.reduce((high, knot) => Math.max(high, knot.perMinute), 0),
    horizon: Math.min(model.end, knots.at(-1)?.minute ?? model.end),
    // closing
    closesAt: model.closing.kind === 'fixed' ? model.closing.minute : Number.POSITIVE_INFINITY,
    worksAhead: model.closing.kind === 'work ahead',
    minutesEach: model.closing.kind === 'work ahead' ? (model.closing.minutesEach ?? expectedMinutesEach(model)) : 0,
    closingEnd: model.end - (model.closing.kind === 'work ahead' ? model.closing.keptBackMinutes : 0),
    // artists
    artistCount: artists.length,
    pace: Float64Array.from(artists, (artist) => artist.pace * (model.weather?.makingFactor ?? 1) * (model.helper?.makingFactor ?? 1)),
    startsAt: Float64Array.from(artists, (artist) => artist.from ?? 0),
    tires: artists.some((artist) => (artist.fatigue?.perHour ?? 0) !== 0),
    fatiguePerMinute: Float64Array.from(artists, (artist) => (artist.fatigue?.perHour ?? 0) / 60),
    freshMinutes: Float64Array.from(artists, (artist) => artist.fatigue?.freshMinutes ?? 0),
    breaks: artists.map(breaksOf),
    // figures
    figureCount: model.figures.length,
    figureShares: Float64Array.from(shares, (total, i) => total - (i === 0 ? 0 : (shares[i - 1] ?? 0))),
    figureTotals: shares,
    figureGuide: guideTo(shares),
    offered: Uint8Array.from(model.figures, (figure) => (figure.offered === false ? 0 : 1)),
    allOffered: model.figures.every((figure) => figure.offered !== false),
    makingKind: Uint8Array.from(makings, (making) => making.kind),
    makingFirst: Float64Array.from(makings, (making) => making.first),
    makingSecond: Float64Array.from(makings, (making) => making.second),
    drawing: Float64Array.from(model.figures, (figure) => (model.helper?.drawsFaces === true ? 0 : (figure.drawingMinutes ?? 0))),
    redo: Float64Array.from(model.figures, (figure) => figure.redoMinutes ?? 0),
    // colourways
    firstColourway,
    figureOf: Int32Array.from(model.figures.flatMap((figure, i) => figure.colourways.map(() => i))),
    colourOf: Int32Array.from(colourways, (colourway) => colourway.colour),
    oneColourway: model.figures.every((figure) => figure.colourways.length === 1),
    copies: copies(model),
    colourCount: colourways.reduce((count, colourway) => Math.max(count, colourway.colour + 1), 0),
    colourwayTotals: Float64Array.from(model.figures.flatMap((figure) => [...cumulative(figure.colourways.map((c) => c.share))])),
    colourwayShares: Float64Array.from(model.figures.flatMap((figure) => normalised(figure.colourways.map((c) => c.share)))),
    noPop: Float64Array.from(colourways, (colourway) =>
      colourway.lines.reduce((chance, line) => chance * power(1 - (popChance[line.item] ?? 0), line.count), 1),
    ),
    firstLine,
    lineItem: Int32Array.from(lines, (line) => line.item),
    lineCount: Int32Array.from(lines, (line) => line.count),
    linePops: Float64Array.from(lines, (line) => popChance[line.item] ?? 0),
    lineSpoils: Float64Array.from(lines, (line) => (popChance[line.item] ?? 0) * line.count),
    popsEachPiece: model.pops === 'each piece',
    anyPops: popChance.some((chance) => chance > 0),
    // items
    itemCount: model.items.length,
    stock: Int32Array.from(model.items, (item) => item.stock ?? endlessStock),
    ...usesOf(model),
    searchInOrder: model.ifShort.search === 'next in order',
    otherColour: model.ifShort.otherColour,
    otherFigure: model.ifShort.otherFigure,
    figureUrn: model.copycat?.figures,
    colourUrn: model.copycat?.colours,
    preMade: model.preMade ?? [],
    returns: model.returns,
    repeatAfter: flatten(model.returns?.repeatAfter),
    repairAfter: flatten(model.returns?.repairAfter),
    ownLines: model.serving === 'own lines',
    atTables: model.serving === 'tables',
    walking: flatten(model.arrivals.kind === 'found' ? model.arrivals.walking : model.tables?.walking),
    tableCount: model.tables?.count ?? 0,
    stayingMinutes: model.tables?.stayingMinutes ?? 0,
    found: model.arrivals.kind === 'found',
    plain: isPlain(model),
  };
}

/** Whole powers by multiplication: the language does not fix the last bit of its own. */
const power = (base: number, times: number): number => (times === 0 ? 1 : base * power(base, times - 1));
const copies = (model: LineModel): boolean => (model.copycat?.figures?.added ?? 0) > 0 || (model.copycat?.colours?.added ?? 0) > 0;

/**
 * Whether the start of each guest is known on arrival: one shared line, nothing that happens later changes who is next or how long it
 * takes, and times are of the usual kinds. Then {@link PlainEngine} plays it, about twice as fast and with the same findings.
 */
const isPlain = (model: LineModel): boolean =>
  model.arrivals.kind === 'stream' &&
  model.serving === 'shared line' &&
  model.artists.every((artist) => artist.until === undefined && (artist.breaks ?? []).length === 0 && artist.fatigue === undefined) &&
  model.figures.every((figure) => figure.making.kind === 'log-normal' && figure.offered !== false) &&
  [model.choosing, model.colourChoosing, model.handingOver].every((time) => time === undefined || time.kind === 'fixed') &&
  !copies(model) &&
  model.room === undefined &&
  model.returns === undefined &&
  (model.preMade ?? []).length === 0 &&
  (model.hiddenShare ?? 0) === 0;

/** For each item the most that one recipe line takes, and which colourways take how many; and what lacks a balloon from the start. */
function usesOf(model: LineModel) {
  const colourways = model.figures.flatMap((figure) => figure.colourways);
  const uses = model.items.map((_, item) =>
    colourways.flatMap(({ lines }, colourway) => lines.filter((line) => line.item === item).map(({ count }) => ({ colourway, count }))),
  );
  return {
    mostNeeded: Int32Array.from(uses, (list) => list.reduce((most, { count }) => Math.max(most, count), 0)),
    firstUse: Int32Array.of(0, ...runningCounts(uses.map((list) => list.length))),
    useColourway: Int32Array.from(uses.flat(), ({ colourway }) => colourway),
    useCount: Int32Array.from(uses.flat(), ({ count }) => count),
    lackingAtStart: Uint8Array.from(colourways, ({ lines }) =>
      lines.some(({ item, count }) => (model.items[item]?.stock ?? endlessStock) < count) ? 1 : 0,
    ),
  };
}

/** How much the rate rises a minute after each knot. */
const slopesOf = (knots: readonly RateKnot[]): Float64Array =>
  Float64Array.from(knots, ({ minute, perMinute }, k) => {
    const next = knots[k + 1];
    return next === undefined || next.minute === minute ? 0 : (next.perMinute - perMinute) / (next.minute - minute);
  });

/** For each 64th of luck a little less than the patience at its lower end: nobody in it leaves before. Log-normal patience only. */
const surePatience = (patience: Patience): Float64Array =>
  Float64Array.from({ length: 64 }, (_, cell) =>
    patience.kind !== 'log-normal' || cell === 0 ? 0 : 0.999999 * patience.median * exp(patience.sigma * normalQuantile(cell / 64)),
  );

/** The chance of joining by the number of people waiting; the last cell serves for all longer lines. */
const joinChances = (joining: LineModel['joining']): Float64Array =>
  Float64Array.from({ length: joining === undefined ? 1 : 4096 }, (_, waiting) =>
    joining === undefined || waiting <= joining.free ? 1 : exp(-(waiting - joining.free) / joining.scale),
  );

const normalised = (given: readonly number[]): readonly number[] => {
  const shares = given.some((share) => share > 0) ? given : given.map(() => 1);
  const total = shares.reduce((sum, share) => sum + share, 0);
  return shares.map((share) => share / total);
};
const runningCounts = (counts: readonly number[]): readonly number[] => {
  let sum = 0;
  return counts.map((count) => {
    sum += count;
    return sum;
  });
};
/** Breaks by time; leaving for good is a break without end. */
function breaksOf(artist: LineModel['artists'][number]): readonly { readonly minute: number; readonly minutes: number }[] {
  const leaving = artist.until === undefined ? [] : [{ minute: artist.until, minutes: Number.POSITIVE_INFINITY }];
  return [...(artist.breaks ?? []), ...leaving].sort((a, b) => a.minute - b.minute);
}
