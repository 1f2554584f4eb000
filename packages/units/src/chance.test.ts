import { expect, test } from 'vitest';
import { Chance, exp, log, normalQuantile } from './chance.ts';

test('log and exp agree with the engine within two units in the last place', () => {
  const chance = new Chance(7);
  for (let i = 0; i < 20_000; i++) {
    const x = (chance.uniform() - 0.5) * 1400;
    expect(Math.abs(exp(x) / Math.exp(x) - 1)).toBeLessThan(5e-16);
    const y = Math.exp(x);
    expect(Math.abs(log(y) - Math.log(y))).toBeLessThanOrEqual(5e-16 * Math.max(1, Math.abs(x)));
  }
  expect([log(1), exp(0), log(0), exp(-800)]).toEqual([0, 1, Number.NEGATIVE_INFINITY, 0]);
});
test('a stream starts over and differs from its neighbours', () => {
  const draws = (seed: number, replication: number, stream: number) => {
    const chance = new Chance(seed, replication, stream);
    return Array.from({ length: 5 }, () => chance.next());
  };
  expect(draws(1, 2, 3)).toEqual(draws(1, 2, 3));
  expect(draws(1, 2, 3)).not.toEqual(draws(1, 3, 3));
  const chance = new Chance(9, 9, 9);
  chance.reseed(1, 2, 3);
  expect([chance.next(), chance.next()]).toEqual(draws(1, 2, 3).slice(0, 2));
});
test('normal quantile is odd about one half', () => {
  expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 14);
  for (const p of [1e-9, 0.01, 0.2, 0.5]) expect(normalQuantile(p)).toBeCloseTo(-normalQuantile(1 - p), p < 1e-6 ? 6 : 12);
});
