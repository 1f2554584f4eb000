import type { KitModel } from './kit-model.ts';
import { expectedUse } from './poisson.ts';

/** What a purchase is worth: expected requests met over the hours. */
export interface KitWorth {
  readonly met: number;
  /** Of these in the colour asked for first. */
  readonly metFirst: number;
  /** By figure, the share of its requests that is met. */
  readonly byFigure: readonly number[];
}

/** Pieces of each item when these bags (0/1) are bought beside what is at hand. */
export function piecesWith(model: KitModel, bought: ArrayLike<number>): Float64Array {
  const pieces = model.have.slice();
  for (let b = 0; b < model.bags.length; b++) {
    if (bought[b] !== 1) continue;
    for (const hold of model.bags[b]?.holds ?? []) pieces[hold.item] = (pieces[hold.item] as number) + hold.pieces;
  }
  return pieces;
}

/** One valuation; see {@link KitValuer}. */
export const worthOf = (model: KitModel, pieces: Float64Array): KitWorth => new KitValuer(model).worth(pieces);

/**
 * Expected requests met. Guests ask for figures by their shares and for a colour by preference, spread over the colours that are there;
 * demand for an item is Poisson; who finds it gone takes another colour that is left (with the chance of the wishes), else goes without.
 * A figure needs all its roles filled. Flat arrays, because the search asks thousands of times.
 */
export class KitValuer {
  readonly #chanceOfOther: number;
  readonly #requests: Float64Array;
  readonly #choiceRoles: Int32Array;
  readonly #rolesStart: Int32Array;
  readonly #rolePieces: Float64Array;
  readonly #roleIsChoice: Int8Array;
  readonly #choicesStart: Int32Array;
  readonly #choiceItem: Int32Array;
  readonly #choiceFirst: Float64Array;
  readonly #there: Float64Array;
  readonly #makeable: Int8Array;
  readonly #demand: Float64Array;
  readonly #filled: Float64Array;
  readonly #left: Float64Array;
  readonly #spill: Float64Array;

  constructor(model: KitModel) {
    const roles = model.figures.flatMap((figure) => figure.roles);
    const choices = roles.flatMap((role) => role.choices);
    this.#chanceOfOther = model.chanceOfOther;
    this.#requests = Float64Array.from(model.figures, (figure) => figure.requests);
    this.#choiceRoles = Int32Array.from(model.figures, (figure) => figure.choiceRoles);
    this.#rolesStart = startsOf(model.figures.map((figure) => figure.roles.length));
    this.#rolePieces = Float64Array.from(roles, (role) => role.pieces);
    this.#roleIsChoice = Int8Array.from(roles, (role) => (role.isChoice ? 1 : 0));
    this.#choicesStart = startsOf(roles.map((role) => role.choices.length));
    this.#choiceItem = Int32Array.from(choices, (choice) => choice.item);
    this.#choiceFirst = Float64Array.from(choices, (choice) => choice.first);
    this.#there = new Float64Array(roles.length);
    this.#makeable = new Int8Array(model.figures.length);
    this.#demand = new Float64Array(model.have.length);
    this.#filled = new Float64Array(model.have.length);
    this.#left = new Float64Array(model.have.length);
    this.#spill = new Float64Array(model.have.length);
  }

  /** Expected requests met with these pieces by item. */
  met(pieces: Float64Array): number {
    this.#run(pieces);
    let met = 0;
    for (let f = 0; f < this.#requests.length; f++) if (this.#makeable[f] === 1) met += this.#figure(f, pieces).met;
    return met;
  }
  worth(pieces: Float64Array): KitWorth {
    this.#run(pieces);
    let [met, metFirst] = [0, 0];
    const byFigure = Array.from(this.#requests, (requests, f) => {
      if (this.#makeable[f] !== 1) return 0;
      const one = { ...this.#figure(f, pieces) };
      met += one.met;
      metFirst += one.metFirst;
      return requests > 0 ? one.met / requests : 0;
    });
    return { met, metFirst, byFigure };
  }

  #run(pieces: Float64Array): void {
    const [demand, filled, left, spill] = [this.#demand, this.#filled, this.#left, this.#spill];
    demand.fill(0);
    spill.fill(0);
    for (let f = 0; f < this.#requests.length; f++) this.#ask(f, pieces);
    let isShort = false;
    for (let item = 0; item < pieces.length; item++) {
      const wanted = demand[item] as number;
      const used = expectedUse(wanted, pieces[item] as number);
      filled[item] = wanted > 0 ? used / wanted : 1;
      left[item] = Math.max(0, (pieces[item] as number) - used);
      if (used < wanted) isShort = true;
    }
    if (isShort) for (let f = 0; f < this.#requests.length; f++) if (this.#makeable[f] === 1) this.#turnToOthers(f, pieces);
    for (let item = 0; item < pieces.length; item++) {
      const wanted = spill[item] as number;
      spill[item] = wanted > 0 ? Math.min(1, (left[item] as number) / wanted) : 1;
    }
  }

  /** Asks for figure `f`, if every role has something in it: demand goes to the colours that are there. */
  #ask(f: number, pieces: Float64Array): void {
    const end = this.#rolesStart[f + 1] as number;
    this.#makeable[f] = 0;
    for (let r = this.#rolesStart[f] as number; r < end; r++) {
      let there = 0;
      for (let c = this.#choicesStart[r] as number; c < (this.#choicesStart[r + 1] as number); c++)
        if ((pieces[this.#choiceItem[c] as number] as number) > 0) there += this.#choiceFirst[c] as number;
      if (there === 0) return;
      this.#there[r] = there;
    }
    this.#makeable[f] = 1;
    for (let r = this.#rolesStart[f] as number; r < end; r++) {
      const each = ((this.#requests[f] as number) * (this.#rolePieces[r] as number)) / (this.#there[r] as number);
      for (let c = this.#choicesStart[r] as number; c < (this.#choicesStart[r + 1] as number); c++) {
        const item = this.#choiceItem[c] as number;
        if ((pieces[item] as number) > 0) this.#demand[item] = (this.#demand[item] as number) + each * (this.#choiceFirst[c] as number);
      }
    }
  }

  /** Who finds a colour gone turns to the others that have pieces left, in proportion to what is left. */
  #turnToOthers(f: number, pieces: Float64Array): void {
    for (let r = this.#rolesStart[f] as number; r < (this.#rolesStart[f + 1] as number); r++) {
      const [start, end] = [this.#choicesStart[r] as number, this.#choicesStart[r + 1] as number];
      if (end - start < 2) continue;
      let gone = 0;
      let room = 0;
      for (let c = start; c < end; c++) {
        const item = this.#choiceItem[c] as number;
        if ((pieces[item] as number) <= 0) continue;
        gone += (this.#choiceFirst[c] as number) * (1 - (this.#filled[item] as number));
        room += this.#left[item] as number;
      }
      if (gone <= 0 || room <= 0) continue;
      const wanted = (gone / (this.#there[r] as number)) * (this.#requests[f] as number) * (this.#rolePieces[r] as number);
      for (let c = start; c < end; c++) {
        const item = this.#choiceItem[c] as number;
        this.#spill[item] = (this.#spill[item] as number) + (wanted * (this.#left[item] as number)) / room;
      }
    }
  }

  readonly #one = { met: 0, metFirst: 0 };
  #figure(f: number, pieces: Float64Array): { readonly met: number; readonly metFirst: number } {
    let all = 1;
    let firstShares = 0;
    for (let r = this.#rolesStart[f] as number; r < (this.#rolesStart[f + 1] as number); r++) {
      const [start, end] = [this.#choicesStart[r] as number, this.#choicesStart[r + 1] as number];
      let [first, room, caught] = [0, 0, 0];
      for (let c = start; c < end; c++) {
        const item = this.#choiceItem[c] as number;
        if ((pieces[item] as number) <= 0) continue;
        first += (this.#choiceFirst[c] as number) * (this.#filled[item] as number);
        room += this.#left[item] as number;
        caught += (this.#left[item] as number) * (this.#spill[item] as number);
      }
      let served = Math.min(1, first / (this.#there[r] as number));
      if (served < 1 && room > 0 && end - start > 1) served = Math.min(1, served + (1 - served) * (caught / room));
      all *= served;
      if (this.#roleIsChoice[r] === 1 && served > 0) firstShares += Math.min(1, first / served);
    }
    const roles = this.#choiceRoles[f] as number;
    const firstShare = roles === 0 ? 1 : firstShares / roles;
    const made = (this.#requests[f] as number) * all;
    this.#one.met = made * (firstShare + (1 - firstShare) * this.#chanceOfOther);
    this.#one.metFirst = made * firstShare;
    return this.#one;
  }
}
function startsOf(counts: readonly number[]): Int32Array {
  const starts = new Int32Array(counts.length + 1);
  for (const [k, count] of counts.entries()) starts[k + 1] = (starts[k] as number) + count;
  return starts;
}
