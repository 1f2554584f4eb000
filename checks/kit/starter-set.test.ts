/**
 * Common practice in the trade, no published source: bags of 50 or 100; a starter set of about a dozen single-colour bags of 260 at 4 to 7
 * a bag comes to roughly 50 to 90, with rounds, hearts and a few prints to little over a hundred, with tools to about two hundred; a good
 * bag or case costs from a hundred.
 */
import { firstKit, type KitProblem, kitCurve } from '@twistwright/planner';
import { money } from '@twistwright/units';
import { expect, test } from 'vitest';

const colours = ['white', 'black', 'red', 'blue', 'yellow', 'green', 'pink', 'orange', 'purple', 'brown', 'light blue', 'grey'];
/** Prices in minor units within the ranges above. */
const price260 = [400, 450, 500, 500, 500, 550, 550, 600, 600, 650, 700, 700];
const extras = [
  { id: 'round white', size: 'round-5', colour: 'white', price: 500 },
  { id: 'round black', size: 'round-5', colour: 'black', price: 500 },
  { id: 'heart red', size: 'heart-6', colour: 'red', price: 700 },
  { id: 'eyes', size: 'round-5', colour: 'white', print: 'eyes', price: 1200 },
];
const problem: KitProblem = {
  currency: 'GBP',
  items: [
    ...colours.map((colour) => ({ id: colour, name: `260 ${colour}`, size: '260', colour })),
    ...extras.map(({ price: _, ...item }) => ({ ...item, name: item.id })),
  ],
  figures: [
    ...['dog', 'sword', 'flower', 'giraffe', 'mouse', 'rabbit', 'hat', 'parrot'].map((name, f) => ({
      id: name,
      name,
      share: 10 - f,
      roles: [
        { name: 'body', size: '260', pieces: 1, colours: colours.map((colour, c) => ({ colour, preference: 1 + ((c * 5 + f * 3) % 7) })) },
      ],
    })),
    {
      id: 'heart wand',
      name: 'heart wand',
      share: 4,
      roles: [
        { name: 'stick', size: '260', pieces: 1, colours: [{ colour: 'white', preference: 1 }] },
        { name: 'heart', size: 'heart-6', pieces: 1, colours: [{ colour: 'red', preference: 1 }] },
      ],
    },
    {
      id: 'bear',
      name: 'bear',
      share: 4,
      roles: [
        { name: 'body', size: '260', pieces: 1, colours: [{ colour: 'brown', preference: 1 }] },
        { name: 'eyes', size: 'round-5', print: 'eyes', pieces: 1, colours: [{ colour: 'white', preference: 1 }] },
      ],
    },
    {
      id: 'penguin',
      name: 'penguin',
      share: 3,
      roles: [
        { name: 'body', size: '260', pieces: 1, colours: [{ colour: 'black', preference: 1 }] },
        { name: 'belly', size: 'round-5', pieces: 1, colours: [{ colour: 'white', preference: 1 }] },
        { name: 'hat', size: 'round-5', pieces: 1, colours: [{ colour: 'black', preference: 1 }] },
      ],
    },
  ],
  offers: [
    ...colours.map((colour, c) => ({ id: `bag ${colour}`, supplier: 'shop', item: colour, count: 100, price: money(price260[c] ?? 500) })),
    ...extras.map((one) => ({
      id: `bag ${one.id}`,
      supplier: 'shop',
      item: one.id,
      count: one.size === 'heart-6' ? 50 : 100,
      price: money(one.price),
    })),
  ],
  suppliers: [{ id: 'shop', name: 'shop', shipping: money(500), freeFrom: money(6000) }],
  tools: [
    { id: 'pump', name: 'pump', need: 'must-have', price: money(2500) },
    { id: 'spare pump', name: 'spare pump', need: 'must-have', price: money(1500) },
    { id: 'scissors', name: 'scissors', need: 'must-have', price: money(600) },
    { id: 'markers', name: 'markers', need: 'must-have', price: money(800) },
    { id: 'apron', name: 'apron', need: 'must-have', price: money(2500) },
    { id: 'case', name: 'case', need: 'later', price: money(10_000) },
  ],
  have: [],
  wishes: { budget: money(20_000), hours: 8, kind: 'small fairs' },
};
const of = (lines: readonly { readonly cost: number; readonly offer: string }[], isIt: (offer: string) => boolean): number =>
  lines.filter((line) => isIt(line.offer)).reduce((sum, line) => sum + line.cost, 0);

test('about two hundred buys a dozen colours, rounds, hearts, prints and the tools, and meets nearly everybody', () => {
  const kit = firstKit(problem);
  if (!kit.ok) throw new Error(kit.error.map((one) => one.sentence).join(' '));
  const { lines, spent, met, tools } = kit.value;
  const plain = of(lines, (offer) => colours.some((colour) => offer === `bag ${colour}`));
  const balloons = of(lines, () => true);
  expect(plain).toBeGreaterThanOrEqual(5000);
  expect(plain).toBeLessThanOrEqual(9000);
  expect(balloons).toBeGreaterThan(plain);
  expect(balloons).toBeLessThanOrEqual(12_000);
  expect(spent).toBeGreaterThan(15_000);
  expect(spent).toBeLessThanOrEqual(20_000);
  expect(met).toBeGreaterThan(0.98);
  expect(tools.map((tool) => tool.tool)).not.toContain('case');
  for (const line of lines) expect([50, 100]).toContain(line.pieces / line.bags);
});

test('half the dozen colours already meet most requests: the curve is steep at first and flat at the end', () => {
  const curve = kitCurve(problem, 11);
  if (!curve.ok) throw new Error('no curve');
  const met = curve.value.points.map((point) => point.met);
  const half = met[5] ?? 0;
  expect(half - (met[0] ?? 0)).toBeGreaterThan((met[10] ?? 0) - half);
  expect(curve.value.everything).toBeLessThanOrEqual(20_000);
});
