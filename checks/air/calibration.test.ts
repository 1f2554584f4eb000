/**
 * Eight schools: D. B. Rubin, "Estimation in parallel randomized experiments", Journal of Educational Statistics 6 (1981) 377-401, as in
 * Gelman, Carlin, Stern, Dunson, Vehtari and Rubin, Bayesian Data Analysis, section 5.5, table 5.2. Two forms of the data are in print: rounded
 * (pooled estimate 7.7, variance 16.6) and to four figures (7.9 and 17.4); both results as reported by J. Keirstead, 15 November 2011,
 * http://www.jameskeirstead.ca/r/grrr/. Normal groups with known variances, the model by which balloon makers are told apart.
 */
import { poolNormal } from '@twistwright/repertoire';
import { describe, expect, test } from 'vitest';

const schools = (values: readonly number[], sds: readonly number[]) =>
  values.map((value, index) => ({ group: String(index), value, variance: (sds[index] ?? 0) ** 2 }));
const rounded = schools([28, 8, -3, 7, -1, 1, 18, 12], [15, 10, 16, 11, 9, 11, 10, 18]);
const fourFigures = schools([28.39, 7.94, -2.75, 6.82, -0.64, 0.63, 18.01, 12.16], [14.9, 10.2, 16.3, 11, 9.4, 11.4, 10.4, 17.6]);
const flat = { mean: 0, variance: Number.POSITIVE_INFINITY };

describe('eight schools', () => {
  test.each([
    { data: rounded, mean: 7.7, variance: 16.6 },
    { data: fourFigures, mean: 7.9, variance: 17.4 },
  ])('no difference between schools: $mean, variance $variance for each of them', ({ data, mean, variance }) => {
    for (const { group } of data) {
      const pooled = poolNormal(flat, 0, data, group);
      expect(pooled.mean).toBeCloseTo(mean, 1);
      expect(pooled.variance).toBeCloseTo(variance, 1);
    }
  });
  test('schools that have nothing in common: each estimate by itself', () => {
    for (const { group, value, variance } of rounded) {
      const pooled = poolNormal(flat, 1e12, rounded, group);
      expect(pooled.mean).toBeCloseTo(value, 6);
      expect(pooled.variance).toBeCloseTo(variance, 4);
    }
  });
  test('between the two the estimates keep their order and lie between their own and the pooled one, as figure 5.6 shows', () => {
    const middle = poolNormal(flat, 0, rounded, '0').mean;
    for (const { group, value } of rounded) {
      const { mean } = poolNormal(flat, 100, rounded, group);
      expect(Math.sign(mean - middle) === Math.sign(value - middle) || Math.abs(value - middle) < 1).toBe(true);
      expect(Math.abs(mean - value)).toBeLessThan(Math.abs(middle - value) + 1);
    }
  });
});
