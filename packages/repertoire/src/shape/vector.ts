/** A point or direction in the figure's own frame, inches: x forward, y up, z to its right. */
export type Vector = readonly [number, number, number];

export const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times = (a: Vector, k: number): Vector => [a[0] * k, a[1] * k, a[2] * k];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const sizeOfVector = (a: Vector): number => Math.sqrt(dot(a, a));
export const along = (a: Vector, b: Vector, share: number): Vector => plus(a, times(minus(b, a), share));

/** The same direction with length 1, or undefined for a vector of no length. */
export function unit(a: Vector): Vector | undefined {
  const size = sizeOfVector(a);
  return size < 1e-9 ? undefined : times(a, 1 / size);
}

/** The part of `a` across `axis` (length 1), with length 1; undefined when they are parallel. */
export const across = (a: Vector, axis: Vector): Vector | undefined => unit(minus(a, times(axis, dot(a, axis))));

const halfTurn = Math.PI;
/** Sine and cosine of an angle in degrees by their series; only + - * /, so the same bits on every machine (error below 1e-12). */
export function turned(degrees: number): { readonly sine: number; readonly cosine: number } {
  const whole = degrees - 360 * Math.round(degrees / 360);
  const quarter = Math.round(whole / 90);
  const x = ((whole - 90 * quarter) * halfTurn) / 180;
  const q = x * x;
  const s = x * (1 - (q / 6) * (1 - (q / 20) * (1 - (q / 42) * (1 - (q / 72) * (1 - (q / 110) * (1 - q / 156))))));
  const c = 1 - (q / 2) * (1 - (q / 12) * (1 - (q / 30) * (1 - (q / 56) * (1 - (q / 90) * (1 - (q / 132) * (1 - q / 182))))));
  const turns = ((quarter % 4) + 4) % 4;
  if (turns === 1) return { sine: c, cosine: -s };
  if (turns === 2) return { sine: -s, cosine: -c };
  if (turns === 3) return { sine: -c, cosine: s };
  return { sine: s, cosine: c };
}

/** `a` turned about `axis` (length 1) by degrees, right-handed: O. Rodrigues' formula. */
export function rotated(a: Vector, axis: Vector, degrees: number): Vector {
  const { sine, cosine } = turned(degrees);
  return plus(plus(times(a, cosine), times(cross(axis, a), sine)), times(axis, dot(axis, a) * (1 - cosine)));
}
