import { type Money, money } from '@twistwright/units';
import { cheapestCompletion } from './completion.ts';
import { filledUp } from './fill-up.ts';
import type { KitModel } from './kit-model.ts';
import { KitValuer, piecesWith } from './kit-worth.ts';
import { type Bags, billOf, keepsColours } from './purchase.ts';

/** One step beyond a kit. */
export interface NextPurchase {
  readonly offers: readonly string[];
  /** With the change in shipping; can be 0 or less where it brings free shipping. */
  readonly cost: Money;
  /** Share of requests that is met on top. */
  readonly gain: number;
  /** Share of requests on top for each 1,000 minor units. */
  readonly gainPerThousand: number;
  /** Figures that become possible. */
  readonly unlocks: readonly string[];
  readonly metAfter: number;
}

/**
 * The best next purchases in order: at each step the bag, or the few bags that bring in one more figure, with the largest gain per unit
 * of money, filled up where a shop takes no smaller order. The limit on colours is kept, the budget is not looked at. Each step comes on
 * top of those before it in one order.
 */
export function nextPurchases(model: KitModel, bought: Bags, most = 8): readonly NextPurchase[] {
  const valuer = new KitValuer(model);
  const steps: NextPurchase[] = [];
  let has: Int8Array = Int8Array.from(bought);
  while (steps.length < most) {
    const before = valuer.worth(piecesWith(model, has));
    let best: { readonly bags: Int8Array; readonly step: NextPurchase } | undefined;
    for (const bags of candidates(model, has, before.byFigure)) {
      const step = stepTo(model, valuer, has, bags, before);
      if (step.gain > 1e-6 && (best === undefined || step.gainPerThousand > best.step.gainPerThousand)) best = { bags, step };
    }
    if (best === undefined) break;
    has = best.bags;
    steps.push(best.step);
  }
  return steps;
}

/** Whole purchases that go one step beyond what is bought. */
function candidates(model: KitModel, has: Int8Array, byFigure: readonly number[]): readonly Int8Array[] {
  const found: Int8Array[] = [];
  for (const [o, offer] of model.offers.entries()) {
    if ((has[o] ?? 0) + 1 >= offer.costs.length) continue;
    const filled = filledUp(model, has.with(o, (has[o] ?? 0) + 1));
    if (filled !== undefined) found.push(filled);
  }
  for (const [f, met] of byFigure.entries()) {
    const completion = met > 0 ? undefined : cheapestCompletion(model, has, f);
    if (completion !== undefined) found.push(completion.bags);
  }
  return found.filter((bags) => keepsColours(model, bags));
}
function stepTo(
  model: KitModel,
  valuer: KitValuer,
  has: Int8Array,
  bags: Int8Array,
  before: { readonly met: number; readonly byFigure: readonly number[] },
): NextPurchase {
  const worth = valuer.worth(piecesWith(model, bags));
  const cost = billOf(model, bags).total - billOf(model, has).total;
  const gain = (worth.met - before.met) / model.requests;
  return {
    offers: addedTo(model, has, bags),
    cost: money(cost),
    gain,
    gainPerThousand: (1000 * gain) / Math.max(1, cost),
    unlocks: model.problem.figures
      .filter((_, f) => (before.byFigure[f] ?? 0) === 0 && (worth.byFigure[f] ?? 0) > 0)
      .map((figure) => figure.id),
    metAfter: worth.met / model.requests,
  };
}
/** Ids of the offers of which `bags` has more, each as often as it has. */
export const addedTo = (model: KitModel, has: Bags, bags: Bags): readonly string[] =>
  model.offers.flatMap(({ offer }, o) => Array.from({ length: Math.max(0, (bags[o] ?? 0) - (has[o] ?? 0)) }, () => offer.id));
