import type { Finishing } from '../recipe.ts';
import { axisOf } from '../shape/axis.ts';
import type { Shape, ShapeBubble } from '../shape/shape-of.ts';
import { across, along, cross, dot, minus, plus, rotated, sizeOfVector, times, unit, type Vector } from '../shape/vector.ts';

/** Something drawn on the rubber: where, which way the rubber faces there, and how large it is in inches. */
export interface Mark {
  readonly kind: 'eye' | 'nose' | 'nostrils' | 'smile' | 'spot' | 'black spot' | 'heart' | 'star' | 'whiskers' | 'cheek' | 'stripe';
  readonly at: Vector;
  readonly normal: Vector;
  /** Along the rubber, what is up for the mark. A stripe goes round its `normal`, with `at` in the middle of the bubble and `inches` its width. */
  readonly upright: Vector;
  readonly inches: number;
  /** Index of the bubble it is on. */
  readonly bubble: number;
}

const forward: Vector = [1, 0, 0];
const up: Vector = [0, 1, 0];
const right: Vector = [0, 0, 1];

/** Marks of a finishing with a pen or stickers; what is not understood is left to the sentence in the steps. */
export function marksOf(finishing: readonly Finishing[], shape: Shape): readonly Mark[] {
  const drawn = finishing.flatMap(({ with: tool, what, on }) =>
    tool === 'stick' ? [] : marksFor(what.toLowerCase(), on?.toLowerCase(), shape),
  );
  const printed = shape.bubbles.flatMap((bubble, index) =>
    bubble.print === undefined ? [] : printedMarks(bubble.print.toLowerCase(), bubble, index),
  );
  return [...drawn, ...printed];
}

function marksFor(what: string, on: string | undefined, shape: Shape): readonly Mark[] {
  const targets = shape.bubbles.flatMap((bubble, index) => (bubble.line.length > 0 && isTarget(bubble, on) ? [index] : []));
  const chosen = targets.length > 0 ? targets : headOf(shape);
  const first = chosen[0];
  if (first === undefined) return [];
  const each = (make: (bubble: ShapeBubble, index: number) => readonly Mark[]): readonly Mark[] =>
    chosen.flatMap((index) => make(shape.bubbles[index] as ShapeBubble, index));
  const marks: Mark[] = [];
  if (/\beye|face|pupil/u.test(what))
    marks.push(...(chosen.length === 2 && !curved(shape, first) ? each(oneEye) : twoEyes(shape.bubbles[first] as ShapeBubble, first)));
  if (/nose/u.test(what)) marks.push(...each(nose).slice(0, 1));
  if (/nostril/u.test(what)) marks.push(...each(nostrils).slice(0, 1));
  if (/smile|mouth|face/u.test(what)) marks.push(...each(smile).slice(0, 1));
  if (/whisker/u.test(what)) marks.push(...each(whiskers).slice(0, 1));
  if (/spot|dot|freckle|seed/u.test(what))
    marks.push(...each(spots).map((one): Mark => (/black/u.test(what) ? { ...one, kind: 'black spot', inches: 1.25 * one.inches } : one)));
  if (/stripe|band/u.test(what)) marks.push(...each(stripes));
  if (/cheek/u.test(what)) marks.push(...each(twoEyes).map((mark): Mark => ({ ...mark, kind: 'cheek' })));
  return marks;
}

const curved = (shape: Shape, index: number): boolean => (shape.bubbles[index]?.line.length ?? 0) > 4;

const isTarget = (bubble: ShapeBubble, on: string | undefined): boolean => on !== undefined && bubble.label?.toLowerCase() === on;

function headOf(shape: Shape): readonly number[] {
  for (const word of ['face', 'head', 'muzzle', 'nose']) {
    const found = shape.bubbles.findIndex((bubble) => bubble.line.length > 0 && bubble.label?.toLowerCase().includes(word));
    if (found >= 0) return [found];
  }
  return shape.bubbles.length > 0 ? [0] : [];
}

/** Where a bubble is and how it lies. */
function lieOf(bubble: ShapeBubble): {
  readonly start: Vector;
  readonly end: Vector;
  readonly middle: Vector;
  readonly axis: Vector | undefined;
  readonly length: number;
} {
  const { line, form } = bubble;
  const half = line.length >> 1;
  // Of a curved bubble, the stretch around its middle.
  const inner = line.length > 4 ? line.slice(half - 1, half + 2) : line.length > 2 ? line.slice(1, -1) : line;
  const [start, end] = [inner[0] as Vector, inner.at(-1) as Vector];
  const middle = line.length > 4 ? (line[line.length >> 1] as Vector) : along(start, end, 0.5);
  const span = minus(end, start);
  const axis = form === 'ball' ? undefined : (unit(span) ?? unit(minus(line.at(-1) as Vector, line[0] as Vector)));
  return { start, end, middle, axis, length: sizeOfVector(span) };
}

const isRound = (bubble: ShapeBubble): boolean =>
  bubble.form === 'ball' ||
  bubble.form === 'round' ||
  bubble.form === 'heart' ||
  (bubble.line.length <= 4 && lieOf(bubble).length < 1.1 * bubble.radius);

function oneEye(bubble: ShapeBubble, index: number): readonly Mark[] {
  const { middle, axis } = lieOf(bubble);
  const front = bubble.facing ?? forward;
  const normal = isRound(bubble) || axis === undefined ? front : (across(front, axis) ?? front);
  return [mark('eye', index, middle, normal, bubble.radius, 0.5)];
}

function twoEyes(bubble: ShapeBubble, index: number): readonly Mark[] {
  const { start, end, middle, axis, length } = lieOf(bubble);
  const { radius } = bubble;
  const front = bubble.facing ?? forward;
  if (isRound(bubble) || axis === undefined) {
    const sideways = across(cross(up, front), front) ?? right;
    return [-1, 1].map((k) => mark('eye', index, middle, blend(front, up, 0.28, sideways, 0.42 * k), radius, 0.27));
  }
  if (Math.abs(dot(axis, front)) < 0.62) {
    const normal = across(plus(front, times(up, 0.35)), axis) ?? front;
    if (Math.abs(dot(axis, up)) < 0.6) {
      const apart = Math.max(0.3 * length, 0.42 * radius);
      return [-1, 1].map((k) => mark('eye', index, plus(middle, times(axis, k * apart)), normal, radius, 0.3));
    }
    const top = dot(axis, up) > 0 ? along(start, end, 0.8) : along(start, end, 0.2);
    const sideways = across(cross(up, front), axis) ?? right;
    return [-1, 1].map((k) => mark('eye', index, top, blend(normal, axis, 0, sideways, 0.55 * k), radius, 0.3));
  }
  // The bubble points where the figure looks: eyes on either side of it, towards the back.
  const back = dot(axis, front) > 0 ? along(start, end, 0.3) : along(start, end, 0.7);
  const top = across(up, axis) ?? up;
  const sideways = across(right, axis) ?? right;
  return [-1, 1].map((k) => mark('eye', index, back, blend(top, axis, 0, sideways, 1.15 * k), radius, 0.3));
}

function nose(bubble: ShapeBubble, index: number): readonly Mark[] {
  const { start, end, middle, axis } = lieOf(bubble);
  const front = bubble.facing ?? forward;
  const ahead = axis !== undefined && !isRound(bubble) && Math.abs(dot(axis, front)) > 0.62;
  const tip = ahead ? (dot(axis, front) > 0 ? end : start) : middle;
  const normal = ahead || axis === undefined || isRound(bubble) ? front : (across(front, axis) ?? front);
  return [mark('nose', index, tip, normal, bubble.radius, 0.36)];
}

function nostrils(bubble: ShapeBubble, index: number): readonly Mark[] {
  return nose(bubble, index).map((one) => ({ ...one, kind: 'nostrils', inches: one.inches * 1.6 }));
}

function smile(bubble: ShapeBubble, index: number): readonly Mark[] {
  const { middle, axis } = lieOf(bubble);
  const front = bubble.facing ?? forward;
  const normal =
    isRound(bubble) || axis === undefined ? blend(front, up, -0.4, right, 0) : (across(plus(front, times(up, -0.5)), axis) ?? front);
  return [mark('smile', index, middle, normal, bubble.radius, 0.5)];
}

function whiskers(bubble: ShapeBubble, index: number): readonly Mark[] {
  return nose(bubble, index).map((one) => ({ ...one, kind: 'whiskers', inches: one.inches * 2.8 }));
}

function spots(bubble: ShapeBubble, index: number): readonly Mark[] {
  const { line, radius } = bubble;
  if (line.length === 3) return roundSpots(line[1] as Vector, radius, index);
  const inner = line.length > 3 ? line.slice(1, -1) : line;
  const [start, end] = [inner[0] as Vector, inner.at(-1) as Vector];
  const axis = unit(minus(end, start)) ?? forward;
  const count = Math.max(2, Math.round(bubble.length / (1.5 * radius)));
  const top = across(up, axis) ?? across(forward, axis) ?? up;
  // A spiral of spots, each a little less than half a turn on from the one before, so that every side shows some.
  const spiral = Array.from({ length: Math.min(count, 12) }, (_, k) => {
    const place =
      line.length > 4 ? (inner[Math.round(((k + 0.5) / count) * (inner.length - 1))] as Vector) : along(start, end, (k + 0.5) / count);
    return [0, 150, 270].map((turn) => mark('spot', index, place, rotated(top, axis, 65 * k + turn), radius, 0.42));
  });
  return spiral.flat().slice(0, 36);
}

function stripes(bubble: ShapeBubble, index: number): readonly Mark[] {
  const inner = axisOf(bubble);
  const [start, end] = [inner[0] as Vector, inner.at(-1) as Vector];
  const { radius } = bubble;
  const straight = unit(minus(end, start));
  const count = Math.min(8, Math.max(2, Math.round(sizeOfVector(minus(end, start)) / (1.1 * radius))));
  return Array.from({ length: count }, (_, k): Mark => {
    const share = (k + 0.5) / count;
    const place = Math.min(inner.length - 2, Math.floor(share * (inner.length - 1)));
    const axis = (inner.length > 2 ? unit(minus(inner[place + 1] as Vector, inner[place] as Vector)) : straight) ?? up;
    const at = inner.length > 2 ? (inner[place] as Vector) : along(start, end, share);
    return { kind: 'stripe', bubble: index, at, normal: axis, upright: across(up, axis) ?? forward, inches: 0.42 * radius };
  });
}

const around: readonly Vector[] = [
  [0.9, 0.35, -0.25],
  [0.2, 0.8, -0.55],
  [-0.1, 0.9, 0.45],
  [0.35, 0.1, -0.93],
  [-0.6, 0.35, -0.72],
  [0.62, 0.5, 0.6],
  [-0.85, 0.5, 0.1],
  [0.1, -0.35, -0.93],
  [0.5, 0.85, 0.1],
  [0.72, -0.3, -0.62],
  [0.62, -0.45, 0.3],
];

function roundSpots(middle: Vector, radius: number, index: number): readonly Mark[] {
  return around.map((side) => mark('spot', index, middle, unit(side) ?? up, radius, 0.3));
}

/** What is printed on a balloon as it is bought. */
function printedMarks(print: string, bubble: ShapeBubble, index: number): readonly Mark[] {
  const marks: Mark[] = [];
  if (/eye|face/u.test(print)) marks.push(...twoEyes(bubble, index));
  if (/smile|face/u.test(print)) marks.push(...smile(bubble, index));
  if (/dot|spot/u.test(print)) marks.push(...spots(bubble, index));
  if (/stripe|band/u.test(print)) marks.push(...stripes(bubble, index));
  for (const kind of ['heart', 'star'] as const)
    if (print.includes(kind)) marks.push(...spots(bubble, index).map((one): Mark => ({ ...one, kind, inches: 1.2 * one.inches })));
  return marks;
}

function blend(a: Vector, b: Vector, shareB: number, c: Vector, shareC: number): Vector {
  return unit(plus(a, plus(times(b, shareB), times(c, shareC)))) ?? a;
}

function mark(kind: Mark['kind'], bubble: number, middle: Vector, normal: Vector, radius: number, share: number): Mark {
  return { kind, bubble, at: plus(middle, times(normal, radius)), normal, upright: across(up, normal) ?? forward, inches: radius * share };
}
