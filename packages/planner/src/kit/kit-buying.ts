import type { KitModel } from './kit-model.ts';
import { expectedUse } from './poisson.ts';

/** How a shop is used: nothing bought there, shipping paid, or enough bought for none. A sum of these is what is still open. */
export const isClosed = 1;
export const paysShipping = 2;
export const shipsFree = 4;
export const shopUses = [isClosed, paysShipping, shipsFree] as const;

/** The uses that a shop can have at all. */
export const usesOf = ({ shipping, freeFrom }: KitModel['shops'][number]): number =>
  shipping === 0 ? isClosed + shipsFree : isClosed + paysShipping + (freeFrom < Number.POSITIVE_INFINITY ? shipsFree : 0);
/** Goods that a shop has to get for this use. */
export const enoughFor = ({ shipping, freeFrom, leastOrder }: KitModel['shops'][number], use: number): number =>
  use === shipsFree && shipping > 0 ? Math.max(freeFrom, leastOrder) : leastOrder;

/**
 * The shops' side of the bound in `kit-bound.ts`: a knapsack over the bags, with a price of money. At such a price each shop is settled by
 * itself and exactly but for its least order and its free shipping, which the bags that lose least for their money fill up, the last one
 * in part. The price of money is the best one.
 */
export class KitBuying {
  /** Items that are there whatever is bought, and items that can be there. */
  readonly isSure: Int8Array;
  readonly isReachable: Int8Array;
  /** What the pieces that are there for sure can serve, by item. */
  readonly capBase: Float64Array;
  /** Pieces of the musts that are not bought yet. */
  readonly mustLeft: Float64Array;
  /** What the relaxation buys, as a mixture: bags beyond the fewest by offer, whether an item is there, what more of it can be served, musts. */
  readonly bags: Float64Array;
  readonly there: Float64Array;
  readonly capMore: Float64Array;
  readonly mustMore: Float64Array;
  /** How much of the mixture uses a shop so, three a shop. */
  readonly shopUse: Float64Array;
  readonly #model: KitModel;
  /** Offers are laid out with room for so many counts. */
  readonly #width: number;
  readonly #cap: (item: number, pieces: number) => number;
  readonly #shopOffers: readonly Int32Array[];
  readonly #holdStart: Int32Array;
  readonly #holdItem: Int32Array;
  readonly #holdPieces: Float64Array;
  readonly #costs: Float64Array;
  readonly #mustOf: Int32Array;
  readonly #capGain: Float64Array;
  readonly #mustGain: Float64Array;
  readonly #profit: Float64Array;
  #least: Int8Array = new Int8Array();
  #most: Int8Array = new Int8Array();
  #uses: Int8Array = new Int8Array();
  /** At the price of money asked last: the worth of the best count of each offer, and of each shop open and in all. */
  readonly #best: Float64Array;
  readonly #open: Float64Array;
  readonly #goods: Float64Array;
  readonly #shopWorth: Float64Array;
  readonly #ratio: Float64Array;
  readonly #room: Float64Array;
  readonly #leastRatio: Float64Array;
  readonly #colourGain: Float64Array;
  readonly #supports: readonly [Support, Support, Support];

  constructor(model: KitModel) {
    this.#model = model;
    this.#width = Math.max(1, ...model.offers.map((offer) => offer.costs.length));
    const items = model.have.length;
    const offers = model.offers.length;
    this.#cap = capsOf(model);
    this.#shopOffers = Array.from({ length: model.shops.length + 1 }, (_, s) =>
      Int32Array.from(model.offers.flatMap((offer, o) => (offer.shop + 1 === s ? [o] : []))),
    );
    this.#holdStart = new Int32Array(offers + 1);
    for (const [o, offer] of model.offers.entries()) this.#holdStart[o + 1] = (this.#holdStart[o] as number) + offer.holds.length;
    const holds = model.offers.flatMap((offer) => offer.holds);
    this.#holdItem = Int32Array.from(holds, (hold) => hold.item);
    this.#holdPieces = Float64Array.from(holds, (hold) => hold.pieces);
    this.#costs = new Float64Array(offers * this.#width);
    for (const [o, offer] of model.offers.entries()) this.#costs.set(offer.costs, o * this.#width);
    this.#mustOf = Int32Array.from(model.offers, ({ holds: own }) =>
      model.musts.findIndex((must) => own.some((hold) => hold.item === must.item)),
    );
    this.isSure = new Int8Array(items);
    this.isReachable = new Int8Array(items);
    this.capBase = new Float64Array(items);
    this.mustLeft = new Float64Array(model.musts.length);
    this.#capGain = new Float64Array(holds.length * this.#width);
    this.#mustGain = new Float64Array(offers * this.#width);
    this.#profit = new Float64Array(offers * this.#width);
    this.bags = new Float64Array(offers);
    this.there = new Float64Array(items);
    this.capMore = new Float64Array(items);
    this.mustMore = new Float64Array(model.musts.length);
    this.shopUse = new Float64Array(model.shops.length * shopUses.length);
    this.#best = new Float64Array(offers);
    this.#open = new Float64Array(model.shops.length);
    this.#goods = new Float64Array(model.shops.length);
    this.#shopWorth = new Float64Array(model.shops.length);
    this.#ratio = new Float64Array(offers);
    this.#room = new Float64Array(offers);
    this.#leastRatio = new Float64Array(model.shops.length);
    this.#colourGain = new Float64Array(1 + Math.max(-1, ...model.colourOf.map((colour) => colour ?? -1)));
    const support = (): Support => ({ bags: new Int8Array(offers), uses: new Int8Array(model.shops.length) });
    this.#supports = [support(), support(), support()];
  }

  /** Keeps to at least and at most so many bags of each offer, and to these uses of the shops. */
  narrow(least: Int8Array, most: Int8Array, uses: Int8Array): void {
    this.#least = least;
    this.#most = most;
    this.#uses = uses;
    const { have, musts } = this.#model;
    const pieces = this.capMore;
    pieces.set(have);
    this.isReachable.fill(0);
    for (let o = 0; o < least.length; o++)
      for (let h = this.#holdStart[o] as number; h < (this.#holdStart[o + 1] as number); h++) {
        const item = this.#holdItem[h] as number;
        pieces[item] = (pieces[item] as number) + (least[o] as number) * (this.#holdPieces[h] as number);
        if ((most[o] as number) > 0) this.isReachable[item] = 1;
      }
    for (let item = 0; item < have.length; item++) {
      this.isSure[item] = (pieces[item] as number) > 0 ? 1 : 0;
      if (this.isSure[item] === 1) this.isReachable[item] = 1;
      this.capBase[item] = this.#cap(item, pieces[item] as number);
    }
    for (const [t, must] of musts.entries())
      this.mustLeft[t] = Math.max(0, must.missing + (have[must.item] as number) - (pieces[must.item] as number));
    for (let o = 0; o < least.length; o++) {
      const must = this.#mustOf[o] as number;
      for (let count = least[o] as number; count <= (most[o] as number); count++) {
        const more = count - (least[o] as number);
        for (let h = this.#holdStart[o] as number; h < (this.#holdStart[o + 1] as number); h++) {
          const item = this.#holdItem[h] as number;
          const all = (pieces[item] as number) + more * (this.#holdPieces[h] as number);
          this.#capGain[h * this.#width + count] = more === 0 ? 0 : this.#cap(item, all) - (this.capBase[item] as number);
          if (must >= 0 && this.#model.musts[must]?.item === item)
            this.#mustGain[o * this.#width + count] = Math.min(more * (this.#holdPieces[h] as number), this.mustLeft[must] as number);
        }
      }
    }
  }

  /**
   * What buying is worth at most when an item that is there, a piece and a must bring these prices, all but the money counted in; `price` is
   * where to begin with the price of money. Leaves the mixture in `bags`, `there`, `capMore` and `mustMore`.
   */
  buy(
    presence: Float64Array,
    pieces: Float64Array,
    musts: Float64Array,
    price: number,
  ): { readonly worth: number; readonly price: number } {
    this.#setProfits(presence, pieces, musts);
    let found = this.#bestPrice(false, price);
    if (this.#model.mostColours !== Number.POSITIVE_INFINITY) {
      const plain = { ...found, bags: [copyOf(found.bags[0]), copyOf(found.bags[1])] as const };
      const few = this.#bestPrice(true, price);
      found = few.worth < plain.worth ? few : plain;
    }
    this.#mix(found.bags, found.share);
    return found;
  }

  #setProfits(presence: Float64Array, pieces: Float64Array, musts: Float64Array): void {
    for (let o = 0; o < this.#least.length; o++) {
      const [from, to] = [this.#least[o] as number, this.#most[o] as number];
      const must = this.#mustOf[o] as number;
      for (let count = from; count <= to; count++) {
        let profit = must < 0 || count === from ? 0 : (musts[must] as number) * (this.#mustGain[o * this.#width + count] as number);
        if (count > from)
          for (let h = this.#holdStart[o] as number; h < (this.#holdStart[o + 1] as number); h++) {
            const item = this.#holdItem[h] as number;
            profit += (pieces[item] as number) * (this.#capGain[h * this.#width + count] as number);
            if (this.isSure[item] === 0) profit += presence[item] as number;
          }
        this.#profit[o * this.#width + count] = profit;
      }
    }
  }

  /** The price of money at which least is promised, by cutting with tangents; the two purchases at it, and the share of the first. */
  #bestPrice(
    isByColour: boolean,
    from: number,
  ): { readonly worth: number; readonly price: number; readonly bags: readonly [Support, Support]; readonly share: number } {
    const { budget } = this.#model;
    let [within, beyond, spare] = this.#supports;
    const ask = (price: number): number => this.#worthAt(price, isByColour, spare);
    let dear: { price: number; worth: number; spent: number } | undefined;
    let cheap: { price: number; worth: number; spent: number } | undefined;
    let least = Number.POSITIVE_INFINITY;
    let leastAt = from;
    let price = from;
    for (let step = 0; step < mostSteps; step++) {
      const worth = ask(price);
      if (worth === Number.NEGATIVE_INFINITY) return { worth, price, bags: [within, beyond], share: 1 };
      if (worth < least) {
        least = worth;
        leastAt = price;
      }
      const point = { price, worth, spent: this.#spent };
      if (point.spent <= budget) {
        dear = point;
        [within, spare] = [spare, within];
        if (price === 0) break;
      } else {
        cheap = point;
        [beyond, spare] = [spare, beyond];
      }
      if (dear === undefined) price = price === 0 ? 1e-6 : price * 2;
      else if (cheap === undefined) price = price < 1e-9 ? 0 : price / 2;
      else {
        // Where the tangents at both meet; no price promises less than there.
        const [down, up] = [budget - cheap.spent, budget - dear.spent];
        const meet = up - down <= 1e-12 ? cheap.price : (cheap.worth - dear.worth - down * cheap.price + up * dear.price) / (up - down);
        const promised = cheap.worth + down * (meet - cheap.price);
        if (least - promised <= 3e-5 * Math.abs(least) + 1e-9) break;
        const apart = dear.price - cheap.price;
        price = Math.min(Math.max(meet, cheap.price + 0.02 * apart), dear.price - 0.02 * apart);
      }
    }
    if (dear === undefined) return { worth: least, price: leastAt, bags: [beyond, beyond], share: 1 };
    if (cheap === undefined) return { worth: least, price: leastAt, bags: [within, within], share: 1 };
    const share = (cheap.spent - budget) / Math.max(1e-12, cheap.spent - dear.spent);
    return { worth: least, price: leastAt, bags: [within, beyond], share };
  }

  #spent = 0;
  /** What buying is worth at a price of money; notes what it buys and spends. */
  #worthAt(price: number, isByColour: boolean, { bags: into, uses }: Support): number {
    this.#spent = 0;
    if (isByColour) return this.#worthByColour(price, into, uses);
    let worth = price * this.#model.budget;
    for (let s = 0; s < this.#shopOffers.length; s++) {
      let [open, goods] = [0, 0];
      for (const o of this.#shopOffers[s] as Int32Array) {
        this.#choose(o, price, into);
        open += this.#best[o] as number;
        goods += this.#costs[o * this.#width + (into[o] as number)] as number;
      }
      if (s === 0) {
        worth += open;
        this.#spent += goods;
        continue;
      }
      this.#open[s - 1] = open;
      this.#goods[s - 1] = goods;
      const own = this.#shopAt(s - 1, price, into, uses);
      this.#shopWorth[s - 1] = own;
      worth += own;
    }
    return worth;
  }
  #choose(o: number, price: number, into: Int8Array): void {
    let best = Number.NEGATIVE_INFINITY;
    for (let count = this.#least[o] as number; count <= (this.#most[o] as number); count++) {
      const worth = (this.#profit[o * this.#width + count] as number) - price * (this.#costs[o * this.#width + count] as number);
      if (worth <= best) continue;
      best = worth;
      into[o] = count;
    }
    this.#best[o] = best;
  }

  /** A shop closed, open with shipping, or free of it, whichever is best of what is still open. */
  #shopAt(s: number, price: number, into: Int8Array, uses: Int8Array): number {
    const shop = this.#model.shops[s];
    if (shop === undefined) throw new Error(`no shop ${s}`);
    const open = this.#uses[s] as number;
    const [all, goods] = [this.#open[s] as number, this.#goods[s] as number];
    let [best, spent, use] = [Number.NEGATIVE_INFINITY, 0, isClosed as number];
    if ((open & isClosed) > 0) best = 0;
    for (const own of [paysShipping, shipsFree]) {
      if ((open & own) === 0) continue;
      const pays = own === paysShipping ? shop.shipping : 0;
      const enough = enoughFor(shop, own);
      const most = all - price * pays;
      if (most <= best) continue;
      const worth = most - this.#lossOfFilling(s, price, into, enough - goods);
      if (worth > best) [best, spent, use] = [worth, Math.max(goods, enough) + pays, own];
    }
    if (use === isClosed) for (const o of this.#shopOffers[s + 1] as Int32Array) into[o] = 0;
    uses[s] = use;
    this.#spent += spent;
    return best;
  }
  /** The least that is lost by spending so much more at a shop than is best. */
  #lossOfFilling(s: number, price: number, into: Int8Array, more: number): number {
    if (more <= 0) return 0;
    const own = this.#shopOffers[s + 1] as Int32Array;
    for (const o of own) this.#setRatio(o, price, into);
    let loss = 0;
    for (let left = more; left > 1e-9; ) {
      let next = -1;
      for (const o of own)
        if ((this.#room[o] as number) > 0 && (next < 0 || (this.#ratio[o] as number) < (this.#ratio[next] as number))) next = o;
      if (next < 0) return Number.POSITIVE_INFINITY;
      const added = Math.min(left, this.#room[next] as number);
      loss += added * (this.#ratio[next] as number);
      left -= added;
      this.#room[next] = 0;
    }
    return loss;
  }

  /** What is lost at least for each minor unit more that goes into offer `o`, and how much more can. */
  #setRatio(o: number, price: number, into: Int8Array): void {
    const at = this.#costs[o * this.#width + (into[o] as number)] as number;
    let [ratio, room] = [Number.POSITIVE_INFINITY, 0];
    for (let count = this.#least[o] as number; count <= (this.#most[o] as number); count++) {
      const cost = (this.#costs[o * this.#width + count] as number) - at;
      if (cost <= 0) continue;
      const worth = (this.#profit[o * this.#width + count] as number) - price * (this.#costs[o * this.#width + count] as number);
      ratio = Math.min(ratio, ((this.#best[o] as number) - worth) / cost);
      room = Math.max(room, cost);
    }
    this.#ratio[o] = ratio;
    this.#room[o] = room;
  }
  #setLeastRatios(price: number, into: Int8Array): void {
    for (let s = 0; s < this.#leastRatio.length; s++) {
      let least = Number.POSITIVE_INFINITY;
      for (const o of this.#shopOffers[s + 1] as Int32Array) {
        this.#setRatio(o, price, into);
        least = Math.min(least, this.#ratio[o] as number);
      }
      this.#leastRatio[s] = Math.min(least, 1e12);
    }
  }

  /** With a limit on colours: the colours worth most, shipping and least orders not looked at. Bags of several colours count as of none. */
  #worthByColour(price: number, into: Int8Array, uses: Int8Array): number {
    for (let s = 0; s < uses.length; s++) uses[s] = (this.#uses[s] as number) & -(this.#uses[s] as number);
    const { offers, ownColours, mostColours, budget } = this.#model;
    let worth = price * budget;
    this.#colourGain.fill(0);
    const fixed = new Set<number>();
    for (let o = 0; o < offers.length; o++)
      if ((this.#least[o] as number) > 0) for (const colour of offers[o]?.colours ?? []) if (!ownColours.has(colour)) fixed.add(colour);
    const colourOf = (o: number): number => {
      const colours = offers[o]?.colours ?? [];
      const only = colours[0];
      return only === undefined || colours.length > 1 || ownColours.has(only) || fixed.has(only) ? -1 : only;
    };
    for (let o = 0; o < offers.length; o++) {
      this.#choose(o, price, into);
      const colour = colourOf(o);
      if (colour < 0) worth += this.#best[o] as number;
      else this.#colourGain[colour] = (this.#colourGain[colour] as number) + (this.#best[o] as number);
    }
    const ranked = [...this.#colourGain.keys()].sort((a, b) => (this.#colourGain[b] as number) - (this.#colourGain[a] as number) || a - b);
    const inside = new Set(ranked.slice(0, Math.max(0, mostColours - fixed.size)));
    for (const colour of inside) worth += this.#colourGain[colour] as number;
    for (let o = 0; o < offers.length; o++) {
      const colour = colourOf(o);
      if (colour >= 0 && !inside.has(colour)) into[o] = 0;
      this.#spent += this.#costs[o * this.#width + (into[o] as number)] as number;
    }
    return worth;
  }

  #mix(bags: readonly [Support, Support], share: number): void {
    this.shopUse.fill(0);
    this.bags.fill(0);
    this.there.fill(0);
    this.capMore.fill(0);
    this.mustMore.fill(0);
    for (const [own, weight] of [
      [bags[0], share],
      [bags[1], 1 - share],
    ] as const) {
      if (weight <= 0) continue;
      for (let s = 0; s < own.uses.length; s++) {
        const at = s * shopUses.length + shopUses.indexOf(own.uses[s] as 1 | 2 | 4);
        this.shopUse[at] = (this.shopUse[at] as number) + weight;
      }
      for (let o = 0; o < own.bags.length; o++) {
        const count = own.bags[o] as number;
        const more = count - (this.#least[o] as number);
        if (more <= 0) continue;
        this.bags[o] = (this.bags[o] as number) + weight * more;
        const must = this.#mustOf[o] as number;
        if (must >= 0) this.mustMore[must] = (this.mustMore[must] as number) + weight * (this.#mustGain[o * this.#width + count] as number);
        for (let h = this.#holdStart[o] as number; h < (this.#holdStart[o + 1] as number); h++) {
          const item = this.#holdItem[h] as number;
          this.there[item] = (this.there[item] as number) + weight;
          this.capMore[item] = (this.capMore[item] as number) + weight * (this.#capGain[h * this.#width + count] as number);
        }
      }
    }
  }

  /**
   * Narrows `least` and `most` where another count cannot be part of anything that is worth more than `beat`, at a price of money, the guests'
   * side being worth `others`; the largest worth that was ruled out, undefined if nothing was. The limit on colours is not looked at.
   */
  fix(price: number, others: number, beat: number): number | undefined {
    const [support] = this.#supports;
    const into = support.bags;
    const all = others + this.#worthAt(price, false, support);
    if (all === Number.NEGATIVE_INFINITY) return undefined;
    const slack = all - beat;
    let nearest: number | undefined;
    this.#setLeastRatios(price, into);
    const rule = (loss: number): void => {
      nearest = Math.min(nearest ?? Number.POSITIVE_INFINITY, loss);
    };
    for (let o = 0; o < this.#least.length; o++) {
      const from = this.#least[o] as number;
      const to = this.#most[o] as number;
      if (from === to) continue;
      const more = this.#lossOf(o, price, into, from + 1, to);
      if (more >= slack) {
        this.#most[o] = from;
        rule(more);
        continue;
      }
      const none = this.#lossOf(o, price, into, from, from);
      if (none >= slack) {
        this.#least[o] = from + 1;
        rule(none);
      }
    }
    return nearest === undefined ? undefined : all - nearest;
  }
  /** At least so much is lost when offer `o` has to be bought between `from` and `to` times. */
  #lossOf(o: number, price: number, into: Int8Array, from: number, to: number): number {
    let best = Number.NEGATIVE_INFINITY;
    let dearest = 0;
    for (let count = from; count <= to; count++) {
      const cost = this.#costs[o * this.#width + count] as number;
      best = Math.max(best, (this.#profit[o * this.#width + count] as number) - price * cost);
      dearest = Math.max(dearest, cost);
    }
    const loss = (this.#best[o] as number) - best;
    const s = (this.#model.offers[o]?.shop ?? -1) as number;
    const shop = this.#model.shops[s];
    if (shop === undefined) return loss;
    const uses = this.#uses[s] as number;
    const goods = (this.#goods[s] as number) - (this.#costs[o * this.#width + (into[o] as number)] as number) + dearest;
    let open = (uses & isClosed) > 0 && from === 0 ? 0 : Number.NEGATIVE_INFINITY;
    for (const use of [paysShipping, shipsFree]) {
      if ((uses & use) === 0) continue;
      const pays = use === paysShipping ? price * shop.shipping : 0;
      // Filling up costs at least what the bag that loses least for its money loses.
      const filling = Math.max(0, enoughFor(shop, use) - goods) * (this.#leastRatio[s] as number);
      open = Math.max(open, (this.#open[s] as number) - loss - pays - filling);
    }
    return (this.#shopWorth[s] as number) - open;
  }
}

const mostSteps = 24;

/** One purchase of the mixture. */
interface Support {
  readonly bags: Int8Array;
  readonly uses: Int8Array;
}
const copyOf = ({ bags, uses }: Support): Support => ({ bags: bags.slice(), uses: uses.slice() });

/**
 * What so many pieces of an item can serve at most: expected use under a Poisson demand with the mean of all that could ever ask for it.
 * Demand that is served has a smaller mean, and use grows with the mean.
 */
function capsOf(model: KitModel): (item: number, pieces: number) => number {
  const mean = new Float64Array(model.have.length);
  for (const figure of model.figures)
    for (const part of figure.parts) {
      const most = new Map<number, number>();
      for (const { needs } of part.choices) for (const { item, pieces } of needs) most.set(item, Math.max(pieces, most.get(item) ?? 0));
      for (const [item, pieces] of most) mean[item] = (mean[item] as number) + figure.requests * pieces;
    }
  const known = Array.from({ length: model.have.length }, () => new Map<number, number>());
  return (item, pieces) => {
    const own = known[item] as Map<number, number>;
    const before = own.get(pieces);
    if (before !== undefined) return before;
    const cap = expectedUse(mean[item] as number, pieces);
    own.set(pieces, cap);
    return cap;
  };
}
