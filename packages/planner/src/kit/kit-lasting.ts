import { Chance, exp, spreadOf } from '@twistwright/units';
import type { KitModel, ModelFigure, ModelPart } from './kit-model.ts';
import type { Kit, KitLasting } from './kit-problem.ts';
import { guestsPerHourOf } from './kit-problem.ts';
import { piecesWith } from './kit-worth.ts';
import type { Bags } from './purchase.ts';

/**
 * Lets guests come one by one to a kit, run by run: each asks for a figure by its share and for colours by preference, takes another
 * colour that is left with the chance of the wishes, and goes without a balloon where none will do. Assorted bags are filled by
 * chance in each run. Seeded; the same seed sees the same guests whatever is bought.
 */
export function lastingOf(model: KitModel, bags: Bags, runs = 400, seed = 1): KitLasting {
  const met = new Float64Array(runs);
  const figures = new Float64Array(runs);
  const untilShort = new Float64Array(runs);
  const makeable = model.figures.map((figure) => isEverMakeable(model, bags, figure));
  for (let run = 0; run < runs; run++) {
    const one = runOnce(model, bags, makeable, seed, run);
    met[run] = one.share;
    figures[run] = one.figures;
    untilShort[run] = one.untilShort;
  }
  const perHour = model.problem.wishes.guestsPerHour ?? guestsPerHourOf[model.problem.wishes.kind];
  return {
    met: spreadOf(met),
    figures: spreadOf(figures),
    guestsUntilShort: spreadOf(untilShort),
    hoursUntilShort: spreadOf(untilShort.map((guests) => guests / perHour)),
  };
}

/**
 * Shares of requests between which to expect the one that is met: 10th to 90th percentile of the simulated ones, and the expected share
 * itself, which is reckoned from averages and promises a little too little where much runs out.
 */
export const metWithin = (
  { met }: Pick<Kit, 'met'>,
  lasting: Pick<KitLasting, 'met'>,
): { readonly low: number; readonly high: number } => ({
  low: Math.min(met, lasting.met.p10),
  high: Math.max(met, lasting.met.p90),
});

/** A run is followed for at most this many times the hours (or their guests) to see when the kit runs short: such a spread says "at least". */
export const mostHoursFollowed = 4;

function runOnce(
  model: KitModel,
  bags: Bags,
  makeable: readonly boolean[],
  seed: number,
  run: number,
): { readonly share: number; readonly figures: number; readonly untilShort: number } {
  const guestsChance = new Chance(seed, run, 11);
  const pieces = openBags(model, bags, new Chance(seed, run, 12));
  const guests = poisson(model.requests, guestsChance);
  const last = Math.max(guests, Math.ceil(mostHoursFollowed * model.requests));
  let served = 0;
  let untilShort = last;
  for (let guest = 0; guest < last; guest++) {
    const draws: GuestDraws = {
      figure: guestsChance.uniform(),
      role: guestsChance.uniform(),
      colour: guestsChance.uniform(),
      takesOther: guestsChance.uniform(),
    };
    const f = figureAsked(model, draws.figure);
    const figure = model.figures[f];
    if (figure === undefined) continue;
    const isServed = serve(model, figure, pieces, draws);
    if (isServed === 'yes' && guest < guests) served++;
    if (isServed === 'gone' && makeable[f] === true && untilShort === last) {
      untilShort = guest;
      if (guest >= guests) break;
    }
  }
  return { share: guests === 0 ? 1 : served / guests, figures: served, untilShort };
}
interface GuestDraws {
  readonly figure: number;
  readonly role: number;
  readonly colour: number;
  readonly takesOther: number;
}

function figureAsked(model: KitModel, draw: number): number {
  let sum = 0;
  for (const [f, figure] of model.figures.entries()) {
    sum += figure.requests / model.requests;
    if (draw < sum) return f;
  }
  return model.figures.length - 1;
}

/** Serves one guest; `declined` is a guest who will have no other choice, `gone` one for whom none of a part is left. */
function serve(model: KitModel, figure: ModelFigure, pieces: Float64Array, draws: GuestDraws): 'yes' | 'declined' | 'gone' {
  let choicePart = Math.floor(draws.role * Math.max(1, figure.choiceParts));
  const taken: { readonly item: number; readonly pieces: number }[] = [];
  const left = (item: number): number =>
    (pieces[item] as number) - taken.filter((one) => one.item === item).reduce((sum, one) => sum + one.pieces, 0);
  let declined = false;
  for (const part of figure.parts) {
    const isAsked = part.isChoice && choicePart-- === 0;
    const wanted = isAsked ? choiceAt(part.choices, draws.colour) : undefined;
    const will = part.choices.filter(({ needs }) => needs.every((need) => left(need.item) >= Math.max(need.pieces, least) - 1e-9));
    if (will.length === 0) return 'gone';
    const first = wanted !== undefined && will.includes(wanted) ? wanted : undefined;
    if (isAsked && first === undefined && draws.takesOther >= model.chanceOfOther) declined = true;
    taken.push(...(first ?? byPreference(will, draws.colour)).needs);
  }
  if (declined) return 'declined';
  for (const need of taken) pieces[need.item] = (pieces[need.item] as number) - need.pieces;
  return 'yes';
}
/** What is needed but not used up, such as a marker, has to be there. */
const least = 1e-6;

type Choices = ModelPart['choices'];
/** The choice wanted first; undefined where it is one that nobody sells. */
function choiceAt(choices: Choices, draw: number): Choices[number] | undefined {
  let sum = 0;
  for (const choice of choices) {
    sum += choice.first;
    if (draw < sum) return choice;
  }
  return undefined;
}
function byPreference(choices: Choices, draw: number): Choices[number] {
  const total = choices.reduce((sum, choice) => sum + choice.first, 0);
  let sum = 0;
  for (const choice of choices) {
    sum += choice.first / total;
    if (draw < sum) return choice;
  }
  const last = choices.at(-1);
  if (last === undefined) throw new Error('a choice among nothing');
  return last;
}

function isEverMakeable(model: KitModel, bags: Bags, figure: ModelFigure): boolean {
  const pieces = piecesWith(model, bags);
  return figure.parts.every((part) => part.choices.some(({ needs }) => needs.every(({ item }) => (pieces[item] as number) > 0)));
}

function openBags(model: KitModel, bags: Bags, chance: Chance): Float64Array {
  const pieces = model.have.slice();
  for (const [o, { offer, holds }] of model.offers.entries()) {
    const count = bags[o] ?? 0;
    if (count === 0) continue;
    if (offer.mix === undefined) for (const hold of holds) pieces[hold.item] = (pieces[hold.item] as number) + count * hold.pieces;
    else {
      for (let piece = 0; piece < count * offer.count; piece++) {
        let draw = chance.uniform() * offer.count;
        for (const { item, pieces: expected } of holds) {
          draw -= expected;
          if (draw >= 0) continue;
          pieces[item] = (pieces[item] as number) + 1;
          break;
        }
      }
    }
  }
  return pieces;
}

/** Poisson count by counting exponential gaps in blocks, so that no power underflows. */
export function poisson(mean: number, chance: Chance): number {
  let count = 0;
  for (let left = mean; left > 0; left -= 30) {
    const least = exp(-Math.min(left, 30));
    for (let product = chance.uniform(); product > least; product *= chance.uniform()) count++;
  }
  return count;
}
