import type { KitModel } from './kit-model.ts';
import { type Bags, goodsOf, keepsColours, shippingFor } from './purchase.ts';

/**
 * The purchase with the cheapest bags added so that every shop accepts the order, and up to free shipping where that costs less than
 * shipping; undefined if a shop has not enough to sell.
 */
export function filledUp(model: KitModel, bags: Bags): Int8Array | undefined {
  const goods = goodsOf(model, bags);
  let filled: Int8Array = Int8Array.from(bags);
  for (const [s, shop] of model.shops.entries()) {
    const own = goods[s + 1] ?? 0;
    const isRefused = own < shop.leastOrder;
    if (own <= 0 || (!isRefused && (own >= shop.freeFrom || shop.freeFrom - own >= shop.shipping))) continue;
    const free = filledAt(model, filled, s, () => true);
    const next = free !== undefined && keepsColours(model, free) ? free : filledAt(model, filled, s, (o) => bringsNoColour(model, bags, o));
    if (next !== undefined && keepsColours(model, next)) filled = next;
    else if (isRefused) return undefined;
  }
  return filled;
}
const bringsNoColour = (model: KitModel, bags: Bags, o: number): boolean => {
  const known = new Set(model.ownColours);
  for (const [other, offer] of model.offers.entries()) if ((bags[other] ?? 0) > 0) for (const colour of offer.colours) known.add(colour);
  return model.offers[o]?.colours.every((colour) => known.has(colour)) ?? false;
};

/** Fills up one shop: the least money with which goods reach the least order, or free shipping where that costs less still. */
function filledAt(model: KitModel, bags: Int8Array, s: number, mayAdd: (offer: number) => boolean): Int8Array | undefined {
  const shop = model.shops[s];
  if (shop === undefined) return undefined;
  const goods = goodsOf(model, bags)[s + 1] ?? 0;
  const dearest = Math.max(0, ...model.offers.map((offer) => (offer.shop === s ? (offer.costs[1] ?? 0) : 0)));
  const isFreeNear = shop.freeFrom <= shop.leastOrder + dearest + shop.shipping;
  const sums = sumsFrom(model, bags, s, mayAdd, (isFreeNear ? Math.max(shop.leastOrder, shop.freeFrom) : shop.leastOrder) - goods);
  let best: { readonly cost: number; readonly more: number } | undefined;
  for (const more of sums.keys()) {
    if (goods + more < shop.leastOrder) continue;
    const cost = more + shippingFor(shop, goods + more);
    if (best === undefined || cost < best.cost) best = { cost, more };
  }
  if (best === undefined) return undefined;
  const filled = bags.slice();
  for (let step = sums.get(best.more); step !== undefined; step = sums.get(step.before))
    if (step.offer >= 0) filled[step.offer] = step.count;
  return filled;
}

interface Sum {
  readonly offer: number;
  readonly count: number;
  readonly before: number;
}
/** Every sum of money that bags of a shop can be added for (up to the first beyond `upTo`), with the last step to it. */
function sumsFrom(model: KitModel, bags: Int8Array, s: number, mayAdd: (offer: number) => boolean, upTo: number): ReadonlyMap<number, Sum> {
  const sums = new Map<number, Sum>([[0, { offer: -1, count: 0, before: Number.NaN }]]);
  for (const [o, offer] of model.offers.entries()) {
    const from = bags[o] ?? 0;
    if (offer.shop !== s || from + 1 >= offer.costs.length || !mayAdd(o)) continue;
    for (const sum of [...sums.keys()]) {
      if (sum >= upTo) continue;
      // With price breaks more bags can cost less: of those that are enough, the cheapest.
      let enough = Number.POSITIVE_INFINITY;
      for (let count = from + 1; count < offer.costs.length; count++) {
        const more = sum + (offer.costs[count] ?? 0) - (offer.costs[from] ?? 0);
        if (more >= enough) continue;
        if (more >= upTo) enough = more;
        if (!sums.has(more)) sums.set(more, { offer: o, count, before: sum });
      }
    }
  }
  return sums;
}
