import { money } from '@twistwright/units';
import { binomialQuantile } from './binomial.ts';
import { cheapestCompletion } from './completion.ts';
import type { KitModel, ModelOffer } from './kit-model.ts';
import type { Kit, KitLine, LeftOut, MixChance, Standing } from './kit-problem.ts';
import { KitValuer, type KitWorth, piecesWith } from './kit-worth.ts';
import { addedTo } from './next-purchases.ts';
import { type Bags, billOf } from './purchase.ts';
import type { FoundKit } from './solve-kit.ts';
import { type BoughtSpare, sparesWithin } from './spares.ts';

/** The search ends within a hundredth of a per cent of the requests; nobody can tell that from the best. */
export const nearEnough = 1e-4;

/** Puts a found purchase into lines, shops and sentences. */
export function describeKit(found: FoundKit): Kit {
  const { model, answer } = found;
  const { problem } = model;
  const bags = Int8Array.from(found.bought);
  const pieces = piecesWith(model, bags);
  const valuer = new KitValuer(model);
  const worth = valuer.worth(pieces);
  const spares = sparesWithin(model, bags);
  const beside = new Map<number, number>();
  for (const { shop, price } of spares) beside.set(shop, (beside.get(shop) ?? 0) + price);
  const bill = billOf(model, bags, beside);
  const bound = Math.max(answer.bound, worth.met) / model.requests;
  const met = worth.met / model.requests;
  const standing: Standing = bound - met <= nearEnough ? { kind: 'proven' } : { kind: 'within', share: bound - met };
  return {
    lines: linesOf(model, valuer, bags, pieces, worth),
    tools: toolsOf(model, bags, spares),
    shops: bill.shops,
    budget: problem.wishes.budget,
    spent: bill.total,
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
    leftOut: leftOutOf(model, bags, worth),
    colours: [
      ...new Set(
        model.offers.flatMap(({ holds }, o) => ((bags[o] ?? 0) > 0 ? holds.flatMap(({ item }) => problem.items[item]?.colour ?? []) : [])),
      ),
    ],
    chanceOfOtherColour: model.chanceOfOther,
  };
}

const toolIn = (model: KitModel, { offer }: ModelOffer): KitModel['problem']['tools'][number] | undefined =>
  offer.mix === undefined ? model.musts.find(({ tool }) => tool.id === offer.item)?.tool : undefined;

function toolsOf(model: KitModel, bags: Bags, spares: readonly BoughtSpare[]): Kit['tools'] {
  const musts = model.offers.flatMap((one, o) => {
    const tool = toolIn(model, one);
    const count = bags[o] ?? 0;
    return tool === undefined || count === 0
      ? []
      : [{ tool, offer: one.offer, bags: count, price: one.costs[count] ?? 0, shop: one.shop, why: 'must-have' }];
  });
  return [...musts, ...spares.map((spare) => ({ ...spare, why: 'spare, bought with money that is left' }))].map(
    ({ tool, offer, bags: count, price, why }) => ({
      tool: tool.id,
      name: tool.name,
      ...(model.problem.offers.includes(offer) ? { offer: offer.id } : {}),
      bags: count,
      pieces: count * offer.count,
      price: money(price),
      ...(offer.supplier === '' ? {} : { supplier: offer.supplier }),
      why,
    }),
  );
}

function linesOf(model: KitModel, valuer: KitValuer, bags: Int8Array, pieces: Float64Array, worth: KitWorth): readonly KitLine[] {
  return model.offers.flatMap((one, o): readonly KitLine[] => {
    const count = bags[o] ?? 0;
    if (count === 0 || toolIn(model, one) !== undefined) return [];
    const { offer, holds } = one;
    const worthWithout = valuer.worth(piecesWith(model, bags.with(o, 0)));
    const items = new Set(holds.map(({ item }) => item));
    const name = nameOf(model, offer.item);
    const makeable = model.figures.flatMap((_, f) => ((worth.byFigure[f] ?? 0) > 0 ? [f] : []));
    const unlocks = makeable.filter((f) => (worthWithout.byFigure[f] ?? 0) === 0);
    const serves = makeable.filter((f) => partsServed(model, f, items, pieces).length > 0);
    const id = (f: number): string => model.problem.figures[f]?.id ?? '';
    const cost = one.costs[count] ?? 0;
    return [
      {
        offer: offer.id,
        supplier: offer.supplier,
        name,
        bags: count,
        pieces: count * offer.count,
        price: money(cost / count),
        cost: money(cost),
        unlocks: unlocks.map(id),
        serves: serves.map(id),
        lossWithout: Math.max(0, (worth.met - worthWithout.met) / model.requests),
        why: whyOf(model, name, (f) => partsServed(model, f, items, pieces), serves, unlocks, makeable.length),
        ...(offer.mix === undefined ? {} : { mix: mixOf(offer, count) }),
      },
    ];
  });
}
/** Names of the parts of a figure for which these items are used in a choice that is there. */
function partsServed(model: KitModel, f: number, items: ReadonlySet<number>, pieces: Float64Array): readonly string[] {
  return (model.figures[f]?.parts ?? []).flatMap(({ name, choices }) =>
    choices.some(({ needs }) => needs.some(({ item }) => items.has(item)) && needs.every(({ item }) => (pieces[item] as number) > 0))
      ? [name]
      : [],
  );
}
const nameOf = (model: KitModel, item: string): string => model.problem.items.find((one) => one.id === item)?.name ?? item;

function whyOf(
  model: KitModel,
  name: string,
  partsOf: (figure: number) => readonly string[],
  serves: readonly number[],
  unlocks: readonly number[],
  of: number,
): string {
  const roles = new Map<string, number>();
  for (const f of serves) for (const part of partsOf(f)) roles.set(part, (roles.get(part) ?? 0) + 1);
  if (serves.length === 0)
    return model.problem.wishes.forcedIn === undefined
      ? `${name}: it fills up the order to what the shop accepts, or to free shipping.`
      : `${name}: asked for by the wishes, or it fills up an order.`;
  const figureAt = (f: number): string => model.problem.figures[f]?.name ?? '';
  const most = [...roles].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).slice(0, 2);
  const [needy] = unlocks;
  const [served] = serves;
  const choice = 'more choice of colour or more pieces';
  if (serves.length === 1 && served !== undefined)
    return `${name}: ${most.map(([role]) => role).join(', ')} of ${figureAt(served)}${needy === undefined ? `; ${choice}` : ', which needs it'}.`;
  const needed = needy === undefined ? choice : unlocks.length === 1 ? `${figureAt(needy)} needs it` : `${unlocks.length} of them need it`;
  return `${name}: ${most.map(([role, count]) => `${role} on ${count}`).join(', ')} of the ${of} figures; ${needed}.`;
}

/** How many of each item lie in these assorted bags: a binomial count. */
function mixOf(offer: ModelOffer['offer'], bags: number): readonly MixChance[] {
  const mix = Object.entries(offer.mix ?? {});
  const total = mix.reduce((sum, [, weight]) => sum + weight, 0);
  const count = bags * offer.count;
  return mix.map(([item, weight]) => {
    const chance = weight / total;
    return { item, expected: count * chance, atLeast: binomialQuantile(count, chance, 0.1), chanceOfNone: (1 - chance) ** count };
  });
}

function leftOutOf(model: KitModel, bags: Int8Array, worth: KitWorth): readonly LeftOut[] {
  const before = billOf(model, bags).total;
  return model.problem.figures
    .flatMap((figure, f): readonly LeftOut[] => {
      if ((worth.byFigure[f] ?? 0) > 0) return [];
      const completion = cheapestCompletion(model, bags, f);
      const share = (model.figures[f]?.requests ?? 0) / model.requests;
      const offers = completion === undefined ? [] : addedTo(model, bags, completion.bags);
      const cost = completion === undefined ? undefined : money(completion.bill.total - before);
      return [{ figure: figure.id, name: figure.name, share, offers, ...(cost === undefined ? {} : { cost }) }];
    })
    .sort((a, b) => b.share - a.share);
}
