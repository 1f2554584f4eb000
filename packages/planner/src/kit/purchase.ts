import { type Money, money } from '@twistwright/units';
import type { KitModel } from './kit-model.ts';

/** Bags of each offer of a model. */
export type Bags = ArrayLike<number>;

/** What a purchase costs, shop by shop; the truth that every search is held against. */
export interface Bill {
  readonly total: Money;
  /** Shops where something is bought, and `elsewhere` for what can be had anywhere. */
  readonly shops: readonly { readonly supplier: string; readonly name: string; readonly goods: Money; readonly shipping: Money }[];
  readonly elsewhere: Money;
  /** Shops that would refuse this order. */
  readonly refusedBy: readonly number[];
}

/** The bill of a purchase, with goods that are bought beside it (spares), by shop. */
export function billOf(model: KitModel, bags: Bags, beside: ReadonlyMap<number, number> = new Map()): Bill {
  const goods = goodsOf(model, bags);
  for (const [shop, cost] of beside) goods[shop + 1] = (goods[shop + 1] ?? 0) + cost;
  let total = goods[0] ?? 0;
  const shops = model.shops.map((shop, s) => {
    const value = goods[s + 1] ?? 0;
    const shipping = shippingFor(shop, value);
    total += value + shipping;
    return { supplier: shop.id, name: shop.name, goods: money(value), shipping: money(shipping) };
  });
  return {
    total: money(total),
    shops: shops.filter((shop) => shop.goods > 0),
    elsewhere: money(goods[0] ?? 0),
    refusedBy: [...model.shops.keys()].filter((s) => (goods[s + 1] ?? 0) > 0 && (goods[s + 1] ?? 0) < (model.shops[s]?.leastOrder ?? 0)),
  };
}
/** Goods at "anywhere" (first) and at each shop. */
export function goodsOf(model: KitModel, bags: Bags): Float64Array {
  const goods = new Float64Array(model.shops.length + 1);
  for (let o = 0; o < model.offers.length; o++) {
    const offer = model.offers[o];
    const count = bags[o] ?? 0;
    if (offer !== undefined && count > 0) goods[offer.shop + 1] = (goods[offer.shop + 1] ?? 0) + (offer.costs[count] ?? Number.NaN);
  }
  return goods;
}
export const shippingFor = (shop: KitModel['shops'][number], goods: number): number =>
  goods <= 0 || goods >= shop.freeFrom ? 0 : shop.shipping;

/** Colours that a purchase brings beside those that are there. */
export function coloursBought(model: KitModel, bags: Bags): ReadonlySet<number> {
  const colours = new Set<number>();
  for (const [o, offer] of model.offers.entries())
    if ((bags[o] ?? 0) > 0) for (const colour of offer.colours) if (!model.ownColours.has(colour)) colours.add(colour);
  return colours;
}
export const keepsColours = (model: KitModel, bags: Bags): boolean =>
  model.mostColours === Number.POSITIVE_INFINITY || coloursBought(model, bags).size <= model.mostColours;

/** Pieces of the musts that a purchase leaves missing. */
export function mustsMissing(model: KitModel, bags: Bags): number {
  let missing = 0;
  for (const must of model.musts) {
    let pieces = 0;
    for (const [o, offer] of model.offers.entries())
      for (const hold of offer.holds) if (hold.item === must.item) pieces += (bags[o] ?? 0) * hold.pieces;
    missing += Math.max(0, must.missing - pieces);
  }
  return missing;
}

/** True if the purchase has all that is a must, keeps to the money and the colours, and no shop refuses it. */
export function isAllowed(model: KitModel, bags: Bags): boolean {
  if (model.offers.some((offer, o) => (bags[o] ?? 0) < offer.least)) return false;
  if (mustsMissing(model, bags) > 1e-9 || !keepsColours(model, bags)) return false;
  const bill = billOf(model, bags);
  return bill.total <= model.budget && bill.refusedBy.length === 0;
}
