import type { UnfoldedBubble } from '../notation/unfold.ts';
import type { Piece } from '../recipe.ts';
import { shippedSizes } from '../sizes/shipped-sizes.ts';
import { isTube, type Tube } from '../sizes/size.ts';
import type { AirOptions } from './air-of.ts';
import { tubeInches } from './volume.ts';
import { defaultWorking, type Working } from './working.ts';

/** One way to make a piece fit. */
export type Change =
  | { readonly kind: 'less tail'; readonly tailInches: number; readonly sentence: string }
  /** Make the first `afterBubble` bubbles (counted from 1) from one balloon and the others from a second. */
  | { readonly kind: 'split'; readonly afterBubble: number; readonly label?: string; readonly sentence: string }
  | { readonly kind: 'size'; readonly size: string; readonly sentence: string }
  /** Make all its bubbles this share of their length. */
  | { readonly kind: 'smaller'; readonly share: number; readonly sentence: string };

interface TooLong {
  readonly piece: Piece;
  readonly bubbles: readonly UnfoldedBubble[];
  readonly size: Tube;
  readonly working: Working;
  /** Tube inches of all bubbles. */
  readonly need: number;
  readonly tubes: readonly number[];
  readonly flat: number;
  readonly slack: number;
}

/** What to do about a piece that does not fit, least change first. */
export function changesFor(long: TooLong, options: AirOptions): readonly Change[] {
  const gentle = [...lessTail(long), ...otherSize(long, options), ...splitAfter(long), ...smaller(long, 0.5)];
  return gentle.length > 0 ? gentle : smaller(long, 0.2);
}

const show = (inches: number): string => String(Number(inches.toFixed(1)));
const keepOf = (piece: Piece): number => piece.keepInches ?? 0;

/** Inflated inches out of a tube once the usual tail for `count` bubbles is left. */
function capacity(flatInches: number, stretch: number, tailPerBubble: number, count: number, otherFlat: number): number {
  return Math.max(0, flatInches - tailPerBubble * count - otherFlat) * stretch;
}

const countOf = (bubbles: readonly UnfoldedBubble[]): number => bubbles.filter(({ kind }) => kind !== 'flat').length;

function lessTail({ piece, bubbles, working, need, flat, slack }: TooLong): readonly Change[] {
  const usual = working.tailPerBubble.mean * countOf(bubbles) + flat + keepOf(piece);
  if (piece.tailInches === undefined || piece.tailInches <= usual) return [];
  if ((working.flat.mean - usual) * working.stretch.mean + slack < need) return [];
  const tailInches = Number(Math.max(usual, working.flat.mean - need / working.stretch.mean).toFixed(2));
  return [{ kind: 'less tail', tailInches, sentence: `Leave only ${show(tailInches)} in of tail.` }];
}

function otherSize({ piece, bubbles, size, flat }: TooLong, { sizes = shippedSizes, workingOf }: AirOptions): readonly Change[] {
  const fitting = sizes.filter((other): other is Tube => {
    if (other.code === size.code || !isTube(other) || other.diameterInches < size.diameterInches) return false;
    const need = bubbles.reduce(
      (sum, { kind, length, share }) =>
        sum + (kind === 'flat' || typeof length !== 'number' ? 0 : tubeInches(length * share, other.diameterInches / 2)),
      0,
    );
    const working = workingOf?.(other, piece) ?? defaultWorking(other);
    return capacity(working.flat.mean, working.stretch.mean, working.tailPerBubble.mean, countOf(bubbles), flat + keepOf(piece)) >= need;
  });
  const best = fitting.sort((a, b) => a.diameterInches - b.diameterInches || a.lengthInches - b.lengthInches)[0];
  return best === undefined
    ? []
    : [{ kind: 'size', size: best.code, sentence: `Take a ${best.code}: all bubbles fit into it at the lengths written.` }];
}

function splitAfter({ piece, bubbles, working, tubes }: TooLong): readonly Change[] {
  let used = 0;
  let count = 0;
  let flat = keepOf(piece);
  let last = 0;
  for (const [index, bubble] of bubbles.entries()) {
    used += tubes[index] ?? 0;
    if (bubble.kind === 'flat') flat += typeof bubble.length === 'number' ? bubble.length : 0;
    else count += 1;
    if (used > capacity(working.flat.mean, working.stretch.mean, working.tailPerBubble.mean, count, flat)) break;
    last = index + 1;
  }
  if (last === 0 || last >= bubbles.length) return [];
  const label = bubbles[last - 1]?.label;
  const named = label === undefined ? '' : ` (${label})`;
  return [
    {
      kind: 'split',
      afterBubble: last,
      ...(label === undefined ? {} : { label }),
      sentence: `Split it after bubble ${last}${named}: make the others from a second balloon joined there.`,
    },
  ];
}

function smaller({ piece, bubbles, working, need, flat }: TooLong, leastShare: number): readonly Change[] {
  const share =
    capacity(working.flat.mean, working.stretch.mean, working.tailPerBubble.mean, countOf(bubbles), flat + keepOf(piece)) / need;
  const rounded = Math.floor(share * 100) / 100;
  if (rounded < leastShare || share >= 1) return [];
  return [{ kind: 'smaller', share: rounded, sentence: `Make every bubble ${Math.round(rounded * 100)} % of its length.` }];
}
