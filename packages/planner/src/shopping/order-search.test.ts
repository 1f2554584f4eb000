import { describe, expect, it } from 'vitest';
import { jointLevel } from '../needs/index.ts';
import { bagMenu, costOf, netOf, type PurchaseGrid, searchOrders } from './index.ts';

/** Two shops; the second is cheaper by the bag, and free only if all is bought there. */
const twoShops: PurchaseGrid = {
  periods: 1,
  items: ['red', 'blue'].map((name) => ({ name, demand: [90], supply: [{ pieces: 10, from: 0 }] })),
  orders: [
    { supplier: 0, placed: 0, arrives: 0, fee: 0 },
    { supplier: 1, placed: 0, arrives: 0, fee: 500, freeOver: 1500 },
  ],
  offers: [0, 1].flatMap((item) => [
    { item, supplier: 0, pieces: 100, steps: [{ fromBags: 1, price: 900 }] },
    { item, supplier: 1, pieces: 100, steps: [{ fromBags: 1, price: 800 }] },
  ]),
};

describe('the search over orders', () => {
  it('sends both items to the shop where together they travel free', () => {
    const found = searchOrders(twoShops, { seed: 1, work: 1e5 });
    expect(found).toMatchObject({ cost: 1600, endedByClock: false });
    expect(found?.plan).toEqual([
      { order: 1, offer: 1, bags: 1 },
      { order: 1, offer: 3, bags: 1 },
    ]);
  });
  it('buys nothing where the stock lasts, and says so where nothing can be had', () => {
    const enough = { ...twoShops, items: twoShops.items.map((item) => ({ ...item, demand: [10] })) };
    expect(searchOrders(enough, { seed: 1, work: 1e5 })).toMatchObject({ plan: [], cost: 0, bound: 0 });
    expect(searchOrders({ ...twoShops, orders: [] }, { seed: 1, work: 1e5 })).toBeUndefined();
  });
  it('stops at the clock that is handed in, and says that it did', () => {
    let seconds = 0;
    const now = (): number => {
      seconds += 0.01;
      return seconds;
    };
    // two bags just miss free carriage, so that the bound stays below every plan
    const long: PurchaseGrid = {
      ...twoShops,
      orders: twoShops.orders.map((order) => ({ ...order, ...(order.fee > 0 ? { freeOver: 1650 } : {}) })),
    };
    expect(searchOrders(long, { seed: 1, work: 1e9, seconds: 0.5, now })?.endedByClock).toBe(true);
    expect(seconds).toBeLessThan(0.6);
  });
});

describe('parts of a purchase', () => {
  it('serves from what goes off first', () => {
    expect(
      netOf(
        [5, 5],
        [
          { pieces: 6, from: 0 },
          { pieces: 4, from: 0, until: 0 },
        ],
      ),
    ).toEqual({ short: [0, 0], left: [5, 0] });
  });
  it('finds the cheapest bags for every amount, all-units price breaks included', () => {
    const offer = {
      item: 0,
      supplier: 0,
      pieces: 50,
      steps: [
        { fromBags: 1, price: 500 },
        { fromBags: 3, price: 300 },
      ],
    };
    const menu = bagMenu([{ offer, index: 0 }], 50, 4);
    expect([...menu.units].map((units, e) => [units, menu.cost[e]])).toEqual([
      [1, 500],
      [2, 1000],
      [3, 900],
      [4, 1200],
    ]);
  });
  it('counts a plan from scratch', () => {
    expect(costOf(twoShops, [{ order: 1, offer: 1, bags: 1 }])).toMatchObject({
      goods: 800,
      carriage: 500,
      total: 1300,
      short: [[0], [80]],
    });
  });
  it('gives the joint level of its example', () => {
    expect(jointLevel(Int32Array.from([1, 0, 0, 1, 1, 1, 2, 2]), 2, 0.75).stock).toEqual([1, 1]);
  });
});
