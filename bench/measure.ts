/** One row of the benchmark page. */
export interface Measured {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  /** The figure aimed at, in words: "at most 1.5". */
  readonly goal?: string;
  readonly met?: boolean;
}

/** Middle of a non-empty list. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? Number.NaN;
}
/** Milliseconds of each of `times` runs, the first `warm` ones thrown away. */
export async function millisecondsOf(times: number, work: () => unknown, warm = 1): Promise<readonly number[]> {
  const measured: number[] = [];
  for (let i = 0; i < times + warm; i++) {
    const started = performance.now();
    await work();
    if (i >= warm) measured.push(performance.now() - started);
  }
  return measured;
}
/** 95th percentile of a non-empty list. */
export function percentile95(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.ceil(0.95 * sorted.length) - 1] ?? Number.NaN;
}
