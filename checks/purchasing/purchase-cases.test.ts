/**
 * Two purchase problems with known answers (cases/purchases): the small one proven by branch and bound, the large one with a best known plan
 * and a bound from long runs elsewhere. Each case says what it expects.
 */
import { readFileSync } from 'node:fs';
import { cheapestPurchases, costOf, type PurchaseGrid, searchOrders } from '@twistwright/planner';
import { openSolver } from '@twistwright/solver/node';
import { afterAll, describe, expect, it } from 'vitest';

const solver = openSolver();
afterAll(() => solver.close());

interface PurchaseCase {
  readonly grid: PurchaseGrid;
  readonly expects: { readonly cost?: number; readonly costAtMost?: number; readonly bound?: number; readonly rule: number };
}
const caseOf = (name: string): PurchaseCase =>
  JSON.parse(readFileSync(new URL(`../../cases/purchases/${name}.json`, import.meta.url), 'utf8'));

describe('purchase problems with known answers', () => {
  it('12 items at 2 suppliers: 139.21, proven', async () => {
    const { grid, expects } = caseOf('buy-12x2x1');
    const found = await cheapestPurchases(grid, {}, { solver });
    expect(found.ok && found.value.proof).toEqual({ kind: 'proven' });
    expect(found.ok && found.value.cost).toBe(expects.cost);
    expect(found.ok && costOf(grid, found.value.plan).total).toBe(expects.cost);
  });
  it('60 items, 5 suppliers, 12 dates: within 0.3 % of the known bound, and never below it', () => {
    const { grid, expects } = caseOf('buy-60x5x12');
    const found = searchOrders(grid, { seed: 1, work: 2e8 });
    expect(found).toBeDefined();
    if (found === undefined) return;
    const cost = costOf(grid, found.plan);
    expect(cost.short.flat().every((short) => short === 0)).toBe(true);
    expect(cost.total).toBeCloseTo(found.cost, 4);
    expect(found.cost).toBeLessThanOrEqual(expects.costAtMost ?? 0);
    expect(found.cost).toBeGreaterThanOrEqual(expects.bound ?? Infinity);
    expect(found.cost).toBeLessThan(expects.rule);
    expect(found.bound).toBeLessThanOrEqual(found.cost);
  });
});
