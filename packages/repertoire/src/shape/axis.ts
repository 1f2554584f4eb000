import type { ShapeBubble } from './shape-of.ts';
import { along, minus, sizeOfVector, type Vector } from './vector.ts';

/** Rubber is let this far over the twist, in radii, so that two bubbles in a row look pressed together. */
const overTwist = 0.24;

/**
 * The line through the middle of the rubber itself, which a tube of the bubble's radius with round ends is drawn around: the bubble's
 * line without the bare twists at its ends. One point for a ball; two for a straight bubble; more for a curved one, to be joined smoothly.
 */
export function axisOf({ line, form, radius }: Pick<ShapeBubble, 'line' | 'form' | 'radius'>): readonly Vector[] {
  if (line.length < 2) return line;
  if (form === 'ball' || line.length === 3) return [line[1] as Vector];
  if (form === 'flat' || form === 'tail') return line;
  if (line.length === 4 && form !== 'bent') {
    const [from, one, two, to] = line as readonly [Vector, Vector, Vector, Vector];
    return [towards(one, from, radius * overTwist), towards(two, to, radius * overTwist)];
  }
  return shortened(shortened(line, radius * (1 - overTwist)).toReversed(), radius * (1 - overTwist)).toReversed();
}

/** A point moved towards another, but no further than straight on: necks that go sideways are not followed. */
function towards(point: Vector, other: Vector, inches: number): Vector {
  const distance = sizeOfVector(minus(other, point));
  return distance < 1e-9 ? point : along(point, other, Math.min(1, inches / distance));
}

/** Takes so many inches off the start of a line. */
function shortened(line: readonly Vector[], inches: number): readonly Vector[] {
  let left = inches;
  for (let i = 0; i + 1 < line.length; i++) {
    const [from, to] = [line[i] as Vector, line[i + 1] as Vector];
    const step = sizeOfVector(minus(to, from));
    if (step > left) return [along(from, to, left / step), ...line.slice(i + 1)];
    left -= step;
  }
  return [line.at(-1) as Vector];
}
