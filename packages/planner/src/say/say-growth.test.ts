import { money } from '@twistwright/units';
import { expect, test } from 'vitest';
import { growthOf } from '../kit/index.ts';
import { sayGrowth, sayMilestone } from './say-growth.ts';

const problem = {
  invested: money(6000),
  hoursPerGig: 2,
  feePerHour: money(1500),
  tipPerGuest: money(20),
  guestsPerHour: 8,
  materialPerGuest: money(15),
  costPerGig: money(400),
  gigsPerWeek: 1,
  purchases: [{ name: 'second pump', cost: money(900) }],
};

test('when the kit is paid for and what comes after it, with their spread', () => {
  const growth = growthOf(problem, 400, 3);
  if (!growth.ok) throw new Error('refused');
  const said = sayGrowth(growth.value, 'GBP');
  expect(said.answer).toMatch(/^The kit has paid for itself after 3 gigs( \(\d+ to \d+\))?\.$/);
  expect(said.more[0]).toMatch(/^A gig leaves about £26\.80\. That is about \d+ weeks \(\d+ to \d+\)\.$/);
  expect(said.more[1]).toMatch(/^second pump for £9: in week \d+ \(\d+ to \d+\), after 1 gig\.$/);
});
test('what never comes is said, and a first week is week 1', () => {
  const never = growthOf({ ...problem, feePerHour: money(0), tipPerGuest: money(0) }, 50, 3);
  if (!never.ok) throw new Error('refused');
  expect(sayGrowth(never.value, 'GBP').answer).toBe('On these fees and tips the kit never pays for itself.');
  expect(sayMilestone({ chance: 0 })).toBe('not within the weeks that were looked at');
  const now = { p10: 0, p50: 0.2, p90: 0.9, mean: 0.3, error: 0 };
  const one = { p10: 1, p50: 1, p90: 1, mean: 1, error: 0 };
  expect(sayMilestone({ chance: 0.6, weeks: now, gigs: one })).toBe('in week 1 (1), after 1 gig, and 6 in 10 that it comes at all');
});
