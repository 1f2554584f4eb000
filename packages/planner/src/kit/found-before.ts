import { type KitModel, kitModelOf } from './kit-model.ts';
import type { Kit, KitProblem } from './kit-problem.ts';
import { piecesWith, worthOf } from './kit-worth.ts';
import { isAllowed } from './purchase.ts';
import type { FoundKit } from './solve-kit.ts';

/**
 * A purchase that was found before, without another search: its worth is true, its bound says nothing (all requests).
 * @param bags bags by offer, must-have tools among them, spares not; those are bought with money that is left
 * @returns undefined where the purchase is not to be had like this: an offer has gone, the money does not reach, a shop refuses it
 */
export function foundBefore(problem: KitProblem, bags: ReadonlyMap<string, number>): FoundKit | undefined {
  const model = kitModelOf(problem);
  if (!canBeHad(model, bags)) return undefined;
  const bought = model.offers.map(({ offer }) => bags.get(offer.id) ?? 0);
  if (!isAllowed(model, bought)) return undefined;
  const value = worthOf(model, piecesWith(model, bought)).met;
  return { model, bought, answer: { bags: bought, value, bound: model.requests, proven: false, nodes: 0 } };
}
function canBeHad(model: KitModel, bags: ReadonlyMap<string, number>): boolean {
  const most = new Map(model.offers.map(({ offer, costs }) => [offer.id, costs.length - 1]));
  return [...bags].every(([offer, count]) => Number.isInteger(count) && count >= 0 && count <= (most.get(offer) ?? 0));
}

/** Bags by offer of a kit that was described, as {@link foundBefore} takes them. */
export function bagsOfKit({ lines, tools }: Pick<Kit, 'lines' | 'tools'>): ReadonlyMap<string, number> {
  const bags = new Map(lines.map((line) => [line.offer, line.bags]));
  for (const tool of tools)
    if (tool.why === 'must-have') bags.set(tool.offer ?? tool.tool, (bags.get(tool.offer ?? tool.tool) ?? 0) + tool.bags);
  return bags;
}
