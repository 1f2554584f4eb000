import { fail, type Money, money, ok, type Result } from '@twistwright/units';
import { checkKit } from './check-kit.ts';
import { type KitModel, kitModelOf } from './kit-model.ts';
import type { KitProblem } from './kit-problem.ts';
import { piecesWith, worthOf } from './kit-worth.ts';
import { type Bags, billOf, isAllowed } from './purchase.ts';
import { type KitLimits, leastBudget, search } from './solve-kit.ts';

export interface KitCurvePoint {
  readonly budget: Money;
  readonly spent: Money;
  /** Share of requests met, and what no purchase for this budget can exceed. */
  readonly met: number;
  readonly metAtMost: number;
  readonly figures: number;
}
export interface KitCurve {
  /** From the cheapest kit that works to everything, ascending; `met` never falls. */
  readonly points: readonly KitCurvePoint[];
  readonly cheapest: Money;
  /** Enough for all that can be met, within a thousandth. */
  readonly everything: Money;
}

/** Budget against requests met, in equal steps. Refused where no kit works at all. */
export function kitCurve(problem: KitProblem, count = 20, limits: KitLimits = { effort: 'soon' }): Result<KitCurve> {
  const errors = checkKit(problem).filter((one) => one.weight === 'error');
  if (errors.length > 0) return fail(errors);
  const rich = kitModelOf({ ...problem, wishes: { ...problem.wishes, budget: money(allOf(problem)) } });
  const cheapest = leastBudget(problem);
  if (cheapest === undefined)
    return fail([
      {
        code: 'kit.nothing-to-make',
        path: ['figures'],
        sentence: 'Not one of the figures can be made within the limit on colours and the orders that shops accept.',
        todo: 'Allow more colours, or add offers.',
        weight: 'error',
      },
    ]);
  const everything = money(Math.max(cheapest, costOfEverything(rich)));
  const points: KitCurvePoint[] = [];
  let before: ReadonlyMap<string, number> = new Map();
  for (let k = 0; k < count; k++) {
    const budget = money(Math.round(cheapest + ((everything - cheapest) * k) / Math.max(1, count - 1)));
    const model = kitModelOf({ ...problem, wishes: { ...problem.wishes, budget } });
    const answer = search(model, { ...limits, start: before });
    if (answer === undefined) continue;
    before = bagsByOffer(model, answer.bags);
    const worth = worthOf(model, piecesWith(model, answer.bags));
    points.push({
      budget,
      spent: billOf(model, answer.bags).total,
      met: worth.met / model.requests,
      metAtMost: Math.min(1, Math.max(answer.bound, worth.met) / model.requests),
      figures: worth.byFigure.filter((met) => met > 0).length,
    });
  }
  return ok({ points: tightened(points), cheapest, everything });
}

/** What a larger budget cannot exceed a smaller one cannot either. */
function tightened(points: readonly KitCurvePoint[]): readonly KitCurvePoint[] {
  let most = 1;
  return [...points]
    .reverse()
    .map((point) => {
      most = Math.min(most, point.metAtMost);
      return { ...point, metAtMost: Math.max(point.met, most) };
    })
    .reverse();
}

const allOf = (problem: KitProblem): number =>
  problem.tools.reduce((sum, tool) => sum + (tool.price ?? 0), 0) +
  problem.suppliers.reduce((sum, supplier) => sum + supplier.shipping, 0) +
  12 * problem.offers.reduce((sum, offer) => sum + offer.price, 0);

/** Bags by offer. */
export const bagsByOffer = (model: KitModel, bags: Bags): ReadonlyMap<string, number> =>
  new Map(model.offers.flatMap(({ offer }, o) => ((bags[o] ?? 0) > 0 ? [[offer.id, bags[o] ?? 0] as const] : [])));

/** Money for a purchase that meets what unlimited money meets, less a thousandth: bags that add least for their price are given back. */
function costOfEverything(rich: KitModel): number {
  const answer = search(rich, { effort: 'soon' });
  let has = Int8Array.from(answer?.bags ?? []);
  const worth = (bags: Int8Array): number => worthOf(rich, piecesWith(rich, bags)).met;
  const enough = worth(has) * 0.999;
  const order = [...has.keys()].sort((a, b) => (rich.offers[b]?.costs[1] ?? 0) - (rich.offers[a]?.costs[1] ?? 0) || b - a);
  for (const o of order)
    while ((has[o] ?? 0) > 0) {
      const fewer = has.with(o, (has[o] ?? 0) - 1);
      if (!isAllowed(rich, fewer) || worth(fewer) < enough) break;
      has = fewer;
    }
  return billOf(rich, has).total;
}
