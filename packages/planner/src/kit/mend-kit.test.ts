import { money } from '@twistwright/units';
import { expect, test } from 'vitest';
import { checkKit } from './check-kit.ts';
import type { KitProblem } from './kit-problem.ts';
import { mendKit } from './mend-kit.ts';
import { findKit, firstKit } from './solve-kit.ts';

const plain: KitProblem = {
  currency: 'GBP',
  items: ['red', 'blue'].map((colour) => ({ id: colour, name: `260 ${colour}`, size: '260', colour })),
  figures: ['red', 'blue'].map((colour) => ({
    id: `${colour} dog`,
    name: `${colour} dog`,
    share: 1,
    roles: [{ name: 'body', size: '260', pieces: 1, colours: [{ colour, preference: 1 }] }],
  })),
  offers: [
    { id: 'R', supplier: 'north', item: 'red', count: 100, price: money(900) },
    { id: 'B', supplier: 'south', item: 'blue', count: 100, price: money(800) },
  ],
  suppliers: [
    { id: 'north', name: 'North', shipping: money(300) },
    { id: 'south', name: 'South', shipping: money(0), leastOrder: money(1500) },
  ],
  tools: [{ id: 'pump', name: 'pump', need: 'must-have', price: money(1000) }],
  have: [],
  wishes: { budget: money(4500), hours: 5, kind: 'small fairs' },
};
const [red, blue] = plain.figures;
if (red === undefined || blue === undefined) throw new Error('two figures');

test.each<[string, KitProblem, string, string, readonly string[]]>([
  [
    'a budget below the must-haves',
    { ...plain, wishes: { ...plain.wishes, budget: money(900) } },
    'The budget of £9.00 is below the must-haves at £10.00 (pump).',
    'With £22.00 instead of £9.00.',
    ['R'],
  ],
  [
    'a colour role with no colour',
    { ...plain, figures: [{ ...red, roles: [{ name: 'body', size: '260', pieces: 1, colours: [] }] }, blue] },
    'red dog: the role body has no colour that will do.',
    'Without red dog.',
    ['B'],
  ],
  [
    'shares that sum to nought',
    { ...plain, figures: plain.figures.map((figure) => ({ ...figure, share: 0 })) },
    'The asking shares of the figures sum to nought.',
    'All figures are taken to be asked for alike.',
    ['R', 'B'],
  ],
  [
    'an offer with a count of nought',
    { ...plain, offers: plain.offers.map((offer) => (offer.id === 'R' ? { ...offer, count: 0 } : offer)) },
    'Offer R has 0 pieces in a bag.',
    'Without offer R.',
    ['B'],
  ],
  [
    'two currencies',
    { ...plain, suppliers: plain.suppliers.map((shop) => (shop.id === 'south' ? { ...shop, currency: 'EUR' as const } : shop)) },
    'South charges in EUR, the budget is in GBP.',
    'Without South.',
    ['R'],
  ],
  [
    'a must-have that only a shop with a least order sells',
    {
      ...plain,
      offers: [...plain.offers, { id: 'P', supplier: 'south', item: 'pump', count: 1, price: money(1000) }],
      wishes: { ...plain.wishes, budget: money(1200) },
    },
    'The budget of £12.00 is below the must-haves at £18.00 (pump). South takes orders from £15.00, so that the order there is filled up with balloons.',
    'With £18.00 instead of £12.00.',
    ['B'],
  ],
])('%s: a sentence, and the nearest thing that is possible', (_, problem, sentence, change, bought) => {
  const refused = firstKit(problem);
  expect(refused.ok ? [] : refused.error.map((one) => one.sentence)).toContain(sentence);
  const mended = mendKit(problem);
  expect(mended?.changes).toContain(change);
  const kit = mended === undefined ? undefined : firstKit(mended.problem);
  expect(kit?.ok === true && kit.value.lines.map((line) => line.offer)).toEqual(bought);
});

test('a figure that nobody can make stands in the way of nothing', () => {
  const bear = {
    ...red,
    id: 'bear',
    name: 'bear',
    roles: [{ name: 'head', size: '350', pieces: 1, colours: [{ colour: 'red', preference: 1 }] }],
  };
  const problem = { ...plain, figures: [...plain.figures, bear] };
  expect(checkKit(problem).map((one) => [one.weight, one.sentence])).toEqual([
    ['warning', 'bear cannot be made from any offer: no offer has 350 in red.'],
  ]);
  expect(mendKit(problem)).toEqual({ problem, changes: [] });
});

test('what is to be left out or is there already is named as it is called; a name of nothing is told and stands in the way of nothing', () => {
  const known = { ...plain, have: [{ item: 'pump', count: 1 }], wishes: { ...plain.wishes, takenOut: ['R', 'blue', 'pump'] } };
  expect(checkKit(known)).toEqual([]);
  const unknown = { ...plain, have: [{ item: 'mauve', count: 5 }], wishes: { ...plain.wishes, takenOut: ['mauve bag'] } };
  expect(checkKit(unknown).map((one) => [one.weight, one.sentence])).toEqual([
    ['warning', 'mauve bag is not to be bought, but no offer, item or tool is called so.'],
    ['warning', 'mauve is said to be there, but no item or tool is called so.'],
  ]);
  expect(firstKit(unknown).ok).toBe(true);
});

test('nothing is near where nothing can be made', () => {
  expect(mendKit({ ...plain, offers: [] })).toBeUndefined();
  expect(findKit({ ...plain, offers: [] }).ok).toBe(false);
});
