import { Chance } from '@twistwright/units';
import { expect, test } from 'vitest';
import { perfectMatching } from './perfect-matching.ts';

type Cost = (i: number, j: number) => number;

/** Least cost by trying every pairing, sets of paired ones remembered; infinite where nothing pairs all. */
function leastByTrying(count: number, cost: Cost): number {
  const known = new Map<number, number>();
  const from = (paired: number): number => {
    if (paired === 2 ** count - 1) return 0;
    const remembered = known.get(paired);
    if (remembered !== undefined) return remembered;
    let first = 0;
    while ((paired >> first) % 2 === 1) first++;
    let best = Number.POSITIVE_INFINITY;
    for (let other = first + 1; other < count; other++) {
      if ((paired >> other) % 2 === 0) best = Math.min(best, cost(first, other) + from(paired | (1 << first) | (1 << other)));
    }
    known.set(paired, best);
    return best;
  };
  return from(0);
}

function randomCost(count: number, range: number, missing: number, chance: Chance): Cost {
  const table = Array.from({ length: count * count }, () =>
    chance.uniform() < missing ? Number.POSITIVE_INFINITY : Math.floor(chance.uniform() * range),
  );
  return (i, j) => table[Math.min(i, j) * count + Math.max(i, j)] as number;
}

function costOf(partners: readonly number[], cost: Cost): number {
  let sum = 0;
  for (const [i, j] of partners.entries()) {
    expect(partners[j]).toBe(i);
    if (i < j) sum += cost(i, j);
  }
  return sum;
}

test('agrees with trying everything, many ties and missing pairs included', () => {
  const chance = new Chance(3);
  let impossible = 0;
  for (let round = 0; round < 1500; round++) {
    const count = 2 * (1 + Math.floor(chance.uniform() * 6));
    const cost = randomCost(count, [3, 10, 100_000][round % 3] as number, [0, 0.3, 0.6][round % 3] as number, chance);
    const least = leastByTrying(count, cost);
    if (Number.isFinite(least)) expect(costOf(perfectMatching(count, cost), cost)).toBe(least);
    else {
      impossible++;
      expect(() => perfectMatching(count, cost)).toThrow('can be paired');
    }
  }
  expect(impossible).toBeGreaterThan(20);
});

test('no two pairs of a large matching get cheaper by exchanging partners', () => {
  const chance = new Chance(4);
  const places = Array.from({ length: 120 }, () => [Math.floor(chance.uniform() * 10_000), Math.floor(chance.uniform() * 10_000)] as const);
  const cost: Cost = (i, j) =>
    Math.abs((places[i]?.[0] ?? 0) - (places[j]?.[0] ?? 0)) + Math.abs((places[i]?.[1] ?? 0) - (places[j]?.[1] ?? 0));
  const partners = perfectMatching(places.length, cost);
  for (const [i, j] of partners.entries()) {
    for (const [k, l] of partners.entries()) {
      if (k === i || k === j) continue;
      expect(cost(i, j) + cost(k, l)).toBeLessThanOrEqual(cost(i, k) + cost(j, l));
    }
  }
});

test('the example in the documentation', () => {
  expect(perfectMatching(4, (i, j) => Math.abs(i - j))).toEqual([1, 0, 3, 2]);
  expect(() => perfectMatching(3, () => 1)).toThrow('odd');
});
