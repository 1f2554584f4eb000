import { type Problem, showMoney } from '@twistwright/units';
import { fits, isSame } from './kit-model.ts';
import type { KitFigure, KitProblem } from './kit-problem.ts';

/** Codes of the problems that {@link checkKit} and `firstKit` report. */
export const kitProblemCodes = [
  'kit.number',
  'kit.currency',
  'kit.shares',
  'kit.role-without-colour',
  'kit.offer-empty',
  'kit.unknown',
  'kit.figure-out-of-reach',
  'kit.nothing-to-make',
  'kit.budget',
  'kit.least-order',
  'kit.forced',
] as const;
export type KitProblemCode = (typeof kitProblemCodes)[number];

/**
 * Everything that is wrong with a kit problem, a sentence each; warnings leave the rest usable (a figure that nobody can make is left
 * out), errors do not. The budget is looked at by `firstKit`, which knows what would be enough.
 */
export function checkKit(problem: KitProblem): readonly Problem[] {
  const problems: Problem[] = [];
  const say = (code: KitProblemCode, path: Problem['path'], sentence: string, todo: string, weight: Problem['weight'] = 'error'): void => {
    problems.push({ code, path, sentence, todo, weight });
  };
  const number = (value: number, path: Problem['path'], what: string, whole: boolean): void => {
    if (Number.isFinite(value) && value >= 0 && (!whole || Number.isSafeInteger(value))) return;
    say('kit.number', path, `${what} is ${value}.`, `Give a ${whole ? 'whole ' : ''}number of 0 or more.`);
  };
  const { wishes } = problem;
  number(wishes.budget, ['wishes', 'budget'], 'The budget', true);
  if (!(wishes.hours > 0 && wishes.hours <= 10_000))
    say(
      'kit.number',
      ['wishes', 'hours'],
      `Hours to cover are ${wishes.hours}.`,
      'Give a number above 0, at most 10,000: how long the kit has to last.',
    );
  if (wishes.guestsPerHour !== undefined && !(wishes.guestsPerHour > 0 && wishes.guestsPerHour <= 1000))
    say('kit.number', ['wishes', 'guestsPerHour'], `Guests per hour are ${wishes.guestsPerHour}.`, 'Give a number above 0, at most 1000.');
  if (wishes.mostColours !== undefined) number(wishes.mostColours, ['wishes', 'mostColours'], 'The most colours', true);
  const other = wishes.chanceOfOtherColour;
  if (other !== undefined && !(other >= 0 && other <= 1))
    say(
      'kit.number',
      ['wishes', 'chanceOfOtherColour'],
      `The chance that a guest takes another colour is ${other}.`,
      'Give a number from 0 to 1.',
    );
  checkFigures(problem, say, number);
  checkOffers(problem, say, number);
  for (const [t, tool] of problem.tools.entries()) {
    if (tool.price !== undefined) number(tool.price, ['tools', t, 'price'], `The price of ${tool.name}`, true);
    if (tool.count !== undefined) number(tool.count, ['tools', t, 'count'], `The count of ${tool.name}`, true);
  }
  for (const [h, line] of problem.have.entries()) number(line.count, ['have', h, 'count'], `The count of ${line.item}`, false);
  for (const [f, id] of (wishes.forcedIn ?? []).entries())
    if (!problem.offers.some((offer) => offer.id === id) && !problem.tools.some((tool) => tool.id === id))
      say(
        'kit.unknown',
        ['wishes', 'forcedIn', f],
        `${id} is to be bought in any case, but no offer or tool is called so.`,
        'Name an offer or a tool.',
      );
  const { items, offers, tools } = problem;
  const isCalled = (id: string): boolean => [...items, ...offers, ...tools].some((one) => one.id === id);
  for (const [o, id] of (wishes.takenOut ?? []).entries())
    if (!isCalled(id))
      say(
        'kit.unknown',
        ['wishes', 'takenOut', o],
        `${id} is not to be bought, but no offer, item or tool is called so.`,
        'Name an offer, an item or a tool.',
        'warning',
      );
  for (const [h, { item }] of problem.have.entries())
    if (!isCalled(item))
      say('kit.unknown', ['have', h, 'item'], `${item} is said to be there, but no item or tool is called so.`, 'Name an item.', 'warning');
  return problems;
}

type Say = (code: KitProblemCode, path: Problem['path'], sentence: string, todo: string, weight?: Problem['weight']) => void;
type CheckNumber = (value: number, path: Problem['path'], what: string, whole: boolean) => void;

function checkFigures(problem: KitProblem, say: Say, number: CheckNumber): void {
  const buyable = new Set<string>(problem.have.filter((line) => line.count > 0).map((line) => line.item));
  for (const offer of problem.offers)
    if (offer.mix === undefined) buyable.add(offer.item);
    else if (problem.wishes.assortedBags !== false)
      for (const [item, weight] of Object.entries(offer.mix)) if (weight > 0) buyable.add(item);
  let makeable = 0;
  for (const [f, figure] of problem.figures.entries()) {
    number(figure.share, ['figures', f, 'share'], `The asking share of ${figure.name}`, false);
    let reason: string | undefined;
    for (const [r, role] of figure.roles.entries()) {
      number(role.pieces, ['figures', f, 'roles', r, 'pieces'], `The pieces of ${figure.name}, ${role.name},`, false);
      for (const [c, choice] of role.colours.entries())
        number(choice.preference, ['figures', f, 'roles', r, 'colours', c, 'preference'], `The preference for ${choice.colour}`, false);
      if (role.colours.length === 0) {
        say(
          'kit.role-without-colour',
          ['figures', f, 'roles', r, 'colours'],
          `${figure.name}: the role ${role.name} has no colour that will do.`,
          'Name at least one colour.',
        );
        reason ??= `no colour for ${role.name}`;
        continue;
      }
      const found = problem.items.some((item) => buyable.has(item.id) && role.colours.some((choice) => fits(item, role, choice)));
      if (!found)
        reason ??= `no offer has ${role.size}${role.print === undefined ? '' : ` with ${role.print}`} in ${role.colours.map((choice) => choice.colour).join(' or ')}`;
    }
    reason ??= checkCombinations(problem, f, buyable, say, number);
    for (const extra of figure.extras ?? []) if (!buyable.has(extra.item)) reason ??= `no offer has ${extra.item}`;
    if (reason === undefined) makeable++;
    else
      say(
        'kit.figure-out-of-reach',
        ['figures', f],
        `${figure.name} cannot be made from any offer: ${reason}.`,
        'Add an offer, allow another colour, or leave the figure out.',
        'warning',
      );
  }
  const total = problem.figures.reduce((sum, figure) => sum + figure.share, 0);
  if (!(total > 0))
    say(
      'kit.shares',
      ['figures'],
      problem.figures.length === 0 ? 'No figure is to be considered.' : 'The asking shares of the figures sum to nought.',
      problem.figures.length === 0 ? 'Name at least one figure.' : 'Give at least one figure a share above 0.',
    );
  if (makeable === 0 && problem.figures.length > 0)
    say('kit.nothing-to-make', ['figures'], 'Not one of the figures can be made from the offers.', 'Add offers or figures.');
}

/** Why no way of a combination can be bought, if so. */
function checkCombinations(
  problem: KitProblem,
  f: number,
  buyable: ReadonlySet<string>,
  say: Say,
  number: CheckNumber,
): string | undefined {
  const figure: KitFigure | undefined = problem.figures[f];
  let reason: string | undefined;
  for (const [c, combination] of (figure?.combinations ?? []).entries()) {
    const path = ['figures', f, 'combinations', c];
    for (const [w, way] of combination.ways.entries()) {
      number(
        way.preference,
        [...path, 'ways', w, 'preference'],
        `The preference for way ${w + 1} of ${figure?.name}, ${combination.name},`,
        false,
      );
      for (const piece of way.pieces)
        number(piece.count, [...path, 'ways', w, 'pieces'], `The pieces of ${figure?.name}, ${combination.name},`, false);
    }
    if (combination.ways.length === 0) {
      say(
        'kit.role-without-colour',
        path,
        `${figure?.name}: the roles ${combination.name} have no colours that will do together.`,
        'Name at least one colourway.',
      );
      reason ??= `no colours for ${combination.name}`;
      continue;
    }
    const has = (piece: (typeof combination.ways)[number]['pieces'][number]): boolean =>
      problem.items.some((item) => buyable.has(item.id) && isSame(item, piece));
    if (!combination.ways.some((way) => way.pieces.every(has)))
      reason ??= `no offers have ${combination.name} in ${combination.ways
        .map((way) => [...new Set(way.pieces.map((piece) => piece.colour))].join(' with '))
        .join(' or ')}`;
  }
  return reason;
}

function checkOffers(problem: KitProblem, say: Say, number: CheckNumber): void {
  const items = new Set(problem.items.map((item) => item.id));
  const suppliers = new Set(problem.suppliers.map((supplier) => supplier.id));
  for (const [o, offer] of problem.offers.entries()) {
    number(offer.price, ['offers', o, 'price'], `The price of offer ${offer.id}`, true);
    if (!(Number.isSafeInteger(offer.count) && offer.count > 0))
      say(
        'kit.offer-empty',
        ['offers', o, 'count'],
        `Offer ${offer.id} has ${offer.count} pieces in a bag.`,
        'Give a whole number above 0.',
      );
    if (offer.mix === undefined && !items.has(offer.item) && !problem.tools.some((tool) => tool.id === offer.item))
      say('kit.unknown', ['offers', o, 'item'], `Offer ${offer.id} is for ${offer.item}, which is no item.`, 'Name an item.');
    if (!suppliers.has(offer.supplier))
      say(
        'kit.unknown',
        ['offers', o, 'supplier'],
        `Offer ${offer.id} is sold by ${offer.supplier}, which is no supplier.`,
        'Name a supplier.',
      );
    for (const [b, step] of (offer.breaks ?? []).entries()) {
      number(step.price, ['offers', o, 'breaks', b, 'price'], `The price of offer ${offer.id} from ${step.bags} bags`, true);
      number(step.bags, ['offers', o, 'breaks', b, 'bags'], `The bags of a price break of offer ${offer.id}`, true);
    }
    const weights = Object.values(offer.mix ?? { all: 1 });
    if (weights.some((weight) => !(weight >= 0 && Number.isFinite(weight))) || !(weights.reduce((sum, weight) => sum + weight, 0) > 0))
      say(
        'kit.number',
        ['offers', o, 'mix'],
        `The mix of offer ${offer.id} has no positive weights.`,
        'Give each item in it a weight of 0 or more, one of them above 0.',
      );
  }
  for (const [s, supplier] of problem.suppliers.entries()) {
    number(supplier.shipping, ['suppliers', s, 'shipping'], `Shipping from ${supplier.name}`, true);
    if (supplier.freeFrom !== undefined)
      number(supplier.freeFrom, ['suppliers', s, 'freeFrom'], `Free shipping from ${supplier.name}`, true);
    if (supplier.leastOrder !== undefined)
      number(supplier.leastOrder, ['suppliers', s, 'leastOrder'], `The least order of ${supplier.name}`, true);
    if (supplier.currency !== undefined && supplier.currency !== problem.currency)
      say(
        'kit.currency',
        ['suppliers', s, 'currency'],
        `${supplier.name} charges in ${supplier.currency}, the budget is in ${problem.currency}.`,
        `Give its prices in ${problem.currency} or leave it out.`,
      );
  }
}

/** "£12.50 of must-haves" for sentences about a budget. */
export const priced = (problem: KitProblem, amount: number): string =>
  showMoney(Math.round(amount) as Parameters<typeof showMoney>[0], problem.currency);
