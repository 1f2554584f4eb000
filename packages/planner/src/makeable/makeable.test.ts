import { type Book, emptyBook, type Figure } from '@twistwright/books';
import { money } from '@twistwright/units';
import { describe, expect, test } from 'vitest';
import { favouriteColourway, figureFacts, paintOf } from './figure-facts.ts';
import { filterMakeable, makeableFigures } from './makeable-figures.ts';
import { minutesSpread } from './minutes-spread.ts';
import { groupOfFigure, shippedBook } from './shipped-book.ts';

const flower: Figure = {
  id: 'flower',
  name: 'Flower',
  recipe: 'balloon petals: 260 in petals, x 2\n  loop 6 petal\nballoon stem: 260 in stem\n  bubble 12 stem',
  colourways: [
    { id: 'pink', name: 'Pink', share: 3, fill: { petals: 'pink', stem: 'green' } },
    { id: 'white', name: 'White', share: 1, fill: { petals: 'white', stem: 'green' } },
  ],
  minutes: { law: 'log-normal', median: 2, sigma: 0.3 },
};
const book: Book = {
  ...emptyBook({ name: 'A business', currency: 'EUR', zone: 'Europe/Madrid' }),
  colours: ['pink', 'white', 'green', 'blue'].map((id) => ({ id, name: id })),
  items: [
    ...['pink', 'white', 'green', 'blue'].map((colour) => ({ id: `260-${colour}`, kind: 'balloon' as const, size: '260', colour })),
    { id: 'stick', kind: 'sundry', name: 'stick' },
  ],
  figures: [flower],
  suppliers: [],
  offers: ['pink', 'green'].map((colour) => ({
    id: colour,
    supplier: 's',
    item: `260-${colour}`,
    count: 100,
    price: money(1000),
  })),
};
const made = (counts: Readonly<Record<string, number>>, of: Book = book) => makeableFigures(of, new Map(Object.entries(counts)))[0];

describe('what can be made from a stock', () => {
  test('the scarcest balloon decides; each colourway apart', () => {
    const figure = made({ '260-pink': 7, '260-green': 5, '260-white': 1 });
    expect(figure?.ways.map((way) => way.makes)).toEqual([3, 0]);
    expect(figure?.makes).toBe(3);
    expect(figure?.ways[1]?.lacking).toEqual([{ item: '260-white', name: '260 white', size: '260', colour: 'white', count: 2, have: 1 }]);
  });
  test('a colour that is not there is replaced by the one of which there is most', () => {
    const figure = made({ '260-pink': 7, '260-blue': 9 });
    expect(figure?.ways[0]?.substitutes).toEqual([{ role: 'stem', from: 'green', to: 'blue' }]);
    expect(made({ '260-pink': 1, '260-green': 1 })?.ways[0]?.substitutes).toEqual([]);
  });
  test('one colour for two roles needs enough for both', () => {
    expect(made({ '260-pink': 3 })?.ways[0]?.substitutes).toEqual([{ role: 'stem', from: 'green', to: 'pink' }]);
    expect(made({ '260-pink': 2 })?.ways[0]?.substitutes).toEqual([]);
  });
  test('cost is there when all prices are known', () => {
    expect(made({})?.ways.map((way) => way.cost)).toEqual([30, undefined]);
  });
  test('sundries count as well', () => {
    const withStick = { ...book, figures: [{ ...flower, extras: [{ item: 'stick', count: 1 }] }] };
    expect(made({ '260-pink': 7, '260-green': 5, stick: 2 }, withStick)?.makes).toBe(2);
  });
  test('a recipe that cannot be read says why and makes nothing', () => {
    const figure = made({}, { ...book, figures: [{ ...flower, recipe: 'ballon x' }] });
    expect(figure?.makes).toBe(0);
    expect(figure?.problems[0]?.line).toBe(1);
  });
  test('a figure that takes nothing can be made without end', () => {
    const figure = made({}, { ...book, figures: [{ id: 'tattoo', name: 'Tattoo', colourways: [] }] });
    expect(figure?.makes).toBe(Number.POSITIVE_INFINITY);
  });
  test('the filter looks at minutes and balloons', () => {
    const all = makeableFigures(book, new Map([['260-pink', 4]]));
    expect(filterMakeable(all, { mostMinutes: 1.9 })).toEqual([]);
    expect(filterMakeable(all, { mostMinutes: 2, leastBalloons: 1, mostBalloons: 3 })).toEqual(all);
    expect(filterMakeable(all, { mostBalloons: 2 })).toEqual([]);
    expect(filterMakeable(all, { makeable: true })).toEqual([]);
  });
});

test('facts of every shipped figure can be worked out', () => {
  const shipped = shippedBook({ name: 'A', currency: 'EUR', zone: 'Europe/Madrid' });
  const facts = shipped.figures.map((figure) => figureFacts(shipped, figure));
  expect(facts.length).toBeGreaterThanOrEqual(45);
  for (const fact of facts) {
    if (!fact.ok) throw new Error(fact.error[0]?.sentence);
    expect(fact.value.minutes.p10).toBeLessThan(fact.value.minutes.p90);
    expect(fact.value.balloons).toBeGreaterThan(0);
    for (const role of fact.value.roles) expect(favouriteColourway(fact.value.figure)?.fill[role]).toBeDefined();
  }
});

test('spreads of minutes', () => {
  const logNormal = minutesSpread({ law: 'log-normal', median: 2, sigma: 0.25 });
  expect(logNormal.p10 * logNormal.p90).toBeCloseTo(4, 10);
  // Chi-squared with 10 degrees of freedom is gamma with mean 10 and shape 5; its 10th, 50th and 90th percentile as tabled (from memory).
  const chiSquared = minutesSpread({ law: 'gamma', mean: 10, shape: 5 });
  expect(Math.abs(chiSquared.p10 - 4.865)).toBeLessThan(0.02);
  expect(Math.abs(chiSquared.p50 - 9.342)).toBeLessThan(0.02);
  expect(Math.abs(chiSquared.p90 - 15.987)).toBeLessThan(0.02);
});

test('groups and paints are found by plain words', () => {
  expect(groupOfFigure({ id: 'big-elephant', name: 'Big elephant', colourways: [] })).toBe('animals');
  expect(groupOfFigure({ id: 'knights-sword', name: 'Shining sword', colourways: [] })).toBe('swords and wands');
  expect(groupOfFigure({ id: 'x', name: 'X', colourways: [], tags: ['toys'] })).toBe('toys');
  expect(groupOfFigure({ id: 'x', name: 'X', colourways: [] })).toBe('more');
  expect(paintOf({ colours: [{ id: 'lime-green', name: 'lime green' }] }, 'lime-green')).toBe('green');
  expect(paintOf({ colours: [{ id: 'gold', name: 'gold', body: '#c0a030' }] }, 'gold')).toBe('#c0a030');
  expect(paintOf({ colours: [] }, 'nothing')).toBe('grey');
});
