import { exhausted } from '@twistwright/units';
import { type AirOptions, airOf, inchesOf, type PieceAir } from '../air/air-of.ts';
import { type Deed, unfold } from '../notation/unfold.ts';
import type { BubbleMove, FlatMove, Piece, Recipe } from '../recipe.ts';
import { shippedSizes } from '../sizes/shipped-sizes.ts';
import { sizeOf } from '../sizes/size.ts';
import { sizeInWords } from '../sizes/size-in-words.ts';
import { plural, sayInches, sayNumber } from './say.ts';

/** One thing to do. */
export interface Step {
  /** From 1. */
  readonly number: number;
  /** One or two plain sentences. */
  readonly sentence: string;
  /** Index in `recipe.pieces`; missing for finishing. */
  readonly piece?: number;
  /** How many deeds of `unfold(recipe).deeds` are done when the step is. */
  readonly deeds: number;
  /** How many bubbles of `unfold(recipe).bubbles` are there then: what the picture of the figure so far shows. */
  readonly bubbles: number;
}

interface StepOptions extends AirOptions {
  /** Colour of every role, for "a red 260"; without it the role is named. */
  readonly colours?: Readonly<Record<string, string>>;
}

/**
 * The recipe as numbered sentences that a newcomer can follow. Equal bubbles in a row and the lock that follows are one step; copies of a
 * balloon are made as the first one.
 * @example stepsOf({ pieces: [], finishing: [{ with: 'marker', what: 'eyes' }] })[0]?.sentence // -> 'Draw eyes with the marker.'
 */
export function stepsOf(recipe: Recipe, options: StepOptions = {}): readonly Step[] {
  const unfolded = unfold(recipe, options.sizes);
  const inches = inchesOf(recipe, unfolded, options);
  const air = airOf(recipe, options);
  const steps: Step[] = [];
  const add = (step: Omit<Step, 'number'>) => steps.push({ number: steps.length + 1, ...step });
  let done = { deeds: 0, bubbles: 0 };
  const told: Told = new Set();
  for (const [index, piece] of recipe.pieces.entries()) {
    const own = air.pieces[index];
    if (own === undefined) continue;
    add({ sentence: startSentence(piece, own, options), piece: index, ...done });
    const before = done.bubbles;
    const mine = unfolded.deeds.flatMap((deed, at) => (deed.piece === index ? [{ ...deed, at }] : []));
    for (const group of groupsOf(mine.filter((deed) => deed.copy === 0))) {
      const last = group.deeds.at(-1);
      if (last !== undefined) done = { deeds: last.at + 1, bubbles: last.bubbles };
      add({
        sentence: groupSentence(group, { inches, tube: isTubePiece(piece, options), bubblesBefore: before, told }),
        piece: index,
        ...done,
      });
    }
    const last = mine.at(-1);
    if (piece.count > 1 && last !== undefined) {
      done = { deeds: last.at + 1, bubbles: last.bubbles };
      const others = piece.count === 2 ? 'the other balloon' : `the other ${sayNumber(piece.count - 1)} balloons`;
      add({
        sentence: `Make and join ${others} in the same way${piece.mirrored ? ', every second one the other way round' : ''}.`,
        piece: index,
        ...done,
      });
    }
  }
  for (const finishing of recipe.finishing) add({ sentence: finishSentence(finishing), ...done });
  return steps;
}

type PlacedDeed = Deed & { readonly at: number };
interface Group {
  readonly deeds: readonly PlacedDeed[];
}
const isTubePiece = (piece: Piece, { sizes }: AirOptions): boolean => sizeOf(piece.size, sizes ?? shippedSizes)?.shape === 'tube';

/** Equal bubbles in a row, then their lock or join and the name of the twist, make one step. */
function groupsOf(deeds: readonly PlacedDeed[]): readonly Group[] {
  const groups: PlacedDeed[][] = [];
  for (const deed of deeds) {
    const open = groups.at(-1);
    const before = open?.at(-1);
    if (open !== undefined && before !== undefined && belongs(deed, before, open)) open.push(deed);
    else groups.push([deed]);
  }
  return groups.map((group) => ({ deeds: group }));
}

function belongs(deed: PlacedDeed, before: PlacedDeed, open: readonly PlacedDeed[]): boolean {
  if (deed.move.kind === 'mark') return before.move.kind !== 'note';
  if (deed.move.kind === 'lock') return 'length' in before.move;
  if (!('length' in deed.move) || !('length' in before.move)) return false;
  const [a, b] = [deed.move, before.move];
  return (
    open.every(({ move }) => 'length' in move) &&
    a.kind === b.kind &&
    a.label === b.label &&
    sameLength(a.length, b.length) &&
    isSplit(a) === isSplit(b)
  );
}
const sameLength = (a: BubbleMove['length'], b: BubbleMove['length']): boolean => typeof a === 'number' && a === b;
const isSplit = (move: BubbleMove | FlatMove): boolean => move.kind !== 'flat' && move.split === true;

function startSentence(piece: Piece, air: PieceAir, options: StepOptions): string {
  const colour = options.colours?.[piece.role];
  const what = colour === undefined ? `${sizeInWords(piece.size)} in the ${piece.role} colour` : `${colour} ${sizeInWords(piece.size)}`;
  const print = piece.print === undefined ? '' : `, printed with ${piece.print}`;
  const finish = piece.finish === undefined ? '' : `, ${piece.finish}`;
  const many =
    piece.count === 1
      ? `Take ${article(what)} ${what}${finish}${print}`
      : `Take ${sayNumber(piece.count)} balloons, each ${article(what)} ${what}${finish}${print}`;
  const one = piece.count === 1 ? 'it' : 'one';
  if (!isTubePiece(piece, options)) return `${many}. Pump ${one} up to ${sayInches(air.inflatedInches)} across and tie it.`;
  const burp = piece.burped ? ', let a little air out again' : '';
  const tail =
    air.tailInches < 0.3
      ? ' to the tip'
      : piece.inflateInches === undefined
        ? `, but leave the last ${sayInches(air.tailInches)} without air`
        : ` to ${sayInches(air.inflatedInches)} only`;
  const how = `${tail}${burp}`;
  return `${many}. Pump ${one} up${how}${how.includes(',') ? ',' : ''} and tie it.`;
}
const article = (next: string): string => (/^(?:[aeiou]|8|11\b|18\b)/iu.test(next) ? 'an' : 'a');

/** How something is done, once it was told in full. */
type Told = Set<'pair' | 'ring' | 'pinch' | 'join'>;

/** In full the first time, after that in short. */
function firstInFull(told: Told, what: 'pair' | 'ring' | 'pinch' | 'join', full: string, short: string): string {
  if (told.has(what)) return short;
  told.add(what);
  return full;
}

interface Telling {
  /** Length of every bubble. */
  readonly inches: readonly number[];
  readonly tube: boolean;
  readonly bubblesBefore: number;
  readonly told: Told;
}

function groupSentence({ deeds }: Group, { inches, tube, bubblesBefore, told }: Telling): string {
  const made = deeds.flatMap((deed) => ('length' in deed.move ? [{ move: deed.move, deed }] : []));
  const first = made[0];
  const said: string[] = [];
  if (first !== undefined) said.push(bubbleSentence(first.move, made.length, wholeInches(first.deed, first.move, inches), tube, told));
  for (const { move } of deeds) {
    if ('length' in move) continue;
    said.push(otherSentence(move, deeds[0]?.bubbles === bubblesBefore, told));
  }
  return said.join(' ');
}

/** How so many bubbles that were made last are locked. */
function lockSaid(count: number, told: Told): string {
  const pair = 'Fold the two side by side and lock them';
  if (count === 2)
    return firstInFull(
      told,
      'pair',
      `${pair}: turn the twist before them and the one after them round one another three times.`,
      `${pair} as before.`,
    );
  const ring = `Lock the last ${sayNumber(count)} bubbles into a ring`;
  return firstInFull(
    told,
    'ring',
    `${ring}: bring this twist back to the one before them and turn the two round one another three times.`,
    `${ring} as before.`,
  );
}

/** A split bubble is there as two halves; the step names the whole. */
function wholeInches(deed: PlacedDeed, move: BubbleMove | FlatMove, inches: readonly number[]): number {
  if (typeof move.length === 'number') return move.length;
  const last = inches[deed.bubbles - 1] ?? 0;
  return isSplit(move) ? 2 * last : last;
}

function bubbleSentence(move: BubbleMove | FlatMove, count: number, inches: number, tube: boolean, told: Told): string {
  const size = sayInches(inches);
  const many = count > 1;
  const label = move.label === undefined ? '' : ` for the ${many ? plural(move.label) : move.label}`;
  if (!tube) return `This balloon is the ${move.label ?? 'bubble'}${isSplit(move) ? '; twist it in the middle into two balls' : ''}.`;
  const rest = typeof move.length === 'number' ? '' : restSaid(move.length.part, move.length.of);
  const soft = move.kind !== 'flat' && move.soft ? 'soft ' : '';
  const split = isSplit(move) ? ' Divide it in the middle into two balls.' : '';
  const bend = (move.bendDegrees ?? 0) >= 45 ? ` Squeeze and bend ${many ? 'them' : 'it'} into a curve.` : '';
  const basic = many ? `${sayNumber(count)} ${soft}bubbles of ${size}` : `a ${soft}bubble of ${size}`;
  switch (move.kind) {
    case 'bubble':
      return rest === ''
        ? `Twist ${basic}${label}.${split}${bend}`
        : `${rest} (about ${size}) is${label === '' ? ' the last bubble' : label}.${split}${bend}`;
    case 'pinch':
      return `${firstInFull(
        told,
        'pinch',
        `Twist ${basic}${label}, pull ${many ? 'each' : 'it'} out a little and turn its two ends round one another three times: ${many ? 'pinches' : 'a pinch'}.`,
        `Twist ${basic}${label} and make ${many ? 'each' : 'it'} a pinch as before.`,
      )}${split}`;
    case 'fold':
    case 'loop':
      return loopSentence(move, count, `${soft}bubble of ${size}`, label);
    case 'tulip':
      return `Push the knot down inside with a finger, hold it through the skin and twist it in at ${size}: a tulip${label}.`;
    case 'apple':
      return `Push the knot through the bubble to its far end and trap it there with a twist at ${size}: an apple${label}.`;
    case 'roll':
      return `Twist a ${soft}bubble of ${size}${label} and roll it through between the two that were just locked.`;
    case 'flat':
      return `Leave ${rest === '' ? `${size} of rubber` : 'the rest of the rubber'} without air${label}.`;
    default:
      return exhausted(move);
  }
}

function loopSentence({ kind }: BubbleMove | FlatMove, count: number, bubble: string, label: string): string {
  const how = kind === 'fold' ? 'folded in half' : 'bent round';
  if (count === 1) return `Make a ${kind}${label}: a ${bubble}, ${how}, its two ends turned together.`;
  return `Make ${sayNumber(count)} ${kind}s${label}, each from a ${bubble}, ${how}, its two ends turned together.`;
}

const restSaid = (part: number, of: number): string =>
  part === of ? 'All that is left' : part === 1 && of === 2 ? 'Half of what is left' : `${part}/${of} of what is left`;

/** `atKnot`: before the first bubble, when the twist in hand is the knot. */
function otherSentence(move: Exclude<Deed['move'], BubbleMove | FlatMove>, atKnot: boolean, told: Told): string {
  switch (move.kind) {
    case 'lock':
      if ('to' in move)
        return move.to.toLowerCase() === 'knot'
          ? 'Bring this twist to the knot and turn the two round one another three times.'
          : `Bring this twist to “${move.to}” and turn the two round one another three times.`;
      return lockSaid(move.last, told);
    case 'join':
      return atKnot
        ? `Tie its knot to “${move.to}”.`
        : firstInFull(
            told,
            'join',
            `Join it here to “${move.to}”: wrap it round that twist, or turn the two twists together.`,
            `Join it here to “${move.to}” as before.`,
          );
    case 'mark':
      return `Remember ${atKnot ? 'the knot' : 'this twist'}: it is “${move.name}”.`;
    case 'pop':
      return move.label === undefined
        ? 'Hold its two ends and pop this bubble; take the pieces away at once.'
        : `Hold both ends of the ${move.label} and pop it; take the pieces away at once.`;
    case 'tuck':
      return move.label === move.into
        ? `Tuck the ${move.label} bubbles into one another.`
        : `Tuck the ${move.label} in between the ${plural(move.into)}.`;
    case 'trim':
      return 'Cut off what is left, let the air out, tie the end and tuck it away; pick up the cut piece.';
    case 'note':
      return /[.!?]$/u.test(move.text) ? move.text : `${move.text}.`;
    default:
      return exhausted(move);
  }
}

function finishSentence({ with: tool, what, on }: Recipe['finishing'][number]): string {
  const place = on === undefined ? '' : ` on the ${on}`;
  if (tool === 'marker') return `Draw ${what}${place} with the marker.`;
  if (tool === 'sticker') return `Stick ${what}${place}.`;
  return `Fix it to a stick: ${what}${place}.`;
}
