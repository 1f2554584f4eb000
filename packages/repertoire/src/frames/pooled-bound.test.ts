import { Chance } from '@twistwright/units';
import { expect, test } from 'vitest';
import { connectedParts, type Network, networkOf, partOf } from './network.ts';
import { pooledBound, tightestBound } from './pooled-bound.ts';
import { putTogether } from './putting-together.ts';

function randomPart(joints: number, edges: number, chance: Chance): Network {
  const network = networkOf({
    joints: Array.from({ length: joints }, (_, index) => ({ name: `${index}` })),
    edges: Array.from({ length: edges }, () => ({
      from: `${Math.floor(chance.uniform() * joints)}`,
      to: `${Math.floor(chance.uniform() * joints)}`,
      lengthInches: 1 + Math.floor(9 * chance.uniform()),
    })),
  });
  if (network === undefined) throw new Error('a random frame that is not in order');
  return partOf(network, connectedParts(network)[0] ?? []);
}

/** Rubber, and the price of each odd joint, for every choice of edges that are made once more. */
function leastByTrying(part: Network, price: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let twice = 0; twice < 2 ** part.edgeCount; twice++) {
    const ends = new Int32Array(part.jointCount);
    let cost = 0;
    for (const [edge, length] of part.lengths.entries()) {
      const times = 1 + ((twice >> edge) % 2);
      cost += times * length;
      for (const end of [2 * edge, 2 * edge + 1]) {
        const joint = part.jointOfEnd[end] as number;
        ends[joint] = (ends[joint] as number) + times;
      }
    }
    least = Math.min(least, cost + price * ends.filter((count) => count % 2 === 1).length);
  }
  return least;
}

test('rubber and ends of a part, against every choice of pops', () => {
  const chance = new Chance(51);
  for (let round = 0; round < 120; round++) {
    const part = randomPart(2 + (round % 7), 8, chance);
    const price = Math.floor(8e6 * chance.uniform());
    const bound = pooledBound(part, putTogether(part), price);
    expect(bound.whole).toBe(leastByTrying(part, price));
    expect(bound.outside[0]?.[0]).toBe(bound.whole);
  }
});

test('the price that says most is found', () => {
  const chance = new Chance(52);
  for (let round = 0; round < 20; round++) {
    const part = randomPart(7, 9, chance);
    const steps = putTogether(part);
    const said = (price: number) => pooledBound(part, steps, price).whole - 2 * price;
    const best = tightestBound(part, steps, 1, 30e6);
    for (let price = 0; price <= 30e6; price += 5e5) expect(said(best.price)).toBeGreaterThanOrEqual(said(price));
  }
});

test('a tree is put together with one joint open at a time, a ring with two, a grid of four by four with four', () => {
  const placesOf = (pairs: readonly (readonly [number, number])[]) => {
    const names = [...new Set(pairs.flat())];
    const network = networkOf({
      joints: names.map((name) => ({ name: `${name}` })),
      edges: pairs.map(([from, to]) => ({ from: `${from}`, to: `${to}`, lengthInches: 1 })),
    });
    return putTogether(network as Network).places - 1;
  };
  expect(placesOf(Array.from({ length: 40 }, (_, index) => [index + 1, index >> 1]))).toBe(1);
  expect(placesOf(Array.from({ length: 40 }, (_, index) => [index, (index + 1) % 40]))).toBe(2);
  const across = Array.from({ length: 16 }, (_, joint) => (joint % 4 < 3 ? [[joint, joint + 1] as const] : [])).flat();
  const down = Array.from({ length: 12 }, (_, joint) => [joint, joint + 4] as const);
  expect(placesOf([...across, ...down])).toBe(4);
});
