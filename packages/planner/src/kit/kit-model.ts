import type { CoverGoal, CoverPieces, CoverProblem } from './cover-model.ts';
import { guestsPerHourOf, type KitItem, type KitOffer, type KitProblem, type KitRole, type KitTool } from './kit-problem.ts';

/** The problem with names turned into indices, ready to be valued and searched. */
export interface KitModel {
  readonly problem: KitProblem;
  /** Expected requests over the hours. */
  readonly requests: number;
  readonly chanceOfOther: number;
  readonly figures: readonly ModelFigure[];
  /** Pieces at hand, by item. */
  readonly have: Float64Array;
  /** The bags that can be bought; a second bag of an offer is a bag of its own. */
  readonly bags: readonly ModelBag[];
  readonly mustHaves: readonly KitTool[];
  readonly spares: readonly KitTool[];
  readonly cover: CoverProblem;
}
export interface ModelFigure {
  /** Expected requests over the hours. */
  readonly requests: number;
  readonly roles: readonly ModelRole[];
  /** How many roles leave the guest a choice of colour. */
  readonly choiceRoles: number;
}
export interface ModelRole {
  readonly pieces: number;
  /** Items that will do, with the share of guests who want it first; shares sum to one. */
  readonly choices: readonly { readonly item: number; readonly first: number }[];
  readonly isChoice: boolean;
}
export interface ModelBag {
  readonly offer: KitOffer;
  readonly holds: readonly { readonly item: number; readonly pieces: number }[];
}

/** Most bags of one offer that are considered; more are never needed for the hours of a first kit. */
const mostBagsOfOne = 12;

export function kitModelOf(problem: KitProblem): KitModel {
  const { wishes } = problem;
  const itemIndex = new Map(problem.items.map((item, index) => [item.id, index]));
  const requests = wishes.hours * (wishes.guestsPerHour ?? guestsPerHourOf[wishes.kind]);
  const shares = problem.figures.reduce((sum, figure) => sum + figure.share, 0);
  const figures = problem.figures.map((figure): ModelFigure => {
    const roles = [
      ...figure.roles.map((role) => roleOf(role, problem.items)),
      ...(figure.extras ?? []).map((extra): ModelRole => {
        const item = itemIndex.get(extra.item);
        return { pieces: extra.count, choices: item === undefined ? [] : [{ item, first: 1 }], isChoice: false };
      }),
    ];
    return { requests: (requests * figure.share) / shares, roles, choiceRoles: roles.filter((role) => role.isChoice).length };
  });
  const have = new Float64Array(problem.items.length);
  for (const { item, count } of problem.have) {
    const index = itemIndex.get(item);
    if (index !== undefined) have[index] = (have[index] ?? 0) + count;
  }
  const out = new Set(wishes.takenOut ?? []);
  const owned = new Set(problem.have.filter((line) => line.count > 0).map((line) => line.item));
  const forced = new Set(wishes.forcedIn ?? []);
  const missing = problem.tools.filter((tool) => !owned.has(tool.id) && (!out.has(tool.id) || forced.has(tool.id)));
  const isMust = (tool: KitTool): boolean => tool.need === 'must-have' || forced.has(tool.id);
  const bags = bagsOf(problem, figures, itemIndex, out);
  const model = {
    problem,
    requests,
    chanceOfOther: wishes.chanceOfOtherColour ?? 0.8,
    figures,
    have,
    bags,
    mustHaves: missing.filter(isMust),
    spares: missing.filter((tool) => tool.need === 'spare' && !isMust(tool)),
  };
  return { ...model, cover: coverOf(model) };
}

function roleOf(role: KitRole, items: readonly KitItem[]): ModelRole {
  const total = role.colours.reduce((sum, choice) => sum + choice.preference, 0);
  const choices = role.colours.flatMap((choice) => {
    const item = items.findIndex((one) => fits(one, role, choice));
    // A colour that nobody asks for first still serves those who find theirs gone.
    const first = total > 0 ? Math.max(choice.preference / total, 1e-9) : 1 / role.colours.length;
    return item < 0 ? [] : [{ item, first }];
  });
  return { pieces: role.pieces, choices, isChoice: role.colours.length > 1 };
}
/** True if the item is what the role takes in this colour. */
export const fits = (item: KitItem, role: KitRole, choice: KitRole['colours'][number]): boolean =>
  item.size === role.size &&
  item.colour === choice.colour &&
  (item.finish ?? 'standard') === (choice.finish ?? role.finish ?? 'standard') &&
  item.print === role.print;

/** One entry for every bag worth considering: as many of an offer as could be used up. */
function bagsOf(
  problem: KitProblem,
  figures: readonly ModelFigure[],
  itemIndex: ReadonlyMap<string, number>,
  out: ReadonlySet<string>,
): readonly ModelBag[] {
  const most = new Float64Array(problem.items.length);
  for (const figure of figures)
    for (const role of figure.roles) for (const { item } of role.choices) most[item] = (most[item] ?? 0) + figure.requests * role.pieces;
  const forced = new Set(problem.wishes.forcedIn ?? []);
  return problem.offers.flatMap((offer) => {
    const assorted = offer.mix !== undefined;
    const refused = out.has(offer.id) || out.has(offer.item) || (assorted && problem.wishes.assortedBags === false);
    if (refused && !forced.has(offer.id)) return [];
    const holds = holdsOf(offer, itemIndex).filter(({ pieces }) => pieces > 0);
    const needed = Math.max(
      0,
      ...holds.map(({ item, pieces }) => Math.ceil(((most[item] ?? 0) + 3 * Math.sqrt(most[item] ?? 0)) / pieces)),
    );
    const count = Math.min(needed, offer.mostBags ?? mostBagsOfOne, mostBagsOfOne);
    return Array.from({ length: forced.has(offer.id) ? Math.max(1, count) : count }, () => ({ offer, holds }));
  });
}
export function holdsOf(
  offer: KitOffer,
  itemIndex: ReadonlyMap<string, number>,
): readonly { readonly item: number; readonly pieces: number }[] {
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

/**
 * The relaxation that is searched: a figure counts fully once each of its roles has a bag or pieces at hand, colours asked for first
 * count on top, and what all roles with the same items take together is bounded by the pieces. Never values a purchase lower than `worthOf`.
 */
function coverOf(model: Omit<KitModel, 'cover'>): CoverProblem {
  const { problem, bags, figures, have } = model;
  const bagsOfItem: number[][] = problem.items.map(() => []);
  for (const [b, bag] of bags.entries()) if (!isSecond(bags, b)) for (const { item } of bag.holds) bagsOfItem[item]?.push(b);
  const clauseOf = (items: readonly number[]): readonly number[] | undefined =>
    items.some((item) => (have[item] ?? 0) > 0) ? undefined : [...new Set(items.flatMap((item) => bagsOfItem[item] ?? []))];
  const goals: CoverGoal[] = [];
  const uses: PiecesUse[] = [];
  for (const figure of figures) {
    const clauses = figure.roles
      .map((role) => clauseOf(role.choices.map((choice) => choice.item)))
      .filter((clause) => clause !== undefined);
    const base = figure.choiceRoles === 0 ? 1 : model.chanceOfOther;
    for (const role of figure.roles) {
      const items = role.choices.map((choice) => choice.item);
      uses.push({ items, role: items, goal: goals.length, pieces: figure.requests * role.pieces });
    }
    goals.push({ value: figure.requests * base, alternatives: [clauses] });
    if (base === 1) continue;
    for (const role of figure.roles) {
      if (!role.isChoice) continue;
      for (const choice of role.choices) {
        const own = clauseOf([choice.item]);
        const items = role.choices.map((one) => one.item);
        uses.push({ items: [choice.item], role: items, goal: goals.length, pieces: figure.requests * role.pieces * choice.first });
        goals.push({
          value: (figure.requests * (1 - base) * choice.first) / figure.choiceRoles,
          alternatives: [own === undefined ? clauses : [...clauses, own]],
        });
      }
    }
  }
  const pieces = piecesRows(model, uses);
  const binding = pieces.filter((row) => {
    const firstBags = row.holds.filter(({ bag }) => !isSecond(bags, bag)).map((hold) => hold.pieces);
    return row.needs.reduce((sum, need) => sum + need.pieces, 0) > row.have + Math.min(...firstBags, Number.POSITIVE_INFINITY);
  });
  const colourIndex = new Map<string, number>();
  const colourOf = (item: number): readonly number[] => {
    const colour = problem.items[item]?.colour;
    if (colour === undefined) return [];
    const index = colourIndex.get(colour) ?? colourIndex.size;
    colourIndex.set(colour, index);
    return [index];
  };
  const supplierIndex = new Map(problem.suppliers.map((supplier, index) => [supplier.id, index]));
  const toolCost = model.mustHaves.reduce((sum, tool) => sum + tool.price, 0);
  const coloursOf = bags.map((bag) => [...new Set(bag.holds.flatMap(({ item }) => colourOf(item)))]);
  const ownColours = [...have.keys()].filter((item) => (have[item] ?? 0) > 0).flatMap(colourOf);
  return {
    costs: bags.map((bag) => bag.offer.price),
    budget: problem.wishes.budget - toolCost,
    goals,
    pieces: binding,
    suppliers: problem.suppliers.map((supplier) => ({
      shipping: supplier.shipping,
      ...(supplier.freeFrom === undefined ? {} : { freeFrom: supplier.freeFrom }),
      spent: model.mustHaves.filter((tool) => tool.supplier === supplier.id).reduce((sum, tool) => sum + tool.price, 0),
    })),
    supplierOf: bags.map((bag) => supplierIndex.get(bag.offer.supplier) ?? -1),
    coloursOf,
    ownColours,
    ...(problem.wishes.mostColours === undefined ? {} : { mostColours: problem.wishes.mostColours }),
    after: bags.map((_, b) => (isSecond(bags, b) ? b - 1 : -1)),
    forcedIn: (problem.wishes.forcedIn ?? []).flatMap((id) => {
      const bag = bags.findIndex((one) => one.offer.id === id);
      return bag < 0 ? [] : [bag];
    }),
  };
}
/** What a goal, when reached, takes out of a set of items; a first choice belongs to a role that could also take others. */
interface PiecesUse {
  readonly items: readonly number[];
  readonly role: readonly number[];
  readonly goal: number;
  readonly pieces: number;
}
/**
 * For each set of items that some role can take, and for each size: the roles that can take nothing else use pieces of this set only,
 * and of the other roles those who get a first choice in the set.
 */
function piecesRows(model: Omit<KitModel, 'cover'>, uses: readonly PiecesUse[]): readonly CoverPieces[] {
  const sets = new Map<string, ReadonlySet<number>>();
  const add = (items: readonly number[]): void => void sets.set([...items].sort((a, b) => a - b).join(), new Set(items));
  for (const use of uses) add(use.items);
  const bySize = new Map<string, number[]>();
  for (const [item, one] of model.problem.items.entries())
    if (one.size !== undefined) bySize.set(one.size, [...(bySize.get(one.size) ?? []), item]);
  for (const items of bySize.values()) add(items);
  return [...sets.values()].map((set): CoverPieces => {
    const isInside = (items: readonly number[]): boolean => items.every((item) => set.has(item));
    const counted = uses.filter((use) => isInside(use.items) && (use.items === use.role || !isInside(use.role)));
    const holds = model.bags.flatMap((bag, b) => {
      const count = bag.holds.filter(({ item }) => set.has(item)).reduce((sum, hold) => sum + hold.pieces, 0);
      return count > 0 ? [{ bag: b, pieces: count }] : [];
    });
    return { have: [...set].reduce((sum, item) => sum + (model.have[item] ?? 0), 0), needs: mergedNeeds(counted), holds };
  });
}

const isSecond = (bags: readonly ModelBag[], bag: number): boolean => bag > 0 && bags[bag - 1]?.offer === bags[bag]?.offer;
function mergedNeeds(
  needs: readonly { readonly goal: number; readonly pieces: number }[],
): readonly { readonly goal: number; readonly pieces: number }[] {
  const byGoal = new Map<number, number>();
  for (const { goal, pieces } of needs) byGoal.set(goal, (byGoal.get(goal) ?? 0) + pieces);
  return [...byGoal].map(([goal, pieces]) => ({ goal, pieces }));
}
