/**
 * Proven best purchase for budgeted coverage with alternatives: best-first branch and bound on the Lagrangian bound of
 * `cover-bound.ts`, from a start by annealing. Suppliers with shipping are settled first: closed, with shipping, or with enough spent
 * there for free shipping.
 */
import { type BoundQuestion, CoverBound, free, noPrices, type Prices } from './cover-bound.ts';
import { type CoverModel, type CoverProblem, coverModelOf } from './cover-model.ts';
import { fixedOf, startOf } from './cover-start.ts';
import { CoverState } from './cover-state.ts';

export interface CoverLimits {
  /** Milliseconds of any steady clock; without it nothing is limited by time. */
  readonly now?: () => number;
  readonly milliseconds?: number;
  /** Stop after so many nodes; 0 gives the start and its bound only. */
  readonly nodes?: number;
  readonly seed?: number;
  /** Annealing moves for the start. */
  readonly moves?: number;
  /** A purchase to start from, 0/1 for each bag. */
  readonly start?: ArrayLike<number>;
  /** Rounds spent on the first bound, default 300. */
  readonly rounds?: number;
  /** True worth of a purchase where the goals reached overrate it; never more than their value. */
  readonly worth?: (bought: Int8Array) => number;
  /** Annealing moves that are valued by `worth`. */
  readonly worthMoves?: number;
  /** Stop once proven within this much of the best, default 0. */
  readonly within?: number;
}
export interface CoverAnswer {
  /** 0/1 for each bag. */
  readonly bought: readonly number[];
  readonly value: number;
  /** No purchase reaches more. Equals `value` when proven. */
  readonly bound: number;
  readonly proven: boolean;
  readonly spent: number;
  readonly nodes: number;
}

/** The best purchase; undefined if the forced bags alone break the budget or the limit on colours. */
export function solveCover(problem: CoverProblem, limits: CoverLimits = {}): CoverAnswer | undefined {
  const deadline =
    limits.now === undefined || limits.milliseconds === undefined ? Number.POSITIVE_INFINITY : limits.now() + limits.milliseconds;
  const model = coverModelOf(problem);
  const start = startOf(model, limits.moves ?? movesPerBag * model.bagCount, limits.seed ?? 1, limits.start);
  return new CoverSearch(model, limits, deadline, start?.bought).run();
}

// Found by trial on the three problems of `cases/coverage`.
const movesPerBag = 50;
const rootRounds = 300;
const nodeRounds = 30;
const rootsToPolish = 3;
/** A rounding is tried at every so many nodes. */
const roundEvery = 4;

/** Below every value: no purchase is known yet, for example because the forced bags are affordable only with free shipping. */
const nothingYet = -1;

const paysNothing = 0;
const paysShipping = 1;
const spendsEnough = 2;

class CoverSearch {
  readonly #model: CoverModel;
  readonly #limits: CoverLimits;
  readonly #bound: CoverBound;
  readonly #state: CoverState;
  #best: Int8Array | undefined;
  #value: number;
  /** Largest bound of a node that was left unfinished. */
  #open = Number.NEGATIVE_INFINITY;
  /** Largest bound of what was pruned. */
  #pruned = Number.NEGATIVE_INFINITY;
  readonly #slack: number;
  readonly #rounds: number;
  #nodes = 0;
  readonly #deadline: number;

  constructor(model: CoverModel, limits: CoverLimits, deadline: number, start: Int8Array | undefined) {
    this.#model = model;
    this.#limits = limits;
    this.#bound = new CoverBound(model);
    this.#state = new CoverState(model);
    this.#deadline = deadline;
    this.#slack = limits.within ?? 0;
    this.#rounds = limits.rounds ?? rootRounds;
    this.#value = nothingYet;
    if (start === undefined) return;
    this.#state.set(start);
    this.#keepIfBetter();
    if (limits.start !== undefined) {
      this.#state.set(limits.start);
      this.#keepIfBetter();
    }
    if (limits.worth !== undefined) this.#improve();
  }

  run(): CoverAnswer | undefined {
    const roots = this.#roots();
    const polished = roots.map((root, k) => (k < (this.#limits.worth === undefined ? rootsToPolish : 1) ? this.#polish(root) : root));
    this.#search(polished.map((root) => ({ ...root, root })));
    if (this.#best === undefined) return undefined;
    this.#state.set(this.#best);
    const left = Math.max(this.#open, this.#pruned, this.#bound.largestCut);
    const bound = left > this.#value + 1e-9 ? left : this.#value;
    return {
      bought: [...this.#best],
      value: this.#value,
      bound,
      proven: bound <= this.#value,
      spent: this.#state.spent,
      nodes: this.#nodes,
    };
  }

  /** One root for each way the suppliers can be used, most promising first. */
  #roots(): readonly Root[] {
    const suppliers = this.#model.problem.suppliers ?? [];
    let ways: (readonly number[])[] = [[]];
    for (const supplier of suppliers) {
      const states =
        supplier.shipping === 0
          ? [spendsEnough]
          : supplier.freeFrom === undefined
            ? [paysNothing, paysShipping]
            : [paysNothing, paysShipping, spendsEnough];
      ways = ways.flatMap((way) => states.map((state) => [...way, state]));
    }
    const roots: Root[] = [];
    for (const way of ways) {
      const root = this.#rootOf(way);
      if (root !== undefined) roots.push(root);
    }
    return roots.sort((a, b) => b.bound - a.bound);
  }

  #rootOf(way: readonly number[]): Root | undefined {
    const { suppliers = [], supplierOf = [], budget } = this.#model.problem;
    const fixed = fixedOf(this.#model);
    const isOutside = new Int8Array(fixed.length).fill(1);
    let shipping = 0;
    let toSpend = 0;
    for (const [s, state] of way.entries()) {
      const terms = suppliers[s];
      if (terms === undefined) continue;
      const already = terms.spent ?? 0;
      if (state === paysNothing && already > 0) return undefined;
      if (state === paysShipping) shipping += terms.shipping;
      let most = already;
      for (let bag = 0; bag < fixed.length; bag++) {
        if (supplierOf[bag] !== s) continue;
        if (state === paysNothing && fixed[bag] === 1) return undefined;
        if (state === paysNothing) fixed[bag] = 0;
        if (fixed[bag] !== 0) most += this.#model.costs[bag] as number;
        if (state === spendsEnough) isOutside[bag] = 0;
      }
      if (state !== spendsEnough || terms.shipping === 0) continue;
      if (most < (terms.freeFrom ?? 0)) return undefined;
      toSpend += Math.max(0, (terms.freeFrom ?? 0) - already);
    }
    const money = this.#moneyLeft(fixed, shipping);
    if (money < 0 || shipping + toSpend > budget) return undefined;
    const outside = { isOutside, most: budget - shipping - toSpend };
    const prices = noPrices(this.#model);
    const answer = this.#bound.bound({ fixed, money, prices, beat: this.#value + this.#slack, rounds: this.#rounds, outside });
    return { fixed, shipping, outside, prices, bound: answer.bound, wanted: answer.wanted.slice() };
  }

  /** Anneals once more among the bags that the relaxation is undecided about, and tightens the bound with the better answer. */
  #polish(root: Root): Root {
    if (!this.#atLeast(root.bound)) return root;
    const { fixed, wanted, shipping, prices } = root;
    this.#tryRounding(fixed, wanted);
    const undecided = (bag: number): boolean => fixed[bag] === free && (wanted[bag] as number) > 0.02 && (wanted[bag] as number) < 0.98;
    const seed = this.#limits.seed ?? 1;
    // Goals reached are a poor guide where pieces run out: there the climb by true worth has to do.
    for (const extra of this.#limits.worth === undefined ? [1, 2] : []) {
      const better = startOf(
        this.#model,
        (this.#limits.moves ?? movesPerBag * this.#model.bagCount) * 2,
        seed + extra,
        this.#best,
        undecided,
      );
      if (better === undefined || better.value <= this.#value) continue;
      this.#state.set(better.bought);
      this.#keepIfBetter();
    }
    if (this.#limits.worth !== undefined) this.#improve();
    if (!this.#atLeast(root.bound)) return root;
    const answer = this.#bound.bound({
      fixed,
      money: this.#moneyLeft(fixed, shipping),
      prices,
      beat: this.#value + this.#slack,
      rounds: this.#rounds,
      outside: root.outside,
    });
    return { ...root, bound: Math.min(root.bound, answer.bound), wanted: answer.wanted.slice() };
  }

  #moneyLeft(fixed: Int8Array, shipping: number): number {
    let money = this.#model.problem.budget - shipping;
    for (let bag = 0; bag < fixed.length; bag++) if (fixed[bag] === 1) money -= this.#model.costs[bag] as number;
    return money;
  }
  /** True if a node with this bound may still hold something better; else it is pruned, and its bound remembered. */
  #atLeast(bound: number): boolean {
    const rounded = this.#model.wholeValues ? Math.floor(bound + 1e-6) : bound - 1e-9;
    if (rounded > this.#value + this.#slack) return true;
    if (rounded > this.#pruned) this.#pruned = rounded;
    return false;
  }
  #mustStop(): boolean {
    if (this.#nodes >= (this.#limits.nodes ?? Number.POSITIVE_INFINITY)) return true;
    return this.#limits.now !== undefined && (this.#nodes & 7) === 0 && this.#limits.now() >= this.#deadline;
  }

  /** Branches from the node with the largest bound until nothing is left that could be better. */
  #search(frontier: CoverNode[]): void {
    for (;;) {
      const node = takeLargest(frontier);
      if (node === undefined) return;
      if (!this.#atLeast(node.bound)) continue;
      if (this.#mustStop()) {
        this.#open = Math.max(node.bound, ...frontier.map((one) => one.bound));
        return;
      }
      this.#nodes++;
      if (this.#nodes % roundEvery === 1) this.#tryRounding(node.fixed, node.wanted);
      const bag = this.#branchingBag(node.fixed, node.wanted);
      if (bag < 0) {
        this.#tryLeaf(node.fixed);
        continue;
      }
      for (const side of [0, 1]) {
        const child = this.#childOf(node, bag, side);
        if (child !== undefined) frontier.push(child);
      }
    }
  }
  #childOf(node: CoverNode, bag: number, side: number): CoverNode | undefined {
    const fixed = node.fixed.slice();
    fixed[bag] = side;
    const money = this.#settle(fixed, node.root);
    if (money < 0) return undefined;
    const prices = { links: node.prices.links.slice(), pieces: node.prices.pieces.slice() };
    const { outside } = node.root;
    const answer = this.#bound.bound({ fixed, money, prices, beat: this.#value + this.#slack, rounds: nodeRounds, outside });
    const bound = Math.min(node.bound, answer.bound);
    return this.#atLeast(bound) ? { root: node.root, fixed, prices, bound, wanted: answer.wanted.slice() } : undefined;
  }

  /** Follows what the fixed bags imply; the money left for free bags, negative if this cannot be. */
  #settle(fixed: Int8Array, root: Root): number {
    const { after, coloursOf, mostColours, ownColours } = this.#model.problem;
    if (after !== undefined) {
      for (let bag = 0; bag < fixed.length; bag++) {
        const first = after[bag] as number;
        if (first >= 0 && fixed[bag] === 1 && fixed[first] === 0) return -1;
        if (first >= 0 && fixed[first] === 0) fixed[bag] = 0;
        for (let at = first; fixed[bag] === 1 && at >= 0; at = after[at] as number) fixed[at] = 1;
      }
    }
    if (mostColours !== undefined && coloursOf !== undefined) {
      const colours = new Set<number>();
      for (let bag = 0; bag < fixed.length; bag++)
        if (fixed[bag] === 1) for (const colour of coloursOf[bag] ?? []) if (!ownColours?.includes(colour)) colours.add(colour);
      if (colours.size > mostColours) return -1;
      if (colours.size === mostColours) {
        for (let bag = 0; bag < fixed.length; bag++)
          if (fixed[bag] === free && (coloursOf[bag] ?? []).some((colour) => !colours.has(colour) && !ownColours?.includes(colour)))
            fixed[bag] = 0;
      }
    }
    const money = this.#moneyLeft(fixed, root.shipping);
    const { isOutside, most } = root.outside;
    let outside = most;
    for (let bag = 0; bag < fixed.length; bag++) if (fixed[bag] === 1 && isOutside[bag] === 1) outside -= this.#model.costs[bag] as number;
    if (outside < 0) return -1;
    for (let bag = 0; bag < fixed.length; bag++)
      if (fixed[bag] === free && (this.#model.costs[bag] as number) > (isOutside[bag] === 1 ? Math.min(money, outside) : money))
        fixed[bag] = 0;
    return money;
  }

  #branchingBag(fixed: Int8Array, wanted: Float64Array): number {
    let chosen = -1;
    let best = Number.NEGATIVE_INFINITY;
    for (let bag = 0; bag < fixed.length; bag++) {
      if (fixed[bag] !== free) continue;
      const w = wanted[bag] as number;
      // Undecided and dear: it moves the bound on both sides.
      const score = w * (1 - w) * (this.#model.costs[bag] as number) + 1e-9 * w;
      if (score > best) {
        best = score;
        chosen = bag;
      }
    }
    return chosen;
  }

  #tryLeaf(fixed: Int8Array): void {
    for (let bag = 0; bag < fixed.length; bag++) if ((this.#state.bought[bag] === 1) !== (fixed[bag] === 1)) this.#state.toggle(bag);
    this.#keepIfBetter();
  }
  #tryRounding(fixed: Int8Array, wanted: Float64Array): void {
    const order: number[] = [];
    for (let bag = 0; bag < fixed.length; bag++) {
      if (this.#state.has(bag) !== (fixed[bag] === 1)) this.#state.toggle(bag);
      if (fixed[bag] === free && (wanted[bag] as number) > 0.05) order.push(bag);
    }
    order.sort((a, b) => (wanted[b] as number) - (wanted[a] as number) || a - b);
    for (const bag of order) {
      this.#state.toggle(bag);
      if (!this.#state.isAllowed()) this.#state.toggle(bag);
    }
    this.#keepIfBetter();
  }
  /** Keeps what `state` holds if it is allowed and worth more than the best so far. */
  #keepIfBetter(): boolean {
    if (this.#state.value <= this.#value || !this.#state.isAllowed()) return false;
    const worth = this.#limits.worth?.(this.#state.bought) ?? this.#state.value;
    if (worth <= this.#value + 1e-12) return false;
    this.#value = worth;
    this.#best = this.#state.bought.slice();
    return true;
  }

  /** Anneals by the true worth, then climbs: adds the bag that gains most for its price, else exchanges one bag for another. */
  #improve(): void {
    if (this.#best === undefined) return;
    const fixed = fixedOf(this.#model);
    const movable = [...fixed.keys()].filter((bag) => fixed[bag] === free);
    const { worth, worthMoves = 0, seed = 1 } = this.#limits;
    for (const again of [0, 1, 2, 3]) {
      const better = startOf(this.#model, worthMoves, seed + again, this.#best, undefined, worth);
      this.#state.set(better?.bought ?? this.#best);
      this.#climb(movable, this.#worth());
    }
  }
  #worth(): number {
    return this.#limits.worth?.(this.#state.bought) ?? this.#state.value;
  }
  #climb(movable: readonly number[], from: number): void {
    let value = from;
    for (;;) {
      const added = this.#addBest(movable, value);
      const next = added ?? this.#exchange(movable, value);
      if (next === undefined) break;
      value = next;
    }
    this.#keepIfBetter();
  }
  #addBest(movable: readonly number[], value: number): number | undefined {
    let best = 0;
    let chosen: { readonly bag: number; readonly worth: number } | undefined;
    const before = this.#state.spent;
    for (const bag of movable) {
      if (this.#state.has(bag)) continue;
      this.#state.toggle(bag);
      if (this.#state.isAllowed()) {
        const worth = this.#worth();
        const gain = (worth - value) / Math.max(1, this.#state.spent - before);
        if (worth > value + 1e-9 && gain > best) {
          best = gain;
          chosen = { bag, worth };
        }
      }
      this.#state.toggle(bag);
    }
    if (chosen === undefined) return undefined;
    this.#state.toggle(chosen.bag);
    return chosen.worth;
  }
  #exchange(movable: readonly number[], value: number): number | undefined {
    for (const out of movable) {
      if (!this.#state.has(out)) continue;
      this.#state.toggle(out);
      for (const bag of movable) {
        if (bag === out || this.#state.has(bag)) continue;
        this.#state.toggle(bag);
        // The goals reached are never less than the worth: most exchanges end here.
        if (this.#state.value > value && this.#state.isAllowed()) {
          const worth = this.#worth();
          if (worth > value + 1e-9) return worth;
        }
        this.#state.toggle(bag);
      }
      this.#state.toggle(out);
    }
    return undefined;
  }
}

interface CoverNode {
  readonly root: Root;
  readonly fixed: Int8Array;
  readonly prices: Prices;
  readonly bound: number;
  readonly wanted: Float64Array;
}
function takeLargest(frontier: CoverNode[]): CoverNode | undefined {
  let largest = 0;
  for (let k = 1; k < frontier.length; k++) if ((frontier[k]?.bound ?? 0) > (frontier[largest]?.bound ?? 0)) largest = k;
  const node = frontier[largest];
  const last = frontier.pop();
  if (last !== undefined && last !== node) frontier[largest] = last;
  return node;
}
interface Root {
  readonly fixed: Int8Array;
  readonly shipping: number;
  readonly outside: NonNullable<BoundQuestion['outside']>;
  readonly prices: Prices;
  readonly bound: number;
  readonly wanted: Float64Array;
}
