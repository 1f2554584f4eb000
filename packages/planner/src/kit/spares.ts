import type { KitModel } from './kit-model.ts';
import { pricedAt } from './kit-model.ts';
import type { KitOffer, KitTool } from './kit-problem.ts';
import { type Bags, billOf } from './purchase.ts';

/** A spare that is bought with money that is left. */
export interface BoughtSpare {
  readonly tool: KitTool;
  readonly offer: KitOffer;
  readonly bags: number;
  /** For all of it. */
  readonly price: number;
  /** Index of the shop, -1 for anywhere. */
  readonly shop: number;
}

/** Where a tool can be had, with as many packs as are needed: from its offers, else anywhere at its own price. */
export function waysToBuy(model: KitModel, tool: KitTool): readonly BoughtSpare[] {
  const needed = tool.count ?? 1;
  const out = new Set(model.problem.wishes.takenOut ?? []);
  const offers = model.problem.offers.filter((offer) => offer.item === tool.id && offer.mix === undefined && !out.has(offer.id));
  const shopOf = (supplier: string): number => model.shops.findIndex((shop) => shop.id === supplier);
  if (offers.length === 0) {
    if (tool.price === undefined) return [];
    const offer: KitOffer = { id: tool.id, supplier: tool.supplier ?? '', item: tool.id, count: needed, price: tool.price };
    return [{ tool, offer, bags: 1, price: tool.price, shop: shopOf(offer.supplier) }];
  }
  return offers.flatMap((offer): readonly BoughtSpare[] => {
    const bags = Math.ceil(needed / offer.count);
    if (bags > (offer.mostBags ?? Number.POSITIVE_INFINITY)) return [];
    return [{ tool, offer, bags, price: bags * pricedAt(offer, bags), shop: shopOf(offer.supplier) }];
  });
}

/** The spares that the money left still buys, in the order in which they are listed, each where it adds least to the bill. */
export function sparesWithin(model: KitModel, bags: Bags): readonly BoughtSpare[] {
  const taken: BoughtSpare[] = [];
  const beside = new Map<number, number>();
  for (const tool of model.spares) {
    let best: { readonly way: BoughtSpare; readonly total: number } | undefined;
    for (const way of waysToBuy(model, tool)) {
      const bill = billOf(model, bags, new Map(beside).set(way.shop, (beside.get(way.shop) ?? 0) + way.price));
      if (bill.refusedBy.length > 0 || bill.total > model.budget) continue;
      if (best === undefined || bill.total < best.total) best = { way, total: bill.total };
    }
    if (best === undefined) continue;
    taken.push(best.way);
    beside.set(best.way.shop, (beside.get(best.way.shop) ?? 0) + best.way.price);
  }
  return taken;
}

/** What a tool costs by itself, at its cheapest offer. */
export const leastPrice = (model: KitModel, tool: KitTool): number | undefined => {
  const prices = waysToBuy(model, tool).map((way) => way.price);
  return prices.length === 0 ? undefined : Math.min(...prices);
};
