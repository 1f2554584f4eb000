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

/** One line of a recipe: how many of which item. */
export interface Piece {
  readonly item: number;
  readonly count: number;
  /** The chance that one of them pops, and that any is spoiled where pops are counted by line. */
  readonly pops: number;
  readonly spoils: number;
  /** The most that any recipe line takes of the item: what is less may lack somewhere. */
  readonly mostNeeded: number;
  /** Its number among all lines of all recipes. */
  readonly number: number;
}
/**
 * What making one colourway takes. An object and not columns of typed arrays: an engine checks every read of a typed array for a buffer that
 * was given away, as soon as any was in the whole program (the memory of WebAssembly that grows, an array sent to a worker).
 */
export interface Way {
  readonly figure: number;
  readonly making: FlatDuration;
  /** Minutes: the talk before in the mean, the drawing, one pop made again. */
  readonly talkBefore: number;
  readonly drawing: number;
  readonly redo: number;
  /** The chance that nothing pops. */
  readonly noPop: number;
  readonly pieces: readonly Piece[];
}

/** From `minute` until `until` parties come at `rate` a minute, which rises by `slope` a minute. */
export interface Knot {
  readonly minute: number;
  readonly rate: number;
  readonly slope: number;
  readonly until: number;
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
/** Into how many cells the unit interval is cut by {@link guideTo}: so many that a search hardly ever goes a step further. */
export const guideCells = 256;
/** For each cell of the unit interval the first index whose running total lies above its lower end: where a search may begin (Chen and Asau 1974). */
export function guideTo(totals: Float64Array): Uint16Array {
  return Uint16Array.from({ length: guideCells }, (_, cell) =>
    Math.max(
      0,
      totals.findIndex((total) => total > cell / guideCells),
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
  const popFactor = model.weather?.popFactor ?? 1;
  const popChance = Float64Array.from(model.items, (item) => Math.min(0.99, item.popChance * popFactor));
  const firstColourway = Int32Array.of(0, ...runningCounts(model.figures.map((figure) => figure.colourways.length)));
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
    sizeGuide: guideTo(sizes),
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
    talkAfter: meanOf(model.handingOver),
    // arrivals
    knots: knotsOf(knots),
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
    // colourways
    firstColourway,
    ways: waysOf(model, popChance),
    mostPieces: colourways.reduce((most, { lines }) => Math.max(most, lines.length), 0),
    colourOf: Int32Array.from(colourways, (colourway) => colourway.colour),
    oneColourway: model.figures.every((figure) => figure.colourways.length === 1),
    copies: copies(model),
    colourCount: colourways.reduce((count, colourway) => Math.max(count, colourway.colour + 1), 0),
    colourwayTotals: Float64Array.from(model.figures.flatMap((figure) => [...cumulative(figure.colourways.map((c) => c.share))])),
    colourwayShares: Float64Array.from(model.figures.flatMap((figure) => normalised(figure.colourways.map((c) => c.share)))),
    popsEachPiece: model.pops === 'each piece',
    anyPops: popChance.some((chance) => chance > 0),
    // items
    itemCount: model.items.length,
    stock: Int32Array.from(model.items, (item) => item.stock ?? endlessStock),
    uses: usesOf(model),
    lackingAtStart: Uint8Array.from(colourways, ({ lines }) =>
      lines.some(({ item, count }) => (model.items[item]?.stock ?? endlessStock) < count) ? 1 : 0,
    ),
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

/** What making a figure takes in its first colourway. */
export function firstWayOf(line: PreparedLine, figure: number): Way {
  const way = line.ways[line.firstColourway[figure] ?? -1];
  if (way === undefined) throw new Error(`no figure ${figure}`);
  return way;
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

/** Which colourways take how many, for each item. */
const usesOf = (model: LineModel): readonly (readonly { readonly colourway: number; readonly count: number }[])[] => {
  const colourways = model.figures.flatMap((figure) => figure.colourways);
  return model.items.map((_, item) =>
    colourways.flatMap(({ lines }, colourway) => lines.filter((line) => line.item === item).map(({ count }) => ({ colourway, count }))),
  );
};

function waysOf(model: LineModel, popChance: Float64Array): readonly Way[] {
  const mostNeeded = usesOf(model).map((uses) => uses.reduce((most, { count }) => Math.max(most, count), 0));
  let number = 0;
  return model.figures.flatMap((figure, f) => {
    const making = flatten(figure.making);
    const talkBefore = meanOf(model.choosing) + (figure.colourways.length > 1 ? meanOf(model.colourChoosing) : 0);
    const drawing = model.helper?.drawsFaces === true ? 0 : (figure.drawingMinutes ?? 0);
    return figure.colourways.map(({ lines }) => ({
      figure: f,
      making,
      talkBefore,
      drawing,
      redo: figure.redoMinutes ?? 0,
      noPop: lines.reduce((chance, line) => chance * power(1 - (popChance[line.item] ?? 0), line.count), 1),
      pieces: lines.map(({ item, count }) => {
        const pops = popChance[item] ?? 0;
        return { item, count, pops, spoils: pops * count, mostNeeded: mostNeeded[item] ?? 0, number: number++ };
      }),
    }));
  });
}

const knotsOf = (knots: readonly RateKnot[]): readonly Knot[] =>
  knots.map(({ minute, perMinute }, k) => {
    const next = knots[k + 1];
    const flat = next === undefined || next.minute === minute;
    const slope = flat ? 0 : (next.perMinute - perMinute) / (next.minute - minute);
    return { minute, rate: perMinute, slope, until: next?.minute ?? Number.POSITIVE_INFINITY };
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
