// NIST Statistical Reference Datasets, univariate summary statistics: NumAcc1, NumAcc2, NumAcc3 (https://www.itl.nist.gov/div898/strd/), certified values.
// NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.6.2, percentiles: the twelve measurements there.
import { mean, percentile, standardDeviation } from '@twistwright/units';
import { describe, expect, test } from 'vitest';

/** Correct significant digits, the measure that the reference data sets are meant for. */
const correctDigits = (found: number, certified: number): number =>
  found === certified ? 15 : -Math.log10(Math.abs(found - certified) / Math.abs(certified));
const alternating = (first: number, low: number, high: number): readonly number[] => [
  first,
  ...Array.from({ length: 1000 }, (_, index) => (index % 2 === 0 ? low : high)),
];

describe.each([
  ['NumAcc1', [10_000_001, 10_000_003, 10_000_002], 10_000_002, 1, 15, 15],
  ['NumAcc2', alternating(1.2, 1.1, 1.3), 1.2, 0.1, 14, 13],
  ['NumAcc3', alternating(1_000_000.2, 1_000_000.1, 1_000_000.3), 1_000_000.2, 0.1, 14, 9],
])('%s', (_, values, certifiedMean, certifiedDeviation, meanDigits, deviationDigits) => {
  test(`mean to ${meanDigits} digits`, () => {
    expect(correctDigits(mean(values), certifiedMean)).toBeGreaterThanOrEqual(meanDigits);
  });
  test(`standard deviation to ${deviationDigits} digits (the data themselves are rounded)`, () => {
    expect(correctDigits(standardDeviation(values), certifiedDeviation)).toBeGreaterThanOrEqual(deviationDigits);
  });
});

describe('percentiles of the twelve measurements', () => {
  const sorted = [95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.061, 95.1591, 95.1195, 95.1065, 95.0925, 95.199, 95.1682].sort(
    (a, b) => a - b,
  );
  test('ours is type 7 of Hyndman and Fan: 95.19568 (computed)', () => {
    expect(percentile(sorted, 0.9)).toBeCloseTo(95.19568, 9);
  });
  test("the handbook's, type 6 with p (n + 1) = 11.7, is 95.1981: it lies between the same two measurements, further up", () => {
    const [low = 0, high = 0] = sorted.slice(10);
    expect(low + 0.7 * (high - low)).toBeCloseTo(95.19807, 9);
    expect(percentile(sorted, 0.9)).toBeLessThan(95.1981);
    expect(percentile(sorted, (11.7 - 1) / 11)).toBeCloseTo(95.19807, 9);
  });
});
