import { type Book, emptyBook } from '@twistwright/books';
import { money } from '@twistwright/units';
import { expect, test } from 'vitest';
import { growKit } from './grow-kit.ts';
import { planKit } from './plan-kit.ts';

const book: Book = {
  ...emptyBook({ name: 'A coach', currency: 'GBP', zone: 'Europe/London' }),
  settings: { tools: [{ item: 'pump', count: 1, when: 'spare', place: 'case', firstKit: 'later' }] },
  colours: [{ id: 'red', name: 'red' }],
  items: [
    { id: 'r', kind: 'balloon', size: '260', colour: 'red' },
    { id: 'pump', kind: 'tool', name: 'second pump' },
  ],
  figures: [
    {
      id: 'pair',
      name: 'Pair of swords',
      recipe: 'balloon one: 260 in blade\nbubble 10\nballoon other: 260 in blade\nbubble 10',
      colourways: [{ id: 'red', name: 'red', fill: { blade: 'red' } }],
    },
  ],
  suppliers: [{ id: 'shop', name: 'Shop', leadWorkingDays: 1, carriage: money(0) }],
  offers: [
    { id: 'R', supplier: 'shop', item: 'r', count: 100, price: money(1000) },
    { id: 'P', supplier: 'shop', item: 'pump', count: 1, price: money(900) },
  ],
};

test('worked by hand: two balloons at 10 a guest, ten guests an hour, all of whom are served', () => {
  const wishes = { budget: money(1000), hours: 1, kind: 'tables' as const };
  const plan = planKit(book, wishes, { runs: 10 });
  if (!plan.ok) throw new Error(plan.error[0]?.sentence);
  const met = plan.value.kit.met;
  expect(met).toBeCloseTo(1, 4);
  const earnings = { hoursPerGig: 2, feePerHour: money(1500), tipPerGuest: money(0), costPerGig: money(500), gigsPerWeek: 1 };
  const growth = growKit(book, wishes, plan.value, earnings);
  if (!growth.ok) throw new Error('refused');
  // 2 h x 15.00 less 20 guests x 20 less 5.00 = 21.00; the bag of 10.00 is paid for by the first gig.
  expect(Math.abs(growth.value.perGig - 2100)).toBeLessThanOrEqual(1);
  expect(growth.value.breakEven?.wholeUnits).toBe(1);
  expect(growth.value.purchases.map(({ name, cost }) => [name, cost])).toContainEqual(['second pump', 900]);
});
