/** Middle and spread of simulated values: 10th, 50th and 90th percentile, mean, and the Monte-Carlo standard error of the mean. */
export interface Spread {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  readonly mean: number;
  /** Standard error of `mean` from the number of replications; 0 for a counted (not simulated) value. */
  readonly error: number;
}

/**
 * Percentile by linear interpolation between closest ranks, Hyndman and Fan type 7. `sorted` ascending and not empty; `share` 0 to 1.
 * @example percentile([1, 2, 3, 4], 0.5) // -> 2.5
 */
export function percentile(sorted: ArrayLike<number>, share: number): number {
  if (sorted.length === 0) throw new RangeError('percentile of nothing');
  const at = share * (sorted.length - 1);
  const below = Math.floor(at);
  const low = sorted[below] ?? 0;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] ?? low;
  return low + (high - low) * (at - below);
}

export function mean(values: ArrayLike<number>): number {
  let m = 0;
  for (let i = 0; i < values.length; i++) m += ((values[i] ?? 0) - m) / (i + 1);
  return m;
}

/** Sample standard deviation with n - 1, by Welford's update. Zero for fewer than two values. */
export function standardDeviation(values: ArrayLike<number>): number {
  let m = 0;
  let squares = 0;
  for (let i = 0; i < values.length; i++) {
    const step = (values[i] ?? 0) - m;
    m += step / (i + 1);
    squares += step * ((values[i] ?? 0) - m);
  }
  return values.length < 2 ? 0 : Math.sqrt(squares / (values.length - 1));
}

/** The spread of a non-empty list of simulated values. */
export function spreadOf(values: ArrayLike<number>): Spread {
  const sorted = Float64Array.from(values).sort();
  return {
    p10: percentile(sorted, 0.1),
    p50: percentile(sorted, 0.5),
    p90: percentile(sorted, 0.9),
    mean: mean(values),
    error: standardDeviation(values) / Math.sqrt(values.length),
  };
}
