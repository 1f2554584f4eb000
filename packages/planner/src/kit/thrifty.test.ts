import { money } from '@twistwright/units';
import { expect, test } from 'vitest';
import { kitModelOf } from './kit-model.ts';
import type { KitProblem } from './kit-problem.ts';
import { findKit } from './solve-kit.ts';
import { thrifty } from './thrifty.ts';

const problem: KitProblem = {
  currency: 'GBP',
  items: [{ id: 'red', name: '260 red', size: '260', colour: 'red' }],
  figures: [
    { id: 'dog', name: 'dog', share: 1, roles: [{ name: 'body', size: '260', pieces: 1, colours: [{ colour: 'red', preference: 1 }] }] },
  ],
  offers: [
    { id: 'small', supplier: 'counter', item: 'red', count: 25, price: money(305) },
    { id: 'large', supplier: 'post', item: 'red', count: 100, price: money(845) },
  ],
  suppliers: [
    { id: 'counter', name: 'Counter', shipping: money(0) },
    { id: 'post', name: 'Post', shipping: money(300) },
  ],
  tools: [],
  have: [],
  wishes: { budget: money(5000), hours: 8, kind: 'parties' },
};

test('four small bags at 12.20 give way to a large one at 8.45 with 3.00 of carriage; two at 6.10 do not', () => {
  const model = kitModelOf(problem);
  expect(model.offers.map(({ offer }) => offer.id)).toEqual(['small', 'large']);
  expect(thrifty(model, [4, 0])).toEqual([0, 1]);
  expect(thrifty(model, [2, 0])).toEqual([2, 0]);
  expect(thrifty(model, [0, 1])).toEqual([0, 1]);
});
test('a purchase that is to be made in any case stays, and so does one from a shop that would refuse the other', () => {
  const forced = kitModelOf({ ...problem, wishes: { ...problem.wishes, forcedIn: ['small'] } });
  expect(thrifty(forced, [4, 0])[0]).toBeGreaterThan(0);
  const suppliers = problem.suppliers.map((one) => (one.id === 'post' ? { ...one, leastOrder: money(900) } : one));
  expect(thrifty(kitModelOf({ ...problem, suppliers }), [4, 0])).toEqual([4, 0]);
});
test('a kit found with money to spare is not dearer than the same pieces elsewhere', () => {
  for (const effort of ['soon', 'full'] as const) {
    const found = findKit(problem, { effort });
    if (!found.ok) throw new Error('no kit');
    expect(thrifty(found.value.model, found.value.bought)).toEqual(found.value.bought);
  }
});
