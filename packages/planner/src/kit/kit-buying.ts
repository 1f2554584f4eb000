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
  /** Pieces of each item that can be there. */
  readonly mostPieces: Float64Array;
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
  /** Offers of which any can be bought, shop by shop, those of anywhere first, and where each shop begins. */
  readonly #openOffers: Int32Array;
  readonly #openStart: Int32Array;
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
  /** Of each offer: the best count by itself; the count to fill up to next, and what is lost for each minor unit that this takes. */
  readonly #chosen: Int8Array;
  readonly #next: Int8Array;
  readonly #ratio: Float64Array;
  readonly #leastRatio: Float64Array;
  readonly #colourGain: Float64Array;
  readonly #supports: readonly [Support, Support, Support];

  constructor(model: KitModel) {
    this.#model = model;
    this.#width = Math.max(1, ...model.offers.map((offer) => offer.costs.length));
    const items = model.have.length;
    const offers = model.offers.length;
    this.#cap = capsOf(model);
    this.#openOffers = new Int32Array(offers);
    this.#openStart = new Int32Array(model.shops.length + 2);
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
    this.mostPieces = new Float64Array(items);
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
    this.#next = new Int8Array(offers);
    this.#chosen = new Int8Array(offers);
    this.#leastRatio = new Float64Array(model.shops.length);
    this.#colourGain = new Float64Array(1 + Math.max(-1, ...model.colourOf.map((colour) => colour ?? -1)));
    const support = (): Support => ({
      bags: new Int8Array(offers),
      filled: new Float64Array(offers),
      fillTo: new Int8Array(offers),
      uses: new Int8Array(model.shops.length),
    });
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
    this.mostPieces.set(have);
    this.isReachable.fill(0);
    for (let o = 0; o < least.length; o++)
      for (let h = this.#holdStart[o] as number; h < (this.#holdStart[o + 1] as number); h++) {
        const item = this.#holdItem[h] as number;
        pieces[item] = (pieces[item] as number) + (least[o] as number) * (this.#holdPieces[h] as number);
        this.mostPieces[item] = (this.mostPieces[item] as number) + (most[o] as number) * (this.#holdPieces[h] as number);
        if ((most[o] as number) > 0) this.isReachable[item] = 1;
      }
    for (let item = 0; item < have.length; item++) {
      this.isSure[item] = (pieces[item] as number) > 0 ? 1 : 0;
      if (this.isSure[item] === 1) this.isReachable[item] = 1;
      this.capBase[item] = this.#cap(item, pieces[item] as number);
    }
    this.#listOpen();
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

  #listOpen(): void {
    let open = 0;
    for (let s = -1; s < this.#model.shops.length; s++) {
      for (const [o, offer] of this.#model.offers.entries())
        if (offer.shop === s && (this.#most[o] as number) > 0) this.#openOffers[open++] = o;
      this.#openStart[s + 2] = open;
    }
    this.#chosen.fill(0);
    for (const { bags, filled } of this.#supports) {
      bags.fill(0);
      filled.fill(0);
    }
  }
  #offersAt(s: number): Int32Array {
    return this.#openOffers.subarray(this.#openStart[s + 1] as number, this.#openStart[s + 2] as number);
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
    for (let k = 0; k < (this.#openStart.at(-1) as number); k++) {
      const o = this.#openOffers[k] as number;
      const from = this.#least[o] as number;
      const to = this.#most[o] as number;
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
      // The best price is mostly near the last one.
      const pace = 1 + 0.1 * 2 ** step;
      if (dear === undefined) price = price === 0 ? 1e-6 : price * pace;
      else if (cheap === undefined) price = price < 1e-9 ? 0 : price / pace;
      else {
        // Where the tangents at both meet; no price promises less than there.
        const [down, up] = [budget - cheap.spent, budget - dear.spent];
        const meet = up - down <= 1e-12 ? cheap.price : (cheap.worth - dear.worth - down * cheap.price + up * dear.price) / (up - down);
        const promised = cheap.worth + down * (meet - cheap.price);
        if (least - promised <= 1e-3 * Math.abs(least) + 1e-9) break;
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
  #worthAt(price: number, isByColour: boolean, support: Support): number {
    this.#spent = 0;
    if (isByColour) return this.#worthByColour(price, support);
    let worth = price * this.#model.budget;
    for (let s = -1; s < this.#model.shops.length; s++) {
      let open = 0;
      let goods = 0;
      const from = this.#openStart[s + 1] as number;
      const to = this.#openStart[s + 2] as number;
      for (let k = from; k < to; k++) {
        const o = this.#openOffers[k] as number;
        this.#choose(o, price);
        open += this.#best[o] as number;
        goods += this.#costOf(o, this.#chosen[o] as number);
      }
      if (s < 0) {
        for (let k = from; k < to; k++) support.bags[this.#openOffers[k] as number] = this.#chosen[this.#openOffers[k] as number] as number;
        worth += open;
        this.#spent += goods;
        continue;
      }
      this.#open[s] = open;
      this.#goods[s] = goods;
      const own = this.#shopAt(s, price, support);
      this.#shopWorth[s] = own;
      worth += own;
    }
    return worth;
  }
  #choose(o: number, price: number): void {
    let best = Number.NEGATIVE_INFINITY;
    for (let count = this.#least[o] as number; count <= (this.#most[o] as number); count++) {
      const worth = this.#worthOf(o, count, price);
      if (worth <= best) continue;
      best = worth;
      this.#chosen[o] = count;
    }
    this.#best[o] = best;
  }
  #worthOf(o: number, count: number, price: number): number {
    return (this.#profit[o * this.#width + count] as number) - price * this.#costOf(o, count);
  }
  #costOf(o: number, count: number): number {
    return this.#costs[o * this.#width + count] as number;
  }

  /** A shop closed, open with shipping, or free of it, whichever is best of what is still open. */
  #shopAt(s: number, price: number, support: Support): number {
    const shop = this.#model.shops[s];
    if (shop === undefined) throw new Error(`no shop ${s}`);
    const open = this.#uses[s] as number;
    const all = this.#open[s] as number;
    const goods = this.#goods[s] as number;
    let best = (open & isClosed) > 0 ? 0 : Number.NEGATIVE_INFINITY;
    let spent = 0;
    let use: number = isClosed;
    let enough = 0;
    for (const own of [paysShipping, shipsFree]) {
      if ((open & own) === 0) continue;
      const pays = own === paysShipping ? shop.shipping : 0;
      const ownEnough = enoughFor(shop, own);
      const most = all - price * pays;
      if (most <= best) continue;
      const worth = ownEnough > goods ? most - this.#lossOfFilling(s, price, ownEnough - goods, support) : most;
      if (worth <= best) continue;
      best = worth;
      spent = Math.max(goods, ownEnough) + pays;
      use = own;
      enough = ownEnough;
    }
    if (use === isClosed) this.#closeShop(s, support);
    else this.#lossOfFilling(s, price, enough - goods, support);
    support.uses[s] = use;
    this.#spent += spent;
    return best;
  }
  #closeShop(s: number, { bags, filled }: Support): void {
    for (let k = this.#openStart[s + 1] as number; k < (this.#openStart[s + 2] as number); k++) {
      const o = this.#openOffers[k] as number;
      bags[o] = 0;
      filled[o] = 0;
    }
  }
  /**
   * The least that is lost by spending so much more at a shop than is best: more bags of the offers, those first that lose least for their
   * money, the last ones in part. Notes them in `support`.
   */
  #lossOfFilling(s: number, price: number, more: number, { bags, filled, fillTo }: Support): number {
    const own = this.#offersAt(s);
    for (const o of own) {
      bags[o] = this.#chosen[o] as number;
      filled[o] = 0;
    }
    if (more <= 0) return 0;
    for (const o of own) this.#setRatio(o, bags[o] as number, price);
    let loss = 0;
    for (let left = more; left > 1e-9; ) {
      let next = -1;
      for (const o of own) if (next < 0 || (this.#ratio[o] as number) < (this.#ratio[next] as number)) next = o;
      if (next < 0 || this.#ratio[next] === Number.POSITIVE_INFINITY) return Number.POSITIVE_INFINITY;
      const to = this.#next[next] as number;
      const room = this.#costOf(next, to) - this.#costOf(next, bags[next] as number);
      loss += Math.min(left, room) * (this.#ratio[next] as number);
      if (left < room) {
        filled[next] = left / room;
        fillTo[next] = to;
      } else {
        bags[next] = to;
        this.#setRatio(next, to, price);
      }
      left -= room;
    }
    return loss;
  }

  /** What is lost at least for each minor unit more that goes into offer `o` beyond so many bags, and the count that loses so little. */
  #setRatio(o: number, at: number, price: number): void {
    const cost = this.#costOf(o, at);
    const worth = this.#worthOf(o, at, price);
    this.#ratio[o] = Number.POSITIVE_INFINITY;
    for (let count = this.#least[o] as number; count <= (this.#most[o] as number); count++) {
      const more = this.#costOf(o, count) - cost;
      if (more <= 0) continue;
      const ratio = (worth - this.#worthOf(o, count, price)) / more;
      if (ratio >= (this.#ratio[o] as number)) continue;
      this.#ratio[o] = ratio;
      this.#next[o] = count;
    }
  }
  #setLeastRatios(price: number): void {
    for (let s = 0; s < this.#leastRatio.length; s++) {
      let least = Number.POSITIVE_INFINITY;
      for (const o of this.#offersAt(s)) {
        this.#setRatio(o, this.#chosen[o] as number, price);
        least = Math.min(least, this.#ratio[o] as number);
      }
      this.#leastRatio[s] = Math.min(least, 1e12);
    }
  }

  /** With a limit on colours: the colours worth most, shipping and least orders not looked at. Bags of several colours count as of none. */
  #worthByColour(price: number, { bags, filled, uses }: Support): number {
    filled.fill(0);
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
      this.#choose(o, price);
      bags[o] = this.#chosen[o] as number;
      const colour = colourOf(o);
      if (colour < 0) worth += this.#best[o] as number;
      else this.#colourGain[colour] = (this.#colourGain[colour] as number) + (this.#best[o] as number);
    }
    const ranked = [...this.#colourGain.keys()].sort((a, b) => (this.#colourGain[b] as number) - (this.#colourGain[a] as number) || a - b);
    const inside = new Set(ranked.slice(0, Math.max(0, mostColours - fixed.size)));
    for (const colour of inside) worth += this.#colourGain[colour] as number;
    for (let o = 0; o < offers.length; o++) {
      const colour = colourOf(o);
      if (colour >= 0 && !inside.has(colour)) bags[o] = 0;
      this.#spent += this.#costOf(o, bags[o] as number);
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
      for (let k = 0; k < (this.#openStart.at(-1) as number); k++) {
        const o = this.#openOffers[k] as number;
        const filled = own.filled[o] as number;
        this.#add(o, own.bags[o] as number, weight * (1 - filled));
        if (filled > 0) this.#add(o, own.fillTo[o] as number, weight * filled);
      }
    }
  }
  #add(o: number, count: number, weight: number): void {
    const more = count - (this.#least[o] as number);
    if (more <= 0) return;
    this.bags[o] = (this.bags[o] as number) + weight * more;
    const must = this.#mustOf[o] as number;
    if (must >= 0) this.mustMore[must] = (this.mustMore[must] as number) + weight * (this.#mustGain[o * this.#width + count] as number);
    for (let h = this.#holdStart[o] as number; h < (this.#holdStart[o + 1] as number); h++) {
      const item = this.#holdItem[h] as number;
      this.there[item] = (this.there[item] as number) + weight;
      this.capMore[item] = (this.capMore[item] as number) + weight * (this.#capGain[h * this.#width + count] as number);
    }
  }

  /**
   * Narrows `least` and `most` where another count cannot be part of anything that is worth more than `beat`, at a price of money, the guests'
   * side being worth `others`; the largest worth that was ruled out, undefined if nothing was. The limit on colours is not looked at.
   */
  fix(price: number, others: number, beat: number): number | undefined {
    const [support] = this.#supports;
    const all = others + this.#worthAt(price, false, support);
    if (all === Number.NEGATIVE_INFINITY) return undefined;
    const slack = all - beat;
    let nearest: number | undefined;
    this.#setLeastRatios(price);
    const rule = (loss: number): void => {
      nearest = Math.min(nearest ?? Number.POSITIVE_INFINITY, loss);
    };
    for (let o = 0; o < this.#least.length; o++) {
      const from = this.#least[o] as number;
      const to = this.#most[o] as number;
      if (from === to) continue;
      const more = this.#lossOf(o, price, from + 1, to);
      if (more >= slack) {
        this.#most[o] = from;
        rule(more);
        continue;
      }
      const none = this.#lossOf(o, price, from, from);
      if (none >= slack) {
        this.#least[o] = from + 1;
        rule(none);
      }
    }
    return nearest === undefined ? undefined : all - nearest;
  }
  /** At least so much is lost when offer `o` has to be bought between `from` and `to` times. */
  #lossOf(o: number, price: number, from: number, to: number): number {
    let best = Number.NEGATIVE_INFINITY;
    let dearest = 0;
    for (let count = from; count <= to; count++) {
      best = Math.max(best, this.#worthOf(o, count, price));
      dearest = Math.max(dearest, this.#costOf(o, count));
    }
    const loss = (this.#best[o] as number) - best;
    const s = (this.#model.offers[o]?.shop ?? -1) as number;
    const shop = this.#model.shops[s];
    if (shop === undefined) return loss;
    const uses = this.#uses[s] as number;
    const goods = (this.#goods[s] as number) - this.#costOf(o, this.#chosen[o] as number) + dearest;
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
  /** The share of each offer that has `fillTo` bags instead, to fill up an order. */
  readonly filled: Float64Array;
  readonly fillTo: Int8Array;
  readonly uses: Int8Array;
}
const copyOf = ({ bags, filled, fillTo, uses }: Support): Support => ({
  bags: bags.slice(),
  filled: filled.slice(),
  fillTo: fillTo.slice(),
  uses: uses.slice(),
});

/**
 * What so many pieces of an item can serve at most: expected use under a Poisson demand with the mean of all that could ever ask for it.
 * Demand that is served has a smaller mean, and use grows with the mean.
 */
function capsOf(model: KitModel): (item: number, pieces: number) => number {
  const mean = new Float64Array(model.have.length);
  for (const figure of model.figures)
    for (const part of figure.parts) {
      const most = new Map<number, number>();
      const choices = new Map<number, number>();
      for (const { needs } of part.choices)
        for (const { item, pieces } of needs) {
          most.set(item, Math.max(pieces, most.get(item) ?? 0));
          choices.set(item, (choices.get(item) ?? 0) + 1);
        }
      // Who finds a choice gone can turn to another that needs the same item, and so ask for it twice.
      for (const [item, pieces] of most)
        mean[item] = (mean[item] as number) + figure.requests * pieces * Math.min(2, choices.get(item) ?? 1);
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
