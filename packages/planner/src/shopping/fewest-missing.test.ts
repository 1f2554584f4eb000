import fc from 'fast-check';
import { expect, test } from 'vitest';
import { affordableRuns } from './affordable-runs.ts';
import { fewestMissing } from './fewest-missing.ts';
import { boughtLots, cashOf } from './grid-program.ts';
import { meanMissing } from './missing-pieces.ts';
import { costOf, type GridBag, type PurchaseGrid } from './purchase-grid.ts';
import { coveredRuns, type GridScenarios, scenarioLevels } from './scenario-levels.ts';

const runs = 6;
const items = 2;
const periods = 2;
const most = 3;
const anyGrid: fc.Arbitrary<PurchaseGrid> = fc
  .record({
    stock: fc.array(fc.nat({ max: 6 }), { minLength: items, maxLength: items }),
    fee: fc.nat({ max: 6 }),
    freeOver: fc.option(fc.integer({ min: 8, max: 30 }), { nil: undefined }),
    minimum: fc.option(fc.integer({ min: 4, max: 15 }), { nil: undefined }),
    prices: fc.array(fc.integer({ min: 2, max: 9 }), { minLength: 3, maxLength: 3 }),
    breakAt: fc.option(fc.integer({ min: 2, max: 3 }), { nil: undefined }),
    keeps: fc.option(fc.constant(0), { nil: undefined }),
    second: fc.nat({ max: 1 }),
  })
  .map(({ stock, fee, freeOver, minimum, prices, breakAt, keeps, second }) => ({
    periods,
    items: stock.map((pieces, i) => ({ name: `item ${i}`, demand: [0, 0], supply: [{ pieces, from: 0 }] })),
    orders: [
      {
        supplier: 0,
        placed: 0,
        arrives: 0,
        fee,
        ...(freeOver === undefined ? {} : { freeOver }),
        ...(minimum === undefined ? {} : { minimum }),
      },
      { supplier: 1, placed: 0, arrives: second, fee: 0 },
    ],
    offers: prices.map((price, k) => ({
      item: k === 2 ? 1 : k,
      supplier: k === 2 ? 1 : 0,
      pieces: k === 0 ? 5 : 10,
      steps: [{ fromBags: 1, price }, ...(breakAt === undefined ? [] : [{ fromBags: breakAt, price: price - 1 }])],
      ...(keeps === undefined || k !== 1 ? {} : { keeps }),
    })),
  }));
const anyFutures: fc.Arbitrary<GridScenarios> = fc
  .array(fc.nat({ max: 12 }), { minLength: runs * items * periods, maxLength: runs * items * periods })
  .map((draws) => ({
    runs,
    need: Array.from({ length: periods }, (_, p) => Int32Array.from({ length: runs * items }, (__, k) => draws[p * runs * items + k] ?? 0)),
  }));

function* allPlans(grid: PurchaseGrid): Generator<readonly GridBag[]> {
  for (let code = 0; code < (most + 1) ** grid.offers.length; code++)
    yield grid.offers.flatMap((offer, f) => {
      const bags = Math.floor(code / (most + 1) ** f) % (most + 1);
      return bags === 0 ? [] : [{ order: offer.supplier, offer: f, bags }];
    });
}
const missingOf = (grid: PurchaseGrid, scenarios: GridScenarios, plan: readonly GridBag[]): number =>
  boughtLots(grid, plan).reduce((sum, lots, item) => sum + meanMissing(grid, scenarios, item, lots), 0);

test('against every plan within the budget: never over it, never a refused order, never worse than nothing, and near the least', () => {
  let asGood = 0;
  let all = 0;
  fc.assert(
    fc.property(anyGrid, anyFutures, fc.nat({ max: 30 }), (grid, scenarios, budget) => {
      const plan = fewestMissing(grid, scenarios, budget);
      expect(cashOf(grid, plan)).toBeLessThanOrEqual(budget);
      expect(costOf(grid, plan).belowMinimum).toEqual([]);
      const nothing = missingOf(grid, scenarios, []);
      const found = missingOf(grid, scenarios, plan);
      let least = nothing;
      for (const other of allPlans(grid)) {
        if (cashOf(grid, other) <= budget && costOf(grid, other).belowMinimum.length === 0)
          least = Math.min(least, missingOf(grid, scenarios, other));
      }
      expect(found).toBeLessThanOrEqual(nothing);
      all++;
      if (found <= least + 1e-9) asGood++;
    }),
    { seed: 21, numRuns: 300 },
  );
  expect(asGood / all).toBeGreaterThan(0.95);
});

test('a run that is given up as too dear is covered by no plan within the budget', () => {
  let givenUp = 0;
  fc.assert(
    fc.property(anyGrid, anyFutures, fc.nat({ max: 30 }), (grid, scenarios, budget) => {
      const { isHopeless, hopeless } = affordableRuns(grid, scenarioLevels(grid, scenarios), budget);
      givenUp += hopeless;
      for (const plan of allPlans(grid)) {
        if (cashOf(grid, plan) > budget) continue;
        for (const [run, isCovered] of coveredRuns(grid, scenarios, boughtLots(grid, plan)).entries())
          if (isCovered === 1) expect(isHopeless[run]).toBe(0);
      }
    }),
    { seed: 22, numRuns: 200 },
  );
  expect(givenUp).toBeGreaterThan(100);
});

test('missing pieces are the worst lag of what has arrived behind what was asked', () => {
  const grid: PurchaseGrid = {
    periods: 2,
    items: [{ name: 'red', demand: [0, 0], supply: [{ pieces: 3, from: 0 }] }],
    orders: [],
    offers: [],
  };
  const scenarios: GridScenarios = { runs: 2, need: [Int32Array.of(5, 1), Int32Array.of(4, 1)] };
  expect(meanMissing(grid, scenarios, 0, [])).toBe((6 + 0) / 2);
  expect(meanMissing(grid, scenarios, 0, [{ pieces: 10, from: 1 }])).toBe((2 + 0) / 2);
  expect(meanMissing(grid, scenarios, 0, [{ pieces: 10, from: 0, until: 0 }])).toBe((4 - 3 + 0) / 2);
});
