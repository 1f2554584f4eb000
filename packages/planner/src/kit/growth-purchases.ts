import { type Money, money } from '@twistwright/units';
import type { Kit, KitOffer } from './kit-problem.ts';
import { nextPurchases } from './next-purchases.ts';
import type { FoundKit } from './solve-kit.ts';
import { leastPrice } from './spares.ts';

/**
 * What comes after a kit, in the order for `growthOf`: the spares that it leaves out (a second pump first of all), the best next
 * purchases of balloons, then what was put off for later (a better bag). Prices are those of the goods, tools at the cheapest offer,
 * without carriage: it comes with each order of its own, and what is bought at one time is best ordered together.
 */
export function growthPurchasesOf(found: FoundKit, kit: Kit, most = 3): readonly { readonly name: string; readonly cost: Money }[] {
  const { model, bought } = found;
  const has = new Set(kit.tools.map((tool) => tool.tool));
  const tools = (need: 'spare' | 'later'): readonly { readonly name: string; readonly cost: Money }[] =>
    model.problem.tools
      .filter(
        (tool) => tool.need === need && !has.has(tool.id) && !model.problem.have.some((line) => line.item === tool.id && line.count > 0),
      )
      .flatMap((tool) => {
        const price = leastPrice(model, tool);
        return price === undefined ? [] : [{ name: tool.name, cost: money(price) }];
      });
  const offerOf = (id: string): KitOffer | undefined => model.problem.offers.find((one) => one.id === id);
  const nameOf = (offer: string): string => {
    const item = offerOf(offer)?.item;
    return model.problem.items.find((one) => one.id === item)?.name ?? item ?? offer;
  };
  const balloons = nextPurchases(model, bought, most).map((step) => ({
    name: [...new Set(step.offers.map(nameOf))].join(' and '),
    cost: money(step.offers.reduce((sum, offer) => sum + (offerOf(offer)?.price ?? 0), 0)),
  }));
  return [...tools('spare'), ...balloons, ...tools('later')];
}
