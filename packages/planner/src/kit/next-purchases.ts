import { type Money, money } from '@twistwright/units';
import { cheapestCompletion, keepsColours, spentOn } from './cheapest-completion.ts';
import type { KitModel } from './kit-model.ts';
import { piecesWith, worthOf } from './kit-worth.ts';

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
 * of money. The limit on colours is kept, the budget is not looked at.
 */
export function nextPurchases(model: KitModel, bought: ArrayLike<number>, most = 8): readonly NextPurchase[] {
  const has = Int8Array.from(bought);
  const steps: NextPurchase[] = [];
  while (steps.length < most) {
    const before = worthOf(model, piecesWith(model, has));
    let best: { readonly bags: readonly number[]; readonly step: NextPurchase } | undefined;
    for (const bags of candidates(model, has, before.byFigure)) {
      const step = stepOf(model, has, bags, before.met);
      if (step.gain > 1e-6 && (best === undefined || step.gainPerThousand > best.step.gainPerThousand)) best = { bags, step };
    }
    if (best === undefined) break;
    for (const bag of best.bags) has[bag] = 1;
    steps.push(best.step);
  }
  return steps;
}

function candidates(model: KitModel, has: Int8Array, byFigure: readonly number[]): readonly (readonly number[])[] {
  const found: (readonly number[])[] = [];
  for (let bag = 0; bag < has.length; bag++) {
    const first = model.cover.after?.[bag] ?? -1;
    if (has[bag] === 0 && (first < 0 || has[first] === 1)) found.push([bag]);
  }
  for (const [f, met] of byFigure.entries()) {
    const completion = met > 0 ? undefined : cheapestCompletion(model, has, f);
    if (completion !== undefined && completion.bags.length > 1) found.push(completion.bags);
  }
  return found.filter((bags) => keepsColours(model, has, bags));
}
function stepOf(model: KitModel, has: Int8Array, bags: readonly number[], metBefore: number): NextPurchase {
  const after = has.slice();
  for (const bag of bags) after[bag] = 1;
  const worth = worthOf(model, piecesWith(model, after));
  const cost = spentOn(model, after).total - spentOn(model, has).total;
  const gain = (worth.met - metBefore) / model.requests;
  const was = worthOf(model, piecesWith(model, has)).byFigure;
  return {
    offers: bags.map((bag) => model.bags[bag]?.offer.id ?? ''),
    cost: money(cost),
    gain,
    gainPerThousand: (1000 * gain) / Math.max(1, cost),
    unlocks: model.problem.figures.filter((_, f) => (was[f] ?? 0) === 0 && (worth.byFigure[f] ?? 0) > 0).map((figure) => figure.id),
    metAfter: worth.met / model.requests,
  };
}
