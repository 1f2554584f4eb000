import { Chance } from '@twistwright/units';
import { expect, test } from 'vitest';
import { type Network, networkOf, oddJoints } from './network.ts';
import { OddPairing } from './odd-pairs.ts';

function randomPart(joints: number, edges: number, chance: Chance, tenths: number): Network {
  const pick = (below: number) => Math.floor(chance.uniform() * below);
  const network = networkOf({
    joints: Array.from({ length: joints }, (_, index) => ({ name: `${index}` })),
    edges: Array.from({ length: edges }, (_, index) => ({
      from: `${index < joints - 1 ? index + 1 : pick(joints)}`,
      to: `${index < joints - 1 ? pick(index + 1) : pick(joints)}`,
      lengthInches: (10 + pick(tenths)) / 10,
    })),
  });
  if (network === undefined) throw new Error('a random frame that is not in order');
  return network;
}

/** A long ring with chords between joints that are not far apart along it. */
function scatteredPart(joints: number, edges: number, chance: Chance): Network {
  const pick = (below: number) => Math.floor(chance.uniform() * below);
  const network = networkOf({
    joints: Array.from({ length: joints }, (_, index) => ({ name: `${index}` })),
    edges: Array.from({ length: edges }, (_, index) => {
      const from = index < joints ? index : pick(joints);
      return { from: `${from}`, to: `${(from + (index < joints ? 1 : 2 + pick(30))) % joints}`, lengthInches: (10 + pick(60)) / 10 };
    }),
  });
  if (network === undefined) throw new Error('a random frame that is not in order');
  return network;
}

/** Shortest set of edges that leaves at most `staying` joints odd, by trying every set. */
function shortestByTrying(part: Network, staying: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (let set = 0; set < 2 ** part.edgeCount; set++) {
    const odd = new Uint8Array(part.jointCount);
    let length = 0;
    for (let edge = 0; edge < part.edgeCount; edge++) {
      const times = 1 + ((set >> edge) & 1);
      length += (times - 1) * (part.lengths[edge] as number);
      for (const end of [2 * edge, 2 * edge + 1])
        odd[part.jointOfEnd[end] as number] = ((odd[part.jointOfEnd[end] as number] as number) + times) % 2;
    }
    if (length < best && odd.reduce((sum, one) => sum + one, 0) <= staying) best = length;
  }
  return best;
}

function leftOdd(part: Network, twice: readonly number[]): number {
  const odd = new Set(oddJoints(part));
  for (const edge of twice) {
    for (const end of [2 * edge, 2 * edge + 1]) {
      const joint = part.jointOfEnd[end] as number;
      if (!odd.delete(joint)) odd.add(joint);
    }
  }
  return odd.size;
}

test('agrees with trying every set of edges, for every number that stays', () => {
  const chance = new Chance(61);
  for (let round = 0; round < 150; round++) {
    const part = randomPart(3 + (round % 6), 6 + (round % 6), chance, [1, 5, 60][round % 3] as number);
    const pairing = new OddPairing(part, { left: 1e9 });
    for (let staying = 0; staying < pairing.count; staying += 2) {
      const { edges, length, least } = pairing.pairs(staying);
      expect(leftOdd(part, edges)).toBeLessThanOrEqual(staying);
      expect([length, least]).toEqual([shortestByTrying(part, staying), length]);
    }
  }
});

test('thousands of odd joints: proven shortest, and each further pair costs no less than the one before', () => {
  const part = scatteredPart(4000, 6000, new Chance(62));
  const pairing = new OddPairing(part, { left: 2e9 });
  expect(pairing.count).toBeGreaterThan(1600);
  const lengths = [1000, 998, 996, 400, 398, 396, 4, 2, 0].map((staying) => {
    const { edges, length, least } = pairing.pairs(staying);
    expect(leftOdd(part, edges)).toBe(staying);
    expect(least).toBe(length);
    return length;
  });
  for (const at of [0, 3, 6]) {
    const [a, b, c] = lengths.slice(at, at + 3) as [number, number, number];
    expect(b - a).toBeGreaterThan(0);
    expect(c - b).toBeGreaterThanOrEqual(b - a);
  }
});

test('stopped early, the ways still leave as few odd, and say how much shorter others may be', () => {
  const part = scatteredPart(2000, 3000, new Chance(63));
  const best = new OddPairing(part, { left: 2e9 }).pairs(2).length;
  for (const left of [0, 200_000, 2_000_000]) {
    const { edges, length, least } = new OddPairing(part, { left }).pairs(2);
    expect(leftOdd(part, edges)).toBe(2);
    expect(least).toBeLessThanOrEqual(best);
    expect(length).toBeGreaterThanOrEqual(best);
    expect(least).toBeGreaterThan(0.3 * best);
  }
});
