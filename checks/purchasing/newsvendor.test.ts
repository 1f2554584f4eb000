/**
 * L. V. Snyder, Z.-J. M. Shen, Fundamentals of Supply Chain Theory, 2nd ed., Wiley 2019, Ex. 4.1, 4.3, 4.7 and 4.4 (values from the
 * tests of the general-purpose library stockpyl that carry the book's numbers); E. L. Porteus, Foundations of Stochastic Inventory Theory, 2002
 * (from the manual of R's SCperf); G. Cachon, C. Terwiesch, Matching Supply with Demand, the wetsuit example (inputs from memory, exact
 * quantity computed).
 *
 * A newsvendor buys the quantity that lasts with the chance cu / (cu + co). That is a joint chance over one item, and a shopping
 * programme over bags of one piece.
 */
import { cheapestPurchases, jointLevel } from '@twistwright/planner';
import { openSolver } from '@twistwright/solver/node';
import { normalQuantile } from '@twistwright/units';
import { afterAll, describe, expect, it } from 'vitest';

const solver = openSolver();
afterAll(() => solver.close());

const runs = 2000;
/** Evenly spread quantiles of a normal demand, in hundredths of a piece. */
const normalDemand = (mean: number, deviation: number): Int32Array =>
  Int32Array.from({ length: runs }, (_, r) => Math.max(0, Math.round(100 * (mean + deviation * normalQuantile((r + 0.5) / runs)))));

function poissonDemand(mean: number): Int32Array {
  const demand = new Int32Array(runs);
  let count = 0;
  let term = Math.exp(-mean);
  let reached = term;
  for (let r = 0; r < runs; r++) {
    while ((r + 0.5) / runs > reached) {
      count++;
      term *= mean / count;
      reached += term;
    }
    demand[r] = count;
  }
  return demand;
}

async function bought(demand: Int32Array, chance: number): Promise<number> {
  const found = await cheapestPurchases(
    {
      periods: 1,
      items: [{ name: 'paper', demand: [0], supply: [] }],
      orders: [{ supplier: 0, placed: 0, arrives: 0, fee: 0 }],
      offers: [{ item: 0, supplier: 0, pieces: 1, steps: [{ fromBags: 1, price: 1 }] }],
    },
    { scenarios: { runs: demand.length, need: [demand] }, chance },
    { solver },
  );
  return found.ok ? (found.value.plan[0]?.bags ?? 0) : Number.NaN;
}

describe('the newsvendor as a special case of needs and shopping', () => {
  it.each([
    { name: 'Ex. 4.1/4.3: N(50, 8), over 0.18, under 0.70', mean: 50, deviation: 8, over: 0.18, under: 0.7, quantity: 56.6039559274 },
    { name: 'Porteus: N(100, 30), price 4, cost 1', mean: 100, deviation: 30, over: 1, under: 3, quantity: 120.234692506 },
    { name: 'wetsuits: N(3192, 1181), over 20, under 80', mean: 3192, deviation: 1181, over: 20, under: 80, quantity: 4185.95 },
    {
      name: 'Ex. 4.4 base stock: lead time 4, five periods of N(50, 8)',
      mean: 250,
      deviation: 8 * Math.sqrt(5),
      over: 0.18,
      under: 0.7,
      quantity: 264.7668943742,
    },
  ])('$name', async ({ mean, deviation, over, under, quantity }) => {
    const demand = normalDemand(mean, deviation);
    const chance = under / (under + over);
    const tolerance = 0.01 + (deviation * 4) / runs; // a hundredth from rounding, the rest from the spacing of the quantiles
    expect(Math.abs((jointLevel(demand, 1, chance).stock[0] ?? 0) / 100 - quantity)).toBeLessThan(tolerance);
    expect(Math.abs((await bought(demand, chance)) / 100 - quantity)).toBeLessThan(tolerance);
  });
  it.each([
    { name: 'Ex. 4.7: Poisson(6), over 1, under 4', mean: 6, over: 1, under: 4, quantity: 8 },
    { name: 'Poisson(50), over 0.18, under 0.70', mean: 50, over: 0.18, under: 0.7, quantity: 56 },
  ])('$name', async ({ mean, over, under, quantity }) => {
    const demand = poissonDemand(mean);
    expect(jointLevel(demand, 1, under / (under + over)).stock).toEqual([quantity]);
    expect(await bought(demand, under / (under + over))).toBe(quantity);
  });
});
