import { type Book, emptyBook } from '@twistwright/books';
import { type BookKitWishes, curveThrough, planKit } from '@twistwright/planner';
import { date, money } from '@twistwright/units';
import { expect, test } from 'vitest';
import { curveBudgets } from './curve-budgets.ts';
import {
  answerSentence,
  bagsWords,
  buySentence,
  comparedSentence,
  expectSentence,
  lossSentence,
  nextSentence,
  offerName,
  offersName,
  packsWords,
  sliderOf,
  whyText,
} from './kit-words.ts';
import { ordersOfKit, orderText } from './order-of-kit.ts';
import { priceLevelOf } from './price-level.ts';
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
    /^Expect \d+ to \d+ of 100\. Nothing runs out in the 12 hours: the kit lasts about \d+ hours \(\d+ to \d+\)\.$/,
  );
  const next = plan.next[0];
  if (next === undefined) throw new Error('nothing comes next');
  expect(nextSentence(book, next)).toEqual({ money: '£11 more', rest: '260 red, and 100 of 100 are met' });
  expect(answerSentence({ ...plan, kit: { ...plan.kit, budget: money(36_000) } }, 'KWD')).toMatch(/^For 36 KWD, one colour /);
  expect(whyText('260 red', '260 red: blade on 1')).toBe('Blade on 1');
});
test('what has not run out while it was followed lasts so long or more', () => {
  const plan = planOf({ ...wishes, budget: money(2000) });
  const spread = (p10: number, p50: number, p90: number) => ({ p10, p50, p90, mean: p50, error: 0 });
  const after = (hours: number, hoursUntilShort: ReturnType<typeof spread>): string =>
    expectSentence({ ...plan, lasting: { ...plan.lasting, met: spread(0.5, 0.5, 0.5), hoursUntilShort } }, hours).replace(
      /^Expect .*?\. /,
      '',
    );
  expect(after(12, spread(48, 48, 48.25))).toBe('Nothing runs out in the 12 hours: the kit lasts about 48 hours or more.');
  expect(after(12, spread(30, 40, 48))).toBe('Nothing runs out in the 12 hours: the kit lasts about 40 hours (30 to 48 or more).');
  expect(after(1, spread(1.5, 2, 3))).toBe('Nothing runs out in the hour: the kit lasts about 2 hours (1.5 to 3).');
  expect(after(12, spread(5, 9, 11))).toBe('Something first runs out after about 9 hours (5 to 11).');
});
test('each pack of a tool is a thing to buy', () => {
  const plan = planOf({ ...wishes, tools: [{ item: 'pump', need: 'must-have', count: 2 }] });
  expect(plan.kit.tools).toMatchObject([{ bags: 2, pieces: 2, price: 1800 }]);
  expect(buySentence(plan, 'GBP')).toBe('Buy these four things for £38.00.');
});
test('two kits beside one another: what one meets more, and what that costs', () => {
  const { kit } = planOf(wishes);
  const other = (met: number, spent: number) => ({ ...kit, met: kit.met - met, spent: money(kit.spent - spent) });
  const compared = (met: number, spent: number): string => comparedSentence(kit, other(met, spent), 'the kit for £20', 'GBP');
  expect(compared(0, 0)).toBe('This kit meets as many requests as the kit for £20 and costs the same.');
  expect(compared(0.5, 1150)).toBe('This kit meets 50 of 100 requests more than the kit for £20 and costs £11.50 more.');
  expect(compared(0.5, -1150)).toBe('This kit meets 50 of 100 requests more than the kit for £20 and costs £11.50 less.');
  expect(compared(-0.5, -1150)).toBe('This kit meets 50 of 100 requests fewer than the kit for £20 and costs £11.50 less.');
});
test('offers by name: as often as they are bought, in bags or in packs', () => {
  expect(offersName(book, ['R', 'R', 'P'])).toBe('2 x 260 red, 100 in a bag and pump');
  expect([bagsWords(book, 'R', 2, 200), bagsWords(book, 'P', 2, 2)]).toEqual(['2 bags of 100', '2 pieces']);
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
  expect(sliderOf({ cheapest: money(4000), everything: money(5500) }, 1000)).toEqual({ min: 4000, max: 5500, step: 10 });
  expect(sliderOf({ cheapest: money(1200), everything: money(16000) }, 1)).toEqual({ min: 1200, max: 16000, step: 100 });
});
test('a kit that was kept opens as the page that made it', () => {
  const page = {
    ...firstWishes,
    hours: 20,
    guests: 15,
    mostColours: 3,
    unwanted: ['blue'],
    have: [{ item: 'pump', count: 1 }],
    takenOut: ['B'],
    assortedBags: false,
    takesOther: 0.5,
  };
  const saved = savedKitOf(
    planOf({ ...wishesOf(book, page), budget: money(4000) }),
    { ...wishesOf(book, page), budget: money(4000) },
    {
      id: 'k',
      name: 'For Bea',
      savedOn: date('2026-06-02'),
    },
  );
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

test('things are called by their names, with how many come together', () => {
  const more: Book = {
    ...book,
    items: [
      ...book.items,
      { id: 'stick', kind: 'sundry', name: 'holding stick' },
      { id: 'x', kind: 'balloon', size: 'round-5', colour: 'red' },
    ],
    offers: [
      ...book.offers,
      { id: 'S', supplier: 'post', item: 'stick', count: 100, price: money(400) },
      { id: 'X', supplier: 'post', item: 'x', count: 25, price: money(200) },
    ],
  };
  expect(['R', 'X', 'S', 'P', 'pump', 'gone'].map((id) => offerName(more, id))).toEqual([
    '260 red, 100 in a bag',
    '5-inch red round, 25 in a bag',
    'holding stick, 100 in a pack',
    'pump',
    'pump',
    'gone',
  ]);
  expect(offerName(more, 'S', false)).toBe('holding stick');
  expect([packsWords(1, 1), packsWords(2, 2), packsWords(1, 2), packsWords(2, 8)]).toEqual([
    '1 piece',
    '2 pieces',
    '1 pack of 2',
    '2 packs of 4',
  ]);
});
test('an order is a text for whom it is, with prices that add up', () => {
  const { kit } = planOf(wishes);
  const post = ordersOfKit(book, kit, date('2026-06-03')).find((order) => order.supplier === 'post');
  if (post === undefined) throw new Error('nothing is ordered by post');
  const bags = post.lines[0]?.bags ?? 0;
  expect(orderText(book, post, 'For Bea')).toBe(
    `Order, For Bea: Long Barn Supply, Wednesday 3 June 2026\n\n${bags} x 260 red, 100 in a bag: £${bags * 8}.00\nCarriage: £3.00\nIn all: £${bags * 8 + 3}.00\n`,
  );
  expect(orderText(book, post, '')).toMatch(/^Order: Long Barn Supply/);
});
test('steps of money suit what a hundred balloons cost, whatever the currency', () => {
  const priced = (currency: string, price: number): Pick<Book, 'items' | 'offers' | 'business'> => ({
    business: { ...book.business, currency },
    items: book.items,
    offers: [{ id: 'R', supplier: 'post', item: 'r', count: 50, price: money(price / 2) }],
  });
  expect(priceLevelOf(priced('GBP', 900))).toEqual({ step: 100, smallStep: 10 });
  expect(priceLevelOf(priced('JPY', 1800))).toEqual({ step: 200, smallStep: 20 });
  expect(priceLevelOf(priced('KWD', 3600))).toEqual({ step: 500, smallStep: 50 });
  expect(priceLevelOf({ ...priced('JPY', 2), items: [] })).toEqual({ step: 1, smallStep: 1 });
});
test('the points of the curve stand closer where little money makes much difference', () => {
  const budgets = curveBudgets({ cheapest: money(1000), everything: money(9000) }, 5);
  expect([budgets[0], budgets.at(-1)]).toEqual([1000, 9000]);
  const gaps = budgets.slice(1).map((budget, index) => budget - (budgets[index] ?? 0));
  expect(gaps).toEqual([...gaps].sort((a, b) => a - b));
});
