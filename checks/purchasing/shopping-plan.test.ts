/**
 * An invented week at two shops, worked out by hand: last safe order dates on the calendar, reasons, rule of thumb, curve and refusals.
 */

import {
  chanceOfOrders,
  orderDateFor,
  orderFact,
  type PurchaseProblem,
  type PurchaseSupplier,
  shop,
  shoppingCurve,
} from '@twistwright/planner';
import { openSolver } from '@twistwright/solver/node';
import { date, money, time } from '@twistwright/units';
import { afterAll, describe, expect, it } from 'vitest';

const solver = openSolver();
afterAll(() => solver.close());
const tools = { solver };

const post: PurchaseSupplier = {
  id: 'post',
  name: 'Long Barn Supply',
  leadWorkingDays: 4,
  orderBefore: time('12:00'),
  carriage: money(395),
  freeFrom: money(3000),
};
const counter: PurchaseSupplier = { id: 'counter', name: 'Corner shop', leadWorkingDays: 0, carriage: money(0) };
/** Thursday 4 June 2026; a fair on Saturday the 13th and a party on Saturday the 20th; ten runs, one greedier than the rest. */
const fair: PurchaseProblem = {
  currency: 'GBP',
  today: date('2026-06-02'),
  daysToSpare: 1,
  holidays: [],
  suppliers: [post, counter],
  items: [
    { id: 'green', name: '260 green', stock: [{ count: 90 }], onOrder: [] },
    { id: 'white', name: '260 white', stock: [{ count: 20 }], onOrder: [{ count: 30, expectedOn: date('2026-06-16') }] },
  ],
  offers: [
    { id: 'post-green', supplier: 'post', item: 'green', count: 100, price: money(820) },
    { id: 'counter-green', supplier: 'counter', item: 'green', count: 20, price: money(350) },
    { id: 'post-white', supplier: 'post', item: 'white', count: 100, price: money(840) },
  ],
  samples: {
    items: ['green', 'white'],
    runs: 10,
    perGig: [
      {
        gig: 'fair',
        day: date('2026-06-13'),
        used: Int32Array.from(Array.from({ length: 10 }, (_, r) => (r === 9 ? [150, 25] : [100, 10])).flat()),
      },
      { gig: 'party', day: date('2026-06-20'), used: Int32Array.from(Array.from({ length: 10 }, () => [5, 20]).flat()) },
    ],
  },
  byHand: [],
  chance: 0.9,
};

describe('last safe order dates', () => {
  it('count working days back from the gig: one to spare, four to the door', () => {
    expect(orderDateFor(fair, post, date('2026-06-13'))).toEqual({
      orderBy: '2026-06-05',
      before: '12:00',
      arrives: '2026-06-11',
      daysToSpare: 3,
    });
  });
  it('leave out holidays of all and days on which the supplier is closed', () => {
    const date1 = orderDateFor(
      { ...fair, holidays: [date('2026-06-10')] },
      { ...post, closedOn: [date('2026-06-08')] },
      date('2026-06-13'),
    );
    expect(date1?.orderBy).toBe('2026-06-03');
  });
  it('go back to a day on which the supplier delivers', () => {
    expect(orderDateFor(fair, { ...post, deliveryDays: [2] }, date('2026-06-13'))).toMatchObject({
      orderBy: '2026-06-03',
      arrives: '2026-06-09',
    });
  });
  it('are gone once the day, or its cut-off, has passed', () => {
    expect(orderDateFor({ ...fair, today: date('2026-06-08') }, post, date('2026-06-13'))).toBeUndefined();
    const lastDay = { ...fair, today: date('2026-06-05') };
    expect(orderDateFor({ ...lastDay, now: time('11:59') }, post, date('2026-06-13'))?.daysToSpare).toBe(0);
    expect(orderDateFor({ ...lastDay, now: time('12:00') }, post, date('2026-06-13'))).toBeUndefined();
  });
});

describe('the shopping plan', () => {
  it('buys the small bag for nine chances in ten, and says why', async () => {
    const plan = await shop(fair, tools);
    expect(plan.ok).toBe(true);
    if (!plan.ok) return;
    expect(plan.value).toMatchObject({
      total: 350,
      carriage: 0,
      chance: 0.9,
      chanceNow: 0,
      proof: { kind: 'proven' },
      firstOrderBy: '2026-06-11',
    });
    const line = plan.value.orders[0]?.lines[0];
    expect(line).toMatchObject({ offer: 'counter-green', bags: 1, count: 20, price: 350 });
    expect(line?.because).toMatchObject({ have: 90, onOrder: 0, mean: 110, short: 15, chanceShort: 1 });
    expect(line?.because.causes.map(({ gig, mean }) => [gig, mean])).toEqual([
      ['fair', 105],
      ['party', 5],
    ]);
    expect(plan.value.ruleOfThumb).toMatchObject({ kind: 'one shop', supplier: 'counter', total: 350, dearerBy: 0 });
  });
  it('covers the greedy run too when no chance may be taken; the fresh sample says what it is worth', async () => {
    const sure = { ...fair, chance: 1 };
    const elsewhere = { ...fair.samples, perGig: fair.samples.perGig.map((gig) => ({ ...gig, used: gig.used.map((count) => count * 2) })) };
    const plan = await shop(sure, tools, { elsewhere });
    expect(plan.ok).toBe(true);
    if (!plan.ok) return;
    expect(plan.value).toMatchObject({ total: 395 + 820 + 840, chance: 1, chanceElsewhere: 0 });
    expect(plan.value.orders[0]).toMatchObject({
      supplier: 'post',
      goods: 1660,
      carriage: 395,
      toFreeCarriage: 1340,
      neededOn: '2026-06-13',
    });
    expect(chanceOfOrders(sure, plan.value, fair.samples)).toBe(1);
  });
  it('becomes an order in the book', async () => {
    const plan = await shop({ ...fair, chance: 1 }, tools);
    const planned = plan.ok ? plan.value.orders[0] : undefined;
    if (planned === undefined) throw new Error('no order planned');
    expect(orderFact(fair, planned, { id: 'o1', orderedOn: date('2026-06-03') })).toMatchObject({
      supplier: 'post',
      expectedOn: '2026-06-09',
      carriage: 395,
      lines: [
        { item: 'green', bags: 1, count: 100, price: 820 },
        { item: 'white', bags: 1, count: 100, price: 840 },
      ],
    });
  });
  it('draws the curve from nothing bought to nothing risked', async () => {
    const curve = await shoppingCurve(fair, tools, [0.5, 1]);
    expect(curve.map(({ chance, total }) => [chance, total])).toEqual([
      [0, 0],
      [0.9, 350],
      [1, 2055],
    ]);
  });
  it('gives the best chance for a budget', async () => {
    const plan = await shop({ ...fair, budget: money(2000) }, tools, { goal: 'safest' });
    expect(plan.ok && plan.value).toMatchObject({ chance: 0.9, total: 350, proof: { kind: 'proven' } });
  });
});

describe('refusals of shopping, each with the nearest plan', () => {
  it('nothing can arrive in time', async () => {
    const late = await shop({ ...fair, today: date('2026-06-12'), suppliers: [post] }, tools);
    expect(late.ok ? [] : late.error.problems.map(({ code }) => code)).toEqual(['shopping.too-late', 'shopping.too-late']);
    expect(late.ok ? '' : late.error.problems[0]?.sentence).toBe(
      '260 green may run out by Saturday 13 June 2026 (100 chances in 100), and no order placed now can arrive in time.',
    );
    expect(late.ok ? undefined : late.error.nearest?.chance).toBe(0);
  });
  it('an item that no one sells', async () => {
    const unsold = await shop({ ...fair, byHand: [{ item: 'hearts', count: 5, by: date('2026-06-13') }] }, tools);
    expect(unsold.ok ? [] : unsold.error.problems.map(({ code, path }) => [code, path])).toEqual([
      ['shopping.no-offer', ['items', 'hearts']],
    ]);
    expect(unsold.ok ? undefined : unsold.error.nearest?.total).toBe(350);
  });
  it('a budget of zero', async () => {
    const broke = await shop({ ...fair, budget: money(0) }, tools);
    expect(broke.ok ? '' : broke.error.problems[0]?.code).toBe('shopping.budget-zero');
    expect(broke.ok ? '' : broke.error.problems[0]?.sentence).toBe(
      'A budget of £0.00 does not buy what is short. The cheapest plan for this chance costs £3.50.',
    );
    expect(broke.ok ? undefined : broke.error.nearest).toMatchObject({ total: 0, chance: 0 });
  });
  it('a least order that is not reached', async () => {
    const least = await shop(
      { ...fair, suppliers: [{ ...counter, leastOrder: money(5000) }], offers: fair.offers.map((offer) => ({ ...offer, mostBags: 2 })) },
      tools,
    );
    expect(least.ok ? [] : least.error.problems.map(({ code }) => code)).toEqual(['shopping.least-order']);
    expect(least.ok ? undefined : least.error.nearest?.total).toBe(0);
  });
  it('prices in two currencies', async () => {
    const mixed = await shop({ ...fair, suppliers: [{ ...post, currency: 'EUR' }, counter] }, tools);
    expect(mixed.ok ? [] : mixed.error.problems.map(({ code }) => code)).toEqual(['shopping.currency']);
    expect(mixed.ok ? undefined : mixed.error.nearest?.total).toBe(350);
  });
});
