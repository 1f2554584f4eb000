import { Chance, exp } from '@twistwright/units';
import type { KitModel } from './kit-model.ts';
import { KitValuer } from './kit-worth.ts';
import { PurchaseState } from './purchase-state.ts';

/** Offers that are looked at for an exchange. */
const mostPromising = 24;

/**
 * Good purchases soon: simulated annealing over "buy a bag, or what a figure lacks, and give back others until the money is enough" (S.
 * Kirkpatrick, C. D. Gelatt, M. P. Vecchi, "Optimization by simulated annealing", Science 220 (1983) 671-680), then exchanges one by one.
 * Valued by the true worth. Deterministic for a seed. The best purchase met is in `best`.
 */
export class KitClimb {
  readonly state: PurchaseState;
  best: Int8Array | undefined;
  value = -1;
  readonly #model: KitModel;
  readonly #valuer: KitValuer;
  /** Offers that are no tools: these come and go. */
  readonly #movable: readonly number[];
  /** For each must that several offers sell, those offers. */
  readonly #tools: readonly (readonly number[])[];
  /** For each item the offer that sells it for least. */
  readonly #cheapestOf: readonly (number | undefined)[];
  /** For each offer, those that hold one of its items too. */
  readonly #alike: readonly (readonly number[])[];
  readonly #undoOffers: number[] = [];
  readonly #undoBags: number[] = [];

  constructor(model: KitModel) {
    this.#model = model;
    this.state = new PurchaseState(model);
    this.#valuer = new KitValuer(model);
    const isTool = (o: number): boolean =>
      model.offers[o]?.holds.some((hold) => model.musts.some((must) => must.item === hold.item)) ?? false;
    this.#movable = [...model.offers.keys()].filter((o) => !isTool(o));
    const byPrice = [...this.#movable].sort((a, b) => (model.offers[a]?.costs[1] ?? 0) - (model.offers[b]?.costs[1] ?? 0) || a - b);
    this.#cheapestOf = Array.from(model.have, (_, item) => byPrice.find((o) => model.offers[o]?.holds.some((hold) => hold.item === item)));
    this.#alike = model.offers.map(({ holds }) =>
      this.#movable.filter((o) => model.offers[o]?.holds.some((hold) => holds.some((own) => own.item === hold.item))),
    );
    this.#tools = model.musts
      .map((must) => [...model.offers.keys()].filter((o) => model.offers[o]?.holds.some((hold) => hold.item === must.item)))
      .filter((offers) => offers.length > 1);
  }

  /** Worth of what the state holds, -1 if it is not allowed. */
  worth(): number {
    return this.state.isAllowed() ? this.#valuer.met(this.state.pieces) : -1;
  }
  /** Puts a purchase into the state and remembers it if it is the best; its worth. */
  try(bags: ArrayLike<number>): number {
    this.state.set(bags);
    return this.#keep(this.worth());
  }
  #keep(worth: number): number {
    if (worth > this.value + 1e-12) {
      this.value = worth;
      this.best = this.state.bags.slice();
    }
    return worth;
  }

  /**
   * Buys from the best purchase on what brings most for its money, a bag or the cheapest bags that a figure lacks, until the money is gone.
   * What brought little the last time is not looked at again before the others.
   */
  greedy(): void {
    if (this.best === undefined) return;
    this.state.set(this.best);
    const steps = [
      ...this.#movable.map((o) => ({ from: () => [o], last: Number.POSITIVE_INFINITY })),
      ...this.#model.figures.map((_, f) => ({ from: () => this.#lackedBy(f), last: Number.POSITIVE_INFINITY })),
    ];
    for (let value = this.value; ; ) {
      let best: { readonly offers: readonly number[]; readonly ratio: number; readonly worth: number } | undefined;
      steps.sort((a, b) => b.last - a.last);
      for (const step of steps) {
        if (step.last <= (best?.ratio ?? 0)) break;
        const offers = step.from();
        const before = this.state.spent;
        this.#undoOffers.length = 0;
        this.#undoBags.length = 0;
        for (const o of offers) this.#putOneMore(o);
        const worth = offers.length === 0 ? -1 : this.worth();
        step.last = Math.max(0, worth - value) / Math.max(1, this.state.spent - before);
        this.#undo();
        if (step.last > (best?.ratio ?? 1e-12)) best = { offers, ratio: step.last, worth };
      }
      if (best === undefined) return;
      for (const o of best.offers) this.#putOneMore(o);
      value = this.#keep(best.worth);
    }
  }
  #putOneMore(o: number): void {
    const has = this.state.bags[o] as number;
    if (has + 1 < (this.#model.offers[o]?.costs.length ?? 0)) this.#put(o, has + 1);
  }
  /** The cheapest offers of what figure `f` lacks; none if it lacks nothing, or nobody sells it. */
  #lackedBy(f: number): readonly number[] {
    const offers: number[] = [];
    for (const part of this.#model.figures[f]?.parts ?? []) {
      let cheapest: readonly number[] | undefined;
      let least = Number.POSITIVE_INFINITY;
      for (const { needs } of part.choices) {
        const own = needs.flatMap(({ item }) => ((this.state.pieces[item] as number) > 0 ? [] : [this.#cheapestOf[item] ?? -1]));
        const cost = own.reduce((sum, o) => sum + (this.#model.offers[o]?.costs[1] ?? Number.POSITIVE_INFINITY), 0);
        if (cost >= least) continue;
        least = cost;
        cheapest = own;
      }
      if (cheapest === undefined) return [];
      for (const o of cheapest) if (!offers.includes(o)) offers.push(o);
    }
    return offers;
  }

  /** Anneals from the best purchase. */
  anneal(moves: number, seed: number): void {
    if (this.best === undefined || this.#movable.length === 0) return;
    this.state.set(this.best);
    const chance = new Chance(seed, 0, 77);
    let value = this.value;
    const hot = this.#model.requests / Math.max(8, this.#model.figures.length) / 2;
    for (let move = 0; move < moves; move++) {
      const temperature = hot * (1 - move / moves) ** 2 + 1e-12;
      this.#undoOffers.length = 0;
      this.#undoBags.length = 0;
      this.#step(chance);
      const luck = chance.uniform();
      const next = this.worth();
      if (next < 0 || (next < value && luck >= exp((next - value) / temperature))) {
        this.#undo();
        continue;
      }
      value = next;
      this.#keep(next);
    }
  }
  #put(o: number, count: number): void {
    this.#undoOffers.push(o);
    this.#undoBags.push(this.state.bags[o] as number);
    this.state.put(o, count);
  }
  #undo(): void {
    for (let k = this.#undoOffers.length - 1; k >= 0; k--) this.state.put(this.#undoOffers[k] as number, this.#undoBags[k] as number);
  }

  #step(chance: Chance): void {
    const kind = chance.uniform();
    if (kind < 0.1 && this.#tools.length > 0) this.#turnToOtherTool(chance);
    else if (kind < 0.5) this.#reachFigure(chance);
    else {
      const o = this.#movable[chance.next() % this.#movable.length] as number;
      const offer = this.#model.offers[o];
      const has = this.state.bags[o] as number;
      if (offer === undefined) return;
      if (has > offer.least && chance.uniform() < 0.4) this.#put(o, has - 1);
      else if (has + 1 < offer.costs.length) this.#put(o, has + 1);
    }
    this.#makeLegal(chance);
  }
  /** Buys a tool from another offer. */
  #turnToOtherTool(chance: Chance): void {
    const offers = this.#tools[chance.next() % this.#tools.length] as readonly number[];
    const to = offers[chance.next() % offers.length] as number;
    for (const o of offers)
      if ((this.state.bags[o] as number) > (this.#model.offers[o]?.least ?? 0)) this.#put(o, this.#model.offers[o]?.least ?? 0);
    while (this.state.missing > 0 && (this.state.bags[to] as number) + 1 < (this.#model.offers[to]?.costs.length ?? 0))
      this.#put(to, (this.state.bags[to] as number) + 1);
  }
  /** Buys what a figure taken by chance lacks, each part in a choice taken by chance. */
  #reachFigure(chance: Chance): void {
    const figure = this.#model.figures[chance.next() % this.#model.figures.length];
    if (figure === undefined) return;
    const has = (item: number): boolean => (this.state.pieces[item] as number) > 0;
    for (const part of figure.parts) {
      if (part.choices.length === 0) return;
      if (part.choices.some(({ needs }) => needs.every((need) => has(need.item)))) continue;
      const choice = part.choices[chance.next() % part.choices.length];
      for (const { item } of choice?.needs ?? []) if (!has(item)) this.#buyOne(item, chance);
    }
  }
  #buyOne(item: number, chance: Chance): void {
    const from = chance.next() % this.#movable.length;
    for (let k = 0; k < this.#movable.length; k++) {
      const o = this.#movable[(from + k) % this.#movable.length] as number;
      const offer = this.#model.offers[o];
      if (offer?.holds.some((hold) => hold.item === item) && (this.state.bags[o] as number) + 1 < offer.costs.length) {
        this.#put(o, (this.state.bags[o] as number) + 1);
        return;
      }
    }
  }

  /** Fills up or drops orders that a shop would refuse, and gives back bags until money and colours are enough. */
  #makeLegal(chance: Chance): void {
    const fresh = this.#undoOffers.length;
    const { state } = this;
    const { budget, mostColours, shops } = this.#model;
    for (let tries = 0; tries < 60; tries++) {
      if (state.refusals > 0) {
        const s = shops.findIndex((_, shop) => state.isRefusedBy(shop));
        if (!this.#fillOrDrop(s, chance)) return;
      } else if (state.spent > budget || state.colours > mostColours) {
        const o = this.#owned(chance, fresh);
        if (o < 0) return;
        this.#put(o, (state.bags[o] as number) - 1);
      } else return;
    }
  }
  #fillOrDrop(s: number, chance: Chance): boolean {
    const own = this.#movable.filter((o) => this.#model.offers[o]?.shop === s);
    const mayDrop = [...this.#model.offers.keys()].every(
      (o) => this.#model.offers[o]?.shop !== s || this.state.bags[o] === 0 || (own.includes(o) && this.#model.offers[o]?.least === 0),
    );
    const room = this.#model.budget - this.state.spent;
    if (mayDrop && (room < 0 || chance.uniform() < 0.5)) {
      for (const o of own) if ((this.state.bags[o] as number) > 0) this.#put(o, 0);
      return true;
    }
    const more = own.filter((o) => (this.state.bags[o] as number) + 1 < (this.#model.offers[o]?.costs.length ?? 0));
    const o = more[chance.next() % Math.max(1, more.length)];
    if (o === undefined) return false;
    this.#put(o, (this.state.bags[o] as number) + 1);
    return true;
  }
  /** A bag taken by chance that can be given back, of offers that were not touched just now. */
  #owned(chance: Chance, fresh: number): number {
    const from = chance.next() % this.#movable.length;
    for (let k = 0; k < this.#movable.length; k++) {
      const o = this.#movable[(from + k) % this.#movable.length] as number;
      if ((this.state.bags[o] as number) <= (this.#model.offers[o]?.least ?? 0)) continue;
      let touched = false;
      for (let u = 0; u < fresh && !touched; u++) touched = this.#undoOffers[u] === o;
      if (!touched) return o;
    }
    return -1;
  }

  /** Adds the bag that gains most for its price as long as one gains, else exchanges one bag for another; from the best purchase. */
  climb(): void {
    if (this.best === undefined) return;
    this.state.set(this.best);
    for (let value = this.value; ; ) {
      const next = this.#addBest(value) ?? this.#exchange(value);
      if (next === undefined) return;
      value = this.#keep(next);
    }
  }
  #addBest(value: number): number | undefined {
    let gained = 0;
    let chosen: { readonly offer: number; readonly worth: number } | undefined;
    const before = this.state.spent;
    for (const o of this.#movable) {
      const has = this.state.bags[o] as number;
      if (has + 1 >= (this.#model.offers[o]?.costs.length ?? 0)) continue;
      this.state.put(o, has + 1);
      const worth = this.worth();
      const gain = (worth - value) / Math.max(1, this.state.spent - before);
      this.state.put(o, has);
      if (worth <= value + 1e-9 || gain <= gained) continue;
      gained = gain;
      chosen = { offer: o, worth };
    }
    if (chosen === undefined) return undefined;
    this.state.put(chosen.offer, (this.state.bags[chosen.offer] as number) + 1);
    return chosen.worth;
  }
  #exchange(value: number): number | undefined {
    const promising = this.#promising();
    for (const out of this.#movable) {
      const had = this.state.bags[out] as number;
      if (had <= (this.#model.offers[out]?.least ?? 0)) continue;
      this.state.put(out, had - 1);
      for (const o of this.#alike[out] as readonly number[]) promising.add(o);
      for (const o of promising) {
        const has = this.state.bags[o] as number;
        if (o === out || has + 1 >= (this.#model.offers[o]?.costs.length ?? 0)) continue;
        this.state.put(o, has + 1);
        const worth = this.worth();
        if (worth > value + 1e-9) return worth;
        this.state.put(o, has);
      }
      this.state.put(out, had);
    }
    return undefined;
  }
  /** Offers of which a bag more would gain most for its price if there were money for it. */
  #promising(): Set<number> {
    const now = this.#valuer.met(this.state.pieces);
    const gains = this.#movable.flatMap((o) => {
      const has = this.state.bags[o] as number;
      if (has + 1 >= (this.#model.offers[o]?.costs.length ?? 0)) return [];
      const before = this.state.spent;
      this.state.put(o, has + 1);
      const gain = (this.#valuer.met(this.state.pieces) - now) / Math.max(1, this.state.spent - before);
      this.state.put(o, has);
      return [{ o, gain }];
    });
    gains.sort((a, b) => b.gain - a.gain || a.o - b.o);
    return new Set(gains.slice(0, mostPromising).map(({ o }) => o));
  }

  /** Gives back bags of the best purchase that add nothing, dearest first, as long as that saves money. */
  dropIdle(): void {
    if (this.best === undefined) return;
    this.state.set(this.best);
    const price = (o: number): number => this.#model.offers[o]?.costs[1] ?? 0;
    for (const o of [...this.#movable].sort((a, b) => price(b) - price(a) || b - a))
      while ((this.state.bags[o] as number) > (this.#model.offers[o]?.least ?? 0)) {
        const before = this.state.spent;
        this.state.put(o, (this.state.bags[o] as number) - 1);
        const without = this.worth();
        if (without >= this.value - 1e-9 * this.#model.requests && this.state.spent <= before) {
          this.value = Math.max(this.value, without);
          this.best = this.state.bags.slice();
          continue;
        }
        this.state.put(o, (this.state.bags[o] as number) + 1);
        break;
      }
  }
}
