import type { Problem } from '@twistwright/units';
import { normalQuantile } from '@twistwright/units';
import { type Unfolded, type UnfoldedBubble, unfold } from '../notation/unfold.ts';
import type { Piece, Recipe } from '../recipe.ts';
import { shippedSizes } from '../sizes/shipped-sizes.ts';
import { isTube, type Size, sizeOf, type Tube } from '../sizes/size.ts';
import { type Change, changesFor } from './changes.ts';
import { bubbleLitres, bubbleOfTubeInches, tubeInches } from './volume.ts';
import { defaultWorking, leastTailShare, mostTailShare, type Working } from './working.ts';

export type Verdict = 'fits' | 'tight' | 'does not fit';

/** 10th percentile, mean, 90th percentile. */
export interface Band {
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

export interface AirOptions {
  readonly sizes?: readonly Size[];
  /** Calibrated numbers for a piece (its role says which balloon it is); missing: the size's defaults. */
  readonly workingOf?: (size: Tube, piece: Piece) => Working | undefined;
  /** Litres that one stroke of the pump moves. */
  readonly litresPerStroke?: number;
}

/** Air and rubber of one piece (each of its copies). */
export interface PieceAir {
  /** Index in `recipe.pieces`. */
  readonly piece: number;
  readonly name: string;
  readonly size: string;
  readonly count: number;
  /** How far it is blown up before the first twist: inflated inches of a tube, width of a round. */
  readonly inflatedInches: number;
  /** Flat inches without air at the start; 0 for a round. */
  readonly tailInches: number;
  /** Whether the recipe says so, or it was worked out here. */
  readonly tailFrom: 'recipe' | 'worked out';
  readonly litres: number;
  readonly strokes?: number;
  /** Bubbles made, halves of split ones counted. */
  readonly bubbles: number;
  /** Tube inches that all its bubbles take. */
  readonly needInches: number;
  /** Inflated inches left over after the last bubble; negative: missing. */
  readonly leftInflatedInches: Band;
  /** Flat inches left at the tip after the last twist; negative: the last bubbles get hard. */
  readonly leftFlatInches: Band;
  /** Flat inches of tail that this many bubbles usually eat: lowest, usual and highest practice. */
  readonly tailNeededInches: Band;
  /** Litres in all bubbles as drawn, by the exact volume of each. */
  readonly bubbleLitres: number;
  readonly verdict: Verdict;
  /** The verdict where balloons come out short (10th percentile) and long (90th). */
  readonly verdictBand: { readonly short: Verdict; readonly long: Verdict };
  /** First bubble (0-based in the piece) for which there is no balloon left. */
  readonly runsOutAt?: { readonly bubble: number; readonly label?: string };
  /** What would put it right, best first; empty when it fits. */
  readonly changes: readonly Change[];
  /** Sentences to mind. */
  readonly cautions: readonly string[];
  /** Inches of every bubble (flat inches of flat stretches), in order, halves of split ones apart. */
  readonly inches: readonly number[];
}

export interface RecipeAir {
  readonly pieces: readonly PieceAir[];
  /** Litres of all balloons, copies counted. */
  readonly litres: number;
  readonly strokes?: number;
  /** The worst of the pieces; a figure without balloons fits. */
  readonly verdict: Verdict;
  /** What keeps the recipe from being made; then the numbers are of what could be understood. */
  readonly problems: readonly Problem[];
}

/** Slack of the length rule on a 2 in tube: bubbles may sum to 3 to 4 in more than the start. Common practice. */
const slackPerRadius = 3.5;
/** Half of a two-sided 80 % band, in standard deviations. */
const z = normalQuantile(0.9);

/**
 * Air and tail of every piece by the two-ruler model: inflated at the start = (flat - tail) x stretch; a bubble eats tail as well as tube.
 * Slack, tail and spreads are common practice without a published source. Bubbles sum up by length (short ones by volume).
 * @example airOf({ pieces: [{ name: 'a', size: '260', role: 'body', count: 1, tailInches: 1, run: [{ kind: 'bubble', length: 54 }] }], finishing: [] }).pieces[0]?.inflatedInches // -> 54
 */
export function airOf(recipe: Recipe, options: AirOptions = {}): RecipeAir {
  const unfolded = unfold(recipe, options.sizes);
  const pieces = recipe.pieces.map((piece, index) => airOfPiece(piece, index, bubblesOf(unfolded, index), options));
  const litres = pieces.reduce((sum, piece) => sum + piece.count * piece.litres, 0);
  return {
    pieces,
    litres,
    ...strokesOf(litres, options),
    verdict: pieces.map((piece) => piece.verdict).reduce(worse, 'fits'),
    problems: unfolded.problems,
  };
}

/**
 * Inches of every bubble of `unfold(recipe).bubbles`, parts of what is left worked out.
 * @example inchesOf({ pieces: [], finishing: [] }, { bubbles: [], joints: 0, marks: new Map(), tucks: [], deeds: [], problems: [] }) // -> []
 */
export function inchesOf(recipe: Recipe, unfolded: Unfolded, options: AirOptions = {}): readonly number[] {
  const perPiece = recipe.pieces.map((piece, index) =>
    inchesOfPiece(piece, bubblesOf(unfolded, index), sizeOf(piece.size, options.sizes ?? shippedSizes), options),
  );
  const seen = new Map<string, number>();
  return unfolded.bubbles.map((bubble) => {
    const balloon = `${bubble.piece} ${bubble.copy}`;
    const at = seen.get(balloon) ?? 0;
    seen.set(balloon, at + 1);
    return perPiece[bubble.piece]?.[at] ?? 0;
  });
}

function inchesOfPiece(piece: Piece, bubbles: readonly UnfoldedBubble[], size: Size | undefined, options: AirOptions): readonly number[] {
  if (size === undefined || !isTube(size)) return roundInches(bubbles, size);
  const working = options.workingOf?.(size, piece) ?? defaultWorking(size);
  return lay(piece, bubbles, size, working).inches;
}

const bubblesOf = (unfolded: Unfolded, piece: number): readonly UnfoldedBubble[] =>
  unfolded.bubbles.filter((bubble) => bubble.piece === piece && bubble.copy === 0);

export const severity: Readonly<Record<Verdict, number>> = { fits: 0, tight: 1, 'does not fit': 2 };
const worse = (a: Verdict, b: Verdict): Verdict => (severity[a] >= severity[b] ? a : b);
const strokesOf = (litres: number, { litresPerStroke }: AirOptions): { readonly strokes?: number } =>
  litresPerStroke === undefined || litresPerStroke <= 0 ? {} : { strokes: litres / litresPerStroke };

/** Air of one piece from its bubbles; `bubbles` are those of its first copy. */
export function airOfPiece(piece: Piece, index: number, bubbles: readonly UnfoldedBubble[], options: AirOptions): PieceAir {
  const size = sizeOf(piece.size, options.sizes ?? shippedSizes);
  if (size === undefined || !isTube(size)) return airOfRound(piece, index, bubbles, size, options);
  const working = options.workingOf?.(size, piece) ?? defaultWorking(size);
  return airOfTube({ piece, index, bubbles, size, working, options });
}

interface TubePiece {
  readonly piece: Piece;
  readonly index: number;
  readonly bubbles: readonly UnfoldedBubble[];
  readonly size: Tube;
  readonly working: Working;
  readonly options: AirOptions;
}

function airOfTube({ piece, index, bubbles, size, working, options }: TubePiece): PieceAir {
  const radius = size.diameterInches / 2;
  const laid = lay(piece, bubbles, size, working);
  const slack = slackPerRadius * radius;
  const startSd = laid.fixedStart
    ? 0
    : together(working.stretch.mean * working.flat.sd, (working.flat.mean - laid.tail) * working.stretch.sd);
  const left = laid.start - laid.need;
  const flatLeft = laid.tail - working.tailPerBubble.mean * laid.count - laid.flat;
  const flatSd = together(working.tailPerBubble.sd * laid.count, laid.fixedStart ? working.flat.sd : 0);
  const starts = bandOf(laid.start, startSd);
  const leftOf = (start: number): number => start - sumOf(tubesOf(bubbles, start, radius), (tube) => tube);
  const leftInflatedInches = { low: leftOf(starts.low), mid: left, high: leftOf(starts.high) };
  const keep = piece.keepInches ?? 0;
  const eaten = working.tailPerBubble.mean * laid.count;
  const loops = bubbles.filter(({ kind }) => kind !== 'bubble' && kind !== 'roll' && kind !== 'flat').length;
  const tailNeededInches = {
    low: leastTailShare * eaten + laid.flat + keep,
    mid: eaten + laid.flat + keep,
    high: mostTailShare * eaten + 0.25 * radius * loops + laid.flat + keep,
  };
  const judge = (inflated: number): Verdict => verdictOf(inflated, slack, laid.tail, tailNeededInches.low);
  const verdict = judge(left);
  const runsOut = verdict === 'does not fit' ? firstMissing(laid.tubes, laid.start + slack) : undefined;
  const label = runsOut === undefined ? undefined : bubbles[runsOut]?.label;
  const litres = bubbleLitres(laid.start, radius);
  return {
    piece: index,
    name: piece.name,
    size: piece.size,
    count: piece.count,
    inflatedInches: laid.start,
    tailInches: laid.tail,
    tailFrom: piece.tailInches === undefined && piece.inflateInches === undefined ? 'worked out' : 'recipe',
    litres,
    ...strokesOf(litres, options),
    bubbles: laid.count,
    needInches: laid.need,
    leftInflatedInches,
    leftFlatInches: bandOf(flatLeft, flatSd),
    tailNeededInches,
    bubbleLitres: laid.inches.reduce((sum, inches, i) => sum + (bubbles[i]?.kind === 'flat' ? 0 : bubbleLitres(inches, radius)), 0),
    verdict,
    verdictBand: { short: judge(leftInflatedInches.low), long: judge(leftInflatedInches.high) },
    ...(runsOut === undefined ? {} : { runsOutAt: { bubble: runsOut, ...(label === undefined ? {} : { label }) } }),
    changes:
      verdict === 'does not fit'
        ? changesFor({ piece, bubbles, size, working, need: laid.need, tubes: laid.tubes, flat: laid.flat, slack }, options)
        : [],
    cautions: cautionsOf(laid, tailNeededInches, left),
    inches: laid.inches,
  };
}

function verdictOf(left: number, slack: number, tail: number, leastTail: number): Verdict {
  if (left < -slack) return 'does not fit';
  return left < 0 || tail < leastTail - 1e-9 ? 'tight' : 'fits';
}

function cautionsOf(laid: Laid, needed: Band, left: number): readonly string[] {
  const said: string[] = [];
  if (laid.tail < needed.low - 1e-9)
    said.push(
      `The tail of ${apart(laid.tail, needed.low)} in is shorter than ${laid.count} bubbles need at the least (${apart(needed.low, laid.tail)} in): the last bubbles will be hard and may pop.`,
    );
  else if (laid.tail < needed.mid - 0.05)
    said.push(`The tail of ${shown(laid.tail)} in is a little short for ${laid.count} bubbles; usual is ${shown(needed.mid)} in.`);
  if (left < 0)
    said.push(
      `The bubbles take ${shown(-left)} in more than is blown up: twist them ${-left > muchTooLong ? 'much' : 'a little'} shorter or softer.`,
    );
  return said;
}
/** Inflated inches that a little care does not save. */
const muchTooLong = 6;
/** Standard deviation of the sum of two independent errors. */
const together = (a: number, b: number): number => Math.sqrt(a * a + b * b);
const shown = (inches: number): string => String(Number(inches.toFixed(1)));
/** With a second decimal where the first would not tell it from the other. */
const apart = (inches: number, other: number): string =>
  shown(inches) === shown(other) ? String(Number(inches.toFixed(2))) : shown(inches);

/** A piece laid along its balloon. */
interface Laid {
  readonly start: number;
  /** True when the recipe says how far to inflate, so that the start does not depend on the balloon. */
  readonly fixedStart: boolean;
  readonly tail: number;
  /** Flat inches of flat stretches. */
  readonly flat: number;
  readonly count: number;
  readonly need: number;
  readonly inches: readonly number[];
  /** Tube inches of every bubble, 0 for flat stretches. */
  readonly tubes: readonly number[];
}

function lay(piece: Piece, bubbles: readonly UnfoldedBubble[], size: Tube, working: Working): Laid {
  const radius = size.diameterInches / 2;
  const count = bubbles.filter(({ kind }) => kind !== 'flat').length;
  const fixedFlat = sumOf(bubbles, ({ kind, length, share }) => (kind === 'flat' && typeof length === 'number' ? length * share : 0));
  const eaten = working.tailPerBubble.mean * count + fixedFlat + (piece.keepInches ?? 0);
  const { start, tail } = startOf(piece, bubbles, radius, working, eaten);
  const tubes = tubesOf(bubbles, start, radius);
  let flat = 0;
  const inches = bubbles.map(({ kind, length, share }, index) => {
    if (kind !== 'flat') return typeof length === 'number' ? length * share : bubbleOfTubeInches(tubes[index] ?? 0, radius);
    const free = Math.max(0.1, tail - eaten - (flat - Math.min(flat, fixedFlat)));
    const own = typeof length === 'number' ? length * share : (free * length.part) / length.of;
    flat += own;
    return own;
  });
  return { start, fixedStart: piece.inflateInches !== undefined, tail, flat, count, need: sumOf(tubes, (tube) => tube), inches, tubes };
}

/** Tube inches of every bubble of a balloon that is blown up so far; parts of what is left are parts of what this start leaves. */
function tubesOf(bubbles: readonly UnfoldedBubble[], start: number, radius: number): readonly number[] {
  let used = 0;
  return bubbles.map(({ kind, length, share }) => {
    if (kind === 'flat') return 0;
    const tube =
      typeof length === 'number' ? tubeInches(length * share, radius) : (Math.max(0.1, start - used) * length.part * share) / length.of;
    used += tube;
    return tube;
  });
}

/** Inflated start and flat tail; worked out when the recipe does not say: enough tail for the twists, and no more air than is used. */
function startOf(
  piece: Piece,
  bubbles: readonly UnfoldedBubble[],
  radius: number,
  working: Working,
  eaten: number,
): { readonly start: number; readonly tail: number } {
  const flat = working.flat.mean;
  const stretch = working.stretch.mean;
  if (piece.inflateInches !== undefined) return { start: piece.inflateInches, tail: Math.max(0, flat - piece.inflateInches / stretch) };
  if (piece.tailInches !== undefined) return { start: Math.max(0, flat - piece.tailInches) * stretch, tail: piece.tailInches };
  const open = bubbles.some(({ kind, length }) => kind !== 'flat' && typeof length !== 'number');
  const need = sumOf(bubbles, ({ kind, length, share }) =>
    kind === 'flat' || typeof length !== 'number' ? 0 : tubeInches(length * share, radius),
  );
  const spare = open || bubbles.length === 0 ? 0 : flat - (need + slackPerRadius * radius) / stretch;
  const tail = Math.min(flat, Math.max(0, eaten, spare));
  return { start: (flat - tail) * stretch, tail };
}

const sumOf = <T>(items: readonly T[], value: (item: T) => number): number => items.reduce((sum, item) => sum + value(item), 0);
const bandOf = (mid: number, sd: number): Band => ({ low: mid - z * sd, mid, high: mid + z * sd });

function firstMissing(tubes: readonly number[], available: number): number | undefined {
  let used = 0;
  for (const [index, tube] of tubes.entries()) {
    used += tube;
    if (used > available) return index;
  }
  return undefined;
}

/** Volume of a balloon that is no tube, as a share of a ball of the same width. Geometry for ball and ring (tube a third of the width); heart and flower are estimates. */
const ballShare: Readonly<Record<Exclude<Size['shape'], 'tube'>, number>> = {
  round: 1,
  link: 1,
  heart: 0.7,
  flower: 0.6,
  ring: Math.PI / 9,
};

/** Width of each ball: as written, a part of the full width, or half the volume each when split. */
function roundInches(bubbles: readonly UnfoldedBubble[], size: Size | undefined): readonly number[] {
  return bubbles.map(
    ({ length, share }) =>
      (typeof length === 'number' ? length : ((size?.diameterInches ?? 1) * length.part) / length.of) * (share === 1 ? 1 : halfVolumeWidth),
  );
}
/** Width of a ball with half the volume, 2^(-1/3). */
const halfVolumeWidth = 0.7937005259840998;

function airOfRound(
  piece: Piece,
  index: number,
  bubbles: readonly UnfoldedBubble[],
  size: Size | undefined,
  options: AirOptions,
): PieceAir {
  const full = size?.diameterInches ?? 0;
  const first = bubbles[0];
  const width = first === undefined ? full : typeof first.length === 'number' ? first.length : (full * first.length.part) / first.length.of;
  const share = size === undefined || size.shape === 'tube' ? 1 : ballShare[size.shape];
  const litres = bubbleLitres(width, width / 2) * share;
  const left = full - width;
  const verdict: Verdict = width > full * 1.0001 ? 'does not fit' : 'fits';
  const band = { low: left, mid: left, high: left };
  const none = { low: 0, mid: 0, high: 0 };
  return {
    piece: index,
    name: piece.name,
    size: piece.size,
    count: piece.count,
    inflatedInches: width,
    tailInches: 0,
    tailFrom: 'recipe',
    litres,
    ...strokesOf(litres, options),
    bubbles: bubbles.length,
    needInches: width,
    leftInflatedInches: band,
    leftFlatInches: none,
    tailNeededInches: none,
    bubbleLitres: litres,
    verdict,
    verdictBand: { short: verdict, long: verdict },
    ...(verdict === 'fits' ? {} : { runsOutAt: { bubble: 0, ...(first?.label === undefined ? {} : { label: first.label }) } }),
    changes: verdict === 'fits' || size === undefined ? [] : widerSize(size, width, options.sizes ?? shippedSizes),
    cautions: [],
    inches: roundInches(bubbles, size),
  };
}

function widerSize(size: Size, width: number, sizes: readonly Size[]): readonly Change[] {
  const wider = sizes
    .filter((other) => other.shape === size.shape && other.diameterInches >= width)
    .sort((a, b) => a.diameterInches - b.diameterInches)[0];
  if (wider === undefined) return [];
  return [{ kind: 'size', size: wider.code, sentence: `Take a ${wider.code}, which can be ${wider.diameterInches} in across.` }];
}

/**
 * The exact volume check: litres in all bubbles as drawn over the litres blown up. Above 1 the bubbles cannot be that full.
 * @example volumeShare({ litres: 2, bubbleLitres: 1 }) // -> 0.5
 */
export const volumeShare = (air: Pick<PieceAir, 'litres' | 'bubbleLitres'>): number =>
  air.litres === 0 ? 0 : air.bubbleLitres / air.litres;
