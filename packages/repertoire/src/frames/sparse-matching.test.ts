import { Chance } from '@twistwright/units';
import { expect, test } from 'vitest';
import { type CostedPairs, sparseMatching } from './sparse-matching.ts';

/** Least cost of pairs plus prices of those alone, by trying everything, sets of vertices done with remembered. */
function leastByTrying({ count, from, to, costs }: CostedPairs, price: number): number {
  const table = new Map<number, number>();
  for (let pair = 0; pair < costs.length; pair++) {
    for (const key of [(from[pair] as number) * count + (to[pair] as number), (to[pair] as number) * count + (from[pair] as number)])
      table.set(key, Math.min(table.get(key) ?? Number.POSITIVE_INFINITY, costs[pair] as number));
  }
  const known = new Map<number, number>();
  const rest = (done: number): number => {
    if (done === 2 ** count - 1) return 0;
    const remembered = known.get(done);
    if (remembered !== undefined) return remembered;
    let first = 0;
    while ((done >> first) % 2 === 1) first++;
    let best = price / 2 + rest(done | (1 << first));
    for (let other = first + 1; other < count; other++) {
      const cost = table.get(first * count + other);
      if (cost !== undefined && (done >> other) % 2 === 0) best = Math.min(best, cost + rest(done | (1 << first) | (1 << other)));
    }
    known.set(done, best);
    return best;
  };
  return rest(0);
}

function randomPairs(count: number, pairs: number, range: number, chance: Chance): CostedPairs {
  const pick = (below: number) => Math.floor(chance.uniform() * below);
  const from = Array.from({ length: pairs }, () => pick(count));
  const to = from.map((vertex) => (vertex + 1 + pick(count - 1)) % count);
  return { count, from, to, costs: from.map(() => pick(range)) };
}

function checked(pairs: CostedPairs, price: number): number {
  const { partners, cost, alone, least } = sparseMatching(pairs, price, { left: 1e9 });
  for (const [vertex, partner] of partners.entries()) if (partner !== -1) expect(partners[partner]).toBe(vertex);
  expect(partners.filter((partner) => partner === -1)).toHaveLength(alone);
  expect(least).toBe(cost);
  return alone === 0 ? cost : cost + (alone * price) / 2;
}

test('agrees with trying everything, with prices from nothing to prohibitive', () => {
  const chance = new Chance(51);
  for (let round = 0; round < 4000; round++) {
    const count = 2 + Math.floor(chance.uniform() * 10);
    const range = [3, 10, 100_000][round % 3] as number;
    const pairs = randomPairs(count, Math.floor(chance.uniform() * 4 * count), range, chance);
    const price = Math.floor(chance.uniform() * 3 * range);
    expect(checked(pairs, price)).toBe(leastByTrying(pairs, price));
  }
});

test('pairs all where the price is infinite', () => {
  const chance = new Chance(52);
  let impossible = 0;
  for (let round = 0; round < 3000; round++) {
    const count = 2 * (1 + Math.floor(chance.uniform() * 6));
    const pairs = randomPairs(count, Math.floor(chance.uniform() * 5 * count), [3, 10, 100_000][round % 3] as number, chance);
    const least = leastByTrying(pairs, Number.POSITIVE_INFINITY);
    if (Number.isFinite(least)) expect(checked(pairs, Number.POSITIVE_INFINITY)).toBe(least);
    else {
      impossible++;
      expect(() => checked(pairs, Number.POSITIVE_INFINITY)).toThrow('pair all');
    }
  }
  expect(impossible).toBeGreaterThan(20);
});

test('what is proven of a large one equals what it costs', () => {
  const chance = new Chance(53);
  const pairs = randomPairs(1200, 9600, 1_000_000, chance);
  for (const price of [0, 30_000, 200_000, 2_000_000]) checked(pairs, price);
});

test('stopped early, what is proven stays below what is best', () => {
  const pairs = randomPairs(400, 3200, 1000, new Chance(54));
  const best = sparseMatching(pairs, 600, { left: 1e9 });
  for (const left of [1, 500, 2000, 5000]) {
    const stopped = sparseMatching(pairs, 600, { left });
    expect(stopped.least + 300 * stopped.alone).toBeLessThanOrEqual(best.cost + 300 * best.alone);
  }
});
