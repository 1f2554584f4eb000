import { money } from '@twistwright/units';
import {
  guestsPerHourOf,
  type KitCombination,
  type KitItem,
  type KitOffer,
  type KitProblem,
  type KitRole,
  type KitTool,
  usualChanceOfOtherColour,
} from './kit-problem.ts';

/** The problem with names turned into indices, ready to be valued and searched. A purchase is the number of bags of each of its offers. */
export interface KitModel {
  readonly problem: KitProblem;
  /** Expected requests over the hours. */
  readonly requests: number;
  readonly chanceOfOther: number;
  readonly figures: readonly ModelFigure[];
  /** Pieces at hand, by item; tools are items too. */
  readonly have: Float64Array;
  /** What can be bought, of balloons, sundries and the tools that are a must. */
  readonly offers: readonly ModelOffer[];
  /** Needed in any case. */
  readonly musts: readonly ModelMust[];
  readonly spares: readonly KitTool[];
  readonly shops: readonly ModelShop[];
  readonly budget: number;
  /** Colours of each item, as numbers; at most `mostColours` may be bought beside those that are there. */
  readonly colourOf: readonly (number | undefined)[];
  readonly ownColours: ReadonlySet<number>;
  readonly mostColours: number;
}
export interface ModelFigure {
  /** Expected requests over the hours. */
  readonly requests: number;
  readonly parts: readonly ModelPart[];
  /** How many parts leave the guest a choice. */
  readonly choiceParts: number;
}
/** A role, or roles whose colours belong together: any one choice fills it. */
export interface ModelPart {
  readonly name: string;
  /** What will do, with the share of guests who want it first; shares sum to one over all that will do, also what nobody sells. */
  readonly choices: readonly { readonly needs: readonly ModelPieces[]; readonly first: number }[];
  readonly isChoice: boolean;
}
export interface ModelPieces {
  readonly item: number;
  readonly pieces: number;
}
export interface ModelOffer {
  readonly offer: KitOffer;
  /** Index into `shops`, -1 for anywhere. */
  readonly shop: number;
  readonly holds: readonly ModelPieces[];
  /** What 0, 1, ... bags cost, breaks counted in: the last is the most that is considered. */
  readonly costs: readonly number[];
  /** Bags that are bought in any case. */
  readonly least: number;
  readonly colours: readonly number[];
}
export interface ModelMust {
  readonly tool: KitTool;
  readonly item: number;
  /** Pieces that are missing. */
  readonly missing: number;
}
export interface ModelShop {
  readonly id: string;
  readonly name: string;
  readonly shipping: number;
  /** Infinite where shipping is never free. */
  readonly freeFrom: number;
  readonly leastOrder: number;
}

/** Most bags of one offer that are considered; more are never needed for the hours of a first kit. */
const mostBagsOfOne = 12;
/** Sundries such as cards may be sold one by one. */
const mostPacksOfTool = 100;

export function kitModelOf(problem: KitProblem): KitModel {
  const { wishes } = problem;
  const itemIds = [...problem.items.map((item) => item.id), ...problem.tools.map((tool) => tool.id)];
  const itemIndex = new Map<string, number>();
  for (const id of itemIds) if (!itemIndex.has(id)) itemIndex.set(id, itemIndex.size);
  const requests = wishes.hours * (wishes.guestsPerHour ?? guestsPerHourOf[wishes.kind]);
  const shares = problem.figures.reduce((sum, figure) => sum + figure.share, 0);
  const figures = problem.figures.map((figure): ModelFigure => {
    const parts = [
      ...figure.roles.map((role) => partOfRole(role, problem.items)),
      ...(figure.combinations ?? []).map((combination) => partOfCombination(combination, problem.items)),
      ...(figure.extras ?? []).map((extra): ModelPart => {
        const item = itemIndex.get(extra.item);
        const choices = item === undefined ? [] : [{ needs: [{ item, pieces: extra.count }], first: 1 }];
        return { name: 'extras', choices, isChoice: false };
      }),
    ];
    return { requests: (requests * figure.share) / shares, parts, choiceParts: parts.filter((part) => part.isChoice).length };
  });
  const have = new Float64Array(itemIndex.size);
  for (const { item, count } of problem.have) {
    const index = itemIndex.get(item);
    if (index !== undefined) have[index] = (have[index] ?? 0) + count;
  }
  const { musts, spares } = toolsOf(problem, itemIndex, have);
  const shops = problem.suppliers.map(
    (supplier): ModelShop => ({
      id: supplier.id,
      name: supplier.name,
      shipping: supplier.shipping,
      freeFrom: supplier.freeFrom ?? Number.POSITIVE_INFINITY,
      leastOrder: supplier.leastOrder ?? 0,
    }),
  );
  const colourIndex = new Map<string, number>();
  const colourOf = problem.items.map(({ colour }) => {
    if (colour === undefined) return undefined;
    if (!colourIndex.has(colour)) colourIndex.set(colour, colourIndex.size);
    return colourIndex.get(colour);
  });
  return {
    problem,
    requests,
    chanceOfOther: wishes.chanceOfOtherColour ?? usualChanceOfOtherColour,
    figures,
    have,
    offers: offersOf(problem, figures, musts, itemIndex, colourOf),
    musts,
    spares,
    shops,
    budget: wishes.budget,
    colourOf,
    ownColours: new Set(colourOf.filter((colour, item): colour is number => colour !== undefined && (have[item] ?? 0) > 0)),
    mostColours: wishes.mostColours ?? Number.POSITIVE_INFINITY,
  };
}

/** What is missing of the tools: the musts (those of the list and those forced in), and the spares. */
function toolsOf(problem: KitProblem, itemIndex: ReadonlyMap<string, number>, have: Float64Array): Pick<KitModel, 'musts' | 'spares'> {
  const out = new Set(problem.wishes.takenOut ?? []);
  const forced = new Set(problem.wishes.forcedIn ?? []);
  const missing = problem.tools.flatMap((tool): readonly ModelMust[] => {
    const item = itemIndex.get(tool.id) ?? -1;
    const pieces = (tool.count ?? 1) - (have[item] ?? 0);
    return pieces <= 0 || (out.has(tool.id) && !forced.has(tool.id)) ? [] : [{ tool, item, missing: pieces }];
  });
  const isMust = ({ tool }: ModelMust): boolean => tool.need === 'must-have' || forced.has(tool.id);
  return {
    musts: missing.filter(isMust),
    spares: missing.filter((one) => one.tool.need === 'spare' && !isMust(one)).map(({ tool, missing: count }) => ({ ...tool, count })),
  };
}

function partOfRole(role: KitRole, items: readonly KitItem[]): ModelPart {
  const total = role.colours.reduce((sum, choice) => sum + choice.preference, 0);
  const choices = role.colours.flatMap((choice) => {
    const item = items.findIndex((one) => fits(one, role, choice));
    return item < 0 ? [] : [{ needs: [{ item, pieces: role.pieces }], first: firstShare(choice.preference, total, role.colours.length) }];
  });
  return { name: role.name, choices, isChoice: role.colours.length > 1 };
}
function partOfCombination({ name, ways }: KitCombination, items: readonly KitItem[]): ModelPart {
  const total = ways.reduce((sum, way) => sum + way.preference, 0);
  const choices = ways.flatMap((way) => {
    const needs = new Map<number, number>();
    for (const piece of way.pieces) {
      const item = items.findIndex((one) => isSame(one, piece));
      if (item < 0) return [];
      needs.set(item, (needs.get(item) ?? 0) + piece.count);
    }
    const first = firstShare(way.preference, total, ways.length);
    return [{ needs: [...needs].map(([item, pieces]) => ({ item, pieces })), first }];
  });
  return { name, choices, isChoice: ways.length > 1 };
}
/** What nobody asks for first still serves those who find theirs gone. */
const firstShare = (preference: number, total: number, count: number): number =>
  total > 0 ? Math.max(preference / total, 1e-9) : 1 / count;

/** True if the item is what the role takes in this colour. */
export const fits = (item: KitItem, role: KitRole, choice: KitRole['colours'][number]): boolean =>
  isSame(item, { size: role.size, colour: choice.colour, finish: choice.finish ?? role.finish, print: role.print });
/** True if the item is a balloon of this look. */
export const isSame = (
  item: KitItem,
  look: { readonly size: string; readonly colour: string; readonly finish?: string | undefined; readonly print?: string | undefined },
): boolean =>
  item.size === look.size &&
  item.colour === look.colour &&
  (item.finish ?? 'standard') === (look.finish ?? 'standard') &&
  item.print === look.print;

/** Every offer worth considering, with as many bags as could be used up; a tool that no offer sells is an offer of its own. */
function offersOf(
  problem: KitProblem,
  figures: readonly ModelFigure[],
  musts: readonly ModelMust[],
  itemIndex: ReadonlyMap<string, number>,
  colourOf: KitModel['colourOf'],
): readonly ModelOffer[] {
  const most = mostUsed(figures, itemIndex.size);
  for (const { item, missing } of musts) most[item] = Math.max(most[item] ?? 0, missing);
  const shopIndex = new Map(problem.suppliers.map((supplier, index) => [supplier.id, index]));
  const out = new Set(problem.wishes.takenOut ?? []);
  const forced = new Set(problem.wishes.forcedIn ?? []);
  const sold = new Set(problem.offers.map((offer) => offer.item));
  const unsold = musts.filter(({ tool }) => !sold.has(tool.id) && tool.price !== undefined);
  const all = [
    ...problem.offers,
    ...unsold.map(
      ({ tool, missing }): KitOffer => ({
        id: tool.id,
        supplier: tool.supplier ?? '',
        item: tool.id,
        count: missing,
        price: tool.price ?? money(0),
      }),
    ),
  ];
  const useful = all.flatMap((offer): readonly ModelOffer[] => {
    const isForced = forced.has(offer.id);
    const refused = out.has(offer.id) || out.has(offer.item) || (offer.mix !== undefined && problem.wishes.assortedBags === false);
    const isMust = musts.some(({ tool }) => tool.id === offer.item && forced.has(tool.id));
    if (refused && !isForced && !isMust) return [];
    const holds = holdsOf(offer, itemIndex).filter(({ pieces }) => pieces > 0);
    const needed = Math.max(0, ...holds.map(({ item, pieces }) => Math.ceil((most[item] ?? 0) / pieces)));
    const isTool = holds.some(({ item }) => musts.some((must) => must.item === item));
    const count = Math.min(Math.max(needed, isForced ? 1 : 0), offer.mostBags ?? mostPacksOfTool, isTool ? mostPacksOfTool : mostBagsOfOne);
    if (count === 0) return [];
    return [
      {
        offer,
        shop: shopIndex.get(offer.supplier) ?? -1,
        holds,
        costs: Array.from({ length: withBreak(offer, count) + 1 }, (_, bags) => bags * pricedAt(offer, bags)),
        least: Math.min(count, Math.max(isForced ? 1 : 0, ...musts.map((must) => leastOf(must, offer, problem)))),
        colours: [...new Set(holds.flatMap(({ item }) => colourOf[item] ?? []))],
      },
    ];
  });
  return withFillers(useful, problem);
}
/** Where a shop sells little that is of use, more of it than could be used up, so that its least order can be reached at all. */
function withFillers(offers: readonly ModelOffer[], problem: KitProblem): readonly ModelOffer[] {
  return offers.map((one): ModelOffer => {
    const least = problem.suppliers[one.shop]?.leastOrder ?? 0;
    const useful = offers.reduce((sum, other) => sum + (other.shop === one.shop ? (other.costs.at(-1) ?? 0) : 0), 0);
    if (least === 0 || useful >= 3 * least) return one;
    const costs = [...one.costs];
    const most = Math.min(one.offer.mostBags ?? mostBagsOfOne, mostBagsOfOne);
    while (costs.length <= most && (costs.at(-1) ?? 0) < least) costs.push(costs.length * pricedAt(one.offer, costs.length));
    return { ...one, costs };
  });
}
/** Bags that are needed because nothing else brings the tool. */
function leastOf({ tool, missing }: ModelMust, offer: KitOffer, problem: KitProblem): number {
  if (offer.item !== tool.id || offer.mix !== undefined) return 0;
  const out = new Set(problem.wishes.takenOut ?? []);
  const others = problem.offers.some(
    (other) => other.id !== offer.id && !out.has(other.id) && (other.item === tool.id || other.mix?.[tool.id] !== undefined),
  );
  return others ? 0 : Math.ceil(missing / offer.count);
}
/** Pieces of each item beyond which more would hardly ever be used. */
function mostUsed(figures: readonly ModelFigure[], items: number): Float64Array {
  const most = new Float64Array(items);
  const leastOne = new Set<number>();
  for (const figure of figures)
    for (const part of figure.parts)
      for (const choice of part.choices)
        for (const { item, pieces } of choice.needs) {
          most[item] = (most[item] ?? 0) + figure.requests * pieces;
          if (figure.requests > 0) leastOne.add(item);
        }
  return most.map((mean, item) => (leastOne.has(item) ? Math.max(1, mean + 3 * Math.sqrt(mean)) : 0));
}
/** A few bags more are worth a look where they bring a break in reach at which all together cost less. */
function withBreak(offer: KitOffer, count: number): number {
  const paid = count * pricedAt(offer, count);
  const most = offer.mostBags ?? mostBagsOfOne;
  const better = (offer.breaks ?? []).filter(
    (step) => step.bags > count && step.bags <= Math.min(most, mostBagsOfOne) && step.bags * step.price < paid,
  );
  return Math.max(count, ...better.map((step) => step.bags));
}
/** Price of one bag when so many are bought. */
export const pricedAt = (offer: Pick<KitOffer, 'price' | 'breaks'>, bags: number): number =>
  (offer.breaks ?? []).reduce((price, step) => (bags >= step.bags ? step.price : price), offer.price as number);

function holdsOf(offer: KitOffer, itemIndex: ReadonlyMap<string, number>): readonly ModelPieces[] {
  if (offer.mix === undefined) {
    const item = itemIndex.get(offer.item);
    return item === undefined ? [] : [{ item, pieces: offer.count }];
  }
  const total = Object.values(offer.mix).reduce((sum, weight) => sum + weight, 0);
  return Object.entries(offer.mix).flatMap(([id, weight]) => {
    const item = itemIndex.get(id);
    return item === undefined || total <= 0 ? [] : [{ item, pieces: (offer.count * weight) / total }];
  });
}
