import type { KitModel } from './kit-model.ts';
import { expectedUse } from './poisson.ts';
import type { Bags } from './purchase.ts';

/** What a purchase is worth: expected requests met over the hours. */
export interface KitWorth {
  readonly met: number;
  /** Of these in the colour asked for first. */
  readonly metFirst: number;
  /** By figure, the share of its requests that is met. */
  readonly byFigure: readonly number[];
}

/** Pieces of each item when so many bags of each offer are bought beside what is at hand. */
export function piecesWith(model: KitModel, bags: Bags, into = new Float64Array(model.have.length)): Float64Array {
  into.set(model.have);
  for (let o = 0; o < model.offers.length; o++) {
    const count = bags[o] as number;
    if (count > 0) for (const hold of model.offers[o]?.holds ?? []) into[hold.item] = (into[hold.item] as number) + count * hold.pieces;
  }
  return into;
}

/** One valuation; see {@link KitValuer}. */
export const worthOf = (model: KitModel, pieces: Float64Array): KitWorth => new KitValuer(model).worth(pieces);

/**
 * Expected requests met. Guests ask for figures by their shares and for a choice by preference, spread over the choices that are there;
 * demand for an item is Poisson; who finds it gone takes another choice that is left (with the chance of the wishes), else goes without.
 * A figure needs all its parts filled: what runs out runs out towards the end, so that the scarcest part decides. Flat arrays, because the
 * search asks thousands of times.
 */
export class KitValuer {
  readonly #chanceOfOther: number;
  readonly #requests: Float64Array;
  readonly #choiceParts: Int32Array;
  readonly #partsStart: Int32Array;
  readonly #partIsChoice: Int8Array;
  readonly #choicesStart: Int32Array;
  readonly #choiceFirst: Float64Array;
  readonly #needsStart: Int32Array;
  readonly #needItem: Int32Array;
  readonly #needPieces: Float64Array;
  readonly #there: Float64Array;
  readonly #isThere: Int8Array;
  readonly #makeable: Int8Array;
  readonly #demand: Float64Array;
  readonly #used: Float64Array;
  readonly #filled: Float64Array;
  readonly #left: Float64Array;
  readonly #spill: Float64Array;
  readonly #choiceFilled: Float64Array;
  readonly #choiceLeft: Float64Array;
  readonly #known: UseMemo;
  #isShort = false;

  constructor(model: KitModel) {
    const parts = model.figures.flatMap((figure) => figure.parts);
    const choices = parts.flatMap((part) => part.choices);
    const needs = choices.flatMap((choice) => choice.needs);
    this.#chanceOfOther = model.chanceOfOther;
    this.#requests = Float64Array.from(model.figures, (figure) => figure.requests);
    this.#choiceParts = Int32Array.from(model.figures, (figure) => figure.choiceParts);
    this.#partsStart = startsOf(model.figures.map((figure) => figure.parts.length));
    this.#partIsChoice = Int8Array.from(parts, (part) => (part.isChoice ? 1 : 0));
    this.#choicesStart = startsOf(parts.map((part) => part.choices.length));
    this.#choiceFirst = Float64Array.from(choices, (choice) => choice.first);
    this.#needsStart = startsOf(choices.map((choice) => choice.needs.length));
    this.#needItem = Int32Array.from(needs, (need) => need.item);
    this.#needPieces = Float64Array.from(needs, (need) => need.pieces);
    this.#there = new Float64Array(parts.length);
    this.#isThere = new Int8Array(choices.length);
    this.#makeable = new Int8Array(model.figures.length);
    const items = model.have.length;
    this.#demand = new Float64Array(items);
    this.#used = new Float64Array(items);
    this.#filled = new Float64Array(items);
    this.#left = new Float64Array(items);
    this.#spill = new Float64Array(items);
    this.#choiceFilled = new Float64Array(choices.length);
    this.#choiceLeft = new Float64Array(choices.length);
    this.#known = new UseMemo(items);
  }

  /** Expected requests met with these pieces by item. */
  met(pieces: Float64Array): number {
    this.#run(pieces);
    let met = 0;
    for (let f = 0; f < this.#requests.length; f++) if (this.#makeable[f] === 1) met += this.#figure(f).met;
    return met;
  }
  worth(pieces: Float64Array): KitWorth {
    this.#run(pieces);
    let [met, metFirst] = [0, 0];
    const byFigure = Array.from(this.#requests, (requests, f) => {
      if (this.#makeable[f] !== 1) return 0;
      const one = { ...this.#figure(f) };
      met += one.met;
      metFirst += one.metFirst;
      return requests > 0 ? one.met / requests : 0;
    });
    return { met, metFirst, byFigure };
  }

  #run(pieces: Float64Array): void {
    const [demand, used, filled, left, spill] = [this.#demand, this.#used, this.#filled, this.#left, this.#spill];
    demand.fill(0);
    spill.fill(0);
    for (let f = 0; f < this.#requests.length; f++) this.#ask(f, pieces);
    let isShort = false;
    for (let item = 0; item < pieces.length; item++) {
      const wanted = demand[item] as number;
      const use = this.#known.use(0, item, wanted, pieces[item] as number);
      used[item] = use;
      filled[item] = wanted > 0 ? use / wanted : 1;
      left[item] = Math.max(0, (pieces[item] as number) - use);
      if (use < wanted) isShort = true;
    }
    this.#isShort = isShort;
    if (!isShort) return;
    for (let c = 0; c < this.#isThere.length; c++) if (this.#isThere[c] === 1) this.#lookAt(c);
    for (let f = 0; f < this.#requests.length; f++) if (this.#makeable[f] === 1) this.#turnToOthers(f);
    // The share of those who turn to an item that it can serve beside its own: both together are Poisson too.
    for (let item = 0; item < pieces.length; item++) {
      const more = spill[item] as number;
      if (more <= 0) continue;
      const all = this.#known.use(1, item, (demand[item] as number) + more, pieces[item] as number);
      spill[item] = Math.max(0, Math.min(1, (all - (used[item] as number)) / more));
    }
  }

  /** Asks for figure `f`, if every part has something in it: demand goes to the choices that are there. */
  #ask(f: number, pieces: Float64Array): void {
    const [start, end] = [this.#partsStart[f] as number, this.#partsStart[f + 1] as number];
    this.#makeable[f] = 0;
    for (let p = start; p < end; p++) {
      let there = 0;
      for (let c = this.#choicesStart[p] as number; c < (this.#choicesStart[p + 1] as number); c++) {
        let has = 1;
        for (let n = this.#needsStart[c] as number; n < (this.#needsStart[c + 1] as number); n++)
          if ((pieces[this.#needItem[n] as number] as number) <= 0) has = 0;
        this.#isThere[c] = has;
        if (has === 1) there += this.#choiceFirst[c] as number;
      }
      if (there === 0) return;
      this.#there[p] = there;
    }
    this.#makeable[f] = 1;
    const demand = this.#demand;
    for (let p = start; p < end; p++) {
      const each = (this.#requests[f] as number) / (this.#there[p] as number);
      for (let c = this.#choicesStart[p] as number; c < (this.#choicesStart[p + 1] as number); c++) {
        if (this.#isThere[c] !== 1) continue;
        const asked = each * (this.#choiceFirst[c] as number);
        for (let n = this.#needsStart[c] as number; n < (this.#needsStart[c + 1] as number); n++) {
          const item = this.#needItem[n] as number;
          demand[item] = (demand[item] as number) + asked * (this.#needPieces[n] as number);
        }
      }
    }
  }

  /** Notes the share of those who want choice `c` that find all of it, and how often it could be made of what is left. */
  #lookAt(c: number): void {
    let filled = 1;
    let left = Number.POSITIVE_INFINITY;
    for (let n = this.#needsStart[c] as number; n < (this.#needsStart[c + 1] as number); n++) {
      const item = this.#needItem[n] as number;
      filled = Math.min(filled, this.#filled[item] as number);
      left = Math.min(left, (this.#left[item] as number) / Math.max(1e-9, this.#needPieces[n] as number));
    }
    this.#choiceFilled[c] = filled;
    this.#choiceLeft[c] = left;
  }

  /** Who finds a choice gone turns to the others that have pieces left, in proportion to what is left. */
  #turnToOthers(f: number): void {
    for (let p = this.#partsStart[f] as number; p < (this.#partsStart[f + 1] as number); p++) {
      const [start, end] = [this.#choicesStart[p] as number, this.#choicesStart[p + 1] as number];
      if (end - start < 2) continue;
      const room = this.#roomOf(start, end);
      let turning = 0;
      for (let c = start; c < end; c++) turning += this.#turningFrom(c, room);
      if (turning <= 0) continue;
      const guests = (this.#requests[f] as number) / (this.#there[p] as number);
      for (let c = start; c < end; c++) {
        if (this.#isThere[c] !== 1) continue;
        const asked = guests * (this.#choiceLeft[c] as number) * Math.max(0, turning - this.#turningFrom(c, room));
        for (let n = this.#needsStart[c] as number; n < (this.#needsStart[c + 1] as number); n++) {
          const item = this.#needItem[n] as number;
          this.#spill[item] = (this.#spill[item] as number) + asked * (this.#needPieces[n] as number);
        }
      }
    }
  }
  #roomOf(start: number, end: number): number {
    let room = 0;
    for (let c = start; c < end; c++) if (this.#isThere[c] === 1) room += this.#choiceLeft[c] as number;
    return room;
  }
  /** Share of the guests who find choice `c` gone, for each that could still be made of the other choices. */
  #turningFrom(c: number, room: number): number {
    if (this.#isThere[c] !== 1) return 0;
    const others = room - (this.#choiceLeft[c] as number);
    return others > 1e-9 ? ((this.#choiceFirst[c] as number) * (1 - (this.#choiceFilled[c] as number))) / others : 0;
  }

  readonly #one = { met: 0, metFirst: 0 };
  #figure(f: number): { readonly met: number; readonly metFirst: number } {
    let made = 1;
    let firstShares = 0;
    for (let p = this.#partsStart[f] as number; p < (this.#partsStart[f + 1] as number); p++) {
      const [start, end] = [this.#choicesStart[p] as number, this.#choicesStart[p + 1] as number];
      if (!this.#isShort) {
        if (this.#partIsChoice[p] === 1) firstShares += Math.min(1, this.#there[p] as number);
        continue;
      }
      let first = 0;
      for (let c = start; c < end; c++)
        if (this.#isThere[c] === 1) first += (this.#choiceFirst[c] as number) * (this.#choiceFilled[c] as number);
      let served = Math.min(1, first / (this.#there[p] as number));
      if (served < 1 && end - start > 1) served = Math.min(1, served + this.#caught(start, end) / (this.#there[p] as number));
      made = Math.min(made, served);
      if (this.#partIsChoice[p] === 1 && served > 0) firstShares += Math.min(1, first / served);
    }
    const parts = this.#choiceParts[f] as number;
    const firstShare = parts === 0 ? 1 : firstShares / parts;
    const all = (this.#requests[f] as number) * made;
    this.#one.met = all * (firstShare + (1 - firstShare) * this.#chanceOfOther);
    this.#one.metFirst = all * firstShare;
    return this.#one;
  }
  /** Share of the guests who take another choice. */
  #caught(start: number, end: number): number {
    const room = this.#roomOf(start, end);
    let served = 0;
    for (let c = start; c < end; c++) if (this.#isThere[c] === 1) served += (this.#choiceLeft[c] as number) * this.#caughtOf(c);
    let caught = 0;
    for (let c = start; c < end; c++) {
      const turning = this.#turningFrom(c, room);
      if (turning > 0) caught += turning * Math.max(0, served - (this.#choiceLeft[c] as number) * this.#caughtOf(c));
    }
    return caught;
  }
  /** Share of those who turn to choice `c` that it can serve. */
  #caughtOf(c: number): number {
    let caught = 1;
    for (let n = this.#needsStart[c] as number; n < (this.#needsStart[c + 1] as number); n++)
      caught = Math.min(caught, this.#spill[this.#needItem[n] as number] as number);
    return caught;
  }
}
function startsOf(counts: readonly number[]): Int32Array {
  const starts = new Int32Array(counts.length + 1);
  for (const [k, count] of counts.entries()) starts[k + 1] = (starts[k] as number) + count;
  return starts;
}

/** Remembers the last few expected uses of each item: between two purchases that differ by a bag most are the same. */
class UseMemo {
  readonly #demand: Float64Array;
  readonly #pieces: Float64Array;
  readonly #use: Float64Array;
  readonly #next: Uint8Array;

  constructor(items: number) {
    this.#demand = new Float64Array(items * 2 * kept).fill(-1);
    this.#pieces = new Float64Array(items * 2 * kept);
    this.#use = new Float64Array(items * 2 * kept);
    this.#next = new Uint8Array(items * 2);
  }
  use(kind: 0 | 1, item: number, demand: number, pieces: number): number {
    if (demand <= 0 || pieces <= 0) return 0;
    const row = item * 2 + kind;
    for (let k = row * kept; k < (row + 1) * kept; k++)
      if (this.#demand[k] === demand && this.#pieces[k] === pieces) return this.#use[k] as number;
    const at = row * kept + (this.#next[row] as number);
    this.#next[row] = ((this.#next[row] as number) + 1) % kept;
    this.#demand[at] = demand;
    this.#pieces[at] = pieces;
    const use = expectedUse(demand, pieces);
    this.#use[at] = use;
    return use;
  }
}
const kept = 4;
