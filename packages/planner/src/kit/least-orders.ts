import type { Problem } from '@twistwright/units';
import { cheapestMusts } from './cheapest-musts.ts';
import { priced } from './check-kit.ts';
import type { KitModel } from './kit-model.ts';
import { type Bags, billOf, goodsOf, shippingFor } from './purchase.ts';

/** Shops that take no order as small as the budget allows beside the must-haves, a sentence each. */
export function shopsOutOfReach(model: KitModel, bought: Bags): readonly Problem[] {
  const musts = cheapestMusts(model);
  const spent = musts === undefined ? 0 : billOf(model, musts).total;
  const goods = goodsOf(model, bought);
  return model.shops.flatMap((shop, s): readonly Problem[] => {
    const sells = model.offers.some((offer) => offer.shop === s);
    const least = spent + shop.leastOrder + shippingFor(shop, shop.leastOrder);
    if (!sells || shop.leastOrder === 0 || (goods[s + 1] ?? 0) > 0 || least <= model.budget) return [];
    return [
      {
        code: 'kit.least-order',
        path: ['suppliers', s, 'leastOrder'],
        sentence: `${shop.name} takes orders from ${priced(model.problem, shop.leastOrder)}; beside the must-haves the budget of ${priced(model.problem, model.budget)} does not reach that, so nothing is bought there.`,
        todo: `It can be from ${priced(model.problem, least)}.`,
        weight: 'warning',
      },
    ];
  });
}
