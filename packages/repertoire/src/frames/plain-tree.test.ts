import { Chance } from '@twistwright/units';
import { expect, test } from 'vitest';
import { exactTrails } from './exact-trails.ts';
import type { Frame } from './frame.ts';
import { type Network, networkOf } from './network.ts';
import { treeTrails } from './plain-tree.ts';
import { planFrame } from './plan-frame.ts';
import { trailOf, verifyTrails } from './trail.ts';

/** A tree in which each joint hangs on one of the last `near` before it. */
function randomTree(edges: number, near: number, decimals: number, chance: Chance): Frame {
  return {
    joints: Array.from({ length: edges + 1 }, (_, index) => ({ name: `${index}` })),
    edges: Array.from({ length: edges }, (_, index) => {
      const from = `${Math.max(0, index - Math.floor(near * chance.uniform()))}`;
      const ends = chance.uniform() < 0.5 ? { from, to: `${index + 1}` } : { from: `${index + 1}`, to: from };
      return { ...ends, lengthInches: Number((1 + 8 * chance.uniform()).toFixed(decimals)) };
    }),
  };
}

test('as few as the complete search finds, which proves that fewer do not do', () => {
  const chance = new Chance(61);
  for (let round = 0; round < 400; round++) {
    const frame = randomTree(3 + (round % 14), [2, 4, 20][round % 3] as number, round % 2, chance);
    const part = networkOf(frame) as Network;
    const balloonInches = 9 + Math.floor(16 * chance.uniform());
    const walks = treeTrails(part, balloonInches * 1e6);
    expect(
      verifyTrails(
        frame,
        walks.map((walk) => trailOf(part, walk)),
        balloonInches,
      ),
    ).toEqual([]);
    expect(exactTrails(part, balloonInches * 1e6, walks.length, { left: 1e8 }).outcome).toBe('walks');
    if (walks.length > 1) expect(exactTrails(part, balloonInches * 1e6, walks.length - 1, { left: 1e8 }).outcome).toBe('none');
  }
});

test('a tree of two hundred thousand edges, and a star of as many: proven', () => {
  const tree = randomTree(200_000, 50, 1, new Chance(62));
  const star: Frame = { joints: tree.joints, edges: tree.edges.map((edge, index) => ({ ...edge, from: '0', to: `${index + 1}` })) };
  for (const frame of [tree, star]) {
    const plan = planFrame(frame, { balloonInches: 15 });
    expect(plan.ok && plan.value.proven).toBe(true);
    expect(plan.ok && verifyTrails(frame, plan.value.trails, 15)).toEqual([]);
  }
});
