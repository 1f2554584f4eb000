import { Chance, exp, spreadOf } from '@twistwright/units';
import type { KitModel, ModelFigure } from './kit-model.ts';
import type { KitLasting } from './kit-problem.ts';
import { guestsPerHourOf } from './kit-problem.ts';

/**
 * Lets guests come one by one to a kit, run by run: each asks for a figure by its share and for colours by preference, takes another
 * colour that is left with the chance of the wishes, and goes without a balloon where none will do. Assorted bags are filled by
 * chance in each run. Seeded; the same seed sees the same guests whatever is bought.
 */
export function lastingOf(model: KitModel, bought: ArrayLike<number>, runs = 400, seed = 1): KitLasting {
  const met = new Float64Array(runs);
  const figures = new Float64Array(runs);
  const untilShort = new Float64Array(runs);
  const makeable = model.figures.map((figure) => isEverMakeable(model, bought, figure));
  for (let run = 0; run < runs; run++) {
    const one = runOnce(model, bought, makeable, seed, run);
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

/** A run is followed for at most this many times the hours to see when the kit runs short. */
const longest = 4;

function runOnce(
  model: KitModel,
  bought: ArrayLike<number>,
  makeable: readonly boolean[],
  seed: number,
  run: number,
): { readonly share: number; readonly figures: number; readonly untilShort: number } {
  const guestsChance = new Chance(seed, run, 11);
  const pieces = openBags(model, bought, new Chance(seed, run, 12));
  const guests = poisson(model.requests, guestsChance);
  const last = Math.max(guests, Math.ceil(longest * model.requests));
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

/** Serves one guest; `declined` is a guest who will have no other colour, `gone` one for whom no colour of a role is left. */
function serve(model: KitModel, figure: ModelFigure, pieces: Float64Array, draws: GuestDraws): 'yes' | 'declined' | 'gone' {
  let choiceRole = Math.floor(draws.role * Math.max(1, figure.choiceRoles));
  const taken: { readonly item: number; readonly count: number }[] = [];
  const left = (item: number): number =>
    (pieces[item] as number) - taken.filter((one) => one.item === item).reduce((sum, one) => sum + one.count, 0);
  let declined = false;
  for (const role of figure.roles) {
    const isAsked = role.isChoice && choiceRole-- === 0;
    const wanted = isAsked ? itemAt(role.choices, draws.colour) : undefined;
    const will = role.choices.filter(({ item }) => left(item) >= role.pieces - 1e-9);
    if (will.length === 0) return 'gone';
    const first = will.find(({ item }) => item === wanted);
    if (isAsked && first === undefined && draws.takesOther >= model.chanceOfOther) declined = true;
    const item = (first ?? byPreference(will, draws.colour)).item;
    taken.push({ item, count: role.pieces });
  }
  if (declined) return 'declined';
  for (const { item, count } of taken) pieces[item] = (pieces[item] as number) - count;
  return 'yes';
}
type Choices = ModelFigure['roles'][number]['choices'];
/** The item wanted first; undefined where it is one that no offer has. */
function itemAt(choices: Choices, draw: number): number | undefined {
  let sum = 0;
  for (const { item, first } of choices) {
    sum += first;
    if (draw < sum) return item;
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
  if (last === undefined) throw new Error('a choice among no colours');
  return last;
}

function isEverMakeable(model: KitModel, bought: ArrayLike<number>, figure: ModelFigure): boolean {
  const has = (item: number): boolean =>
    (model.have[item] ?? 0) > 0 || model.bags.some((bag, b) => bought[b] === 1 && bag.holds.some((hold) => hold.item === item));
  return figure.roles.every((role) => role.choices.some(({ item }) => has(item)));
}

function openBags(model: KitModel, bought: ArrayLike<number>, chance: Chance): Float64Array {
  const pieces = model.have.slice();
  for (const [b, bag] of model.bags.entries()) {
    if (bought[b] !== 1) continue;
    if (bag.offer.mix === undefined) for (const { item, pieces: count } of bag.holds) pieces[item] = (pieces[item] as number) + count;
    else {
      for (let piece = 0; piece < bag.offer.count; piece++) {
        let draw = chance.uniform() * bag.offer.count;
        for (const { item, pieces: expected } of bag.holds) {
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
