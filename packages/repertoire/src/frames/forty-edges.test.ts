import { Chance } from '@twistwright/units';
import { expect, test } from 'vitest';
import { planFrame } from './plan-frame.ts';
import { verifyTrails } from './trail.ts';

/** Joints and decimals of the lengths; with two joints any edges go together, with many hardly any. */
const kinds = [2, 6, 12, 25].flatMap((joints) => [0, 1, 2, 6].map((decimals) => ({ joints, decimals })));

test.each(kinds)('forty edges between $joints joints, $decimals decimals, nothing to spare: proven', ({ joints, decimals }) => {
  const chance = new Chance(71, joints, decimals);
  const pick = (below: number) => Math.floor(chance.uniform() * below);
  for (const balloons of [3, 5, 8]) {
    const edges = Array.from({ length: 40 }, (_, index) => {
      const from = index < joints - 1 ? index + 1 : pick(joints);
      const to = index < joints - 1 ? pick(index + 1) : (from + 1 + pick(joints - 1)) % joints;
      return { from: `${from}`, to: `${to}`, lengthInches: Number((2 + 6 * chance.uniform()).toFixed(decimals)) };
    });
    const frame = { joints: Array.from({ length: joints }, (_, index) => ({ name: `${index}` })), edges };
    const share = edges.reduce((sum, { lengthInches }) => sum + lengthInches, 0) / balloons;
    const balloonInches = Math.ceil(share * 10 ** decimals - 1e-6) / 10 ** decimals;
    const plan = planFrame(frame, { balloonInches });
    if (!plan.ok) throw new Error(plan.error[0]?.sentence);
    expect(verifyTrails(frame, plan.value.trails, balloonInches)).toEqual([]);
    expect([plan.value.trails.length, plan.value.proven]).toEqual([plan.value.leastBalloons, true]);
  }
});

/** Where the edge that is added as the given one begins (it ends at a joint of its own), and the balloons. */
const growths: readonly (readonly [string, readonly number[], (index: number, pick: (below: number) => number) => number])[] = [
  ['anywhere', [25], (index, pick) => pick(index + 1)],
  ['near the last', [25, 40, 60], (index, pick) => Math.max(0, index - pick(4))],
  ['at the ends of eight arms', [25, 40, 60], (index) => Math.max(0, index - 7)],
];

test.each(growths)('a tree of forty edges grown %s, bubbles may be popped: proven', (_, balloons, from) => {
  let popped = 0;
  for (const decimals of [0, 3]) {
    const chance = new Chance(72, decimals);
    const pick = (below: number) => Math.floor(chance.uniform() * below);
    const edges = Array.from({ length: 40 }, (_, index) => ({
      from: `${from(index, pick)}`,
      to: `${index + 1}`,
      lengthInches: Number((2 + 6 * chance.uniform()).toFixed(decimals)),
    }));
    const frame = { joints: Array.from({ length: 41 }, (_, index) => ({ name: `${index}` })), edges };
    for (const balloonInches of balloons) {
      const plan = planFrame(frame, { balloonInches, pops: {} });
      if (!plan.ok) throw new Error(plan.error[0]?.sentence);
      expect(verifyTrails(frame, plan.value.trails, balloonInches)).toEqual([]);
      expect([plan.value.trails.length, plan.value.proven]).toEqual([plan.value.leastBalloons, true]);
      popped += plan.value.poppedInches;
    }
  }
  expect(popped).toBeGreaterThan(0);
});
