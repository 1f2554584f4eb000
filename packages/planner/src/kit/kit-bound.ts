/**
 * Upper bound on what a purchase can be worth, by Lagrangian relaxation (M. L. Fisher, "The Lagrangian relaxation method for solving integer
 * programming problems", Management Science 27 (1981) 1-18). Three kinds of rows get prices: a choice counts only if its items are bought (a
 * price for each link from a choice to an item); what is used of an item is no more than its pieces can serve (a price for a piece); the
 * musts are had (a price for a piece). What is left falls apart into the guests' side (`kit-asking.ts`) and the shops' side
 * (`kit-buying.ts`). Prices move along smoothed subgradients with B. T. Polyak's step length. Any prices give a valid bound.
 */
import { KitAsking } from './kit-asking.ts';
import { KitBuying } from './kit-buying.ts';
import type { KitModel } from './kit-model.ts';

export interface KitPrices {
  /** In the order in which the model lists what its choices need. */
  readonly links: Float64Array;
  readonly pieces: Float64Array;
  readonly musts: Float64Array;
  /** What a minor unit of money is worth. */
  readonly money: number;
}
export interface KitBoundQuestion {
  /** Fewest and most bags of each offer; the fixing narrows them. */
  readonly least: Int8Array;
  readonly most: Int8Array;
  /** Uses of each shop that are still open. */
  readonly uses: Int8Array;
  readonly prices: KitPrices;
  /** Values that are not above this are of no interest. */
  readonly beat: number;
  readonly rounds: number;
}
export interface KitBoundAnswer {
  /** No purchase here is worth more, but for those ruled out on the way, which are worth no more than `cut`. */
  readonly bound: number;
  readonly cut: number;
  /** For each offer how many bags beyond the fewest the relaxation wants, smoothed over the rounds. */
  readonly wanted: Float64Array;
  /** How much it uses each shop in which way, smoothed likewise, three a shop. */
  readonly shopUse: Float64Array;
  readonly prices: KitPrices;
}

/** Found by trial on invented kits. */
const pace = { step: 0.7, patience: 5, shrink: 0.8, memory: 0.75, fixEvery: 6 };
/** Pieces come by the dozen, links one by one: this brings their steps to one scale. */
const scale = 25;

/** Requests for a minor unit: about what the first bags of a kit bring. */
const startingMoney = 0.01;

/** Works on one model again and again without making much garbage. */
export class KitBound {
  /** Rounds of all bounds so far. */
  rounds = 0;
  readonly #asking: KitAsking;
  readonly #buying: KitBuying;
  readonly #presence: Float64Array;
  readonly #linkDirection: Float64Array;
  readonly #piecesDirection: Float64Array;
  readonly #mustsDirection: Float64Array;
  readonly #wanted: Float64Array;
  readonly #shopUse: Float64Array;
  readonly #startingMusts: Float64Array;
  readonly #kept: Float64Array;

  constructor(model: KitModel) {
    this.#asking = new KitAsking(model);
    this.#buying = new KitBuying(model);
    this.#presence = new Float64Array(model.have.length);
    this.#kept = new Float64Array(this.#asking.links.length);
    this.#linkDirection = new Float64Array(this.#asking.links.length);
    this.#piecesDirection = new Float64Array(model.have.length);
    this.#mustsDirection = new Float64Array(model.musts.length);
    this.#wanted = new Float64Array(model.offers.length);
    this.#shopUse = new Float64Array(this.#buying.shopUse.length);
    // A must is worth the money that its cheapest offer takes.
    this.#startingMusts = Float64Array.from(model.musts, (must) => {
      const prices = model.offers.flatMap((offer) =>
        offer.holds.flatMap((hold) => (hold.item === must.item ? [(offer.costs[1] ?? 0) / hold.pieces] : [])),
      );
      return prices.length === 0 ? 0 : startingMoney * Math.min(...prices);
    });
  }
  /** Prices to begin with. */
  startingPrices(): KitPrices {
    return {
      links: new Float64Array(this.#asking.links.length),
      pieces: new Float64Array(this.#piecesDirection.length),
      musts: this.#startingMusts.slice(),
      money: startingMoney,
    };
  }

  bound({ least, most, uses, prices, beat, rounds }: KitBoundQuestion): KitBoundAnswer {
    const [asking, buying] = [this.#asking, this.#buying];
    const links = prices.links.slice();
    const pieces = prices.pieces.slice();
    const musts = prices.musts.slice();
    const best = { links: links.slice(), pieces: pieces.slice(), musts: musts.slice(), money: prices.money };
    let money = prices.money;
    let lowest = Number.POSITIVE_INFINITY;
    let cut = Number.NEGATIVE_INFINITY;
    let step = pace.step;
    let stale = 0;
    this.#narrow(least, most, uses, links);
    for (const direction of [this.#linkDirection, this.#piecesDirection, this.#mustsDirection]) direction.fill(0);
    this.#wanted.fill(0);
    this.#shopUse.fill(0);
    for (let round = 0; round < rounds; round++) {
      this.rounds++;
      this.#gather(links);
      const base = this.#fixedWorth(pieces, musts);
      const asked = asking.ask(links, pieces);
      const bought = buying.buy(this.#presence, pieces, musts, money);
      const value = base + asked + bought.worth;
      if (value === Number.NEGATIVE_INFINITY) return { bound: value, cut, wanted: this.#wanted, shopUse: this.#shopUse, prices: best };
      money = bought.price;
      this.#smooth(round);
      if (value < lowest - 1e-9) {
        if (value < lowest - 1e-3 * Math.max(1e-9, lowest - beat)) stale = 0;
        lowest = value;
        best.links.set(links);
        best.pieces.set(pieces);
        best.musts.set(musts);
        best.money = money;
      } else if (++stale >= pace.patience) {
        stale = 0;
        step *= pace.shrink;
      }
      if (lowest - 1e-9 <= beat) break;
      if (round % pace.fixEvery === pace.fixEvery - 1) {
        const ruledOut = buying.fix(money, base + asked, beat);
        if (ruledOut !== undefined) {
          cut = Math.max(cut, ruledOut);
          this.#narrow(least, most, uses, links);
          this.#clean(best.links);
          continue;
        }
      }
      const norm = this.#turn(links, pieces, musts);
      if (norm < 1e-12) break; // nothing is asked for that is not bought: the bound is met
      this.#move((step * Math.max(value - beat, 1e-9)) / norm, links, pieces, musts);
    }
    return { bound: lowest, cut, wanted: this.#wanted, shopUse: this.#shopUse, prices: best };
  }

  #narrow(least: Int8Array, most: Int8Array, uses: Int8Array, links: Float64Array): void {
    this.#buying.narrow(least, most, uses);
    this.#asking.narrow(this.#buying.isSure, this.#buying.isReachable, this.#buying.mostPieces);
    this.#clean(links);
  }
  /** A link that does not matter has no price. */
  #clean(links: Float64Array): void {
    const kept = this.#kept.fill(0);
    for (let k = 0; k < this.#asking.linkCount; k++) {
      const link = this.#asking.links[k] as number;
      kept[link] = links[link] as number;
    }
    links.set(kept);
  }
  #gather(links: Float64Array): void {
    this.#presence.fill(0);
    for (let k = 0; k < this.#asking.linkCount; k++) {
      const link = this.#asking.links[k] as number;
      const item = this.#asking.itemOfLink[link] as number;
      this.#presence[item] = (this.#presence[item] as number) + (links[link] as number);
    }
  }
  /** What the pieces at hand and bought for sure are worth, less the musts that are to be had. */
  #fixedWorth(pieces: Float64Array, musts: Float64Array): number {
    let worth = 0;
    for (let item = 0; item < pieces.length; item++) worth += (pieces[item] as number) * (this.#buying.capBase[item] as number);
    for (let t = 0; t < musts.length; t++) worth -= (musts[t] as number) * (this.#buying.mustLeft[t] as number);
    return worth;
  }
  #smooth(round: number): void {
    const [bags, wanted] = [this.#buying.bags, this.#wanted];
    const weight = round === 0 ? 1 : Math.max(0.1, 1 / (round + 1));
    for (let o = 0; o < bags.length; o++) wanted[o] = (wanted[o] as number) + weight * ((bags[o] as number) - (wanted[o] as number));
    const [use, smooth] = [this.#buying.shopUse, this.#shopUse];
    for (let s = 0; s < use.length; s++) smooth[s] = (smooth[s] as number) + weight * ((use[s] as number) - (smooth[s] as number));
  }

  /** Turns the directions towards what is asked for beyond what is bought; their squared length. */
  #turn(links: Float64Array, pieces: Float64Array, musts: Float64Array): number {
    const [asking, buying] = [this.#asking, this.#buying];
    let norm = 0;
    for (let k = 0; k < asking.linkCount; k++) {
      const link = asking.links[k] as number;
      const item = asking.itemOfLink[link] as number;
      const g = (asking.linkDemand[link] as number) - (buying.there[item] as number);
      const turned = (g < 0 && links[link] === 0 ? 0 : g) + pace.memory * (this.#linkDirection[link] as number);
      this.#linkDirection[link] = turned;
      norm += turned * turned;
    }
    for (let item = 0; item < pieces.length; item++) {
      const g = ((asking.use[item] as number) - (buying.capBase[item] as number) - (buying.capMore[item] as number)) / scale;
      const turned = (g < 0 && pieces[item] === 0 ? 0 : g) + pace.memory * (this.#piecesDirection[item] as number);
      this.#piecesDirection[item] = turned;
      norm += turned * turned;
    }
    for (let t = 0; t < musts.length; t++) {
      const g = (buying.mustLeft[t] as number) - (buying.mustMore[t] as number);
      const turned = (g < 0 && musts[t] === 0 ? 0 : g) + pace.memory * (this.#mustsDirection[t] as number);
      this.#mustsDirection[t] = turned;
      norm += turned * turned;
    }
    return norm;
  }
  #move(length: number, links: Float64Array, pieces: Float64Array, musts: Float64Array): void {
    for (let k = 0; k < this.#asking.linkCount; k++) {
      const link = this.#asking.links[k] as number;
      links[link] = Math.max(0, (links[link] as number) + length * (this.#linkDirection[link] as number));
    }
    for (let item = 0; item < pieces.length; item++)
      pieces[item] = Math.max(0, (pieces[item] as number) + (length * (this.#piecesDirection[item] as number)) / scale);
    for (let t = 0; t < musts.length; t++) musts[t] = Math.max(0, (musts[t] as number) + length * (this.#mustsDirection[t] as number));
  }
}
