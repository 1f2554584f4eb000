/**
 * Proven best purchase for budgeted coverage with alternatives: best-first branch and bound on the Lagrangian bound of
 * `cover-bound.ts`, from a start by annealing.
 */
import { type BoundAnswer, CoverBound } from './cover-bound.ts';
import { type CoverModel, type CoverProblem, coverModelOf } from './cover-model.ts';
import { free } from './cover-open.ts';
import { startOf } from './cover-start.ts';
import { CoverState } from './cover-state.ts';

export interface CoverLimits {
  /** Milliseconds of any steady clock; without it nothing is limited by time. */
  readonly now?: () => number;
  readonly milliseconds?: number;
  /** Stop after so many nodes; 0 gives the start and its bound only. */
  readonly nodes?: number;
  readonly seed?: number;
  /** Annealing moves for the start; by default a quarter of the square of the number of bags, but no less than 50 a bag. */
  readonly moves?: number;
  /** Rounds spent on the first bound, default 300. */
  readonly rounds?: number;
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

/** The best purchase, proven unless a limit stops the search first. */
export function solveCover(problem: CoverProblem, limits: CoverLimits = {}): CoverAnswer {
  const { now, milliseconds } = limits;
  const deadline = now === undefined || milliseconds === undefined ? Number.POSITIVE_INFINITY : now() + milliseconds;
  const mustStop = (): boolean => now !== undefined && now() >= deadline;
  return new CoverSearch(coverModelOf(problem), limits, mustStop).run();
}

// Found by trial on the problems of `cases/coverage` and on random ones of the same make.
const rootRounds = 300;
const nodeRounds = 30;
/** A rounding is tried at every so many nodes. */
const roundEvery = 2;
/** Among the bags that the relaxation is undecided about, annealing is tried so often at the root ... */
const rootAnnealings = 2;
/** ... and at every so many nodes. */
const annealEvery = 20;
/** Undecided is what the relaxation wants between these. */
const undecidedFrom = 0.2;
const undecidedTo = 0.9;
/** How much a bag that lowers the bound for sure is liked for branching. */
const sureness = 10;

class CoverSearch {
  readonly #model: CoverModel;
  readonly #limits: CoverLimits;
  readonly #bound: CoverBound;
  readonly #state: CoverState;
  readonly #mustStop: () => boolean;
  /** The best purchase so far, at first none, and its value. */
  #best: Int8Array;
  #value: number;
  /** Largest bound of a node that was left unfinished. */
  #open = Number.NEGATIVE_INFINITY;
  /** Largest bound of what was pruned. */
  #pruned = Number.NEGATIVE_INFINITY;
  #nodes = 0;

  constructor(model: CoverModel, limits: CoverLimits, mustStop: () => boolean) {
    this.#model = model;
    this.#mustStop = mustStop;
    this.#limits = limits;
    this.#bound = new CoverBound(model);
    this.#state = new CoverState(model);
    this.#best = this.#state.bought.slice();
    this.#value = this.#state.value;
  }

  run(): CoverAnswer {
    const bags = this.#model.bagCount;
    const { moves = Math.max(50 * bags, bags ** 2 / 4), seed = 1 } = this.#limits;
    const fixed = new Int8Array(bags).fill(free);
    takeOutDear(this.#model, fixed, this.#model.budget);
    this.#keepIfBetter(startOf(this.#model, moves, seed, this.#mustStop, fixed));
    const root = this.#root(fixed);
    this.#search(root === undefined ? [] : [root]);
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

  #root(fixed: Int8Array): CoverNode | undefined {
    const prices = new Float64Array(this.#model.rowCount);
    const node = this.#nodeOf(fixed, prices, Number.POSITIVE_INFINITY, this.#limits.rounds ?? rootRounds);
    if (node === undefined) return undefined;
    this.#tryRounding(node);
    for (let again = 1; again <= rootAnnealings; again++) this.#anneal(node, again);
    return node;
  }

  /** Branches from the node with the largest bound until nothing is left that could be better. */
  #search(frontier: CoverNode[]): void {
    for (;;) {
      const node = takeLargest(frontier);
      if (node === undefined) return;
      if (!this.#isOfInterest(node.bound)) continue;
      if (this.#nodes >= (this.#limits.nodes ?? Number.POSITIVE_INFINITY) || this.#mustStop()) {
        this.#open = node.bound;
        return;
      }
      this.#nodes++;
      if (this.#nodes % roundEvery === 1) this.#tryRounding(node);
      if (this.#nodes % annealEvery === 0) this.#anneal(node, this.#nodes);
      if (node.branchingBag === undefined) {
        this.#keepIfBetter(node.fixed);
        continue;
      }
      for (const side of [0, 1]) {
        const fixed = node.fixed.slice();
        fixed[node.branchingBag] = side;
        const child = this.#nodeOf(fixed, node.prices.slice(), node.bound, nodeRounds);
        if (child !== undefined) frontier.push(child);
      }
    }
  }

  /** What these fixed bags leave open; undefined if nothing in it can be better than the best so far. */
  #nodeOf(fixed: Int8Array, prices: Float64Array, parentBound: number, rounds: number): CoverNode | undefined {
    const money = moneyLeft(this.#model, fixed);
    if (money < 0) return undefined;
    takeOutDear(this.#model, fixed, money);
    const answer = this.#bound.bound({ fixed, money, prices, beat: this.#value, rounds, mustStop: this.#mustStop });
    const bound = Math.min(parentBound, answer.bound);
    if (!this.#isOfInterest(bound)) return undefined;
    const wanted = answer.wanted.slice();
    return { fixed, prices, bound, wanted, branchingBag: this.#branchingBag(fixed, answer) };
  }
  /** True if a node with this bound may still hold something better; else it is pruned, and its bound remembered. */
  #isOfInterest(bound: number): boolean {
    const rounded = this.#model.wholeValues ? Math.floor(bound + 1e-6) : bound - 1e-9;
    if (rounded > this.#value) return true;
    if (rounded > this.#pruned) this.#pruned = rounded;
    return false;
  }

  /** Undecided and dear, and both sides are sure to lower the bound: undefined if no bag is free. */
  #branchingBag(fixed: Int8Array, { wanted, losses }: BoundAnswer): number | undefined {
    let chosen: number | undefined;
    let best = Number.NEGATIVE_INFINITY;
    for (let bag = 0; bag < fixed.length; bag++) {
      if (fixed[bag] !== free) continue;
      const w = wanted[bag] as number;
      const sure = Math.min(losses.ofIn[bag] as number, losses.ofOut[bag] as number);
      const score = (w * (1 - w) + 1e-9) * (this.#model.costs[bag] as number) * (1 + sureness * sure);
      if (score > best) {
        best = score;
        chosen = bag;
      }
    }
    return chosen;
  }

  /** Buys, beside what is in, the free bags that the relaxation wants most. */
  #tryRounding({ fixed, wanted }: CoverNode): void {
    const state = this.#state;
    const order: number[] = [];
    for (let bag = 0; bag < fixed.length; bag++) {
      if (state.has(bag) !== (fixed[bag] === 1)) state.toggle(bag);
      if (fixed[bag] === free && (wanted[bag] as number) > 0.05) order.push(bag);
    }
    order.sort((a, b) => (wanted[b] as number) - (wanted[a] as number) || a - b);
    for (const bag of order) {
      state.toggle(bag);
      if (!state.isAffordable()) state.toggle(bag);
    }
    this.#keepIfBetter(state.bought);
  }
  /** Anneals among the bags of a node that its relaxation is undecided about. */
  #anneal({ fixed, wanted }: CoverNode, again: number): void {
    const undecided = fixed.slice();
    for (let bag = 0; bag < fixed.length; bag++) {
      const want = wanted[bag] as number;
      if (fixed[bag] === free && want < undecidedFrom) undecided[bag] = 0;
      if (fixed[bag] === free && want > undecidedTo) undecided[bag] = 1;
    }
    const { seed = 1, moves = fixed.length ** 2 / 4 } = this.#limits;
    this.#keepIfBetter(startOf(this.#model, moves, seed + again, this.#mustStop, undecided));
  }
  #keepIfBetter(bought: Int8Array | undefined): void {
    if (bought === undefined) return;
    if (bought !== this.#state.bought) this.#state.set(bought);
    if (this.#state.value <= this.#value || !this.#state.isAffordable()) return;
    this.#value = this.#state.value;
    this.#best = this.#state.bought.slice();
  }
}

interface CoverNode {
  readonly fixed: Int8Array;
  readonly prices: Float64Array;
  readonly bound: number;
  readonly wanted: Float64Array;
  readonly branchingBag: number | undefined;
}
function takeLargest(frontier: CoverNode[]): CoverNode | undefined {
  let largest = 0;
  for (let k = 1; k < frontier.length; k++) if ((frontier[k]?.bound ?? 0) > (frontier[largest]?.bound ?? 0)) largest = k;
  const node = frontier[largest];
  const last = frontier.pop();
  if (last !== undefined && last !== node) frontier[largest] = last;
  return node;
}

/** Money for the bags that are still free, negative if even those that are in cannot be had. */
function moneyLeft({ costs, budget }: CoverModel, fixed: Int8Array): number {
  let money = budget;
  for (let bag = 0; bag < fixed.length; bag++) if (fixed[bag] === 1) money -= costs[bag] as number;
  return money;
}
function takeOutDear({ costs }: CoverModel, fixed: Int8Array, money: number): void {
  for (let bag = 0; bag < fixed.length; bag++) if (fixed[bag] === free && (costs[bag] as number) > money) fixed[bag] = 0;
}
