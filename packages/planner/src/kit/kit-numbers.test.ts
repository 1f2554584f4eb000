import { Chance, mean, money } from '@twistwright/units';
import { expect, test } from 'vitest';
import { binomialQuantile } from './binomial.ts';
import { breakEven, marginOfMarkUp, markUpOfMargin } from './break-even.ts';
import { coverageOf } from './coverage-of.ts';
import { poisson } from './kit-lasting.ts';
import { expectedUse } from './poisson.ts';

test('the examples in the comments', () => {
  expect(expectedUse(2, 1)).toBeCloseTo(0.8646647167633873, 14);
  expect(binomialQuantile(100, 0.1, 0.1)).toBe(6);
  expect(breakEven(money(2_000_000), money(40_000), money(25_000))?.wholeUnits).toBe(134);
  expect(marginOfMarkUp(0.5)).toBe(0.3333333333333333);
  expect(markUpOfMargin(0.6)).toBeCloseTo(1.5, 14);
  expect(
    coverageOf({ budget: 900, bags: [{ name: 'white 260', price: 800 }], figures: [{ name: 'swan', value: 5, anyOf: [['white 260']] }] })
      .ok,
  ).toBe(true);
});

test('expected use is the sum of tail chances, for small and for large demand', () => {
  // E[min(D, n)] = sum over j = 1..n of P(D >= j), with the Poisson weights written out.
  for (const [demand, pieces] of [
    [0.5, 3],
    [3, 3],
    [12, 10],
    [90, 100],
  ] as const) {
    let weight = Math.exp(-demand);
    let below = 0;
    let sum = 0;
    for (let j = 1; j <= pieces; j++) {
      below += weight;
      sum += 1 - below;
      weight *= demand / j;
    }
    expect(expectedUse(demand, pieces)).toBeCloseTo(sum, 9);
  }
  expect(expectedUse(1e6, 5)).toBe(5);
  expect(expectedUse(5, 1e6)).toBe(5);
  expect(expectedUse(40_000, 40_000)).toBeCloseTo(40_000 - Math.sqrt(40_000 / (2 * Math.PI)), 0);
});

test('poisson counts have the mean and variance of their law', () => {
  const chance = new Chance(4);
  const counts = Array.from({ length: 20_000 }, () => poisson(45, chance));
  const centre = mean(counts);
  expect(Math.abs(centre - 45)).toBeLessThan(4 * Math.sqrt(45 / 20_000));
  expect(mean(counts.map((count) => (count - centre) ** 2))).toBeCloseTo(45, -1);
});
