import { type Book, emptyBook } from '@twistwright/books';
import { type BookKitWishes, curveThrough, planKit } from '@twistwright/planner';
import { date, money } from '@twistwright/units';
import { expect, test } from 'vitest';
import { answerSentence, expectSentence, lossSentence, nextSentence, sliderOf, whyText } from './kit-words.ts';
import { ordersOfKit } from './order-of-kit.ts';
import { firstWishes, pageOfSaved, savedKitOf, wishesOf } from './wishes-of-page.ts';

const book: Book = {
  ...emptyBook({ name: 'A coach', currency: 'GBP', zone: 'Europe/London' }),
  settings: { tools: [{ item: 'pump', count: 1, when: 'always', place: 'case' }] },
  colours: ['red', 'blue'].map((id) => ({ id, name: id })),
  items: [
    { id: 'r', kind: 'balloon', size: '260', colour: 'red' },
    { id: 'b', kind: 'balloon', size: '260', colour: 'blue' },
    { id: 'pump', kind: 'tool', name: 'pump' },
  ],
  figures: ['red', 'blue'].map((colour) => ({
    id: colour,
    name: `${colour} sword`,
    recipe: 'balloon sword: 260 in blade\nbubble 10',
    colourways: [{ id: colour, name: colour, fill: { blade: colour } }],
    difficulty: colour === 'red' ? 1 : 4,
  })),
  suppliers: [
    { id: 'post', name: 'Long Barn Supply', leadWorkingDays: 2, carriage: money(300), closedOn: [date('2026-06-05')] },
    { id: 'counter', name: 'Corner Counter', leadWorkingDays: 0, carriage: money(0) },
  ],
  offers: [
    { id: 'R', supplier: 'post', item: 'r', count: 100, price: money(800) },
    { id: 'B', supplier: 'counter', item: 'b', count: 100, price: money(900) },
    { id: 'P', supplier: 'counter', item: 'pump', count: 1, price: money(900) },
  ],
};
const planOf = (wishes: BookKitWishes) => {
  const plan = planKit(book, wishes, { runs: 50 });
  if (!plan.ok) throw new Error(plan.error[0]?.sentence);
  return plan.value;
};
const wishes = { ...wishesOf(book, firstWishes), budget: money(5000) };

test('sentences of one kit', () => {
  const plan = planOf({ ...wishes, budget: money(2000) });
  expect(answerSentence(plan, 'GBP')).toBe('For £20, one colour meets about 50 of 100 requests.');
  expect(expectSentence(plan, 12)).toMatch(
    /^Expect \d+ to \d+\. Nothing runs out in the 12 hours: the kit lasts about \d+ \(\d+ to \d+\)\.$/,
  );
  const next = plan.next[0];
  if (next === undefined) throw new Error('nothing comes next');
  expect(nextSentence(book, next)).toEqual({ money: '£11 more', rest: '260 red, and 100 of 100 are met' });
  expect(whyText('260 red', '260 red: blade on 1')).toBe('Blade on 1');
});
test('what a decision costs', () => {
  const plan = planOf({ ...wishes, takenOut: ['R'] });
  expect(lossSentence(plan, 1, { forcedIn: 0, takenOut: 1 })).toBe(
    'What you have taken out costs 50 of 100 requests: without it 100 would be met.',
  );
  expect(lossSentence(plan, plan.kit.met, { forcedIn: 1, takenOut: 1 })).toBe('What you have put in and taken out costs no request.');
});
test('the slider has round steps, and its least is enough for a kit', () => {
  expect(sliderOf({ cheapest: money(2290), everything: money(32150) }, 100)).toEqual({ min: 2400, max: 32200, step: 200 });
  expect(sliderOf({ cheapest: money(2290), everything: money(2290) }, 100)).toEqual({ min: 2300, max: 2400, step: 100 });
  expect(sliderOf({ cheapest: money(1200), everything: money(16000) }, 1)).toEqual({ min: 1200, max: 16000, step: 100 });
});
test('a kit that was kept opens as the page that made it', () => {
  const page = {
    ...firstWishes,
    hours: 20,
    mostColours: 3,
    unwanted: ['blue'],
    have: [{ item: 'pump', count: 1 }],
    takenOut: ['B'],
    assortedBags: false,
  };
  const saved = savedKitOf(planOf({ ...wishesOf(book, page), budget: money(4000) }), wishesOf(book, page), money(4000), {
    id: 'k',
    name: 'For Bea',
    savedOn: date('2026-06-02'),
  });
  expect(saved).toMatchObject({ name: 'For Bea', lines: [{ offer: 'R', bags: expect.any(Number) }], tools: [] });
  expect(pageOfSaved(book, saved)).toEqual(page);
});
test('one order a supplier, whole bags and tools, at the door after its working days', () => {
  const { kit } = planOf(wishes);
  const orders = ordersOfKit(book, kit, date('2026-06-03'));
  expect(orders.map((order) => [order.supplier, order.expectedOn, order.carriage])).toEqual(
    expect.arrayContaining([
      ['post', date('2026-06-08'), 300],
      ['counter', date('2026-06-03'), 0],
    ]),
  );
  const goods = orders.flatMap((order) => order.lines).reduce((sum, line) => sum + line.bags * line.price, 0);
  expect(goods + orders.reduce((sum, order) => sum + order.carriage, 0)).toBe(kit.spent);
  expect(orders.flatMap((order) => order.lines.map((line) => line.offer))).toContain('P');
});

test('the curve goes through the chosen kit and never falls', () => {
  const point = (budget: number, met: number) => ({ budget: money(budget), met, low: met - 0.1, high: met + 0.1 });
  const points = [point(100, 0.2), point(200, 0.5), point(300, 0.6)];
  expect(curveThrough(points, undefined)).toEqual(points);
  expect(curveThrough(points, point(250, 0.7)).map(({ budget, met }) => [budget, met])).toEqual([
    [100, 0.2],
    [200, 0.5],
    [250, 0.7],
    [300, 0.7],
  ]);
  expect(curveThrough(points, point(200, 0.55))).toHaveLength(3);
});
