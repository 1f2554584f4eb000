import type { Outside } from './cover-knapsack.ts';
import type { CoverModel } from './cover-model.ts';
import { free } from './cover-open.ts';
import { fixedOf } from './cover-start.ts';

/** One way to use the shops: what is then fixed, the shipping, and how much may be spent outside the shops that ship free. */
export interface Root {
  readonly fixed: Int8Array;
  readonly shipping: number;
  readonly outside: Outside;
}

const paysNothing = 0;
const paysShipping = 1;
const spendsEnough = 2;

/** Every way to use the shops that the money allows: each closed, with shipping, or with enough spent there for free shipping. */
export function rootsOf(model: CoverModel): readonly Root[] {
  let ways: (readonly number[])[] = [[]];
  for (const { shipping, freeFrom } of model.problem.suppliers ?? []) {
    const uses =
      shipping === 0 ? [spendsEnough] : freeFrom === undefined ? [paysNothing, paysShipping] : [paysNothing, paysShipping, spendsEnough];
    ways = ways.flatMap((way) => uses.map((use) => [...way, use]));
  }
  return ways.flatMap((way) => rootOf(model, way) ?? []);
}

function rootOf(model: CoverModel, way: readonly number[]): Root | undefined {
  const { suppliers = [], supplierOf = [], budget } = model.problem;
  const fixed = fixedOf(model);
  const isOutside = new Int8Array(fixed.length).fill(1);
  let shipping = 0;
  let toSpend = 0;
  for (const [s, use] of way.entries()) {
    const terms = suppliers[s];
    if (terms === undefined) continue;
    const already = terms.spent ?? 0;
    if (use === paysNothing && already > 0) return undefined;
    if (use === paysShipping) shipping += terms.shipping;
    let most = already;
    for (let bag = 0; bag < fixed.length; bag++) {
      if (supplierOf[bag] !== s) continue;
      if (use === paysNothing && fixed[bag] === 1) return undefined;
      if (use === paysNothing) fixed[bag] = 0;
      if (fixed[bag] !== 0) most += model.costs[bag] as number;
      if (use === spendsEnough) isOutside[bag] = 0;
    }
    if (use !== spendsEnough || terms.shipping === 0) continue;
    if (most < (terms.freeFrom ?? 0)) return undefined;
    toSpend += Math.max(0, (terms.freeFrom ?? 0) - already);
  }
  if (shipping + toSpend > budget) return undefined;
  const root = { fixed, shipping, outside: { isOutside, most: budget - shipping - toSpend } };
  return moneyLeft(model, fixed, root) < 0 ? undefined : root;
}

/** Money for the bags that are still free, negative if even the fixed ones cannot be had. */
export function moneyLeft(model: CoverModel, fixed: Int8Array, root: Root): number {
  let money = model.problem.budget - root.shipping;
  let outside = root.outside.most;
  for (let bag = 0; bag < fixed.length; bag++) {
    if (fixed[bag] !== 1) continue;
    const cost = model.costs[bag] as number;
    money -= cost;
    if (root.outside.isOutside[bag] === 1) outside -= cost;
  }
  return outside < 0 ? -1 : money;
}

/** Follows what the fixed bags imply; the money left for free bags, negative if this cannot be. */
export function settle(model: CoverModel, fixed: Int8Array, root: Root): number {
  if (!followSecondBags(model, fixed) || !followColours(model, fixed)) return -1;
  const money = moneyLeft(model, fixed, root);
  if (money < 0) return money;
  const { isOutside, most } = root.outside;
  let outside = most;
  for (let bag = 0; bag < fixed.length; bag++) if (fixed[bag] === 1 && isOutside[bag] === 1) outside -= model.costs[bag] as number;
  for (let bag = 0; bag < fixed.length; bag++)
    if (fixed[bag] === free && (model.costs[bag] as number) > (isOutside[bag] === 1 ? Math.min(money, outside) : money)) fixed[bag] = 0;
  return money;
}

/** No second bag without the first; false if a bag that is in lacks one that is out. */
function followSecondBags(model: CoverModel, fixed: Int8Array): boolean {
  const { after } = model.problem;
  if (after === undefined) return true;
  for (let bag = 0; bag < fixed.length; bag++) {
    const first = after[bag] as number;
    if (first >= 0 && fixed[first] === 0) {
      if (fixed[bag] === 1) return false;
      fixed[bag] = 0;
    }
    for (let at = first; fixed[bag] === 1 && at >= 0; at = after[at] as number) fixed[at] = 1;
  }
  return true;
}

/** With all colours bought that may be, no bag of another colour; false if there are too many already. */
function followColours(model: CoverModel, fixed: Int8Array): boolean {
  const { mostColours, coloursOf = [], ownColours = [] } = model.problem;
  if (mostColours === undefined) return true;
  const isNew = (colour: number): boolean => !ownColours.includes(colour);
  const colours = new Set<number>();
  for (let bag = 0; bag < fixed.length; bag++)
    if (fixed[bag] === 1) for (const colour of coloursOf[bag] ?? []) if (isNew(colour)) colours.add(colour);
  if (colours.size > mostColours) return false;
  if (colours.size < mostColours) return true;
  for (let bag = 0; bag < fixed.length; bag++)
    if (fixed[bag] === free && (coloursOf[bag] ?? []).some((colour) => isNew(colour) && !colours.has(colour))) fixed[bag] = 0;
  return true;
}
