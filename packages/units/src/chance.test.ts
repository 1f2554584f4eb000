import { expect, test } from 'vitest';
import { Chance, exp, keyed, keyedUniform, log, normalOf, normalQuantile } from './chance.ts';

test('log and exp agree with the engine within two units in the last place', () => {
  const chance = new Chance(7);
  for (let i = 0; i < 20_000; i++) {
    const x = (chance.uniform() - 0.5) * 1400;
    expect(Math.abs(exp(x) / Math.exp(x) - 1)).toBeLessThan(5e-16);
    const y = Math.exp(x);
    expect(Math.abs(log(y) - Math.log(y))).toBeLessThanOrEqual(5e-16 * Math.max(1, Math.abs(x)));
  }
  expect([log(1), exp(0), log(0), exp(-800)]).toEqual([0, 1, Number.NEGATIVE_INFINITY, 0]);
  expect([log(-1), log(Number.NaN), exp(Number.NaN)]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
  expect([log(Number.POSITIVE_INFINITY), exp(Number.POSITIVE_INFINITY), exp(Number.NEGATIVE_INFINITY)]).toEqual([
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    0,
  ]);
  for (const x of [-740, -720, -708.5, 708.5, 709.5]) expect(exp(x) / Math.exp(x)).toBeCloseTo(1, 12);
  expect(log(5e-324)).toBeCloseTo(-744.4400719213812, 10);
});
test('close to one the logarithm keeps its digits', () => {
  const chance = new Chance(8);
  for (let i = 0; i < 20_000; i++) {
    const x = 0.9 + 0.2 * chance.uniform();
    expect(Math.abs(log(x) / Math.log(x) - 1)).toBeLessThan(5e-16);
  }
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
  const filled = new Float64Array(3);
  chance.fill(filled);
  expect([...filled]).toEqual(
    draws(1, 2, 3)
      .slice(2)
      .map((draw) => (draw + 0.5) / 2 ** 32),
  );
});
test('normal quantile is odd about one half', () => {
  expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 14);
  for (const p of [1e-9, 0.01, 0.2, 0.5]) expect(normalQuantile(p)).toBeCloseTo(-normalQuantile(1 - p), p < 1e-6 ? 6 : 12);
});
test('a normal from a draw is the normal quantile of that draw', () => {
  const chance = new Chance(5);
  for (let i = 0; i < 20_000; i++) {
    const draw = i < 64 ? i : i < 128 ? 2 ** 32 - i + 63 : chance.next() >>> (i % 3 === 0 ? i % 31 : 0);
    const exact = normalQuantile((draw + 0.5) / 2 ** 32);
    expect(Math.abs(normalOf((draw + 0.5) / 2 ** 32) - exact)).toBeLessThanOrEqual(2e-15 * Math.abs(exact));
  }
});
test('what belongs to a key and a purpose is spread evenly and never changes', () => {
  expect([keyed(1, 2), keyed(1, 3), keyed(2, 2)]).toEqual([keyed(1, 2), keyed(1, 3), keyed(2, 2)]);
  const counts = new Array<number>(16).fill(0);
  for (let key = 0; key < 4000; key++)
    for (let purpose = 0; purpose < 4; purpose++) {
      const cell = Math.floor(keyedUniform(key, purpose) * 16);
      counts[cell] = (counts[cell] ?? 0) + 1;
    }
  const chiSquare = counts.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
  expect(chiSquare).toBeLessThan(30.58); // chi-square with 15 degrees of freedom, 1 % point
});
