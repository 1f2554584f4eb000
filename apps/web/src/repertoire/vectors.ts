import type { Vector } from '@twistwright/repertoire';

export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const scaled = (a: Vector, by: number): Vector => [a[0] * by, a[1] * by, a[2] * by];
export const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const sizeOf = (a: Vector): number => Math.sqrt(dot(a, a));

/** The same direction with length 1, or another where there is none. */
export function unit(a: Vector, instead: Vector): Vector {
  const size = sizeOf(a);
  return size < 1e-9 ? instead : scaled(a, 1 / size);
}

/** The part of `a` across `axis` (length 1), with length 1. */
export const across = (a: Vector, axis: Vector, instead: Vector): Vector => unit(minus(a, scaled(axis, dot(a, axis))), instead);

/** Some direction across another. */
export const aside = (axis: Vector): Vector => across(Math.abs(axis[1]) < 0.9 ? [0, 1, 0] : [1, 0, 0], axis, [0, 0, 1]);

/** A step of a rounded line turns by about this much, radians; no stretch has more steps than this. */
const turnStep = 0.16;
const mostSteps = 8;

/** A bent line with its corners rounded: Catmull-Rom through its points, in steps so short that the corners are not seen. */
export function rounded(points: readonly Vector[]): readonly Vector[] {
  if (points.length <= 2) return points;
  const at = (index: number): Vector => points[Math.max(0, Math.min(points.length - 1, index))] as Vector;
  const turnAt = (index: number): number => {
    const [before, after] = [unit(minus(at(index), at(index - 1)), [0, 0, 0]), unit(minus(at(index + 1), at(index)), [0, 0, 0])];
    return Math.acos(Math.max(-1, Math.min(1, dot(before, after) || 1)));
  };
  const line: Vector[] = [];
  for (let k = 0; k < points.length - 1; k++) {
    const steps = Math.max(1, Math.min(mostSteps, Math.ceil((turnAt(k) + turnAt(k + 1)) / 2 / turnStep)));
    for (let step = 0; step < steps; step++) line.push(between(at(k - 1), at(k), at(k + 1), at(k + 2), step / steps));
  }
  return [...line, at(points.length - 1)];
}
function between(a: Vector, b: Vector, c: Vector, d: Vector, t: number): Vector {
  const axis = (k: 0 | 1 | 2): number =>
    0.5 *
    (2 * b[k] + (c[k] - a[k]) * t + (2 * a[k] - 5 * b[k] + 4 * c[k] - d[k]) * t * t + (3 * b[k] - a[k] - 3 * c[k] + d[k]) * t * t * t);
  return [axis(0), axis(1), axis(2)];
}

/** The point of a line that is nearest to another point. */
export function nearestOn(line: readonly Vector[], point: Vector): Vector {
  let best = line[0] as Vector;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < line.length; k++) {
    const [from, to] = [line[k] as Vector, (line[k + 1] ?? line[k]) as Vector];
    const way = minus(to, from);
    const share = Math.max(0, Math.min(1, dot(minus(point, from), way) / Math.max(dot(way, way), 1e-12)));
    const place = plus(from, scaled(way, share));
    const off = minus(point, place);
    if (dot(off, off) < least) [best, least] = [place, dot(off, off)];
  }
  return best;
}
