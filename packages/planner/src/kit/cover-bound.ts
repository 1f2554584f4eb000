/**
 * Upper bound for budgeted coverage by Lagrangian relaxation. The links "a clause is reached only if one of its bags is bought" get
 * prices u >= 0; what is left falls apart into a fractional knapsack over the bags and a choice of the cheapest alternative for each
 * goal (M. L. Fisher, "The Lagrangian relaxation method for solving integer programming problems", Management Science 27 (1981) 1-18).
 * Prices move along smoothed subgradients with B. T. Polyak's step length. Any prices give a valid bound; the bound also tells which
 * bags must or cannot be in a better answer (reduced-cost fixing).
 */
import type { CoverModel, CoverPieces } from './cover-model.ts';

export const free = -1;

/** How the prices move: found by trial on the three problems of `cases/coverage`. */
interface Pace {
  readonly step: number;
  /** Rounds without progress before the step shrinks. */
  readonly patience: number;
  readonly shrink: number;
  /** Share of the last direction that is kept. */
  readonly memory: number;
}
const atRoot: Pace = { step: 1, patience: 12, shrink: 0.6, memory: 0.8 };
const atNode: Pace = { step: 1.5, patience: 15, shrink: 0.6, memory: 0.8 };
const longRun = 100;
/** Rounds between two looks at what can be fixed. */
const fixEvery = 6;
const rowDead = 0;
const rowOpen = 1;
const rowReached = 2;

/** Prices of the links (one a row) and of the pieces rows. */
export interface Prices {
  readonly links: Float64Array;
  readonly pieces: Float64Array;
}
export const noPrices = (model: CoverModel): Prices => ({
  links: new Float64Array(model.rowCount),
  pieces: new Float64Array(model.problem.pieces?.length ?? 0),
});

export interface BoundQuestion {
  /** For each bag 1 (in), 0 (out) or {@link free}; the fixing writes here. */
  readonly fixed: Int8Array;
  /** Money left for free bags. */
  readonly money: number;
  readonly prices: Prices;
  /** Values that are not above this are of no interest. */
  readonly beat: number;
  readonly rounds: number;
  /** Where so much has to be spent at some shops for free shipping, little is left for the bags outside these. */
  readonly outside?: { readonly isOutside: Int8Array; readonly most: number };
}
export interface BoundAnswer {
  /** No answer here has a larger value. */
  readonly bound: number;
  /** For each bag how much the relaxation wants it, 0 to 1, smoothed over the rounds. */
  readonly wanted: Float64Array;
  /** Bags that were fixed on the way. */
  readonly fixes: number;
}

/** Works on one model again and again without making garbage. */
export class CoverBound {
  readonly #model: CoverModel;
  readonly #mostColours: number;
  /** Rows still open, alternatives still possible, goals not yet reached: compact lists for the node at hand. */
  readonly #rows: Int32Array;
  readonly #goals: Int32Array;
  readonly #goalAlternatives: Int32Array;
  readonly #alternativeRows: Int32Array;
  readonly #alternativeRowList: Int32Array;
  readonly #rowState: Int8Array;
  readonly #reached: Int8Array;
  readonly #profit: Float64Array;
  readonly #x: Float64Array;
  readonly #wanted: Float64Array;
  readonly #order: Int32Array;
  readonly #ratio: Float64Array;
  readonly #direction: Float64Array;
  readonly #links: Float64Array;
  readonly #bestLinks: Float64Array;
  readonly #demand: Float64Array;
  readonly #bagOfRow: Int32Array;
  readonly #numberOf: Int32Array;
  readonly #keptDirection: Float64Array;
  #directionsKept = false;
  #rowCount = 0;
  #goalCount = 0;
  readonly #share: Float64Array;
  readonly #pieceDirection: Float64Array;
  readonly #bestPieces: Float64Array;
  readonly #pieces: FlatPieces;
  /** Pieces rows count in pieces, links in shares: this brings their steps to one scale. */
  readonly #pieceScale: Float64Array;
  readonly #colourGain: Float64Array;
  readonly #colourRank: Int32Array;

  constructor(model: CoverModel) {
    this.#model = model;
    this.#mostColours = model.problem.mostColours ?? Number.POSITIVE_INFINITY;
    const alternatives = model.goalOfAlternative.length;
    this.#rows = new Int32Array(model.rowCount);
    this.#goals = new Int32Array(model.goalCount);
    this.#goalAlternatives = new Int32Array(model.goalCount + 1);
    this.#alternativeRows = new Int32Array(alternatives + 1);
    this.#alternativeRowList = new Int32Array(model.rowsOfAlternative.length);
    this.#rowState = new Int8Array(model.rowCount);
    this.#reached = new Int8Array(model.goalCount);
    this.#profit = new Float64Array(model.bagCount);
    this.#x = new Float64Array(model.bagCount);
    this.#wanted = new Float64Array(model.bagCount);
    this.#order = Int32Array.from({ length: model.bagCount }, (_, j) => j);
    this.#ratio = new Float64Array(model.bagCount);
    this.#direction = new Float64Array(model.rowCount);
    this.#links = new Float64Array(model.rowCount);
    this.#bestLinks = new Float64Array(model.rowCount);
    this.#demand = new Float64Array(model.rowCount);
    this.#bagOfRow = new Int32Array(model.rowCount);
    this.#numberOf = new Int32Array(model.rowCount);
    this.#keptDirection = new Float64Array(model.rowCount);
    this.#share = new Float64Array(model.goalCount);
    const pieces = model.problem.pieces?.length ?? 0;
    this.#pieceDirection = new Float64Array(pieces);
    this.#bestPieces = new Float64Array(pieces);
    this.#pieces = flatPieces(model.problem.pieces ?? []);
    this.#pieceScale = Float64Array.from(model.problem.pieces ?? [], (row) => Math.max(1, ...row.holds.map((hold) => hold.pieces)) ** 2);
    const colours = 1 + Math.max(-1, ...(model.problem.coloursOf ?? []).flat());
    this.#colourGain = new Float64Array(colours);
    this.#colourRank = Int32Array.from({ length: colours }, (_, c) => c);
  }

  /** Bounds the value of every answer that keeps to `fixed` and `money`, improves the prices, and fixes bags where it can. */
  bound(question: BoundQuestion): BoundAnswer {
    const { fixed, money, prices, beat, rounds } = question;
    this.#outside = question.outside;
    const v = prices.pieces;
    const pace = rounds >= longRun ? atRoot : atNode;
    let left = money;
    let base = this.#narrow(fixed, prices.links);
    this.#wanted.fill(0);
    this.#direction.fill(0);
    this.#pieceDirection.fill(0);
    let least = Number.POSITIVE_INFINITY;
    let step = pace.step;
    let stale = 0;
    let fixes = 0;
    for (let round = 0; round < rounds; round++) {
      const value = base + this.#pricePieces(v, fixed) + this.#sell() + this.#buy(fixed, left);
      this.#smooth(round);
      if (value < least - 1e-9) {
        if (value < least - 1e-3 * (least - beat)) stale = 0;
        least = value;
        this.#bestLinks.set(this.#links);
        this.#bestPieces.set(v);
      } else if (++stale >= pace.patience) {
        stale = 0;
        step *= pace.shrink;
      }
      if (this.#rounded(least) <= beat) return { bound: least, wanted: this.#wanted, fixes };
      if (round % fixEvery === fixEvery - 1 || round === rounds - 1) {
        const paid = this.#fix(fixed, left, value, beat);
        if (paid !== undefined) {
          fixes++;
          left -= paid;
          if (left < 0) return { bound: beat, wanted: this.#wanted, fixes };
          this.#keepLinks(prices.links, this.#links);
          this.#keepDirections();
          base = this.#narrow(fixed, prices.links);
          this.#bestLinks.set(this.#links);
          continue;
        }
      }
      const norm = this.#turn(pace.memory) + this.#turnPieces(v, fixed, pace.memory);
      if (norm < 1e-12) break; // the relaxed answer keeps every link: the bound is met
      this.#move((step * Math.max(value - beat, 1e-9)) / norm, v);
    }
    this.#keepLinks(prices.links, this.#bestLinks);
    v.set(this.#bestPieces);
    return { bound: least, wanted: this.#wanted, fixes };
  }

  /** Adds what the links pay to the bags and lets each goal choose its cheapest alternative; the goals' gain. */
  #sell(): number {
    const [profit, links, bagOf, demand] = [this.#profit, this.#links, this.#bagOfRow, this.#demand];
    const rowCount = this.#rowCount;
    for (let k = 0; k < rowCount; k++) {
      demand[k] = 0;
      const bag = bagOf[k] as number;
      if (bag >= 0) profit[bag] = (profit[bag] as number) + (links[k] as number);
      else this.#payEach(k);
    }
    const [goals, starts, rowStarts, list] = [this.#goals, this.#goalAlternatives, this.#alternativeRows, this.#alternativeRowList];
    const values = this.#model.values;
    let gains = 0;
    let a = 0;
    let r = 0;
    for (let k = 0; k < this.#goalCount; k++) {
      const goal = goals[k] as number;
      let cheapest = Number.POSITIVE_INFINITY;
      let chosen = -1;
      const last = starts[k + 1] as number;
      for (; a < last; a++) {
        const end = rowStarts[a + 1] as number;
        let sum = 0;
        for (; r < end; r++) sum += links[list[r] as number] as number;
        if (sum < cheapest) {
          cheapest = sum;
          chosen = a;
        }
      }
      const gain = (values[goal] as number) - (this.#share[goal] as number) - cheapest;
      this.#reached[goal] = gain > 0 ? 1 : 0;
      if (gain <= 0) continue;
      gains += gain;
      const end = rowStarts[chosen + 1] as number;
      for (let at = rowStarts[chosen] as number; at < end; at++) demand[list[at] as number] = 1;
    }
    return gains;
  }
  #payEach(k: number): void {
    const row = this.#rows[k] as number;
    const price = this.#links[k] as number;
    const end = this.#model.bagsStart[row + 1] as number;
    for (let b = this.#model.bagsStart[row] as number; b < end; b++) {
      const bag = this.#model.bagsOfRow[b] as number;
      this.#profit[bag] = (this.#profit[bag] as number) + price;
    }
  }
  #supplyOf(k: number): number {
    const row = this.#rows[k] as number;
    let supply = 0;
    const end = this.#model.bagsStart[row + 1] as number;
    for (let b = this.#model.bagsStart[row] as number; b < end; b++) supply += this.#x[this.#model.bagsOfRow[b] as number] as number;
    return supply;
  }
  #smooth(round: number): void {
    const [x, wanted] = [this.#x, this.#wanted];
    const weight = round === 0 ? 1 : Math.max(0.1, 1 / (round + 1));
    for (let j = 0; j < x.length; j++) wanted[j] = (wanted[j] as number) + weight * ((x[j] as number) - (wanted[j] as number));
  }
  /** Turns the direction of the link prices towards the present subgradient; its squared length. */
  #turn(memory: number): number {
    const [direction, demand, bagOf, links, x] = [this.#direction, this.#demand, this.#bagOfRow, this.#links, this.#x];
    let norm = 0;
    const rowCount = this.#rowCount;
    for (let k = 0; k < rowCount; k++) {
      const bag = bagOf[k] as number;
      let g = (demand[k] as number) - (bag >= 0 ? (x[bag] as number) : this.#supplyOf(k));
      if (g < 0 && (links[k] as number) === 0) g = 0;
      const turned = g + memory * (direction[k] as number);
      direction[k] = turned;
      norm += turned * turned;
    }
    return norm;
  }
  #turnPieces(v: Float64Array, fixed: Int8Array, memory: number): number {
    let norm = 0;
    for (let m = 0; m < v.length; m++) {
      const g = this.#overdrawn(m, fixed);
      const turned = (g < 0 && (v[m] as number) === 0 ? 0 : g) + memory * (this.#pieceDirection[m] as number);
      this.#pieceDirection[m] = turned;
      norm += (turned * turned) / (this.#pieceScale[m] as number);
    }
    return norm;
  }
  #move(length: number, v: Float64Array): void {
    const [links, direction] = [this.#links, this.#direction];
    const rowCount = this.#rowCount;
    for (let k = 0; k < rowCount; k++) {
      const next = (links[k] as number) + length * (direction[k] as number);
      links[k] = Math.max(next, 0);
    }
    for (let m = 0; m < v.length; m++) {
      const next = (v[m] as number) + (length * (this.#pieceDirection[m] as number)) / (this.#pieceScale[m] as number);
      v[m] = Math.max(next, 0);
    }
  }
  #keepLinks(into: Float64Array, from: Float64Array): void {
    for (let k = 0; k < this.#rowCount; k++) into[this.#rows[k] as number] = from[k] as number;
  }
  /** Before the rows are numbered anew: keeps each row's direction under its number in the model. */
  #keepDirections(): void {
    this.#keptDirection.fill(0);
    for (let k = 0; k < this.#rowCount; k++) this.#keptDirection[this.#rows[k] as number] = this.#direction[k] as number;
    this.#directionsKept = true;
  }

  #rounded(bound: number): number {
    return this.#model.wholeValues ? Math.floor(bound + 1e-6) : bound - 1e-9;
  }

  /** Finds what is still open under `fixed` and numbers it compactly; the value that is reached already. */
  #narrow(fixed: Int8Array, prices: Float64Array): number {
    const model = this.#model;
    const state = this.#rowState;
    for (let row = 0; row < model.rowCount; row++) state[row] = this.#stateOf(row, fixed);
    const mayRunOut = (model.problem.pieces?.length ?? 0) > 0;
    let base = model.valueOfAlways;
    let [goalCount, alternatives, listed] = [0, 0, 0];
    for (let goal = 0; goal < model.goalCount; goal++) {
      const [alternativesBefore, listedBefore] = [alternatives, listed];
      let won = false;
      for (let a = model.alternativeStart[goal] as number; a < (model.alternativeStart[goal + 1] as number) && !won; a++) {
        const before = listed;
        let dead = false;
        for (let r = model.rowsStart[a] as number; r < (model.rowsStart[a + 1] as number); r++) {
          const row = model.rowsOfAlternative[r] as number;
          if (state[row] === rowDead) {
            dead = true;
            break;
          }
          if (state[row] === rowOpen) this.#alternativeRowList[listed++] = row;
        }
        if (dead) {
          listed = before;
          continue;
        }
        if (listed === before) won = true;
        this.#alternativeRows[alternatives++] = before;
      }
      if (won && !mayRunOut) {
        // Reached whatever else is bought: its value is safe and its alternatives are of no more interest.
        base += model.values[goal] as number;
        alternatives = alternativesBefore;
        listed = listedBefore;
      } else if (alternatives > alternativesBefore) {
        this.#goalAlternatives[goalCount] = alternativesBefore;
        this.#goals[goalCount++] = goal;
      }
    }
    this.#goalAlternatives[goalCount] = alternatives;
    this.#alternativeRows[alternatives] = listed;
    this.#goalCount = goalCount;
    this.#number(listed, prices);
    return base;
  }
  #stateOf(row: number, fixed: Int8Array): number {
    let state = rowDead;
    for (let b = this.#model.bagsStart[row] as number; b < (this.#model.bagsStart[row + 1] as number); b++) {
      const is = fixed[this.#model.bagsOfRow[b] as number] as number;
      if (is === 1) return rowReached;
      if (is === free) state = rowOpen;
    }
    return state;
  }
  #number(listed: number, prices: Float64Array): void {
    const model = this.#model;
    const numberOf = this.#numberOf;
    numberOf.fill(-1);
    let rowCount = 0;
    for (let k = 0; k < listed; k++) {
      const row = this.#alternativeRowList[k] as number;
      let number = numberOf[row] as number;
      if (number < 0) {
        number = rowCount++;
        numberOf[row] = number;
        this.#rows[number] = row;
        this.#links[number] = prices[row] as number;
        this.#direction[number] = this.#directionsKept ? (this.#keptDirection[row] as number) : 0;
        const start = model.bagsStart[row] as number;
        this.#bagOfRow[number] = model.bagsStart[row + 1] === start + 1 ? (model.bagsOfRow[start] as number) : -1;
      }
      this.#alternativeRowList[k] = number;
    }
    this.#directionsKept = false;
    this.#rowCount = rowCount;
  }

  /** Sets the profits to what the pieces rows pay, and charges the goals; worth of the pieces at hand. */
  #pricePieces(v: Float64Array, fixed: Int8Array): number {
    this.#profit.fill(0);
    if (v.length === 0) return 0;
    this.#share.fill(0);
    let worth = 0;
    const { needsStart, needGoal, needPieces, holdsStart, holdBag, holdPieces, have } = this.#pieces;
    for (let m = 0; m < v.length; m++) {
      const price = v[m] as number;
      if (price === 0) continue;
      worth += (have[m] as number) * price;
      for (let k = needsStart[m] as number; k < (needsStart[m + 1] as number); k++) {
        const goal = needGoal[k] as number;
        this.#share[goal] = (this.#share[goal] as number) + price * (needPieces[k] as number);
      }
      for (let k = holdsStart[m] as number; k < (holdsStart[m + 1] as number); k++) {
        const bag = holdBag[k] as number;
        if (fixed[bag] === 1) worth += (holdPieces[k] as number) * price;
        else this.#profit[bag] = (this.#profit[bag] as number) + (holdPieces[k] as number) * price;
      }
    }
    return worth;
  }

  #overdrawn(m: number, fixed: Int8Array): number {
    const { needsStart, needGoal, needPieces, holdsStart, holdBag, holdPieces, have } = this.#pieces;
    let sum = -(have[m] as number);
    for (let k = needsStart[m] as number; k < (needsStart[m + 1] as number); k++)
      if (this.#reached[needGoal[k] as number] === 1) sum += needPieces[k] as number;
    for (let k = holdsStart[m] as number; k < (holdsStart[m + 1] as number); k++) {
      const bag = holdBag[k] as number;
      sum -= (holdPieces[k] as number) * (fixed[bag] === 1 ? 1 : (this.#x[bag] as number));
    }
    return sum;
  }

  /** Fractional knapsack over the free bags at the present profits; fills `x` and returns its worth. */
  #buy(fixed: Int8Array, money: number): number {
    const model = this.#model;
    const [x, profit, ratio, order] = [this.#x, this.#profit, this.#ratio, this.#order];
    for (let j = 0; j < x.length; j++) {
      x[j] = 0;
      const worth = fixed[j] === free ? (profit[j] as number) : 0;
      ratio[j] = worth <= 0 ? -1 : worth / Math.max(model.costs[j] as number, 1e-9);
    }
    // The order changes little from round to round, which insertion sort likes.
    for (let i = 1; i < order.length; i++) {
      const bag = order[i] as number;
      const r = ratio[bag] as number;
      let at = i - 1;
      while (at >= 0 && (ratio[order[at] as number] as number) < r) {
        order[at + 1] = order[at] as number;
        at--;
      }
      order[at + 1] = bag;
    }
    let left = money;
    let worth = 0;
    this.#moneyPrice = 0;
    this.#outsidePrice = 0;
    const isOutside = this.#outside?.isOutside;
    let outsideLeft = this.#outside?.most ?? Number.POSITIVE_INFINITY;
    if (isOutside !== undefined)
      for (let j = 0; j < fixed.length; j++) if (fixed[j] === 1 && isOutside[j] === 1) outsideLeft -= model.costs[j] as number;
    for (let i = 0; i < order.length; i++) {
      const bag = order[i] as number;
      if ((ratio[bag] as number) < 0) break;
      const cost = model.costs[bag] as number;
      const limited = isOutside !== undefined && isOutside[bag] === 1;
      const money = limited ? Math.max(0, Math.min(left, outsideLeft)) : left;
      x[bag] = cost <= money ? 1 : money / cost;
      const paid = cost * (x[bag] as number);
      worth += (profit[bag] as number) * (x[bag] as number);
      left -= paid;
      if (limited) {
        outsideLeft -= paid;
        if (cost > money && money < left + paid && this.#outsidePrice === 0) this.#outsidePrice = ratio[bag] as number;
      }
      if (cost > money && left < 1e-6) {
        this.#moneyPrice = ratio[bag] as number;
        break;
      }
    }
    this.#outsidePrice = Math.max(this.#outsidePrice, this.#moneyPrice);
    return this.#mostColours === Number.POSITIVE_INFINITY ? worth : Math.min(worth, this.#buyWithFewColours(fixed, money, worth));
  }
  /** What one more minor unit of money would bring, in all and for bags outside. */
  #moneyPrice = 0;
  #outsidePrice = 0;
  #outside: BoundQuestion['outside'];

  /**
   * With a limit on colours: at a price of money, each colour is worth the sum of what its bags gain, and the best few colours are taken.
   * Valid at any price of money; a few halvings find a good one. Bags of several colours count as one of none (never too low).
   */
  #buyWithFewColours(fixed: Int8Array, money: number, unlimited: number): number {
    const coloursOf = this.#model.problem.coloursOf ?? [];
    const owned = new Set(this.#model.problem.ownColours ?? []);
    for (let j = 0; j < fixed.length; j++) if (fixed[j] === 1) for (const c of coloursOf[j] ?? []) owned.add(c);
    const bought = new Set<number>();
    for (const c of owned) if (!(this.#model.problem.ownColours ?? []).includes(c)) bought.add(c);
    const room = Math.max(0, this.#mostColours - bought.size);
    let [low, high] = [this.#moneyPrice, 0];
    for (const r of this.#ratio) high = Math.max(high, r);
    low = 0;
    let least = unlimited;
    for (let halving = 0; halving < 12; halving++) {
      const price = (low + high) / 2;
      let worth = price * money;
      let spent = 0;
      this.#colourGain.fill(0);
      for (let j = 0; j < fixed.length; j++) {
        if (fixed[j] !== free) continue;
        const gain = (this.#profit[j] as number) - price * (this.#model.costs[j] as number);
        if (gain <= 0) continue;
        const colours = coloursOf[j] ?? [];
        const only = colours[0];
        if (only !== undefined && colours.length === 1 && !owned.has(only))
          this.#colourGain[only] = (this.#colourGain[only] as number) + gain;
        else {
          worth += gain;
          spent += this.#model.costs[j] as number;
        }
      }
      this.#colourRank.sort((a, b) => (this.#colourGain[b] as number) - (this.#colourGain[a] as number) || a - b);
      const inside = new Set<number>();
      for (let c = 0; c < Math.min(room, this.#colourRank.length); c++) {
        const colour = this.#colourRank[c] as number;
        worth += this.#colourGain[colour] as number;
        inside.add(colour);
      }
      for (let j = 0; j < fixed.length; j++) {
        const colours = coloursOf[j] ?? [];
        const only = colours[0];
        if (fixed[j] !== free || only === undefined || colours.length !== 1 || owned.has(only) || !inside.has(only)) continue;
        if ((this.#profit[j] as number) > price * (this.#model.costs[j] as number)) spent += this.#model.costs[j] as number;
      }
      if (worth < least) least = worth;
      if (spent > money) low = price;
      else high = price;
    }
    return least;
  }

  /** Largest bound of all that was ruled out by fixing, rounded down where values are whole. */
  get largestCut(): number {
    return this.#largestCut;
  }
  #largestCut = Number.NEGATIVE_INFINITY;
  #cut(bound: number): void {
    this.#largestCut = Math.max(this.#largestCut, this.#rounded(bound));
  }

  /** Fixes each bag whose other choice could not beat `beat` even in the relaxation; the money this takes, undefined if nothing was fixed. */
  #fix(fixed: Int8Array, money: number, value: number, beat: number): number | undefined {
    if (this.#mostColours !== Number.POSITIVE_INFINITY) return undefined;
    const model = this.#model;
    let taken: number | undefined;
    for (let j = 0; j < fixed.length; j++) {
      if (fixed[j] !== free) continue;
      const cost = model.costs[j] as number;
      const price = this.#outside?.isOutside[j] === 1 ? this.#outsidePrice : this.#moneyPrice;
      const reduced = (this.#profit[j] as number) - price * cost;
      if (this.#x[j] === 1 && this.#rounded(value - reduced) <= beat) {
        fixed[j] = 1;
        taken = (taken ?? 0) + cost;
        this.#cut(value - reduced);
      } else if (cost > money || (this.#x[j] === 0 && this.#rounded(value + reduced) <= beat)) {
        fixed[j] = 0;
        taken ??= 0;
        if (cost <= money) this.#cut(value + reduced);
      }
    }
    return taken;
  }
}

interface FlatPieces {
  readonly have: Float64Array;
  readonly needsStart: Int32Array;
  readonly needGoal: Int32Array;
  readonly needPieces: Float64Array;
  readonly holdsStart: Int32Array;
  readonly holdBag: Int32Array;
  readonly holdPieces: Float64Array;
}
function flatPieces(rows: readonly CoverPieces[]): FlatPieces {
  const needs = rows.flatMap((row) => row.needs);
  const holds = rows.flatMap((row) => row.holds);
  const starts = (counts: readonly number[]): Int32Array => {
    const out = new Int32Array(counts.length + 1);
    for (const [k, count] of counts.entries()) out[k + 1] = (out[k] as number) + count;
    return out;
  };
  return {
    have: Float64Array.from(rows, (row) => row.have),
    needsStart: starts(rows.map((row) => row.needs.length)),
    needGoal: Int32Array.from(needs, (need) => need.goal),
    needPieces: Float64Array.from(needs, (need) => need.pieces),
    holdsStart: starts(rows.map((row) => row.holds.length)),
    holdBag: Int32Array.from(holds, (hold) => hold.bag),
    holdPieces: Float64Array.from(holds, (hold) => hold.pieces),
  };
}
