/**
 * Exact enumeration: on small problems with everything in them every plan is tried, and the programme and the search are held against the best.
 */

import {
  boughtLots,
  cashOf,
  cheapestPurchases,
  costOf,
  coveredRuns,
  type GridBag,
  type GridScenarios,
  ownDemand,
  type PurchaseGrid,
  safestPurchases,
  searchOrders,
} from '@twistwright/planner';
import { openSolver } from '@twistwright/solver/node';
import { bruteForceSolver } from '@twistwright/solver/testing';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';

const solver = openSolver();
afterAll(() => solver.close());

/** Every plan with at most `most` bags of each offer in each order. */
function* allPlans(grid: PurchaseGrid, most: number): Generator<readonly GridBag[]> {
  const pairs = grid.orders.flatMap((order, o) =>
    grid.offers.flatMap((offer, f) => (offer.supplier === order.supplier ? [{ order: o, offer: f }] : [])),
  );
  const counts = pairs.map(() => 0);
  for (;;) {
    yield pairs.flatMap((pair, k) => ((counts[k] ?? 0) > 0 ? [{ ...pair, bags: counts[k] ?? 0 }] : []));
    let k = 0;
    while (k < counts.length && counts[k] === most) counts[k++] = 0;
    if (k === counts.length) return;
    counts[k] = (counts[k] ?? 0) + 1;
  }
}
function isAllowed(grid: PurchaseGrid, plan: readonly GridBag[]): boolean {
  return (
    plan.every(({ offer, bags }) => bags <= (grid.offers[offer]?.mostBags ?? Infinity)) && costOf(grid, plan).belowMinimum.length === 0
  );
}
const coverageOf = (grid: PurchaseGrid, scenarios: GridScenarios, plan: readonly GridBag[]): number =>
  coveredRuns(grid, scenarios, boughtLots(grid, plan)).reduce((sum, c) => sum + c, 0);

const most = 3;
/** Small problems with everything in them: price breaks, least values, free-over values, stock that goes off, bags that go off. */
const smallGrid: fc.Arbitrary<PurchaseGrid> = fc
  .record({
    periods: fc.integer({ min: 1, max: 3 }),
    items: fc.array(
      fc.record({
        demand: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 3, maxLength: 3 }),
        stock: fc.integer({ min: 0, max: 9 }),
        until: fc.option(fc.integer({ min: 0, max: 2 }), { nil: undefined }),
        coming: fc.integer({ min: 0, max: 4 }),
      }),
      { minLength: 1, maxLength: 2 },
    ),
    orders: fc.array(
      fc.record({
        supplier: fc.integer({ min: 0, max: 1 }),
        arrives: fc.integer({ min: 0, max: 2 }),
        fee: fc.integer({ min: 0, max: 8 }),
        freeOver: fc.option(fc.integer({ min: 5, max: 40 }), { nil: undefined }),
        minimum: fc.option(fc.integer({ min: 2, max: 20 }), { nil: undefined }),
      }),
      { minLength: 1, maxLength: 2 },
    ),
    offers: fc.array(
      fc.record({
        item: fc.integer({ min: 0, max: 1 }),
        supplier: fc.integer({ min: 0, max: 1 }),
        pieces: fc.constantFrom(4, 5, 10),
        price: fc.integer({ min: 3, max: 12 }),
        breakAt: fc.option(fc.integer({ min: 2, max: 3 }), { nil: undefined }),
        keeps: fc.option(fc.integer({ min: 0, max: 1 }), { nil: undefined }),
        mostBags: fc.option(fc.integer({ min: 1, max: 3 }), { nil: undefined }),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    holding: fc.integer({ min: 0, max: 2 }),
  })
  .map(({ periods, items, orders, offers, holding }): PurchaseGrid => {
    const goesOff = offers.some((offer) => offer.keeps !== undefined) || items.some((item) => item.until !== undefined);
    return {
      periods,
      items: items.map(({ demand, stock, until, coming }, i) => ({
        name: `item ${i}`,
        demand: demand.slice(0, periods),
        supply: [
          { pieces: stock, from: 0, ...(until === undefined ? {} : { until }) },
          { pieces: coming, from: periods - 1 },
        ],
        ...(goesOff ? {} : { holding: demand.slice(0, periods).map(() => holding / 8) }),
      })),
      orders: orders.map(({ freeOver, minimum, ...order }, o) => ({
        ...order,
        arrives: Math.min(order.arrives, periods - 1),
        placed: o,
        ...(freeOver === undefined ? {} : { freeOver }),
        ...(minimum === undefined ? {} : { minimum }),
      })),
      offers: offers.map(({ price, breakAt, keeps, mostBags, ...offer }) => ({
        ...offer,
        item: Math.min(offer.item, items.length - 1),
        steps: [{ fromBags: 1, price }, ...(breakAt === undefined ? [] : [{ fromBags: breakAt, price: price - 1 }])],
        ...(keeps === undefined ? {} : { keeps }),
        ...(mostBags === undefined ? {} : { mostBags }),
      })),
    };
  });

describe('purchases', () => {
  it('agree with trying every plan, on small problems with everything in them', async () => {
    let feasible = 0;
    await fc.assert(
      fc.asyncProperty(smallGrid, async (grid) => {
        let best = Infinity;
        for (const plan of allPlans(grid, most)) {
          const cost = costOf(grid, plan);
          if (cost.total < best && cost.short.flat().every((short) => short === 0) && isAllowed(grid, plan)) best = cost.total;
        }
        const found = await cheapestPurchases(grid, {}, { solver });
        if (found.ok) {
          feasible++;
          const cost = costOf(grid, found.value.plan);
          expect(cost.short.flat().every((short) => short === 0)).toBe(true);
          expect(isAllowed(grid, found.value.plan)).toBe(true);
          expect(cost.total).toBeCloseTo(found.value.cost, 6);
          expect(found.value.proof.kind).toBe('proven');
          expect(found.value.cost).toBeLessThanOrEqual(best + 1e-6);
          if (found.value.plan.every(({ bags }) => bags <= most)) expect(found.value.cost).toBeCloseTo(best, 6);
        } else expect(best).toBe(Infinity);
      }),
      { seed: 11, numRuns: 120 },
    );
    expect(feasible).toBeGreaterThan(40);
  });

  it('reach the least cost for a joint chance, and the best chance for a budget', async () => {
    const runs = 8;
    await fc.assert(
      fc.asyncProperty(
        smallGrid,
        fc.array(fc.integer({ min: 0, max: 9 }), { minLength: runs * 6, maxLength: runs * 6 }),
        fc.constantFrom(0.5, 0.75, 0.9, 1),
        fc.integer({ min: 0, max: 40 }),
        async (plain, draws, chance, budget) => {
          const grid = { ...plain, items: plain.items.map(({ holding: _, ...item }) => item) };
          const width = grid.items.length;
          const scenarios: GridScenarios = {
            runs,
            need: Array.from({ length: grid.periods }, (_, p) =>
              Int32Array.from({ length: runs * width }, (__, k) => draws[p * runs * 2 + k] ?? 0),
            ),
          };
          let cheapest = Infinity;
          let safest = 0;
          for (const plan of allPlans(grid, most)) {
            if (!isAllowed(grid, plan)) continue;
            const covered = coverageOf(grid, scenarios, plan);
            const cash = cashOf(grid, plan);
            if (covered >= chance * runs && cash < cheapest) cheapest = cash;
            if (cash <= budget && covered > safest) safest = covered;
          }
          const found = await cheapestPurchases(grid, { scenarios, chance }, { solver });
          if (found.ok) {
            expect(coverageOf(grid, scenarios, found.value.plan)).toBe(found.value.covered);
            expect(found.value.chance).toBeGreaterThanOrEqual(chance);
            expect(found.value.cash).toBeLessThanOrEqual(cheapest);
            if (found.value.plan.every(({ bags }) => bags <= most)) expect(found.value.cash).toBe(cheapest);
          } else expect(cheapest).toBe(Infinity);
          const safe = await safestPurchases(grid, { scenarios, budget }, { solver });
          expect(safe.ok).toBe(true);
          if (!safe.ok) return;
          expect(safe.value.cash).toBeLessThanOrEqual(budget);
          expect(safe.value.covered).toBeGreaterThanOrEqual(safest);
          if (safe.value.plan.every(({ bags }) => bags <= most)) expect(safe.value.covered).toBe(safest);
        },
      ),
      { seed: 5, numRuns: 50 },
    );
  });

  it('found by search work, cost what they say, and are never below their bound or the proven optimum', async () => {
    await fc.assert(
      fc.asyncProperty(smallGrid, async (grid) => {
        const searched = searchOrders(grid, { seed: 1, work: 20_000 });
        if (searched === undefined) return;
        const cost = costOf(grid, searched.plan);
        expect(cost.short.flat().every((short) => short === 0)).toBe(true);
        expect(isAllowed(grid, searched.plan)).toBe(true);
        expect(cost.total).toBeCloseTo(searched.cost, 6);
        const exact = await cheapestPurchases(grid, {}, { solver });
        expect(exact.ok).toBe(true);
        if (exact.ok) {
          expect(searched.cost).toBeGreaterThanOrEqual(exact.value.cost - 1e-6);
          expect(searched.bound).toBeLessThanOrEqual(exact.value.cost + 1e-6);
        }
      }),
      { seed: 3, numRuns: 150 },
    );
  });

  it('searched on joint futures give at least the chance, with a bound that the proven optimum keeps', async () => {
    let compared = 0;
    await fc.assert(
      fc.asyncProperty(smallGrid, fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 60, maxLength: 60 }), async (grid, draws) => {
        const scenarios: GridScenarios = {
          runs: 10,
          need: Array.from({ length: grid.periods }, (_, p) =>
            Int32Array.from({ length: 10 * grid.items.length }, (__, k) => draws[(p * 20 + k) % 60] ?? 0),
          ),
        };
        const exact = await cheapestPurchases(grid, { scenarios, chance: 0.8 }, { solver });
        const searched = await cheapestPurchases(grid, { scenarios, chance: 0.8 }, { solver, exactUpTo: 0, work: 50_000 });
        if (!exact.ok || !searched.ok) return;
        compared++;
        expect(searched.value.chance).toBeGreaterThanOrEqual(0.8);
        expect(searched.value.cost).toBeGreaterThanOrEqual(exact.value.cost - 1e-6);
        expect(searched.value.bound).toBeLessThanOrEqual(exact.value.cost + 1e-6);
        if (searched.value.proof.kind === 'proven') expect(searched.value.cost).toBeCloseTo(exact.value.cost, 6);
      }),
      { seed: 8, numRuns: 100 },
    );
    expect(compared).toBeGreaterThan(15);
  });

  it('are the same for the same seed', () => {
    const grid: PurchaseGrid = {
      periods: 4,
      items: Array.from({ length: 6 }, (_, i) => ({
        name: `item ${i}`,
        demand: [20 + i, 30, 7 * i, 41],
        supply: [{ pieces: 9, from: 0 }],
        holding: [0.2, 0.2, 0.2, 0],
      })),
      orders: Array.from({ length: 8 }, (_, o) => ({ supplier: o % 2, placed: o >> 1, arrives: o >> 1, fee: 300, freeOver: 2500 })),
      offers: Array.from({ length: 12 }, (_, f) => ({
        item: f >> 1,
        supplier: f % 2,
        pieces: 50,
        steps: [{ fromBags: 1, price: 700 + ((f * 37) % 90) }],
      })),
    };
    const once = searchOrders(grid, { seed: 9, work: 2e6 });
    expect(searchOrders(grid, { seed: 9, work: 2e6 })).toEqual(once);
    expect(once?.endedByClock).toBe(false);
    expect(ownDemand(grid).need).toHaveLength(4);
  });
});

describe('the solver used in these tests', () => {
  it('agrees with brute force on a purchase of two bags', async () => {
    const program = {
      sense: 'minimise' as const,
      columns: [
        { name: '50', cost: 9, upper: 3, whole: true },
        { name: '100', cost: 16, upper: 3, whole: true },
      ],
      rows: [
        {
          name: 'need',
          terms: [
            { column: 0, factor: 50 },
            { column: 1, factor: 100 },
          ],
          atLeast: 120,
        },
      ],
    };
    expect((await solver.solve(program)).outcome).toBe('optimal');
    expect(await solver.solve(program)).toMatchObject({ objective: 25 });
    expect(await bruteForceSolver.solve(program)).toMatchObject({ objective: 25 });
  });
});
