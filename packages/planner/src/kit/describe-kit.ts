import { money } from '@twistwright/units';
import { binomialQuantile } from './binomial.ts';
import { cheapestCompletion, spentOn } from './cheapest-completion.ts';
import type { KitModel } from './kit-model.ts';
import type { Kit, KitLine, LeftOut, MixChance, Standing } from './kit-problem.ts';
import { type KitWorth, piecesWith, worthOf } from './kit-worth.ts';
import type { FoundKit } from './solve-kit.ts';

/** Puts a found purchase into lines, shops and sentences. */
export function describeKit(found: FoundKit): Kit {
  const { model, answer } = found;
  const { problem } = model;
  const bought = Int8Array.from(found.bought);
  const pieces = piecesWith(model, bought);
  const worth = worthOf(model, pieces);
  const spares = sparesWithin(model, bought);
  const spent = spentOn(model, bought, spares);
  const bound = Math.max(answer.bound, worth.met) / model.requests;
  const met = worth.met / model.requests;
  const standing: Standing = bound - met <= 1e-9 ? { kind: 'proven' } : { kind: 'within', share: bound - met };
  const tools = [
    ...model.mustHaves.map((tool) => ({ tool, why: 'must-have' })),
    ...spares.map((tool) => ({ tool, why: 'spare, bought with money that is left' })),
  ];
  return {
    lines: linesOf(model, bought, pieces, worth),
    tools: tools.map(({ tool, why }) => ({
      tool: tool.id,
      name: tool.name,
      price: tool.price,
      ...(tool.supplier === undefined ? {} : { supplier: tool.supplier }),
      why,
    })),
    shops: spent.shops,
    budget: problem.wishes.budget,
    spent: spent.total,
    met,
    metFirstChoice: worth.metFirst / model.requests,
    metAtMost: Math.min(1, bound),
    standing,
    requests: model.requests,
    figures: problem.figures.map((figure, f) => ({
      figure: figure.id,
      name: figure.name,
      share: (model.figures[f]?.requests ?? 0) / model.requests,
      met: worth.byFigure[f] ?? 0,
    })),
    leftOut: leftOutOf(model, bought, worth),
    colours: [
      ...new Set(
        model.bags.flatMap((bag, b) => (bought[b] === 1 ? bag.holds.flatMap(({ item }) => problem.items[item]?.colour ?? []) : [])),
      ),
    ],
  };
}

/** The spares that the money left still buys, in the order in which they are listed. */
function sparesWithin(model: KitModel, bought: Int8Array): KitModel['spares'] {
  const taken: KitModel['spares'][number][] = [];
  for (const spare of model.spares) if (spentOn(model, bought, [...taken, spare]).total <= model.problem.wishes.budget) taken.push(spare);
  return taken;
}

function linesOf(model: KitModel, bought: Int8Array, pieces: Float64Array, worth: KitWorth): readonly KitLine[] {
  const byOffer = new Map<string, number[]>();
  for (const [b, bag] of model.bags.entries()) if (bought[b] === 1) byOffer.set(bag.offer.id, [...(byOffer.get(bag.offer.id) ?? []), b]);
  return [...byOffer.values()].map((bags): KitLine => {
    const first = model.bags[bags[0] ?? 0];
    if (first === undefined) throw new Error('a line without a bag');
    const without = bought.slice();
    for (const bag of bags) without[bag] = 0;
    const worthWithout = worthOf(model, piecesWith(model, without));
    const items = new Set(first.holds.map(({ item }) => item));
    const name = nameOf(model, first.offer.item);
    const makeable = model.figures.flatMap((_, f) => ((worth.byFigure[f] ?? 0) > 0 ? [f] : []));
    const unlocks = makeable.filter((f) => (worthWithout.byFigure[f] ?? 0) === 0);
    const serves = makeable.filter((f) =>
      model.figures[f]?.roles.some((role) => role.choices.some((choice) => items.has(choice.item) && (pieces[choice.item] ?? 0) > 0)),
    );
    const id = (f: number): string => model.problem.figures[f]?.id ?? '';
    return {
      offer: first.offer.id,
      supplier: first.offer.supplier,
      name,
      bags: bags.length,
      pieces: bags.length * first.offer.count,
      cost: money(bags.length * first.offer.price),
      unlocks: unlocks.map(id),
      serves: serves.map(id),
      lossWithout: Math.max(0, (worth.met - worthWithout.met) / model.requests),
      why: whyOf(model, name, items, serves, unlocks, makeable.length),
      ...(first.offer.mix === undefined ? {} : { mix: mixOf(model, bags) }),
    };
  });
}
const nameOf = (model: KitModel, item: string): string => model.problem.items.find((one) => one.id === item)?.name ?? item;

function whyOf(
  model: KitModel,
  name: string,
  items: ReadonlySet<number>,
  serves: readonly number[],
  unlocks: readonly number[],
  of: number,
): string {
  const roles = new Map<string, number>();
  for (const f of serves)
    for (const [r, role] of (model.figures[f]?.roles ?? []).entries())
      if (role.choices.some((choice) => items.has(choice.item))) {
        const roleName = model.problem.figures[f]?.roles[r]?.name ?? 'extras';
        roles.set(roleName, (roles.get(roleName) ?? 0) + 1);
      }
  const most = [...roles]
    .sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))
    .slice(0, 2)
    .map(([role, count]) => `${role} on ${count}`)
    .join(', ');
  const needed =
    unlocks.length === 0
      ? 'more choice of colour or more pieces'
      : `${unlocks.length} of them ${unlocks.length === 1 ? 'needs' : 'need'} it`;
  return serves.length === 0
    ? `${name}: asked for by the wishes.`
    : `${name}: ${most} of the ${of} ${of === 1 ? 'figure' : 'figures'}; ${needed}.`;
}

/** How many of each item lie in these assorted bags: a binomial count. */
function mixOf(model: KitModel, bags: readonly number[]): readonly MixChance[] {
  const offer = model.bags[bags[0] ?? 0]?.offer;
  const mix = Object.entries(offer?.mix ?? {});
  const total = mix.reduce((sum, [, weight]) => sum + weight, 0);
  const count = bags.length * (offer?.count ?? 0);
  return mix.map(([item, weight]) => {
    const chance = weight / total;
    return { item, expected: count * chance, atLeast: binomialQuantile(count, chance, 0.1), chanceOfNone: (1 - chance) ** count };
  });
}

function leftOutOf(model: KitModel, bought: Int8Array, worth: KitWorth): readonly LeftOut[] {
  return model.problem.figures
    .flatMap((figure, f): readonly LeftOut[] => {
      if ((worth.byFigure[f] ?? 0) > 0) return [];
      const completion = cheapestCompletion(model, bought, f);
      const share = (model.figures[f]?.requests ?? 0) / model.requests;
      const offers = (completion?.bags ?? []).map((bag) => model.bags[bag]?.offer.id ?? '');
      return [{ figure: figure.id, name: figure.name, share, offers, ...(completion === undefined ? {} : { cost: completion.cost }) }];
    })
    .sort((a, b) => b.share - a.share);
}
