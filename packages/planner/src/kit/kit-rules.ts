import type { Money } from '@twistwright/units';
import { cheapestCompletion, keepsColours, spentOn } from './cheapest-completion.ts';
import type { KitModel } from './kit-model.ts';
import { piecesWith, worthOf } from './kit-worth.ts';

/** What a rule of thumb would buy for the same money. */
export interface RuleOutcome {
  readonly rule: 'every colour once' | 'most popular figures first';
  readonly bought: Int8Array;
  readonly spent: Money;
  readonly met: number;
}

/** The two rules people use, on the same money, must-haves first; colours are limited as in the wishes. */
export const rulesOfThumb = (model: KitModel): readonly RuleOutcome[] => [
  outcomeOf(model, 'every colour once', everyColourOnce(model)),
  outcomeOf(model, 'most popular figures first', popularFirst(model)),
];
const outcomeOf = (model: KitModel, rule: RuleOutcome['rule'], bought: Int8Array): RuleOutcome => ({
  rule,
  bought,
  spent: spentOn(model, bought).total,
  met: worthOf(model, piecesWith(model, bought)).met / model.requests,
});

/** One bag of every colour in the size asked for most, then in the next size, and so on; the cheapest bag of each. */
function everyColourOnce(model: KitModel): Int8Array {
  const bought = startWith(model);
  const asked = new Float64Array(model.have.length);
  for (const figure of model.figures)
    for (const role of figure.roles)
      for (const { item, first } of role.choices) asked[item] = (asked[item] as number) + figure.requests * role.pieces * first;
  const kindOf = (item: number): string => {
    const one = model.problem.items[item];
    return one === undefined ? '' : `${one.size ?? one.id} ${one.finish ?? ''} ${one.print ?? ''}`;
  };
  const byKind = new Map<string, number>();
  for (const [item, count] of asked.entries()) byKind.set(kindOf(item), (byKind.get(kindOf(item)) ?? 0) + count);
  const items = [...asked.keys()].filter((item) => (asked[item] as number) > 0);
  items.sort((a, b) => (byKind.get(kindOf(b)) ?? 0) - (byKind.get(kindOf(a)) ?? 0) || (asked[b] as number) - (asked[a] as number) || a - b);
  for (const item of items) {
    const bags = [...model.bags.keys()].filter((b) => model.bags[b]?.holds.length === 1 && model.bags[b]?.holds[0]?.item === item);
    bags.sort((a, b) => (model.cover.costs[a] ?? 0) - (model.cover.costs[b] ?? 0) || a - b);
    if (bags.some((bag) => bought[bag] === 1) || (model.have[item] as number) > 0) continue;
    buyIfAllowed(model, bought, bags.slice(0, 1));
  }
  return bought;
}

/** Figure by figure from the one asked for most: the cheapest bags that make it possible, if the money is enough. */
function popularFirst(model: KitModel): Int8Array {
  const bought = startWith(model);
  const order = [...model.figures.keys()].sort((a, b) => (model.figures[b]?.requests ?? 0) - (model.figures[a]?.requests ?? 0) || a - b);
  for (const f of order) {
    const completion = cheapestCompletion(model, bought, f);
    if (completion !== undefined) buyIfAllowed(model, bought, completion.bags);
  }
  return bought;
}

function startWith(model: KitModel): Int8Array {
  const bought = new Int8Array(model.bags.length);
  for (const bag of model.cover.forcedIn ?? []) bought[bag] = 1;
  return bought;
}
function buyIfAllowed(model: KitModel, bought: Int8Array, bags: readonly number[]): void {
  const trial = bought.slice();
  for (const bag of bags) trial[bag] = 1;
  if (!keepsColours(model, trial, [])) return;
  if (spentOn(model, trial).total <= model.problem.wishes.budget) bought.set(trial);
}
