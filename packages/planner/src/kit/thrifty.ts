import type { KitModel, ModelOffer } from './kit-model.ts';
import { billOf, isAllowed } from './purchase.ts';

/**
 * The same purchase or one that has no fewer pieces of anything for less money: bags of one offer are taken from another offer of the same
 * item as long as that lowers the bill, carriage counted in. A search that is content with how much is met may buy four small bags where one
 * large one is cheaper.
 */
export function thrifty(model: KitModel, bags: readonly number[]): readonly number[] {
  let best = bags;
  let bill = billOf(model, best).total;
  for (let isBetter = true; isBetter; ) {
    isBetter = false;
    for (const other of swaps(model, best)) {
      const total = billOf(model, other).total;
      if (total >= bill || !isAllowed(model, other)) continue;
      [best, bill, isBetter] = [other, total, true];
      break;
    }
  }
  return best;
}

/** All bags of one offer replaced by as few more of another that holds the same. */
function swaps(model: KitModel, bags: readonly number[]): readonly (readonly number[])[] {
  return model.offers.flatMap((from, f) => {
    const pieces = (bags[f] ?? 0) * piecesOf(from);
    if (pieces === 0) return [];
    return model.offers.flatMap((to, t) => {
      if (t === f || itemOf(to) !== itemOf(from)) return [];
      const count = (bags[t] ?? 0) + Math.ceil(pieces / piecesOf(to));
      return count < to.costs.length ? [bags.with(f, 0).with(t, count)] : [];
    });
  });
}
/** The only item of an offer; undefined for mixed bags, which nothing else replaces. */
const itemOf = ({ offer, holds }: ModelOffer): number | undefined => (offer.mix === undefined ? holds[0]?.item : undefined);
const piecesOf = (one: ModelOffer): number => (itemOf(one) === undefined ? 0 : (one.holds[0]?.pieces ?? 0));
