/**
 * H. M. Wagner, T. M. Whitin, "Dynamic Version of the Economic Lot Size Model", Management Science 5(1) 89-96, 1958 (the 12-month
 * example; data from programs citing the paper, plan computed); E. A. Silver, D. F. Pyke, R. Peterson, Inventory Management and Production
 * Planning and Scheduling, 3rd ed. 1998 (demand and 501.20); L. V. Snyder, Z.-J. M. Shen, Fundamentals of Supply Chain Theory, 2nd ed. 2019,
 * Ex. 3.9; F. S. Hillier, G. J. Lieberman, Introduction to Operations Research, 7th ed. 2001 (airplane example, from the manual of R's
 * SCperf); exercises of the University of Southampton.
 *
 * A lot-sizing problem is a purchase of one item in bags of one piece: the set-up cost is the carriage of that month's order. Each piece
 * costs 1, because an order is known by the value of what is in it; that adds the total demand and nothing else.
 */
import { cheapestPurchases, type PurchaseGrid, searchOrders } from '@twistwright/planner';
import { openSolver } from '@twistwright/solver/node';
import { afterAll, describe, expect, it } from 'vitest';

const solver = openSolver();
afterAll(() => solver.close());

interface LotSizing {
  readonly name: string;
  readonly demand: readonly number[];
  readonly setUp: number | readonly number[];
  readonly holding: number;
  readonly stock?: number;
  readonly cost: number;
  /** The unique best plan, quantity by period; missing where there are ties. */
  readonly plan?: readonly number[];
}
const problems: readonly LotSizing[] = [
  {
    name: 'Wagner and Whitin 1958',
    demand: [69, 29, 36, 61, 61, 26, 34, 67, 45, 67, 79, 56],
    setUp: [85, 102, 102, 101, 98, 114, 105, 86, 119, 110, 98, 114],
    holding: 1,
    cost: 864,
    plan: [98, 0, 97, 0, 121, 0, 0, 112, 0, 67, 135, 0],
  },
  {
    name: 'Silver, Pyke and Peterson',
    demand: [10, 62, 12, 130, 154, 129, 88, 52, 124, 160, 238, 41],
    setUp: 54,
    holding: 0.4,
    cost: 501.2,
    plan: [84, 0, 0, 130, 283, 0, 140, 0, 124, 160, 279, 0],
  },
  { name: 'Snyder and Shen Ex. 3.9', demand: [90, 120, 80, 70], setUp: 500, holding: 2, cost: 1380, plan: [210, 0, 150, 0] },
  { name: 'Southampton', demand: [40, 20, 10, 30, 20], setUp: 100, holding: 2, cost: 320, plan: [70, 0, 0, 50, 0] },
  {
    name: 'Southampton with 40 left at the end',
    demand: [40, 20, 10, 30, 60],
    setUp: 100,
    holding: 2,
    cost: 380,
    plan: [70, 0, 0, 30, 60],
  },
  { name: 'Hillier and Lieberman, airplanes', demand: [3, 2, 3, 2], setUp: 2, holding: 0.2, cost: 4.8 },
  {
    name: 'nothing asked for until the last',
    demand: [0, 0, 0, 0, 0, 7],
    setUp: [110, 108, 110, 120, 125, 134],
    holding: 1,
    cost: 131,
    plan: [0, 0, 7, 0, 0, 0],
  },
  { name: 'five equal periods', demand: [200, 200, 200, 200, 200], setUp: 100, holding: 0.1, cost: 280 },
];

function gridOf({ demand, setUp, holding, stock }: LotSizing): PurchaseGrid {
  return {
    periods: demand.length,
    items: [{ name: 'item', demand, supply: stock === undefined ? [] : [{ pieces: stock, from: 0 }], holding: demand.map(() => holding) }],
    orders: demand.map((_, p) => ({ supplier: 0, placed: p, arrives: p, fee: typeof setUp === 'number' ? setUp : (setUp[p] ?? 0) })),
    offers: [{ item: 0, supplier: 0, pieces: 1, steps: [{ fromBags: 1, price: 1 }] }],
  };
}

describe('lot sizing as a purchase programme', () => {
  it.each(problems)('$name: $cost', async (problem) => {
    const grid = gridOf(problem);
    const found = await cheapestPurchases(grid, {}, { solver });
    expect(found.ok).toBe(true);
    if (!found.ok) return;
    const bought = problem.demand.reduce((sum, d) => sum + d, 0) - (problem.stock ?? 0);
    expect(found.value.proof).toEqual({ kind: 'proven' });
    expect(found.value.cost - bought).toBeCloseTo(problem.cost, 9);
    const plan = problem.demand.map((_, p) => found.value.plan.find((line) => line.order === p)?.bags ?? 0);
    if (problem.plan !== undefined) expect(plan).toEqual(problem.plan);
  });

  it('the search reaches the same costs without a solver', () => {
    for (const problem of problems) {
      const found = searchOrders(gridOf(problem), { seed: 1, work: 3e7 });
      const bought = problem.demand.reduce((sum, d) => sum + d, 0) - (problem.stock ?? 0);
      expect((found?.cost ?? Infinity) - bought).toBeCloseTo(problem.cost, 6);
      expect((found?.bound ?? Infinity) - bought).toBeLessThanOrEqual(problem.cost + 1e-6);
    }
  });
});
