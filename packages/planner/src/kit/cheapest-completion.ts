import { type Money, money } from '@twistwright/units';
import type { KitModel } from './kit-model.ts';
import type { KitTool } from './kit-problem.ts';

/** What a purchase costs shop by shop, shipping included, with the must-haves and these spares. */
export function spentOn(
  model: KitModel,
  bought: ArrayLike<number>,
  spares: readonly KitTool[] = [],
): {
  readonly total: Money;
  readonly shops: readonly { readonly supplier: string; readonly name: string; readonly goods: Money; readonly shipping: Money }[];
} {
  const { suppliers } = model.problem;
  const tools = [...model.mustHaves, ...spares];
  let elsewhere = tools
    .filter((tool) => !suppliers.some((supplier) => supplier.id === tool.supplier))
    .reduce((sum, tool) => sum + tool.price, 0);
  const shops = suppliers.map((supplier) => {
    let goods = tools.filter((tool) => tool.supplier === supplier.id).reduce((sum, tool) => sum + tool.price, 0);
    for (const [b, bag] of model.bags.entries()) if (bought[b] === 1 && bag.offer.supplier === supplier.id) goods += bag.offer.price;
    const shipping = goods > 0 && goods < (supplier.freeFrom ?? Number.POSITIVE_INFINITY) ? supplier.shipping : money(0);
    return { supplier: supplier.id, name: supplier.name, goods: money(goods), shipping };
  });
  for (const shop of shops) elsewhere += shop.goods + shop.shipping;
  return { total: money(elsewhere), shops: shops.filter((shop) => shop.goods > 0) };
}

/** The cheapest bags that make figure `f` possible beside what is bought, with the money they take; undefined if nothing can. */
export function cheapestCompletion(
  model: KitModel,
  bought: Int8Array,
  f: number,
): { readonly bags: readonly number[]; readonly cost: Money } | undefined {
  const roles = (model.figures[f]?.roles ?? []).filter(
    (role) =>
      !role.choices.some(
        ({ item }) =>
          (model.have[item] ?? 0) > 0 || model.bags.some((bag, b) => bought[b] === 1 && bag.holds.some((hold) => hold.item === item)),
      ),
  );
  const before = spentOn(model, bought).total;
  const trial = bought.slice();
  const chosen: number[] = [];
  let best: { readonly bags: readonly number[]; readonly cost: Money } | undefined;
  let tries = 0;
  const fill = (r: number, goods: number): void => {
    if (tries > 5000 || goods >= (best?.cost ?? Number.POSITIVE_INFINITY) + shippingSaved(model)) return;
    const role = roles[r];
    if (role === undefined) {
      tries++;
      if (!keepsColours(model, trial, [])) return;
      const cost = spentOn(model, trial).total - before;
      if (best === undefined || cost < best.cost) best = { bags: [...chosen], cost: money(cost) };
      return;
    }
    const items = new Set(role.choices.map((choice) => choice.item));
    if (chosen.some((b) => model.bags[b]?.holds.some((hold) => items.has(hold.item)))) {
      fill(r + 1, goods);
      return;
    }
    for (const [b, bag] of model.bags.entries()) {
      if (trial[b] === 1 || (model.cover.after?.[b] ?? -1) >= 0 || !bag.holds.some((hold) => items.has(hold.item))) continue;
      trial[b] = 1;
      chosen.push(b);
      fill(r + 1, goods + bag.offer.price);
      chosen.pop();
      trial[b] = 0;
    }
  };
  fill(0, 0);
  return best;
}
/** More goods can cost less when they bring free shipping: by at most all shipping together. */
const shippingSaved = (model: KitModel): number => model.problem.suppliers.reduce((sum, supplier) => sum + supplier.shipping, 0);

/** True if these bags beside what is bought bring no more colours than the wishes allow. */
export function keepsColours(model: KitModel, bought: ArrayLike<number>, bags: readonly number[]): boolean {
  const { mostColours, coloursOf, ownColours } = model.cover;
  if (mostColours === undefined) return true;
  const colours = new Set<number>();
  for (const [bag, some] of (coloursOf ?? []).entries())
    if (bought[bag] === 1 || bags.includes(bag)) for (const colour of some) colours.add(colour);
  for (const colour of ownColours ?? []) colours.delete(colour);
  return colours.size <= mostColours;
}
