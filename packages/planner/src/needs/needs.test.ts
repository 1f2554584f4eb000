import { date } from '@twistwright/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceOfStock, type JointSamples, jointLevel, needsOf } from './index.ts';

const fair: JointSamples = {
  items: ['260 green', '260 white'],
  runs: 4,
  perGig: [
    { gig: 'fair', day: date('2026-06-13'), used: Int32Array.from([10, 0, 20, 5, 30, 0, 40, 5]) },
    { gig: 'party', day: date('2026-06-20'), used: Int32Array.from([0, 10, 0, 10, 0, 10, 20, 10]) },
  ],
};

describe('needs', () => {
  it('adds up gigs run by run and names what causes them', () => {
    const needs = needsOf(fair, { chance: 0.75, stock: [{ item: '260 green', have: 12, onOrder: 5 }] });
    const [green, white] = needs.items;
    expect(green).toMatchObject({ mean: 30, p50: 25, have: 12, onOrder: 5 });
    expect(green?.causes.map(({ gig, share }) => [gig, share])).toEqual([
      ['fair', 25 / 30],
      ['party', 5 / 30],
    ]);
    expect(white).toMatchObject({ mean: 12.5, wanted: 15 });
    expect(green?.wanted).toBe(30);
    expect(green?.short).toBe(13);
    expect(needs.chanceNow).toBe(0);
    expect(needs.chanceThen).toBe(0.75);
  });
  it('leaves out gigs after the day and adds needs entered by hand to every run', () => {
    const needs = needsOf(fair, {
      chance: 1,
      until: date('2026-06-13'),
      byHand: [
        { item: 'hearts', count: 7, by: date('2026-06-10'), reason: 'table hearts' },
        { item: '260 white', count: 3, by: date('2026-06-19') },
      ],
    });
    expect(needs.items.map(({ item, wanted }) => [item, wanted])).toEqual([
      ['260 green', 40],
      ['260 white', 5],
      ['hearts', 7],
    ]);
    expect(needs.items[2]?.causes).toEqual([{ reason: 'table hearts', mean: 7, share: 1 }]);
  });
  it('is joint: two items that never run high together need less than each for itself', () => {
    const opposed = Int32Array.from([10, 0, 10, 0, 0, 10, 0, 10]);
    expect(jointLevel(opposed, 2, 0.5).chance).toBe(0.5);
    expect(jointLevel(opposed, 2, 0.5).stock.reduce((a, b) => a + b, 0)).toBe(10);
  });
});

describe('laws of the joint level', () => {
  const sample = fc
    .integer({ min: 1, max: 3 })
    .chain((items) =>
      fc.array(fc.array(fc.integer({ min: 0, max: 6 }), { minLength: items, maxLength: items }), { minLength: 1, maxLength: 12 }),
    );
  it('gives at least the chance, and no piece can be taken from any item without falling below it', () => {
    fc.assert(
      fc.property(sample, fc.double({ min: 0, max: 1, noNaN: true }), (rows, chance) => {
        const items = rows[0]?.length ?? 1;
        const totals = Int32Array.from(rows.flat());
        const level = jointLevel(totals, items, chance);
        expect(level.chance).toBeGreaterThanOrEqual(chance - 1e-9);
        for (let i = 0; i < items; i++) {
          if ((level.stock[i] ?? 0) === 0) continue;
          const less = level.stock.map((count, k) => (k === i ? count - 1 : count));
          expect(chanceOfStock(totals, items, less)).toBeLessThan(chance);
        }
      }),
      { seed: 4, numRuns: 300 },
    );
  });
});
