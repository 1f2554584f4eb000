import type { Money } from '@twistwright/units';
import { cheapestMusts } from './cheapest-musts.ts';
import type { KitModel } from './kit-model.ts';
import { piecesWith } from './kit-worth.ts';
import { type Bags, type Bill, billOf, keepsColours } from './purchase.ts';

/** Ways that are looked at for one figure. */
const mostWays = 400;

/**
 * The cheapest purchase that holds all of `bags`, the musts, and what makes figure `f` possible, such that every shop accepts its order;
 * undefined if none does within the colours. The budget is not looked at; `below` ends what cannot be cheaper.
 */
export function cheapestCompletion(
  model: KitModel,
  bags: Bags,
  f: number,
  below: Money | undefined = undefined,
): { readonly bags: Int8Array; readonly bill: Bill } | undefined {
  const parts = model.figures[f]?.parts ?? [];
  const shippingSaved = model.shops.reduce((sum, shop) => sum + shop.shipping, 0);
  let best: { readonly bags: Int8Array; readonly bill: Bill } | undefined;
  let ways = 0;
  const limit = (): number => Math.min(best?.bill.total ?? Number.POSITIVE_INFINITY, below ?? Number.POSITIVE_INFINITY);
  const lack = (own: Int8Array, needs: readonly { readonly item: number }[]): readonly number[] => {
    const pieces = piecesWith(model, own);
    return needs.flatMap(({ item }) => ((pieces[item] as number) > 0 ? [] : [item]));
  };
  const settle = (own: Int8Array): void => {
    ways++;
    const whole = cheapestMusts(model, own);
    if (whole === undefined || !keepsColours(model, whole)) return;
    const bill = billOf(model, whole);
    if (bill.total < limit()) best = { bags: whole, bill };
  };
  /** Buys the items still lacking, each by each offer that has it, then goes on with the next part. */
  const buy = (items: readonly number[], p: number, own: Int8Array): void => {
    const [item] = items;
    if (item === undefined) {
      fill(p, own);
      return;
    }
    for (const o of offersByPrice(model, item)) {
      const trial = own.slice();
      trial[o] = (trial[o] ?? 0) + 1;
      if (trial[o] < (model.offers[o]?.costs.length ?? 0))
        buy(
          lack(
            trial,
            items.map((one) => ({ item: one })),
          ),
          p,
          trial,
        );
    }
  };
  const fill = (p: number, own: Int8Array): void => {
    // More goods can cost less when they bring free shipping: by at most all shipping together.
    if (ways >= mostWays || billOf(model, own).total - shippingSaved >= limit()) return;
    const part = parts[p];
    if (part === undefined) {
      settle(own);
      return;
    }
    if (part.choices.some(({ needs }) => lack(own, needs).length === 0)) {
      fill(p + 1, own);
      return;
    }
    for (const { needs } of part.choices) buy(lack(own, needs), p + 1, own);
  };
  fill(
    0,
    Int8Array.from(model.offers, (offer, o) => Math.max(offer.least, bags[o] ?? 0)),
  );
  return best;
}

const offersByPrice = (model: KitModel, item: number): readonly number[] =>
  [...model.offers.keys()]
    .filter((o) => model.offers[o]?.holds.some((hold) => hold.item === item))
    .sort((a, b) => (model.offers[a]?.costs[1] ?? 0) - (model.offers[b]?.costs[1] ?? 0) || a - b);
