import type { Money } from '@twistwright/units';
import { cheapestMusts } from './cheapest-musts.ts';
import { cheapestCompletion } from './completion.ts';
import { filledUp } from './fill-up.ts';
import type { KitModel } from './kit-model.ts';
import { piecesWith, worthOf } from './kit-worth.ts';
import { billOf, isAllowed, keepsColours } from './purchase.ts';

/** What a rule of thumb would buy for the same money. */
export interface RuleOutcome {
  readonly rule: 'every colour once' | 'most popular figures first';
  /** Bags of each offer. */
  readonly bought: Int8Array;
  readonly spent: Money;
  readonly met: number;
}

/** The two rules people use, on the same money, must-haves first; colours are limited as in the wishes, and no shop is asked for less than it sends. */
export const rulesOfThumb = (model: KitModel): readonly RuleOutcome[] => [
  outcomeOf(model, 'every colour once', everyColourOnce(model)),
  outcomeOf(model, 'most popular figures first', popularFirst(model)),
];
const outcomeOf = (model: KitModel, rule: RuleOutcome['rule'], bought: Int8Array): RuleOutcome => ({
  rule,
  bought,
  spent: billOf(model, bought).total,
  met: worthOf(model, piecesWith(model, bought)).met / model.requests,
});

/** One bag of every colour in the size asked for most, then in the next size, and so on; the cheapest bag of each. */
function everyColourOnce(model: KitModel): Int8Array {
  const asked = new Float64Array(model.have.length);
  for (const figure of model.figures)
    for (const part of figure.parts)
      for (const { needs, first } of part.choices)
        for (const { item, pieces } of needs) asked[item] = (asked[item] as number) + figure.requests * pieces * first;
  const kindOf = (item: number): string => {
    const one = model.problem.items[item];
    return one === undefined ? '' : `${one.size ?? one.id} ${one.finish ?? ''} ${one.print ?? ''}`;
  };
  const byKind = new Map<string, number>();
  for (const [item, count] of asked.entries()) byKind.set(kindOf(item), (byKind.get(kindOf(item)) ?? 0) + count);
  const items = [...asked.keys()].filter((item) => (asked[item] as number) > 0);
  items.sort((a, b) => (byKind.get(kindOf(b)) ?? 0) - (byKind.get(kindOf(a)) ?? 0) || (asked[b] as number) - (asked[a] as number) || a - b);
  let bought = startWith(model);
  // Orders below what a shop sends are looked at as they will be: filled up at the end, or left out.
  for (const item of items) {
    const own = [...model.offers.keys()].filter((o) => model.offers[o]?.holds.length === 1 && model.offers[o]?.holds[0]?.item === item);
    own.sort((a, b) => (model.offers[a]?.costs[1] ?? 0) - (model.offers[b]?.costs[1] ?? 0) || a - b);
    const [cheapest] = own;
    if (cheapest === undefined || own.some((o) => (bought[o] ?? 0) > 0) || (model.have[item] as number) > 0) continue;
    const more = bought.with(cheapest, 1);
    if (keepsColours(model, more) && billWithLeastOrders(model, more) <= model.budget) bought = more;
  }
  return accepted(model, bought);
}
/** What a purchase costs once orders that are too small are filled up. */
function billWithLeastOrders(model: KitModel, bags: Int8Array): number {
  const bill = billOf(model, bags);
  const missing = (s: number): number =>
    (model.shops[s]?.leastOrder ?? 0) - (bill.shops.find((shop) => shop.supplier === model.shops[s]?.id)?.goods ?? 0);
  return bill.refusedBy.reduce((sum, s) => sum + missing(s), bill.total as number);
}
/** Filled up so that every shop accepts the order, or without what is bought where that breaks the budget. */
function accepted(model: KitModel, bags: Int8Array): Int8Array {
  const filled = filledUp(model, bags);
  if (filled !== undefined && isAllowed(model, filled)) return filled;
  const { refusedBy } = billOf(model, bags);
  const kept = bags.map((count, o) => (refusedBy.includes(model.offers[o]?.shop ?? -1) ? (model.offers[o]?.least ?? 0) : count));
  return isAllowed(model, kept) ? kept : startWith(model);
}

/** Figure by figure from the one asked for most: the cheapest bags that make it possible, if the money is enough. */
function popularFirst(model: KitModel): Int8Array {
  let bought = startWith(model);
  const order = [...model.figures.keys()].sort((a, b) => (model.figures[b]?.requests ?? 0) - (model.figures[a]?.requests ?? 0) || a - b);
  for (const f of order) {
    const completion = cheapestCompletion(model, bought, f);
    if (completion !== undefined && isAllowed(model, completion.bags)) bought = completion.bags;
  }
  return bought;
}

const startWith = (model: KitModel): Int8Array => cheapestMusts(model) ?? Int8Array.from(model.offers, (offer) => offer.least);
