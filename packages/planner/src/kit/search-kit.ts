/**
 * The best purchase of a kit: best-first branch and bound on the bound of `kit-bound.ts`, from a start by annealing. Leaves are valued by the
 * true worth, so that an answer found to the end is proven.
 */
import { cheapestMusts } from './cheapest-musts.ts';
import { KitClimb } from './climb-kit.ts';
import { KitBound, type KitPrices } from './kit-bound.ts';
import { enoughFor, isClosed, paysShipping, shipsFree, shopUses, usesOf } from './kit-buying.ts';
import type { KitModel } from './kit-model.ts';
import type { Bags } from './purchase.ts';

export interface KitSearchLimits {
  /** Annealing moves of each longer start, and how many of these there are. */
  readonly moves: number;
  readonly starts: number;
  /** Rounds spent on the first bound. */
  readonly rounds: number;
  /** Rounds spent on all bounds together; the search ends at the first node beyond. */
  readonly work: number;
  readonly seed: number;
  /** Requests within which the best is near enough. */
  readonly within: number;
  readonly start?: Bags;
  readonly now?: () => number;
  readonly milliseconds?: number;
}
export interface KitSearched {
  /** Bags by offer. */
  readonly bags: readonly number[];
  /** Expected requests met. */
  readonly value: number;
  /** No purchase meets more. Equals `value` when proven. */
  readonly bound: number;
  readonly proven: boolean;
  readonly nodes: number;
}

/** Undefined if what is a must, and what is forced in, does not fit the budget or the colours. */
export const searchKit = (model: KitModel, limits: KitSearchLimits): KitSearched | undefined => new KitSearch(model, limits).run();

/** Annealing moves before the longer ones: as many as an answer wanted soon has. */
const shortMoves = 700;
const nodeRounds = 24;
/** A shop is decided where the relaxation uses it in one way at least so much. */
const decided = 0.9;
/** A rounding is tried at every so many nodes. */
const roundEvery = 4;

interface Node {
  readonly least: Int8Array;
  readonly most: Int8Array;
  readonly uses: Int8Array;
  readonly prices: KitPrices;
  readonly bound: number;
  readonly wanted: Float64Array;
  readonly shopUse: Float64Array;
}

type Part = Pick<Node, 'least' | 'most' | 'uses'>;
interface Branches {
  /** The offer of the first child, -1 where shops are branched on, and how much it and those like it were wanted. */
  readonly offer: number;
  readonly want: number;
  readonly children: readonly Part[];
}
/** More than `from` bags of one of the offers, or of none; `want` says how much the relaxation is for more, 0 to 1. */
interface Split {
  readonly offers: readonly number[];
  readonly from: number;
  readonly want: number;
}
/** Ways to split by offers of one item: all of them at once as long as none is bought, else each by itself where its count is undecided. */
function splitsOf(group: readonly number[], least: Int8Array, most: Int8Array, wanted: Float64Array): readonly Split[] {
  const open = group.filter((o) => (least[o] as number) < (most[o] as number));
  const all = open.reduce((sum, o) => sum + (wanted[o] as number), 0);
  if (all <= 1 && group.every((o) => least[o] === 0)) {
    open.sort((a, b) => (wanted[b] as number) - (wanted[a] as number) || a - b);
    return [{ offers: open, from: 0, want: all }];
  }
  return open.map((o) => {
    const whole = Math.min(Math.floor(wanted[o] as number), (most[o] as number) - (least[o] as number) - 1);
    return { offers: [o], from: (least[o] as number) + whole, want: Math.min(1, (wanted[o] as number) - whole) };
  });
}

/** Falls of the bound by offer, each a mean that begins at that of all. */
class Falls {
  readonly #sum: Float64Array;
  readonly #count: Float64Array;
  #all = 0;
  #times = 0;
  constructor(offers: number) {
    this.#sum = new Float64Array(offers);
    this.#count = new Float64Array(offers);
  }
  learn(offer: number, fall: number): void {
    this.#sum[offer] = (this.#sum[offer] as number) + fall;
    this.#count[offer] = (this.#count[offer] as number) + 1;
    this.#all += fall;
    this.#times++;
  }
  /** What to expect of an offer; the mean of all, times `scale`, counts as one look. */
  expected(offer: number, scale: number): number {
    const mean = this.#times === 0 ? 1 : this.#all / this.#times;
    return ((this.#sum[offer] as number) + mean * scale) / ((this.#count[offer] as number) + 1);
  }
}

class KitSearch {
  readonly #model: KitModel;
  readonly #limits: KitSearchLimits;
  readonly #climb: KitClimb;
  readonly #bound: KitBound;
  readonly #deadline: number;
  /** Offers of the same one item; assorted bags each by themselves. */
  readonly #groups: readonly (readonly number[])[];
  readonly #meanPrice: number;
  /** How far the bound falls when an offer is bought, and when it is left out. */
  readonly #bought: Falls;
  readonly #leftOut: Falls;
  #nodes = 0;
  /** Largest bound of what was left unfinished, pruned or ruled out. */
  #beyond = Number.NEGATIVE_INFINITY;

  constructor(model: KitModel, limits: KitSearchLimits) {
    this.#model = model;
    this.#limits = limits;
    this.#climb = new KitClimb(model);
    this.#bound = new KitBound(model);
    const prices = model.offers.map((offer) => offer.costs[1] ?? 0);
    this.#meanPrice = Math.max(1, prices.reduce((sum, price) => sum + price, 0) / Math.max(1, prices.length));
    this.#bought = new Falls(model.offers.length);
    this.#leftOut = new Falls(model.offers.length);
    const groups = new Map<string, number[]>();
    for (const [o, { holds }] of model.offers.entries()) {
      const key = holds.length === 1 ? `item ${holds[0]?.item}` : `offer ${o}`;
      groups.set(key, [...(groups.get(key) ?? []), o]);
    }
    this.#groups = [...groups.values()];
    this.#deadline =
      limits.now === undefined || limits.milliseconds === undefined ? Number.POSITIVE_INFINITY : limits.now() + limits.milliseconds;
  }

  run(): KitSearched | undefined {
    const { start, moves, starts, seed } = this.#limits;
    const climb = this.#climb;
    const plain = cheapestMusts(this.#model);
    if (plain !== undefined) climb.try(plain);
    if (start !== undefined) climb.try(start);
    climb.greedy();
    climb.anneal(shortMoves, seed);
    climb.climb();
    for (let again = 0; again < starts; again++) {
      climb.anneal(moves, seed + again);
      climb.climb();
    }
    this.#branch();
    climb.dropIdle();
    if (climb.best === undefined) return undefined;
    const bound = this.#beyond > climb.value + 1e-9 ? this.#beyond : climb.value;
    return { bags: [...climb.best], value: climb.value, bound, proven: bound <= climb.value, nodes: this.#nodes };
  }
  get #beat(): number {
    return this.#climb.value + this.#limits.within;
  }

  #branch(): void {
    const root = this.#root();
    const frontier = root === undefined ? [] : [root];
    for (;;) {
      const node = takeLargest(frontier);
      if (node === undefined) return;
      if (!this.#isOpen(node.bound)) continue;
      if (this.#mustStop()) {
        this.#beyond = Math.max(this.#beyond, node.bound, ...frontier.map((one) => one.bound));
        return;
      }
      if (this.#nodes++ % roundEvery === 0) this.#round(node);
      const { offer, want, children } = this.#branches(node);
      if (children.length === 0) this.#climb.try(node.least);
      for (const [c, { least, most, uses }] of children.entries()) {
        const child = this.#bounded(least, most, uses, node.prices, nodeRounds, node.bound);
        if (child !== undefined) frontier.push(child);
        if (offer < 0 || (c > 0 && c < children.length - 1)) continue;
        const fall = node.bound - Math.max(this.#beat, child?.bound ?? Number.NEGATIVE_INFINITY);
        if (c === 0) this.#bought.learn(offer, fall / Math.max(0.05, 1 - want));
        else this.#leftOut.learn(offer, fall / Math.max(0.05, want));
      }
    }
  }
  #isOpen(bound: number): boolean {
    if (bound - 1e-9 > this.#beat) return true;
    this.#beyond = Math.max(this.#beyond, bound);
    return false;
  }
  #mustStop(): boolean {
    if (this.#bound.rounds >= this.#limits.work) return true;
    return this.#limits.now !== undefined && (this.#nodes & 7) === 0 && this.#limits.now() >= this.#deadline;
  }

  #root(): Node | undefined {
    const least = Int8Array.from(this.#model.offers, (offer) => offer.least);
    const most = Int8Array.from(this.#model.offers, (offer) => offer.costs.length - 1);
    const uses = Int8Array.from(this.#model.shops, usesOf);
    const node = this.#bounded(least, most, uses, this.#bound.startingPrices(), this.#limits.rounds, Number.POSITIVE_INFINITY);
    if (node === undefined) return undefined;
    const before = this.#climb.value;
    this.#round(node);
    this.#climb.climb();
    // A better purchase makes for a better bound.
    if (this.#climb.value <= before) return node;
    return this.#bounded(node.least, node.most, node.uses, node.prices, this.#limits.rounds / 2, node.bound);
  }
  /** Splits a node by how a shop is used, where the relaxation is undecided about that, else by the bags of an offer; no children at a leaf. */
  #branches({ least, most, uses, wanted, shopUse }: Node): Branches {
    const s = shopToBranch(uses, shopUse);
    if (s >= 0) {
      const open = shopUses.filter((use) => ((uses[s] as number) & use) > 0);
      return { offer: -1, want: 0, children: open.map((use) => ({ least: least.slice(), most: most.slice(), uses: uses.with(s, use) })) };
    }
    const { offers, from, want } = this.#splitOf(least, most, wanted);
    const children: Part[] = [];
    const fewer = most.slice();
    // More of the first of them, or not that but of the second, and so on, or of none.
    for (const o of offers) {
      children.push({ least: least.with(o, from + 1), most: fewer.slice(), uses: uses.slice() });
      fewer[o] = from;
    }
    if (offers.length > 0) children.push({ least: least.slice(), most: fewer, uses: uses.slice() });
    return { offer: offers[0] ?? -1, want, children };
  }
  #bounded(least: Int8Array, most: Int8Array, uses: Int8Array, prices: KitPrices, rounds: number, parent: number): Node | undefined {
    if (!this.#settle(least, most, uses)) return undefined;
    const answer = this.#bound.bound({ least, most, uses, prices, beat: this.#beat, rounds });
    this.#beyond = Math.max(this.#beyond, Math.min(answer.cut, this.#beat));
    const bound = Math.min(parent, answer.bound);
    if (!this.#isOpen(bound)) return undefined;
    return { least, most, uses, prices: answer.prices, bound, wanted: answer.wanted.slice(), shopUse: answer.shopUse.slice() };
  }

  /** Follows what the counts imply for money and colours; false if nothing is left. */
  #settle(least: Int8Array, most: Int8Array, uses: Int8Array): boolean {
    const { offers, shops, budget, mostColours, ownColours } = this.#model;
    if (mostColours !== Number.POSITIVE_INFINITY) {
      const colours = new Set<number>();
      for (const [o, offer] of offers.entries())
        if ((least[o] as number) > 0) for (const colour of offer.colours) if (!ownColours.has(colour)) colours.add(colour);
      if (colours.size > mostColours) return false;
      for (const [o, offer] of offers.entries()) {
        if (least[o] !== 0 || most[o] === 0) continue;
        const more = offer.colours.filter((colour) => !ownColours.has(colour) && !colours.has(colour)).length;
        if (colours.size + more > mostColours) most[o] = 0;
      }
    }
    const goods = new Float64Array(shops.length + 1);
    for (const [o, offer] of offers.entries()) {
      if (offer.shop < 0) continue;
      if ((least[o] as number) > 0) uses[offer.shop] = (uses[offer.shop] as number) & ~isClosed;
      if (uses[offer.shop] === 0) return false;
      if (uses[offer.shop] === isClosed) most[o] = 0;
    }
    const cheapest = new Float64Array(offers.length);
    for (const [o, offer] of offers.entries()) {
      let cost = Number.POSITIVE_INFINITY;
      for (let count = least[o] as number; count <= (most[o] as number); count++) cost = Math.min(cost, offer.costs[count] as number);
      cheapest[o] = cost;
      goods[offer.shop + 1] = (goods[offer.shop + 1] as number) + cost;
    }
    let total = goods[0] as number;
    for (const [s, shop] of shops.entries()) total += leastSpent(shop, uses[s] as number, goods[s + 1] as number);
    if (total > budget) return false;
    for (const [o, offer] of offers.entries()) {
      const shop = shops[offer.shop];
      const own = goods[offer.shop + 1] as number;
      const use = shop === undefined ? 0 : (uses[offer.shop] as number);
      const before = shop === undefined ? own : leastSpent(shop, use, own);
      while ((most[o] as number) > (least[o] as number)) {
        const now = own - (cheapest[o] as number) + (offer.costs[most[o] as number] as number);
        if (total - before + (shop === undefined ? now : leastSpent(shop, use & ~isClosed, now)) <= budget) break;
        most[o] = (most[o] as number) - 1;
      }
    }
    return true;
  }

  /**
   * Offers of one item, none of which is bought yet, or an offer of which more could be: those for which the bound falls most on both sides,
   * going by what it did before (M. Bénichou et al., "Experiments in mixed-integer linear programming", Mathematical Programming 1 (1971)
   * 76-94), and by the price.
   */
  #splitOf(least: Int8Array, most: Int8Array, wanted: Float64Array): Split {
    let chosen: Split = { offers: [], from: 0, want: 0 };
    let best = Number.NEGATIVE_INFINITY;
    for (const group of this.#groups) {
      for (const split of splitsOf(group, least, most, wanted)) {
        const [first] = split.offers;
        if (first === undefined) continue;
        const { want } = split;
        const price = (this.#model.offers[first]?.costs[1] ?? 0) / this.#meanPrice;
        const score =
          Math.max(1e-6, want * this.#leftOut.expected(first, price)) * Math.max(1e-6, (1 - want) * this.#bought.expected(first, price)) +
          1e-9 * want;
        if (score <= best) continue;
        best = score;
        chosen = split;
      }
    }
    return chosen;
  }
  /** Buys what the relaxation wants most, as far as it is allowed. */
  #round({ least, most, wanted }: Node): void {
    const { state } = this.#climb;
    state.set(least);
    const order = [...least.keys()].filter((o) => (most[o] as number) > (least[o] as number) && (wanted[o] as number) > 0.05);
    order.sort((a, b) => (wanted[b] as number) - (wanted[a] as number) || a - b);
    for (const o of order) {
      const spare = (wanted[o] as number) >= 1.5 ? 2 : 1;
      const count = Math.min(most[o] as number, (least[o] as number) + spare);
      state.put(o, count);
      if (state.spent > this.#model.budget || state.colours > this.#model.mostColours) state.put(o, least[o] as number);
    }
    const filled = state.missing > 0 ? cheapestMusts(this.#model, state.bags) : state.bags.slice();
    if (filled !== undefined) this.#climb.try(filled);
  }
}

/** The least that is spent at a shop in one of these uses, where goods are worth at least so much. */
function leastSpent(shop: KitModel['shops'][number], uses: number, goods: number): number {
  if ((uses & isClosed) > 0) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const use of [paysShipping, shipsFree])
    if ((uses & use) > 0) least = Math.min(least, Math.max(goods, enoughFor(shop, use)) + (use === paysShipping ? shop.shipping : 0));
  return least;
}
function shopToBranch(uses: Int8Array, shopUse: Float64Array): number {
  let chosen = -1;
  let least = decided;
  for (let s = 0; s < uses.length; s++) {
    const open = uses[s] as number;
    if ((open & (open - 1)) === 0) continue;
    const most = Math.max(...shopUse.subarray(s * shopUses.length, (s + 1) * shopUses.length));
    if (most >= least) continue;
    least = most;
    chosen = s;
  }
  return chosen;
}
function takeLargest(frontier: Node[]): Node | undefined {
  let largest = 0;
  for (let k = 1; k < frontier.length; k++) if ((frontier[k]?.bound ?? 0) > (frontier[largest]?.bound ?? 0)) largest = k;
  const node = frontier[largest];
  const last = frontier.pop();
  if (last !== undefined && last !== node) frontier[largest] = last;
  return node;
}
