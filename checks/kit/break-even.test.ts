/**
 * OpenStax, Principles of Accounting, vol. 2, ch. 3.2, in the adaptation of Penn State (psu.pb.unizin.org, "Breakeven analysis"): fixed cost
 * 20,000, price 400, variable cost 250; the bird bath of ch. 3.2 from memory (price 100, variable 20, fixed 18,000: 225 units).
 * Mark-up against margin: calcreal.com (cost 40, mark-up 50 % gives price 60, margin 33.33 %) and mathondemand.com (margin 60 % is a
 * mark-up of 150 %); the other pairs recomputed.
 */
import { breakEven, growthOf, marginOfMarkUp, markUpOfMargin } from '@twistwright/planner';
import { money } from '@twistwright/units';
import { expect, test } from 'vitest';

test('fixed 20,000, price 400, variable 250', () => {
  const answer = breakEven(money(2_000_000), money(40_000), money(25_000));
  expect(answer).toMatchObject({ margin: 15_000, marginShare: 0.375, wholeUnits: 134, sales: 5_333_333 });
  expect(answer?.units).toBeCloseTo(133.33, 2);
});
test('the bird bath', () => {
  expect(breakEven(money(1_800_000), money(10_000), money(2000))).toMatchObject({ units: 225, wholeUnits: 225, sales: 2_250_000 });
});
test('a unit that loses money never breaks even', () => expect(breakEven(money(100), money(10), money(10))).toBeUndefined());

test.each([
  [0.2, 0.25], [0.25, 1 / 3], [1 / 3, 0.5], [0.4, 2 / 3], [0.5, 1], [0.6, 1.5],
])('margin %d is mark-up %d', (margin, markUp) => {
  expect(markUpOfMargin(margin)).toBeCloseTo(markUp, 12);
  expect(marginOfMarkUp(markUp)).toBeCloseTo(margin, 12);
}); // biome-ignore format: pairs

test('without chance in tips and with the example as gigs, the kit has paid for itself about the break-even', () => {
  const growth = growthOf(
    {
      invested: money(2_000_000),
      hoursPerGig: 1,
      feePerHour: money(40_000),
      tipPerGuest: money(0),
      guestsPerHour: 10,
      materialPerGuest: money(0),
      costPerGig: money(25_000),
      gigsPerWeek: 5,
      purchases: [],
      weeks: 520,
    },
    50,
  );
  if (!growth.ok) throw new Error('refused');
  expect(growth.value.breakEven?.wholeUnits).toBe(134);
  expect(growth.value.paidBack).toMatchObject({ chance: 1, gigs: { p10: 134, p50: 134, p90: 134 } });
});
