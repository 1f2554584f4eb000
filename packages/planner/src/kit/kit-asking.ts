import type { KitModel } from './kit-model.ts';
import { expectedUse } from './poisson.ts';

/**
 * The guests' side of the bound in `kit-bound.ts`: what requests are worth at most when a choice costs a price for each item that it relies
 * on (a link) and for each piece that it takes. Each figure, and within it each part, is settled by itself and exactly: some choice serves
 * everybody, others are worth their links only for those who want them first. Where guests will ask for more of an item than there can be,
 * all who ask share the lack, as in `kit-worth.ts`: no figure is served beyond that.
 */
export class KitAsking {
  /** Whether each link is relied on at the present prices, 0 or 1. */
  readonly linkDemand: Float64Array;
  /** Pieces of each item that are taken. */
  readonly use: Float64Array;
  /** Links that matter: of figures that can be made, on items that are not there for sure. */
  readonly links: Int32Array;
  linkCount = 0;
  readonly itemOfLink: Int32Array;
  readonly #partsStart: Int32Array;
  readonly #choicesStart: Int32Array;
  readonly #needsStart: Int32Array;
  readonly #needPieces: Float64Array;
  readonly #first: Float64Array;
  readonly #requests: Float64Array;
  /** What requests for a figure are worth if made in any way, and what a first choice of one of its parts adds. */
  readonly #base: Float64Array;
  readonly #extra: Float64Array;
  readonly #partIsChoice: Int8Array;
  readonly #alive: Int8Array;
  readonly #figures: Int32Array;
  #figureCount = 0;
  /** Of each choice: what its pieces and its links cost at the present prices. */
  readonly #piecesCost: Float64Array;
  readonly #linksCost: Float64Array;
  readonly #anyway: Int32Array;
  /** Of each item: pieces asked for in any case; the share of these that can be had, and the pieces that can be left, at most. */
  readonly #demand: Float64Array;
  readonly #filled: Float64Array;
  readonly #left: Float64Array;
  /** Of each choice: items that are not there for sure, and the share of guests who get it first at most. */
  readonly #missing: Int8Array;
  readonly #firstMet: Float64Array;
  /** Of each part: the share of guests whose first choice is there, at least and at most. */
  readonly #thereLeast: Float64Array;
  readonly #thereMost: Float64Array;
  /** Of each figure: the share of its requests that can be served at most. */
  readonly #served: Float64Array;

  constructor(model: KitModel) {
    const parts = model.figures.flatMap((figure) => figure.parts);
    const choices = parts.flatMap((part) => part.choices);
    const needs = choices.flatMap((choice) => choice.needs);
    this.#partsStart = startsOf(model.figures.map((figure) => figure.parts.length));
    this.#choicesStart = startsOf(parts.map((part) => part.choices.length));
    this.#needsStart = startsOf(choices.map((choice) => choice.needs.length));
    this.itemOfLink = Int32Array.from(needs, (need) => need.item);
    this.#needPieces = Float64Array.from(needs, (need) => need.pieces);
    this.#first = Float64Array.from(choices, (choice) => choice.first);
    this.#requests = Float64Array.from(model.figures, (figure) => figure.requests);
    const other = model.chanceOfOther;
    this.#base = Float64Array.from(model.figures, (figure) => figure.requests * (figure.choiceParts === 0 ? 1 : other));
    this.#extra = Float64Array.from(model.figures, (figure) =>
      figure.choiceParts === 0 ? 0 : (figure.requests * (1 - other)) / figure.choiceParts,
    );
    this.#partIsChoice = Int8Array.from(parts, (part) => (part.isChoice ? 1 : 0));
    this.#alive = new Int8Array(choices.length);
    this.#figures = new Int32Array(model.figures.length);
    this.#piecesCost = new Float64Array(choices.length);
    this.#linksCost = new Float64Array(choices.length);
    this.#anyway = new Int32Array(parts.length);
    this.#demand = new Float64Array(model.have.length);
    this.#filled = new Float64Array(model.have.length);
    this.#left = new Float64Array(model.have.length);
    this.#missing = new Int8Array(choices.length);
    this.#thereLeast = new Float64Array(parts.length);
    this.#thereMost = new Float64Array(parts.length);
    this.#firstMet = new Float64Array(choices.length);
    this.#served = new Float64Array(model.figures.length);
    this.linkDemand = new Float64Array(needs.length);
    this.links = new Int32Array(needs.length);
    this.use = new Float64Array(model.have.length);
  }

  /** Keeps to the figures and choices that can still be made, where there are at most so many pieces. */
  narrow(isSure: Int8Array, isReachable: Int8Array, mostPieces: Float64Array): void {
    this.#figureCount = 0;
    this.linkCount = 0;
    for (let f = 0; f < this.#requests.length; f++) {
      const end = this.#partsStart[f + 1] as number;
      let isMakeable = (this.#requests[f] as number) > 0;
      for (let p = this.#partsStart[f] as number; p < end && isMakeable; p++) isMakeable = this.#look(p, isReachable);
      if (!isMakeable) continue;
      this.#figures[this.#figureCount++] = f;
      for (let p = this.#partsStart[f] as number; p < end; p++)
        for (let c = this.#choicesStart[p] as number; c < (this.#choicesStart[p + 1] as number); c++)
          for (let n = this.#needsStart[c] as number; n < (this.#needsStart[c + 1] as number); n++)
            if (this.#alive[c] === 1 && isSure[this.itemOfLink[n] as number] === 0) this.links[this.linkCount++] = n;
    }
    this.#countSureDemand(isSure);
    for (let item = 0; item < this.use.length; item++) {
      const [demand, pieces] = [this.#demand[item] as number, mostPieces[item] as number];
      const used = expectedUse(demand, pieces);
      this.#filled[item] = demand > 0 ? used / demand : 1;
      this.#left[item] = Math.max(0, pieces - used);
    }
    for (let k = 0; k < this.#figureCount; k++) this.#limit(this.#figures[k] as number);
  }
  /**
   * Counts the pieces of each item that guests ask for in any case if it is there at all: those of figures that can then be made for sure,
   * as if all other choices were there too.
   */
  #countSureDemand(isSure: Int8Array): void {
    this.#demand.fill(0);
    for (let k = 0; k < this.#figureCount; k++) {
      const f = this.#figures[k] as number;
      const start = this.#partsStart[f] as number;
      const end = this.#partsStart[f + 1] as number;
      let unsure = -1;
      let unsureParts = 0;
      for (let p = start; p < end; p++) {
        this.#lookForSure(p, isSure);
        if ((this.#thereLeast[p] as number) > 0) continue;
        unsure = p;
        unsureParts++;
      }
      // One part may wait for the item itself; where more do, nothing is sure.
      if (unsureParts === 0) for (let p = start; p < end; p++) this.#askInAnyCase(p, this.#requests[f] as number, isSure);
      if (unsureParts === 1) this.#askInAnyCase(unsure, this.#requests[f] as number, isSure);
    }
  }
  #lookForSure(p: number, isSure: Int8Array): void {
    this.#thereLeast[p] = 0;
    this.#thereMost[p] = 0;
    for (let c = this.#choicesStart[p] as number; c < (this.#choicesStart[p + 1] as number); c++) {
      if (this.#alive[c] === 0) continue;
      let missing = 0;
      for (let n = this.#needsStart[c] as number; n < (this.#needsStart[c + 1] as number); n++)
        if (isSure[this.itemOfLink[n] as number] === 0) missing++;
      this.#missing[c] = missing;
      this.#thereMost[p] = (this.#thereMost[p] as number) + (this.#first[c] as number);
      if (missing === 0) this.#thereLeast[p] = (this.#thereLeast[p] as number) + (this.#first[c] as number);
    }
  }
  #askInAnyCase(p: number, requests: number, isSure: Int8Array): void {
    for (let c = this.#choicesStart[p] as number; c < (this.#choicesStart[p + 1] as number); c++) {
      if (this.#alive[c] === 0 || (this.#missing[c] as number) > 1) continue;
      const asked = (requests * (this.#first[c] as number)) / (this.#thereMost[p] as number);
      for (let n = this.#needsStart[c] as number; n < (this.#needsStart[c + 1] as number); n++) {
        const item = this.itemOfLink[n] as number;
        if (this.#missing[c] === 1 && isSure[item] === 1) continue;
        this.#demand[item] = (this.#demand[item] as number) + asked * (this.#needPieces[n] as number);
      }
    }
  }
  /** What of figure `f` can be served at most: of each part those who get their first choice, and what is left of it for others. */
  #limit(f: number): void {
    let served = 1;
    for (let p = this.#partsStart[f] as number; p < (this.#partsStart[f + 1] as number); p++)
      served = Math.min(served, this.#servedBy(p, this.#requests[f] as number));
    this.#served[f] = served;
  }
  #servedBy(p: number, requests: number): number {
    let firsts = 0;
    let others = 0;
    let alive = 0;
    for (let c = this.#choicesStart[p] as number; c < (this.#choicesStart[p + 1] as number); c++) {
      if (this.#alive[c] === 0) continue;
      let filled = 1;
      let left = Number.POSITIVE_INFINITY;
      for (let n = this.#needsStart[c] as number; n < (this.#needsStart[c + 1] as number); n++) {
        const item = this.itemOfLink[n] as number;
        filled = Math.min(filled, this.#filled[item] as number);
        left = Math.min(left, (this.#left[item] as number) / Math.max(1e-9, this.#needPieces[n] as number));
      }
      this.#firstMet[c] = (this.#first[c] as number) * filled;
      firsts +=
        (this.#firstMet[c] as number) / ((this.#thereLeast[p] as number) + (this.#missing[c] === 0 ? 0 : (this.#first[c] as number)));
      others += left / requests;
      alive++;
    }
    return alive > 1 ? firsts + others : firsts;
  }
  #look(p: number, isReachable: Int8Array): boolean {
    let any = false;
    for (let c = this.#choicesStart[p] as number; c < (this.#choicesStart[p + 1] as number); c++) {
      let alive = 1;
      for (let n = this.#needsStart[c] as number; n < (this.#needsStart[c + 1] as number); n++)
        if (isReachable[this.itemOfLink[n] as number] === 0) alive = 0;
      this.#alive[c] = alive;
      if (alive === 1) any = true;
    }
    return any;
  }

  /** What all figures are worth together at these prices (of links that do not matter the price has to be 0). */
  ask(links: Float64Array, pieces: Float64Array): number {
    this.linkDemand.fill(0);
    this.use.fill(0);
    let worth = 0;
    for (let k = 0; k < this.#figureCount; k++) worth += this.#askFor(this.#figures[k] as number, links, pieces);
    return worth;
  }

  #askFor(f: number, links: Float64Array, pieces: Float64Array): number {
    const start = this.#partsStart[f] as number;
    const end = this.#partsStart[f + 1] as number;
    const requests = this.#requests[f] as number;
    const served = this.#served[f] as number;
    let worth = served * (this.#base[f] as number);
    let dearest = 0;
    let cheapest = 0;
    let linksLeast = 0;
    let firsts = 0;
    for (let p = start; p < end; p++) {
      const extra = this.#partIsChoice[p] === 1 ? (this.#extra[f] as number) : 0;
      let most = 0;
      let least = Number.POSITIVE_INFINITY;
      let leastLinks = Number.POSITIVE_INFINITY;
      for (let c = this.#choicesStart[p] as number; c < (this.#choicesStart[p + 1] as number); c++) {
        if (this.#alive[c] === 0) continue;
        let piecesCost = 0;
        let linksCost = 0;
        for (let n = this.#needsStart[c] as number; n < (this.#needsStart[c + 1] as number); n++) {
          piecesCost += (pieces[this.itemOfLink[n] as number] as number) * (this.#needPieces[n] as number);
          linksCost += links[n] as number;
        }
        piecesCost *= requests;
        this.#piecesCost[c] = piecesCost;
        this.#linksCost[c] = linksCost;
        if (piecesCost > most) most = piecesCost;
        if (piecesCost < least) least = piecesCost;
        if (linksCost < leastLinks) leastLinks = linksCost;
        firsts += Math.max(0, (this.#firstMet[c] as number) * extra - linksCost);
      }
      dearest += most;
      cheapest += least;
      linksLeast += leastLinks;
      worth += this.#settle(p, extra, served);
    }
    // Where pieces are dearer than a guest who takes anything, it can pay to serve only some: this bounds that.
    if (dearest > (this.#base[f] as number)) {
      const some = Math.min(firsts, served * (requests - cheapest) - linksLeast);
      if (some > Math.max(0, worth)) return some;
    }
    if (worth <= 0) return 0;
    for (let p = start; p < end; p++) this.#take(p, requests, served, this.#partIsChoice[p] === 1 ? (this.#extra[f] as number) : 0);
    return worth;
  }

  /** The best choice to serve everybody with, and what the part is then worth: less than nothing, but for those who get their first choice. */
  #settle(p: number, extra: number, served: number): number {
    const start = this.#choicesStart[p] as number;
    const end = this.#choicesStart[p + 1] as number;
    let best = Number.NEGATIVE_INFINITY;
    for (let m = start; m < end; m++) {
      if (this.#alive[m] === 0) continue;
      const cost = this.#piecesCost[m] as number;
      let worth = (this.#firstMet[m] as number) * extra - served * cost - (this.#linksCost[m] as number);
      for (let c = start; c < end; c++) if (c !== m && this.#alive[c] === 1) worth += this.#gainOf(c, cost, extra);
      if (worth > best) {
        best = worth;
        this.#anyway[p] = m;
      }
    }
    return best;
  }
  /** What choice `c` adds beside one whose pieces cost less. */
  #gainOf(c: number, cost: number, extra: number): number {
    const more = (this.#piecesCost[c] as number) - cost;
    if (more < 0 || more >= extra) return 0;
    return Math.max(0, (this.#firstMet[c] as number) * (extra - more) - (this.#linksCost[c] as number));
  }
  #take(p: number, requests: number, served: number, extra: number): void {
    const start = this.#choicesStart[p] as number;
    const end = this.#choicesStart[p + 1] as number;
    const m = this.#anyway[p] as number;
    const cost = this.#piecesCost[m] as number;
    let rest = served;
    for (let c = start; c < end; c++) {
      if (c === m || this.#alive[c] === 0 || this.#gainOf(c, cost, extra) <= 0) continue;
      rest -= this.#firstMet[c] as number;
      this.#takeChoice(c, requests * (this.#firstMet[c] as number));
    }
    this.#takeChoice(m, requests * Math.max(0, rest));
  }
  #takeChoice(c: number, requests: number): void {
    for (let n = this.#needsStart[c] as number; n < (this.#needsStart[c + 1] as number); n++) {
      const item = this.itemOfLink[n] as number;
      this.linkDemand[n] = 1;
      this.use[item] = (this.use[item] as number) + requests * (this.#needPieces[n] as number);
    }
  }
}

function startsOf(counts: readonly number[]): Int32Array {
  const starts = new Int32Array(counts.length + 1);
  for (const [k, count] of counts.entries()) starts[k + 1] = (starts[k] as number) + count;
  return starts;
}
