import { type Book, checkBook, type StockMove } from '@twistwright/books';
import { readBook } from '@twistwright/contract';
import { adviceFor, planBook, usableStock } from '@twistwright/planner';
import { type OpenSolver, openSolver } from '@twistwright/solver/node';
import { date, money, time } from '@twistwright/units';
import { afterAll, expect, test } from 'vitest';

/** A gig with nothing left to chance, so that every number of its plan can be worked out with a pencil; the sums stand beside what is expected. */
const text = `book: 1
business: { name: Pencil, currency: GBP, zone: Europe/London }
settings:
  line:
    partySizes: [1]
    joining: { free: 0 }
    patience: { law: endless }
    choosing: { law: fixed, minutes: 0.5 }
    colourChoosingMinutes: 0
    handingOver: { law: fixed, minutes: 0.5 }
    copycat: { figures: 0, colours: 0 }
    fatiguePerHour: 0
    chanceOfPop: 0
    hiddenShare: 0
    repeatShare: 0
    closing: { rule: none }
  planning: { runs: 20, holidays: [2027-06-11], daysToSpare: 1, holdingSharePerYear: 0 }
  charge:
    hourly: 6000
    minimum: 7500
    travel: { freeMiles: 10, perMile: 45.5 }
    early: { freeMinutes: 15, perQuarter: 1000 }
    tax: { basisPoints: 2000, name: VAT }
    deposit: { basisPoints: 2500 }
    balanceDaysBefore: 7
    mileCost: { perMile: 72.5, source: a tax office, year: 2027 }
    fixedCosts: { perYear: 12000, gigsPerYear: 60 }
    taxReserve: { basisPoints: 2000 }
    preparationMinutes: 45
    setUpMinutes: 15
    strikeMinutes: 10
    wantedHourly: 2000
  tools: [{ item: pump, count: 1, when: always, place: case }, { item: weights, count: 4, when: outdoors, place: case }]
colours: [{ id: red, name: red }, { id: green, name: green }]
items:
  - { id: red, kind: balloon, size: 260, colour: red }
  - { id: green, kind: balloon, size: 260, colour: green }
  - { id: stick, kind: sundry, name: stick }
  - { id: pump, kind: tool, name: pump }
  - { id: weights, kind: tool, name: weights }
figures:
  - id: flower
    name: flower
    recipe: |
      balloon petals: 260 in petals
      balloon stem: 260 in stem
    minutes: { law: fixed, minutes: 2 }
    colourways: [{ id: red, name: red, fill: { petals: red, stem: green } }]
    extras: [{ item: stick, count: 1 }]
artists: [{ id: ada, name: Ada, pace: 1 }]
places:
  - { id: home, name: Shelf, kind: home }
  - { id: case, name: Case, kind: case }
  - { id: apron, name: Apron, kind: apron, pockets: [green, red], room: 15 }
suppliers:
  - { id: post, name: Post, leadWorkingDays: 3, orderBefore: "12:00", carriage: 395, freeFrom: 2000, closedOn: [2027-06-08] }
offers:
  - { id: post-red, supplier: post, item: red, count: 100, price: 845 }
  - { id: post-green, supplier: post, item: green, count: 100, price: 845 }
  - { id: post-stick, supplier: post, item: stick, count: 50, price: 500 }
gigs:
  - id: fair
    name: a fair
    kind: line
    day: 2027-06-12
    starts: 10:00
    ends: 11:00
    where: { name: the green, miles: 12, driveMinutes: 30 }
    artists: [ada]
    guests: 10
    arrivals: { kind: all at the start }
    menu: [{ figure: flower, share: 1 }]
    agreement: { state: quoted, earlyMinutes: 20 }
orders:
  - id: o1
    supplier: post
    orderedOn: 2027-05-25
    expectedOn: 2027-06-04
    lines: [{ item: stick, bags: 1, count: 5, price: 60 }]
    carriage: 0
moves:
  - { id: m1, day: 2027-05-01, item: red, kind: arrived, place: apron, bags: 1, perBag: 8, bagPrice: 96 }
  - { id: m2, day: 2027-05-01, item: green, kind: found, place: home, count: 20 }
  - { id: m3, day: 2027-05-01, item: stick, kind: found, place: case, count: 3 }
  - { id: m4, day: 2027-05-01, item: pump, kind: found, place: home, count: 1 }
`;
const read = readBook(text, { name: 'pencil.yaml' });
if (!read.ok) throw new Error(JSON.stringify(read.error));
const book: Book = read.value;
const today = date('2027-06-01');

let solver: OpenSolver | undefined;
afterAll(() => solver?.close());
const planned = async (of: Book = book) => {
  solver ??= openSolver();
  const plan = await planBook(of, { today }, { solver });
  if (!plan.ok) throw new Error(JSON.stringify(plan.error));
  const [gig] = plan.value.gigs;
  if (gig === undefined || plan.value.shopping === undefined) throw new Error('one gig and its shopping');
  return { ...plan.value, fair: gig, shopping: plan.value.shopping };
};

test('the book has nothing wrong with it', () => expect(checkBook(book, { today })).toEqual([]));

test('the line: ten guests, 0.5 + 2 + 0.5 = 3 minutes each, waits 0, 3, ... 27', async () => {
  const { summary } = (await planned()).fair.forecast;
  expect([summary.served.mean, summary.finish.mean, summary.meanWait.mean, summary.lastWait.mean]).toEqual([10, 30, 13.5, 27]);
  expect([summary.shareWaited.mean, summary.shareWithin.mean]).toEqual([0.9, 0.6]); // waits 0 to 15 are six of ten
  expect(summary.busy[0]?.share.mean).toBeCloseTo(0.5, 12);
});
test('the closing card: what is left of the hour by three minutes each, rounded down', () => {
  const gig = book.gigs[0];
  const advice = gig === undefined ? undefined : adviceFor(book, gig, { seed: 1, runs: 20 });
  if (!advice?.ok) throw new Error('it can be advised');
  expect(advice.value.card.map((row) => [row.minute, row.mayWait])).toEqual(
    Array.from({ length: 13 }, (_, row) => [row * 5, Math.floor((60 - row * 5) / 3)]),
  );
});
test('needs: ten of each; 8 red, 20 green, 3 sticks and 5 on order are there', async () => {
  const { needs } = await planned();
  expect(needs.items.map((item) => [item.item, item.mean, item.wanted, item.have, item.onOrder, item.short])).toEqual([
    ['red', 10, 10, 8, 0, 2],
    ['green', 10, 10, 20, 0, 0],
    ['stick', 10, 10, 3, 5, 2],
  ]);
  expect([needs.chanceNow, needs.chanceThen]).toEqual([0, 1]);
});
test('balloons that go stale before the last gig are no stock for it', () => {
  const stale: readonly StockMove[] = book.moves.map((move) =>
    move.kind === 'arrived' ? { ...move, goodUntil: date('2027-06-10') } : move,
  );
  expect(usableStock({ ...book, moves: stale }, today, date('2027-06-12')).find(({ item }) => item === 'red')).toMatchObject({ have: 0 });
  expect(usableStock({ ...book, moves: stale }, today, date('2027-06-10')).find(({ item }) => item === 'red')).toMatchObject({ have: 8 });
});
test('shopping: one bag of each that is short, by the last safe day', async () => {
  const { shopping } = await planned();
  // Saturday 12 June is no working day and Friday is a holiday; one working day before Thursday 10 it is to be at the door, Wednesday 9. Three
  // working days before that, with Tuesday 8 closed: Monday 7, Friday 4, Thursday 3.
  expect(
    shopping.orders.map((order) => [
      order.orderBy,
      order.before,
      order.arrives,
      order.goods,
      order.carriage,
      order.total,
      order.toFreeCarriage,
    ]),
  ).toEqual([['2027-06-03', '12:00', '2027-06-09', 1345, 395, 1740, 655]]);
  expect(shopping.orders[0]?.lines.map((line) => [line.bags, line.name, line.total])).toEqual([
    [1, '260 red', 845],
    [1, 'stick', 500],
  ]);
  expect([shopping.total, shopping.chance, shopping.chanceNow, shopping.proof.kind]).toEqual([1740, 1, 0, 'proven']);
});
test('at noon the cut-off of the day has passed, and what had to go today can no longer be there', async () => {
  solver ??= openSolver();
  const at = async (now: string) => {
    const plan = await planBook(book, { today: date('2027-06-03'), now: time(now) }, { solver: solver ?? openSolver() });
    if (!plan.ok) throw new Error(JSON.stringify(plan.error));
    return [plan.value.shoppingProblems.map((problem) => problem.code), plan.value.shopping?.orders.map((order) => order.orderBy)];
  };
  expect(await at('11:59')).toEqual([[], ['2027-06-03']]);
  expect(await at('12:00')).toEqual([['shopping.too-late', 'shopping.too-late'], []]);
});
test('with one more closed day in the way, and an order that would already have had to go, it is too late', async () => {
  const moved = (closedOn: readonly ReturnType<typeof date>[], day: string) =>
    planned({
      ...book,
      suppliers: book.suppliers.map((supplier) => ({ ...supplier, closedOn })),
      gigs: book.gigs.map((gig) => ({ ...gig, day: date(day) })),
    });
  // Wednesday 9 June: at the door on Tuesday 8, then Monday 7, Friday 4, Thursday 3.
  expect((await moved([], '2027-06-09')).shopping.orders.map((order) => order.orderBy)).toEqual(['2027-06-03']);
  // Closed on Thursday and Friday: Monday 7, Wednesday 2, Tuesday 1, which is today. Closed on Wednesday too: Monday 31 May, which is past.
  const closed = ['2027-06-03', '2027-06-04', '2027-06-02'].map((day) => date(day));
  expect((await moved(closed.slice(0, 2), '2027-06-09')).shopping.orders.map((order) => order.orderBy)).toEqual(['2027-06-01']);
  const late = await moved(closed, '2027-06-09');
  expect(late.shoppingProblems.map((problem) => problem.code)).toContain('shopping.too-late');
});
test('packing: twenty pieces for an apron with room for fifteen, seven of each; the rest in the case', async () => {
  const { packing } = (await planned()).fair;
  const from = (line: (typeof packing.missing)[number]) =>
    line.from.map((part) => `${part.count} ${part.already ? 'already' : part.place}`).join(', ');
  expect(
    packing.places.map((place) => [
      place.place,
      ...place.lines.map((line) => [line.item, line.count, from(line), line.missing, line.onOrder]),
    ]),
  ).toEqual([
    ['apron', ['green', 7, '7 home', 0, 0], ['red', 7, '7 already', 0, 0]],
    ['case', ['green', 3, '3 home', 0, 0], ['red', 3, '1 apron', 2, 0], ['stick', 10, '3 already', 7, 5], ['pump', 1, '1 home', 0, 0]],
  ]);
});
test('charge and floor, line by line', async () => {
  const { charge } = (await planned()).fair;
  expect(charge.lines.map((line) => line.amount)).toEqual([
    7500, // the minimum: one hour at 60.00 is less
    182, // 2 x 2 miles beyond ten at 45.5 pence
    1000, // five minutes beyond the free fifteen begin one quarter
  ]);
  expect([charge.net, charge.tax?.amount, charge.quote]).toEqual([8682, 1736, 10_418]); // a fifth of 8682 is 1736.4
  expect([charge.deposit?.amount, charge.balance.amount, charge.balance.dueOn]).toEqual([2605, 7813, '2027-06-05']); // a quarter is 2604.5, half up
  // Ten red at 96/8 = 12 from the lot, ten green at 8.45 and ten sticks at 10 from the cheapest offer.
  expect(charge.floor.materials.mean).toBeCloseTo(120 + 84.5 + 100, 9);
  expect([charge.floor.miles, charge.floor.fixedShare]).toEqual([1740, 200]); // 24 miles at 72.5; 12,000 over 60 gigs
  expect(charge.floor.minutes).toEqual({ atGig: 80, settingUp: 25, driving: 60, preparing: 45, total: 210 });
  const netFee = 8682; // 10,418 without its tax: 10,418 / 1.2 = 8681.67, rounded
  const left = netFee - 304.5 - 1740 - 200;
  expect(charge.hourly.mean).toBeCloseTo((left - 0.2 * left) / 3.5, 9);
  expect(charge.margin.mean).toBeCloseTo(left / netFee, 12);
  // For 20 an hour: 304.5 + 1740 + 200 + 2000 x 3.5 / 0.8 = 10,994.5, up to 10,995, and a fifth of it in tax.
  expect([charge.quoteForWanted, charge.wantedHourly]).toEqual([money(10_995 + 2199), 2000]);
});
test('a budget under the least purchase says so', async () => {
  const dear = { ...book, settings: { ...book.settings, planning: { ...book.settings?.planning, budget: money(1739) } } };
  const { shoppingProblems } = await planned(dear);
  expect(shoppingProblems.map((problem) => [problem.code, problem.sentence])).toEqual([
    ['shopping.budget-too-small', 'A budget of £17.39 does not buy what is short. The cheapest plan for this chance costs £17.40.'],
  ]);
  const enough = { ...book, settings: { ...book.settings, planning: { ...book.settings?.planning, budget: money(1740) } } };
  expect((await planned(enough)).shoppingProblems).toEqual([]);
});
