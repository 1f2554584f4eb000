import type { KitModel } from './kit-model.ts';

/** A purchase under construction: what it costs and holds, kept up to date bag by bag. */
export class PurchaseState {
  readonly model: KitModel;
  readonly bags: Int8Array;
  readonly pieces: Float64Array;
  /** Goods and shipping together. */
  spent = 0;
  /** Colours bought that are not there already. */
  colours = 0;
  /** Shops that would refuse what is ordered there. */
  refusals = 0;
  readonly #goods: Float64Array;
  readonly #colourCount: Int32Array;

  constructor(model: KitModel) {
    this.model = model;
    this.bags = new Int8Array(model.offers.length);
    this.pieces = model.have.slice();
    this.#goods = new Float64Array(model.shops.length);
    const colours = 1 + Math.max(-1, ...model.colourOf.map((colour) => colour ?? -1));
    this.#colourCount = new Int32Array(colours);
    for (const colour of model.ownColours) this.#colourCount[colour] = 1;
  }

  goodsAt(shop: number): number {
    return this.#goods[shop] as number;
  }
  isRefusedBy(shop: number): boolean {
    const goods = this.#goods[shop] as number;
    return goods > 0 && goods < (this.model.shops[shop]?.leastOrder ?? 0);
  }
  /** Buys so many bags of offer `o`. */
  put(o: number, count: number): void {
    const offer = this.model.offers[o];
    const before = this.bags[o] as number;
    if (offer === undefined || count === before) return;
    this.bags[o] = count;
    for (const hold of offer.holds) this.pieces[hold.item] = (this.pieces[hold.item] as number) + (count - before) * hold.pieces;
    const cost = (offer.costs[count] as number) - (offer.costs[before] as number);
    this.spent += cost;
    if (offer.shop >= 0) this.#pay(offer.shop, cost);
    if (before > 0 === count > 0) return;
    const by = count > 0 ? 1 : -1;
    for (const colour of offer.colours) {
      const now = (this.#colourCount[colour] as number) + by;
      this.#colourCount[colour] = now;
      if (now === (by === 1 ? 1 : 0)) this.colours += by;
    }
  }
  #pay(s: number, cost: number): void {
    const shop = this.model.shops[s];
    if (shop === undefined) return;
    const before = this.#goods[s] as number;
    const after = before + cost;
    this.#goods[s] = after;
    const shipping = (goods: number): number => (goods <= 0 || goods >= shop.freeFrom ? 0 : shop.shipping);
    const refused = (goods: number): number => (goods > 0 && goods < shop.leastOrder ? 1 : 0);
    this.spent += shipping(after) - shipping(before);
    this.refusals += refused(after) - refused(before);
  }

  /** Pieces of the musts that are missing. */
  get missing(): number {
    let missing = 0;
    for (const { item, missing: needed } of this.model.musts) {
      const short = (this.model.have[item] as number) + needed - (this.pieces[item] as number);
      if (short > 1e-9) missing += short;
    }
    return missing;
  }
  /** True if the purchase has all that is a must, keeps to the money and the colours, and no shop refuses it. */
  isAllowed(): boolean {
    if (this.spent > this.model.budget || this.colours > this.model.mostColours || this.refusals > 0) return false;
    for (let o = 0; o < this.bags.length; o++) if ((this.bags[o] as number) < (this.model.offers[o]?.least ?? 0)) return false;
    return this.missing === 0;
  }
  /** Makes the purchase equal to `bags`. */
  set(bags: ArrayLike<number>): void {
    for (let o = 0; o < this.bags.length; o++) this.put(o, bags[o] as number);
  }
}
