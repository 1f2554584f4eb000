/**
 * Proven best purchase for budgeted coverage with alternatives: depth-first branch and bound on the Lagrangian bound of
 * `cover-bound.ts`, from a start by annealing. Suppliers with shipping are settled first: closed, with shipping, or with enough spent
 * there for free shipping.
 */
import { CoverBound, free, noPrices, type Prices } from './cover-bound.ts';
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
  const model = coverModelOf(problem);
  const start = startOf(model, limits.moves ?? movesPerBag * model.bagCount, limits.seed ?? 1, limits.start);
  return new CoverSearch(model, limits, start?.bought).run();
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
  #nodes = 0;
  #stopped = false;
  #deadline: number;

  constructor(model: CoverModel, limits: CoverLimits, start: Int8Array | undefined) {
    this.#model = model;
    this.#limits = limits;
    this.#bound = new CoverBound(model);
    this.#state = new CoverState(model);
    if (start !== undefined) this.#state.set(start);
    this.#best = start?.slice();
    this.#value = start === undefined ? nothingYet : this.#state.value;
    this.#deadline =
      limits.now === undefined || limits.milliseconds === undefined ? Number.POSITIVE_INFINITY : limits.now() + limits.milliseconds;
  }

  run(): CoverAnswer | undefined {
    const roots = this.#roots();
    const polished = roots.map((root, k) => (k < rootsToPolish ? this.#polish(root) : root));
    for (const root of polished) {
      if (this.#atLeast(root.bound)) this.#search(root.fixed, root.shipping, root.prices, root.bound, root.wanted);
    }
    if (this.#best === undefined) return undefined;
    this.#state.set(this.#best);
    const bound = this.#stopped ? Math.max(this.#value, this.#open) : this.#value;
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
    let shipping = 0;
    for (const [s, state] of way.entries()) {
      const terms = suppliers[s];
      if (terms === undefined) continue;
      if (state === paysShipping) shipping += terms.shipping;
      const away = state === paysNothing && (terms.spent ?? 0) === 0;
      if (state === paysNothing && !away) return undefined;
      let most = terms.spent ?? 0;
      for (let bag = 0; bag < fixed.length; bag++) {
        if (supplierOf[bag] !== s) continue;
        if (away && fixed[bag] === 1) return undefined;
        if (away) fixed[bag] = 0;
        else if (fixed[bag] !== 0) most += this.#model.costs[bag] as number;
      }
      if (state === spendsEnough && terms.shipping > 0 && most < (terms.freeFrom ?? 0)) return undefined;
    }
    const prices = noPrices(this.#model);
    const money = this.#moneyLeft(fixed, shipping);
    if (money < 0 || shipping > budget) return undefined;
    const answer = this.#bound.bound({ fixed, money, prices, beat: this.#value, rounds: rootRounds });
    return { fixed, shipping, prices, bound: answer.bound, wanted: answer.wanted.slice() };
  }

  /** Anneals once more among the bags that the relaxation is undecided about, and tightens the bound with the better answer. */
  #polish(root: Root): Root {
    if (!this.#atLeast(root.bound)) return root;
    const { fixed, wanted, shipping, prices } = root;
    this.#tryRounding(fixed, wanted);
    const undecided = (bag: number): boolean => fixed[bag] === free && (wanted[bag] as number) > 0.02 && (wanted[bag] as number) < 0.98;
    const seed = this.#limits.seed ?? 1;
    for (const extra of [1, 2]) {
      const better = startOf(
        this.#model,
        (this.#limits.moves ?? movesPerBag * this.#model.bagCount) * 2,
        seed + extra,
        this.#best,
        undecided,
      );
      if (better === undefined || better.value <= this.#value) continue;
      this.#value = better.value;
      this.#best = better.bought;
    }
    if (!this.#atLeast(root.bound)) return root;
    const answer = this.#bound.bound({ fixed, money: this.#moneyLeft(fixed, shipping), prices, beat: this.#value, rounds: rootRounds });
    return { ...root, bound: Math.min(root.bound, answer.bound), wanted: answer.wanted.slice() };
  }

  #moneyLeft(fixed: Int8Array, shipping: number): number {
    let money = this.#model.problem.budget - shipping;
    for (let bag = 0; bag < fixed.length; bag++) if (fixed[bag] === 1) money -= this.#model.costs[bag] as number;
    return money;
  }
  #atLeast(bound: number): boolean {
    return (this.#model.wholeValues ? Math.floor(bound + 1e-6) : bound - 1e-9) > this.#value;
  }
  #mustStop(): boolean {
    if (this.#nodes >= (this.#limits.nodes ?? Number.POSITIVE_INFINITY)) return true;
    return this.#limits.now !== undefined && (this.#nodes & 7) === 0 && this.#limits.now() >= this.#deadline;
  }

  #search(fixed: Int8Array, shipping: number, prices: Prices, bound: number, wanted: Float64Array): void {
    if (this.#stopped || this.#mustStop()) {
      this.#stopped = true;
      if (bound > this.#open) this.#open = bound;
      return;
    }
    this.#nodes++;
    if (this.#nodes % roundEvery === 1) this.#tryRounding(fixed, wanted);
    if (!this.#atLeast(bound)) return;
    const bag = this.#branchingBag(fixed, wanted);
    if (bag < 0) {
      this.#tryLeaf(fixed);
      return;
    }
    const first = (wanted[bag] as number) >= 0.5 ? 1 : 0;
    for (const side of [first, 1 - first]) {
      const child = fixed.slice();
      child[bag] = side;
      const money = this.#settle(child, shipping);
      if (money < 0) continue;
      const childPrices = { links: prices.links.slice(), pieces: prices.pieces.slice() };
      const answer = this.#bound.bound({ fixed: child, money, prices: childPrices, beat: this.#value, rounds: nodeRounds });
      const childBound = Math.min(bound, answer.bound);
      if (this.#atLeast(childBound)) this.#search(child, shipping, childPrices, childBound, answer.wanted.slice());
    }
  }

  /** Follows what the fixed bags imply; the money left for free bags, negative if this cannot be. */
  #settle(fixed: Int8Array, shipping: number): number {
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
    const money = this.#moneyLeft(fixed, shipping);
    for (let bag = 0; bag < fixed.length; bag++) if (fixed[bag] === free && (this.#model.costs[bag] as number) > money) fixed[bag] = 0;
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
  #keepIfBetter(): void {
    if (this.#state.value <= this.#value || !this.#state.isAllowed()) return;
    this.#value = this.#state.value;
    this.#best = this.#state.bought.slice();
  }
}
interface Root {
  readonly fixed: Int8Array;
  readonly shipping: number;
  readonly prices: Prices;
  readonly bound: number;
  readonly wanted: Float64Array;
}
