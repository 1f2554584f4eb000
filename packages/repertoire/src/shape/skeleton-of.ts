import { inchesOf } from '../air/air-of.ts';
import { type UnfoldedBubble, unfold } from '../notation/unfold.ts';
import type { Vector as Placed } from '../notation/vector.ts';
import type { Recipe } from '../recipe.ts';
import { shippedSizes } from '../sizes/shipped-sizes.ts';
import { type Size, sizeOf } from '../sizes/size.ts';
import type { Form, Skeleton, SkeletonBubble } from './skeleton.ts';
import type { Vector } from './vector.ts';

/** Drawn radius of a tube's bubble as a share of the fully inflated radius: bubbles are twisted out of a balloon that is not full. */
const twistedShare = 0.78;
/** A bubble that is squeezed less full, as a share of the others' radius. */
const softShare = 0.88;
/** Radius of rubber without air as a share of the tube's inflated radius. */
const flatShare = 0.17;
/** A bubble for which nothing is left is still drawn, inches. */
const shortest = 0.05;
/** Less flat rubber than this at the end is not drawn, inches. */
const seenTail = 0.2;

/**
 * Bubbles and joints of a recipe as the solver wants them: forms, radii, lengths in inches, directions in the figure's frame. A recipe
 * with problems gives what could be understood of it.
 * @example skeletonOf({ pieces: [{ name: 'dog', size: '260', role: 'body', count: 1, run: [{ kind: 'bubble', length: 3 }] }], finishing: [] }).bubbles.length // -> 1
 */
export function skeletonOf(recipe: Recipe, sizes: readonly Size[] = shippedSizes): Skeleton {
  const whole = unfold(recipe, sizes);
  const { bubbles: unfolded, joints: jointCount, marks, tucks, deeds } = whole;
  const deedOf = deedsOfBubbles(unfolded.length, deeds);
  const lengths = inchesOf(recipe, whole, { sizes });
  const bubbles: SkeletonBubble[] = unfolded.map((bubble, i) =>
    bubbleOf(recipe, bubble, Math.max(shortest, lengths[i] ?? 0), deedOf[i] as number, sizes),
  );
  const knots = knotsOf(unfolded);
  let joints = jointCount;
  recipe.pieces.forEach((piece, index) => {
    const size = sizeOf(piece.size, sizes) ?? fallback;
    const own = (bubble: UnfoldedBubble): boolean => bubble.piece === index;
    const last = unfolded.findLastIndex(own);
    const keep = piece.keepInches ?? 0;
    if (last < 0 || size.shape !== 'tube' || keep < seenTail || piece.run.some((move) => move.kind === 'trim')) return;
    const [end, aimed] = [unfolded[last] as UnfoldedBubble, unfolded.findLast((bubble) => own(bubble) && bubble.aim !== undefined)];
    bubbles.push({
      ...common(piece, index),
      from: end.to,
      to: joints++,
      form: 'tail',
      length: keep,
      radius: radiusOf(size, 'tail', keep),
      deed: deeds.length,
      ...(aimed?.aim === undefined ? {} : { aim: inFrame(aimed.aim) }),
    });
  });
  return {
    joints: Array.from({ length: joints }, (_, joint) => ({ names: [...marks].flatMap(([name, at]) => (at === joint ? [name] : [])) })),
    bubbles,
    knots,
    tucks: tucks.map(({ bubbles: some, into }) => ({ bubbles: some, into })),
    deeds: deeds.length,
  };
}

/** From forward, left, up to forward, up, right. */
const inFrame = ([forward, left, up]: Placed): Vector => [forward, up, -left];

function deedsOfBubbles(count: number, deeds: readonly { readonly bubbles: number }[]): readonly number[] {
  const found: number[] = [];
  deeds.forEach((deed, number) => {
    while (found.length < Math.min(deed.bubbles, count)) found.push(number + 1);
  });
  while (found.length < count) found.push(deeds.length);
  return found;
}

function knotsOf(bubbles: readonly UnfoldedBubble[]): Skeleton['knots'] {
  const seen = new Set<string>();
  return bubbles.flatMap((bubble, index) => {
    const balloon = `${bubble.piece} ${bubble.copy}`;
    if (seen.has(balloon)) return [];
    seen.add(balloon);
    return [{ joint: bubble.from, bubble: index }];
  });
}

const common = (piece: Recipe['pieces'][number], index: number): Pick<SkeletonBubble, 'role' | 'piece' | 'size' | 'finish' | 'print'> => ({
  role: piece.role,
  piece: index,
  size: piece.size,
  ...(piece.finish === undefined ? {} : { finish: piece.finish }),
  ...(piece.print === undefined ? {} : { print: piece.print }),
});

function bubbleOf(recipe: Recipe, bubble: UnfoldedBubble, length: number, deed: number, sizes: readonly Size[]): SkeletonBubble {
  const piece = recipe.pieces[bubble.piece] as Recipe['pieces'][number];
  const size = sizeOf(piece.size, sizes) ?? fallback;
  const form = formOf(bubble, length, size);
  return {
    ...common(piece, bubble.piece),
    from: bubble.from,
    to: bubble.to,
    form,
    length,
    radius:
      radiusOf(size, bubble.kind === 'flat' ? 'flat' : form, length) * (bubble.soft === true && size.shape === 'tube' ? softShare : 1),
    deed,
    ...(bubble.label === undefined ? {} : { label: bubble.label }),
    ...(bubble.aim === undefined ? {} : { aim: inFrame(bubble.aim) }),
    ...(bubble.facing === undefined ? {} : { facing: inFrame(bubble.facing) }),
    ...(bubble.bendDegrees === undefined ? {} : { bendDegrees: bubble.bendDegrees }),
    ...(bubble.bendToward === undefined ? {} : { bendToward: inFrame(bubble.bendToward) }),
    ...(bubble.popped === undefined ? {} : { popped: true }),
  };
}

const fallback: Size = { code: '260', shape: 'tube', diameterInches: 2, lengthInches: 60, flatInches: 11, stretch: 5.4, source: 'nominal' };

/** A loop shorter than this, in radii, has no hole and no sides: it is a ball like a pinch. */
const blobRadii = 5;
const isBlob = (kind: UnfoldedBubble['kind'], length: number, size: Size): boolean =>
  (kind === 'loop' || kind === 'fold') && length < (blobRadii * twistedShare * size.diameterInches) / 2;

function formOf(bubble: UnfoldedBubble, length: number, size: Size): Form {
  const { kind } = bubble;
  if (kind === 'flat') return bubble.from === bubble.to ? 'ring' : 'flat';
  if (size.shape === 'heart' || size.shape === 'flower') return size.shape;
  if (size.shape === 'ring') return 'donut';
  if (size.shape === 'round' || size.shape === 'link') return 'round';
  if (kind === 'tulip' || kind === 'apple') return kind;
  if (bubble.from === bubble.to)
    return kind === 'pinch' || isBlob(kind, length, size) ? 'ball' : kind === 'loop' || kind === 'fold' ? kind : 'ring';
  return (bubble.bendDegrees ?? 0) > 12 ? 'bent' : 'straight';
}

function radiusOf(size: Size, form: Form, length: number): number {
  if (size.shape !== 'tube') return length / 2;
  const full = size.diameterInches / 2;
  if (form === 'flat' || form === 'tail') return full * flatShare;
  const radius = full * twistedShare;
  // A pinch keeps its air but becomes a ball: 4/3 R^3 = r^2 l.
  if (form === 'ball') return Math.min(cubeRoot(0.75 * radius * radius * length), 1.5 * radius);
  if (form === 'tulip' || form === 'apple') return Math.max(radius, Math.min(length * 0.42, full * 1.3));
  return Math.min(radius, Math.max(0.58 * length, 0.2 * radius));
}

/** Newton's method; the engine's own cube root may differ in the last bit. */
function cubeRoot(value: number): number {
  let root = Math.max(value, 1e-12) > 1 ? value : 1;
  for (let i = 0; i < 60; i++) root = (2 * root + value / (root * root)) / 3;
  return root;
}
