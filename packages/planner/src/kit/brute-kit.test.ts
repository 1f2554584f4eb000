import { money } from '@twistwright/units';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cheapestCompletion } from './completion.ts';
import { describeKit } from './describe-kit.ts';
import { KitBound } from './kit-bound.ts';
import { usesOf } from './kit-buying.ts';
import { kitCurve } from './kit-curve.ts';
import { type KitModel, kitModelOf } from './kit-model.ts';
import type { KitProblem } from './kit-problem.ts';
import { rulesOfThumb } from './kit-rules.ts';
import { piecesWith, worthOf } from './kit-worth.ts';
import { nextPurchases } from './next-purchases.ts';
import { billOf, isAllowed } from './purchase.ts';
import { PurchaseState } from './purchase-state.ts';
import { findKit, leastBudget } from './solve-kit.ts';

const colours = ['white', 'red', 'blue'];
const colour = fc.constantFrom(...colours);
const preference = fc.integer({ min: 0, max: 3 });
const amount = (min: number, max: number) => fc.integer({ min, max }).map(money);

/** Small kits with all that an order can depend on: price breaks, least orders, free shipping, tools of several shops, colours that belong together. */
const kits: fc.Arbitrary<KitProblem> = fc
  .record({
    figures: fc.array(
      fc.record({
        share: fc.integer({ min: 1, max: 5 }),
        body: fc.uniqueArray(colour, { minLength: 1, maxLength: 3 }),
        eyes: fc.option(fc.uniqueArray(colour, { minLength: 1, maxLength: 2 }), { nil: undefined }),
        together: fc.option(fc.array(fc.tuple(colour, colour, preference), { minLength: 2, maxLength: 3 }), { nil: undefined }),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    offers: fc.array(
      fc.record({
        size: fc.constantFrom('260', 'round-5'),
        colour,
        shop: fc.constantFrom('north', 'south'),
        count: fc.constantFrom(10, 25, 50),
        price: fc.integer({ min: 200, max: 900 }),
        lessAt: fc.option(fc.integer({ min: 2, max: 3 }), { nil: undefined }),
      }),
      { minLength: 2, maxLength: 5 },
    ),
    mix: fc.boolean(),
    pumps: fc.array(fc.record({ shop: fc.constantFrom('north', 'south'), price: fc.integer({ min: 300, max: 900 }) }), { maxLength: 2 }),
    shops: fc.array(
      fc.record({
        shipping: amount(0, 400),
        freeFrom: fc.option(amount(500, 2500), { nil: undefined }),
        leastOrder: fc.option(amount(300, 2000), { nil: undefined }),
      }),
      { minLength: 2, maxLength: 2 },
    ),
    budget: amount(600, 5000),
    hours: fc.integer({ min: 1, max: 8 }),
    mostColours: fc.option(fc.integer({ min: 1, max: 3 }), { nil: undefined }),
    forced: fc.boolean(),
  })
  .map((one): KitProblem => {
    const offers: KitProblem['offers'] = [
      ...one.offers.map(({ size, colour: of, shop, count, price, lessAt }, o) => ({
        id: `offer ${o}`,
        supplier: shop,
        item: `${size} ${of}`,
        count,
        price: money(price),
        mostBags: 2,
        ...(lessAt === undefined ? {} : { mostBags: 3, breaks: [{ bags: lessAt, price: money(Math.round(price * 0.6)) }] }),
      })),
      ...(one.mix
        ? [
            {
              id: 'assorted',
              supplier: 'north',
              item: 'assorted',
              count: 20,
              price: money(500),
              mostBags: 1,
              mix: { '260 white': 1, '260 red': 2 },
            },
          ]
        : []),
      ...one.pumps.map(({ shop, price }, p) => ({ id: `pump ${p}`, supplier: shop, item: 'pump', count: 1, price: money(price) })),
    ];
    const role = (name: string, size: string, some: readonly string[]) => ({
      name,
      size,
      pieces: 1,
      colours: some.map((of, c) => ({ colour: of, preference: some.length - c })),
    });
    return {
      currency: 'GBP',
      items: ['260', 'round-5'].flatMap((size) => colours.map((of) => ({ id: `${size} ${of}`, name: `${size} ${of}`, size, colour: of }))),
      figures: one.figures.map(({ share, body, eyes, together }, f) => ({
        id: `figure ${f}`,
        name: `figure ${f}`,
        share,
        roles: together === undefined ? [role('body', '260', body), ...(eyes === undefined ? [] : [role('eyes', 'round-5', eyes)])] : [],
        ...(together === undefined
          ? {}
          : {
              combinations: [
                {
                  name: 'body and eyes',
                  ways: together.map(([first, second, asked]) => ({
                    preference: asked,
                    pieces: [
                      { size: '260', colour: first, count: 2 },
                      { size: 'round-5', colour: second, count: 1 },
                    ],
                  })),
                },
              ],
            }),
      })),
      offers,
      suppliers: one.shops.map(({ shipping, freeFrom, leastOrder }, s) => ({
        id: s === 0 ? 'north' : 'south',
        name: s === 0 ? 'North' : 'South',
        shipping,
        ...(freeFrom === undefined ? {} : { freeFrom }),
        ...(leastOrder === undefined ? {} : { leastOrder }),
      })),
      tools: [{ id: 'pump', name: 'pump', need: 'must-have', price: money(500) }],
      have: [],
      wishes: {
        budget: one.budget,
        hours: one.hours,
        kind: 'small fairs',
        ...(one.mostColours === undefined ? {} : { mostColours: one.mostColours }),
        ...(one.forced ? { forcedIn: ['offer 0'] } : {}),
      },
    };
  });

/** Every purchase there is, whatever it costs. */
function* everyPurchase(model: KitModel): Generator<Int8Array> {
  const bags = new Int8Array(model.offers.length);
  for (;;) {
    yield bags;
    let o = 0;
    while (o < bags.length && bags[o] === (model.offers[o]?.costs.length ?? 1) - 1) bags[o++] = 0;
    if (o === bags.length) return;
    bags[o] = (bags[o] ?? 0) + 1;
  }
}
const isSmall = (model: KitModel): boolean => model.offers.reduce((ways, offer) => ways * offer.costs.length, 1) <= 2000;
/** What a shop would say of an order, from the facts alone. */
function billByHand(problem: KitProblem, bags: ReadonlyMap<string, number>): { readonly total: number; readonly isAccepted: boolean } {
  let total = 0;
  let isAccepted = true;
  const at = new Map<string, number>();
  for (const [id, count] of bags) {
    const offer = problem.offers.find((one) => one.id === id);
    const step = offer?.breaks?.findLast((one) => one.bags <= count);
    const price = offer === undefined ? 500 : (step?.price ?? offer.price);
    at.set(offer?.supplier ?? '', (at.get(offer?.supplier ?? '') ?? 0) + count * price);
  }
  for (const [id, goods] of at) {
    const shop = problem.suppliers.find((one) => one.id === id);
    total += goods + (shop === undefined || goods >= (shop.freeFrom ?? Number.POSITIVE_INFINITY) ? 0 : shop.shipping);
    if (goods < (shop?.leastOrder ?? 0)) isAccepted = false;
  }
  return { total, isAccepted };
}
const byId = (model: KitModel, bags: ArrayLike<number>): ReadonlyMap<string, number> =>
  new Map(model.offers.flatMap(({ offer }, o) => ((bags[o] ?? 0) > 0 ? [[offer.id, bags[o] ?? 0] as const] : [])));

test('no shop refuses the order, the bill is what the shops would ask, and no purchase of all meets more', () => {
  fc.assert(
    fc.property(kits, (problem) => {
      const model = kitModelOf(problem);
      if (!isSmall(model)) return;
      let best = -1;
      for (const bags of everyPurchase(model)) {
        const bill = billOf(model, bags);
        const byHand = billByHand(problem, byId(model, bags));
        // Compared as one: there are very many.
        if (bill.total !== byHand.total || (bill.refusedBy.length === 0) !== byHand.isAccepted) expect(bill).toEqual(byHand);
        if (isAllowed(model, bags)) best = Math.max(best, worthOf(model, piecesWith(model, bags)).met);
      }
      const found = findKit(problem);
      if (!found.ok) {
        if (!found.error.some((one) => ['kit.budget', 'kit.forced', 'kit.least-order'].includes(one.code))) return;
        expect(best).toBe(-1);
        return;
      }
      const { answer, bought } = found.value;
      expect(isAllowed(model, bought)).toBe(true);
      expect(answer.bound).toBeGreaterThanOrEqual(best - 1e-9);
      expect(answer.value).toBeGreaterThanOrEqual(best - 1.01e-4 * model.requests);
      const kit = describeKit(found.value);
      const lines = new Map([
        ...kit.lines.map((line) => [line.offer, line.bags] as const),
        ...kit.tools.map((tool) => [tool.offer ?? 'pump', tool.bags] as const),
      ]);
      expect(kit.spent).toBe(billByHand(problem, lines).total);
      for (const line of kit.lines) expect(line.cost).toBe(line.bags * line.price);
    }),
    { seed: 11, numRuns: 200 },
  );
});

test('the bound holds at any prices and for any part of the purchases', () => {
  fc.assert(
    fc.property(kits, fc.integer({ min: 0, max: 25 }), fc.infiniteStream(fc.nat(2)), (problem, rounds, narrowing) => {
      const model = kitModelOf(problem);
      if (!isSmall(model)) return;
      const least = Int8Array.from(model.offers, (offer) => Math.min(narrowing.next().value === 2 ? 1 : 0, offer.costs.length - 1));
      const most = Int8Array.from(model.offers, (offer, o) =>
        Math.max(least[o] ?? 0, narrowing.next().value === 0 ? 0 : offer.costs.length - 1),
      );
      const [from, to] = [least.slice(), most.slice()];
      const bound = new KitBound(model);
      const answer = bound.bound({
        least,
        most,
        uses: Int8Array.from(model.shops, usesOf),
        prices: bound.startingPrices(),
        beat: 0,
        rounds: rounds + 1,
      });
      const top = Math.max(answer.bound, answer.cut);
      for (const bags of everyPurchase(model)) {
        if (bags.some((count, o) => count < (from[o] ?? 0) || count > (to[o] ?? 0)) || !isAllowed(model, bags)) continue;
        expect(worthOf(model, piecesWith(model, bags)).met).toBeLessThanOrEqual(top + 1e-7);
      }
    }),
    { seed: 12, numRuns: 2000 },
  );
});

test('the cheapest kit, and the cheapest way to one more figure, are the cheapest of all', () => {
  fc.assert(
    fc.property(kits, (problem) => {
      const { mostColours: _most, ...wishes } = problem.wishes;
      const plain = { ...problem, wishes };
      const model = kitModelOf({ ...plain, wishes: { ...wishes, budget: money(1e9) } });
      if (!isSmall(model)) return;
      const cheapest = model.figures.map(() => Number.POSITIVE_INFINITY);
      for (const bags of everyPurchase(model)) {
        if (!isAllowed(model, bags)) continue;
        const { byFigure } = worthOf(model, piecesWith(model, bags));
        const { total } = billOf(model, bags);
        for (const [f, met] of byFigure.entries()) if (met > 0) cheapest[f] = Math.min(cheapest[f] ?? 0, total);
      }
      const least = Math.min(...cheapest);
      expect(leastBudget(plain) ?? Number.POSITIVE_INFINITY).toBe(least);
      for (const [f, cost] of cheapest.entries())
        expect(cheapestCompletion(model, [], f)?.bill.total ?? Number.POSITIVE_INFINITY).toBe(cost);
    }),
    { seed: 13, numRuns: 300 },
  );
});

test('next purchases, rules of thumb and the curve give no shop an order that it would refuse; the curve never falls', () => {
  fc.assert(
    fc.property(kits, (problem) => {
      const found = findKit(problem, { effort: 'soon' });
      if (!found.ok) return;
      const { model, bought } = found.value;
      let bags = byId(model, bought);
      for (const step of nextPurchases(model, bought, 3)) {
        const more = new Map(bags);
        for (const offer of step.offers) more.set(offer, (more.get(offer) ?? 0) + 1);
        const [before, after] = [billByHand(problem, bags), billByHand(problem, more)];
        expect(after.isAccepted).toBe(true);
        expect(step.cost).toBe(after.total - before.total);
        bags = more;
      }
      for (const rule of rulesOfThumb(model)) {
        const bill = billByHand(problem, byId(model, rule.bought));
        expect([bill.isAccepted, bill.total]).toEqual([true, rule.spent]);
        expect(rule.spent).toBeLessThanOrEqual(problem.wishes.budget);
      }
      const curve = kitCurve(problem, 5);
      let met = 0;
      for (const point of curve.ok ? curve.value.points : []) {
        expect(point.met).toBeGreaterThanOrEqual(met - 1e-9);
        expect(point.spent).toBeLessThanOrEqual(point.budget);
        met = point.met;
      }
    }),
    { seed: 14, numRuns: 150 },
  );
});

test('a state says the same as the bill, bag by bag', () => {
  fc.assert(
    fc.property(kits, fc.array(fc.tuple(fc.nat(6), fc.nat(3)), { maxLength: 12 }), (problem, moves) => {
      const model = kitModelOf(problem);
      const state = new PurchaseState(model);
      for (const [o, count] of moves) {
        const offer = model.offers[o % Math.max(1, model.offers.length)];
        if (offer !== undefined) state.put(model.offers.indexOf(offer), count % offer.costs.length);
        expect(state.spent).toBe(billOf(model, state.bags).total);
        expect(state.isAllowed()).toBe(isAllowed(model, state.bags));
        for (const [item, pieces] of piecesWith(model, state.bags).entries()) expect(state.pieces[item]).toBeCloseTo(pieces, 9);
      }
    }),
    { seed: 15, numRuns: 200 },
  );
});
