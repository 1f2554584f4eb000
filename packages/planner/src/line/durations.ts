import { exp, keyed, keyedUniform, log, normalOf } from '@twistwright/units';
import { durationKind, type FlatDuration } from './prepared-line.ts';
import { purpose } from './purpose.ts';

/** A duration of any kind but gamma from one uniform, by inversion. */
export function vary(kind: number, first: number, second: number, u: number): number {
  if (kind === durationKind.logNormal) return exp(first + second * normalOf(u));
  if (kind === durationKind.exponential) return -log(u) * first;
  return first;
}
/** The minutes that a duration takes for whom `key` belongs to. */
export function drawn(duration: FlatDuration, key: number, what: number): number {
  return duration.kind === durationKind.gamma
    ? gammaOf(duration.second, keyed(key, what)) * (duration.first / duration.second)
    : vary(duration.kind, duration.first, duration.second, keyedUniform(key, what));
}

/**
 * A gamma with this shape and scale 1: G. Marsaglia and W. W. Tsang, "A simple method for generating gamma variables", ACM TOMS 26 (2000)
 * 363-372; below shape 1 by their power of a uniform. All its draws belong to `key`.
 */
export function gammaOf(shape: number, key: number): number {
  if (shape < 1) return gammaOf(shape + 1, keyed(key, purpose.group)) * exp(log(keyedUniform(key, purpose.size)) / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (let step = purpose.rejection; ; step += 2) {
    const x = normalOf(keyedUniform(key, step));
    const root = 1 + c * x;
    const v = root * root * root;
    if (v > 0 && log(keyedUniform(key, step + 1)) < 0.5 * x * x + d - d * v + d * log(v)) return d * v;
  }
}
