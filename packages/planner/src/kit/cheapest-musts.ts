import { filledUp } from './fill-up.ts';
import type { KitModel } from './kit-model.ts';
import { type Bags, billOf, mustsMissing } from './purchase.ts';

/** Ways that are looked at; tools have few offers, so that this is all of them. */
const mostWays = 2000;

/**
 * The cheapest purchase with all musts and all that is forced in, beside `bags`, that every shop accepts; undefined if there is none. The
 * budget is not looked at.
 */
export function cheapestMusts(model: KitModel, bags: Bags = []): Int8Array | undefined {
  const start = Int8Array.from(model.offers, (offer, o) => Math.max(offer.least, bags[o] ?? 0));
  let best: { readonly bags: Int8Array; readonly cost: number } | undefined;
  let ways = 0;
  const choose = (t: number, own: Int8Array): void => {
    if (ways >= mostWays) return;
    const must = model.musts[t];
    if (must === undefined) {
      ways++;
      const filled = filledUp(model, own);
      if (filled === undefined) return;
      const cost = billOf(model, filled).total;
      if (best === undefined || cost < best.cost) best = { bags: filled, cost };
      return;
    }
    const missing = (of: Int8Array): number => mustsMissing({ ...model, musts: [must] }, of);
    if (missing(own) <= 0) {
      choose(t + 1, own);
      return;
    }
    for (const [o, offer] of model.offers.entries()) {
      if (!offer.holds.some((hold) => hold.item === must.item)) continue;
      const trial = own.slice();
      while (missing(trial) > 0 && (trial[o] ?? 0) + 1 < offer.costs.length) trial[o] = (trial[o] ?? 0) + 1;
      if ((trial[o] ?? 0) > (own[o] ?? 0)) choose(missing(trial) > 0 ? t : t + 1, trial);
    }
  };
  choose(0, start);
  return best?.bags;
}
