import { Chance } from '@twistwright/units';
import { describe, expect, test } from 'vitest';
import { eulerTrails } from './euler-trails.ts';
import { exactTrails } from './exact-trails.ts';
import { hubTrails } from './hub-trails.ts';
import { connectedParts, type Network, networkOf, oddJoints, partOf } from './network.ts';
import { balloonsBySum } from './trails-by-sum.ts';

function randomPart(joints: number, edges: number, chance: Chance, decimals: number): Network {
  const network = networkOf({
    joints: Array.from({ length: joints }, (_, index) => ({ name: `${index}` })),
    edges: Array.from({ length: edges }, () => ({
      from: `${Math.floor(chance.uniform() * joints)}`,
      to: `${Math.floor(chance.uniform() * joints)}`,
      lengthInches: Number((2 + 6 * chance.uniform()).toFixed(decimals)),
    })),
  });
  if (network === undefined) throw new Error('a random frame that is not in order');
  return partOf(network, connectedParts(network)[0] ?? []);
}

const totalOf = (part: Network): number => part.lengths.reduce((sum, length) => sum + length, 0);
const subset = (part: Network, set: number): Network =>
  partOf(
    part,
    Array.from({ length: part.edgeCount }, (_, edge) => edge).filter((edge) => Math.floor(set / 2 ** edge) % 2 === 1),
  );

test('balloons by sum are exactly the sets of edges that can be one balloon, each once', () => {
  const chance = new Chance(31);
  let listed = 0;
  for (let round = 0; round < 60; round++) {
    const part = randomPart(2 + (round % 5), 9, chance, 1);
    const among = Array.from({ length: part.edgeCount }, (_, edge) => edge);
    const demand = { through: 0, among, least: 0.2 * totalOf(part), most: 0.6 * totalOf(part), oddLeft: 4 };
    const expected: number[] = [];
    for (let set = 1; set < 2 ** part.edgeCount; set += 2) {
      const inside = subset(part, set);
      const left = partOf(
        part,
        among.filter((edge) => (set >> edge) % 2 === 0),
      );
      const fits = totalOf(inside) >= demand.least && totalOf(inside) <= demand.most && oddJoints(left).length <= demand.oddLeft;
      if (fits && connectedParts(inside).length === 1 && eulerTrails(inside).length === 1) expected.push(set);
    }
    const found = [...balloonsBySum(part, demand, { left: 1e9 })];
    expect(found.toSorted((a, b) => a - b)).toEqual(expected);
    listed += expected.length;
  }
  expect(listed).toBeGreaterThan(500);
});

describe('the complete search', () => {
  test('finds orders that were cut out beforehand, nothing to spare', () => {
    const chance = new Chance(32);
    for (let round = 0; round < 20; round++) {
      const part = randomPart(5, 13, chance, 1);
      const whole = eulerTrails(part);
      const capacity = Math.max(...whole.map((walk) => walk.reduce((sum, end) => sum + (part.lengths[end >> 1] as number), 0)));
      const answer = exactTrails(part, capacity, whole.length, { left: 1e8 });
      expect(answer.outcome).toBe('walks');
    }
  });

  test('says that it was stopped rather than that there is none', () => {
    const part = randomPart(3, 40, new Chance(33), 6);
    const answer = exactTrails(part, Math.ceil(totalOf(part) / 5), 5, { left: 5000 });
    expect(answer.outcome).toBe('unknown');
  });

  test('proves by sums what following edges could not in time', () => {
    const part = randomPart(2, 24, new Chance(34), 6);
    const answer = exactTrails(part, Math.ceil(totalOf(part) / 3), 3, { left: 1e8 });
    expect(answer.outcome).toBe('none');
  });
});

test('loops at one hub agree with the complete search over trails', () => {
  const chance = new Chance(35);
  const outcomes = new Set<string>();
  for (let round = 0; round < 150; round++) {
    const part = randomPart(1, 12, chance, 0);
    const capacity = Math.ceil(totalOf(part) / 4 / 1e6) * 1e6;
    const [hub, trails] = [hubTrails(part, capacity, 4, 1e6), exactTrails(part, capacity, 4, { left: 1e8 })];
    expect(hub.outcome).toBe(trails.outcome);
    outcomes.add(hub.outcome);
  }
  expect(outcomes).toEqual(new Set(['walks', 'none']));
});
