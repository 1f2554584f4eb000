import { Knapsack } from './cover-knapsack.ts';
import { Losses } from './cover-losses.ts';
import type { CoverModel } from './cover-model.ts';
import { free, OpenPart } from './cover-open.ts';

/** How the prices move: found by trial on the problems of `cases/coverage` and on random ones of the same make. */
interface Pace {
  /** The first aim: so much of the way from the first bound down to the value to beat. */
  readonly aim: number;
  /** Rounds without progress before the aim comes nearer ... */
  readonly patience: number;
  /** ... by this factor. */
  readonly shrink: number;
  /** Share of the last direction that is kept. */
  readonly memory: number;
}
const atRoot: Pace = { aim: 1, patience: 20, shrink: 0.6, memory: 0.85 };
const atNode: Pace = { aim: 0.7, patience: 10, shrink: 0.5, memory: 0.75 };
const longRun = 100;
/** Rounds between two looks at what can be fixed. */
const fixEvery = 15;
/** Progress is a bound that falls by this share of the way to the aim. */
const progress = 0.1;

export interface BoundQuestion {
  /** For each bag 1 (in), 0 (out) or {@link free}; the fixing writes here. */
  readonly fixed: Int8Array;
  /** Money left for free bags. */
  readonly money: number;
  /** Prices of the links, one a row of the model, not negative; better ones are written here. */
  readonly prices: Float64Array;
  /** Values that are not above this are of no interest. */
  readonly beat: number;
  readonly rounds: number;
  /** Asked after each round: true ends the rounds early. */
  readonly mustStop?: () => boolean;
}
export interface BoundAnswer {
  /** No answer here has a larger value. */
  readonly bound: number;
  /** For each bag how much the relaxation wants it, 0 to 1, smoothed over the rounds. */
  readonly wanted: Float64Array;
  /** By how much the bound falls at least, at the prices last weighed, when a free bag is put in or out. */
  readonly losses: Losses;
}

/**
 * Upper bound for budgeted coverage by Lagrangian relaxation. The links "a clause is reached only if one of its bags is bought" get
 * prices u >= 0; what is left falls apart into a fractional knapsack over the bags and a choice of the cheapest alternative for each
 * goal (M. L. Fisher, "The Lagrangian relaxation method for solving integer programming problems", Management Science 27 (1981) 1-18).
 * Prices move along smoothed subgradients with B. T. Polyak's step length towards an aim that comes nearer where it is not reached.
 * Any prices give a valid bound; the bound also tells which bags must or cannot be in a better answer.
 */
export class CoverBound {
  readonly #model: CoverModel;
  readonly #open: OpenPart;
  readonly #knapsack: Knapsack;
  readonly #losses: Losses;
  readonly #profit: Float64Array;
  readonly #wanted: Float64Array;
  /** Row by row of the open part. */
  readonly #links: Float64Array;
  readonly #bestLinks: Float64Array;
  readonly #direction: Float64Array;
  readonly #demand: Float64Array;
  /** By row of the model, to bring the direction over a narrowing. */
  readonly #keptDirection: Float64Array;
  #largestCut = Number.NEGATIVE_INFINITY;

  constructor(model: CoverModel) {
    this.#model = model;
    this.#open = new OpenPart(model);
    this.#knapsack = new Knapsack(model);
    this.#losses = new Losses(model);
    this.#profit = new Float64Array(model.bagCount);
    this.#wanted = new Float64Array(model.bagCount);
    this.#links = new Float64Array(model.rowCount);
    this.#bestLinks = new Float64Array(model.rowCount);
    this.#direction = new Float64Array(model.rowCount);
    this.#demand = new Float64Array(model.rowCount);
    this.#keptDirection = new Float64Array(model.rowCount);
  }

  /** Bounds the value of every answer that keeps to `fixed` and `money`, improves the prices, and fixes bags where it can. */
  bound(question: BoundQuestion): BoundAnswer {
    const { fixed, prices, beat, rounds, mustStop } = question;
    const { patience, shrink, memory, ...first } = rounds >= longRun ? atRoot : atNode;
    const answer = (bound: number): BoundAnswer => ({ bound, wanted: this.#wanted, losses: this.#losses });
    let money = question.money;
    this.#wanted.fill(0);
    this.#keptDirection.fill(0);
    this.#narrow(fixed, money, prices);
    let least = Number.POSITIVE_INFINITY;
    let mark = least;
    let aim = least;
    let stale = 0;
    for (let round = 0; round < rounds; round++) {
      const value = this.#value();
      this.#smooth(round);
      if (value < least - 1e-9) {
        least = value;
        this.#bestLinks.set(this.#links);
      }
      if (this.#rounded(least) <= beat) return answer(least);
      if (round === 0) aim = first.aim * (least - beat);
      if (least < mark - progress * aim) {
        mark = least;
        stale = 0;
      } else if (++stale >= patience) {
        mark = least;
        stale = 0;
        aim *= shrink;
      }
      const last = round === rounds - 1;
      if (round % fixEvery === fixEvery - 1 || last) {
        const paid = this.#fix(fixed, money, value, beat);
        if (paid !== undefined) {
          money -= paid;
          if (money < 0) return answer(beat);
          this.#keep(prices, this.#links);
          this.#keep(this.#keptDirection, this.#direction);
          this.#narrow(fixed, money, prices);
          this.#bestLinks.set(this.#links);
          continue;
        }
      }
      if (last || mustStop?.() === true) break;
      const norm = this.#turn(memory);
      if (norm < 1e-12) break; // the relaxed answer keeps every link: the bound is met
      this.#move(Math.max(value - Math.max(beat, least - aim), 1e-9) / norm);
    }
    this.#keep(prices, this.#bestLinks);
    return answer(least);
  }

  /** Largest bound of all that was ruled out by fixing, rounded down where values are whole. */
  get largestCut(): number {
    return this.#largestCut;
  }

  #narrow(fixed: Int8Array, money: number, links: Float64Array): void {
    this.#open.narrow(fixed, money);
    this.#knapsack.take(fixed, money);
    const rows = this.#open.rows;
    for (let k = 0; k < this.#open.rowCount; k++) {
      const row = rows[k] as number;
      this.#links[k] = links[row] as number;
      this.#direction[k] = this.#keptDirection[row] as number;
    }
    this.#payBags();
  }
  #keep(byRow: Float64Array, from: Float64Array): void {
    const rows = this.#open.rows;
    for (let k = 0; k < this.#open.rowCount; k++) byRow[rows[k] as number] = from[k] as number;
  }

  /** The bound at the present prices. */
  #value(): number {
    const gains = this.#sell();
    return this.#open.base + gains + this.#knapsack.buy(this.#profit);
  }
  /** Pays each bag for its links. */
  #payBags(): void {
    this.#profit.fill(0);
    for (let k = 0; k < this.#open.rowCount; k++) this.#payFor(k, this.#links[k] as number);
  }
  #payFor(k: number, price: number): void {
    const profit = this.#profit;
    const { bagOf, bagsFrom, bagList } = this.#open;
    const only = bagOf[k] as number;
    if (only >= 0) profit[only] = (profit[only] as number) + price;
    else
      for (let b = bagsFrom[k] as number; b < (bagsFrom[k + 1] as number); b++) {
        const bag = bagList[b] as number;
        profit[bag] = (profit[bag] as number) + price;
      }
  }
  /** Lets each goal choose its cheapest alternative; the goals' gain. */
  #sell(): number {
    const [links, demand, values] = [this.#links, this.#demand, this.#model.values];
    const { goals, alternativesFrom, rowsFrom, rowList, goalCount, rowCount } = this.#open;
    demand.fill(0, 0, rowCount);
    let gains = 0;
    let a = 0;
    let r = 0;
    for (let k = 0; k < goalCount; k++) {
      let cheapest = Number.POSITIVE_INFINITY;
      let chosen = -1;
      const last = alternativesFrom[k + 1] as number;
      for (; a < last; a++) {
        const end = rowsFrom[a + 1] as number;
        let sum = 0;
        for (; r < end; r++) sum += links[rowList[r] as number] as number;
        if (sum < cheapest) {
          cheapest = sum;
          chosen = a;
        }
      }
      const gain = (values[goals[k] as number] as number) - cheapest;
      if (gain <= 0) continue;
      gains += gain;
      const end = rowsFrom[chosen + 1] as number;
      for (let at = rowsFrom[chosen] as number; at < end; at++) demand[rowList[at] as number] = 1;
    }
    return gains;
  }

  #smooth(round: number): void {
    const [x, wanted] = [this.#knapsack.x, this.#wanted];
    const weight = round === 0 ? 1 : Math.max(0.1, 1 / (round + 1));
    for (let j = 0; j < x.length; j++) wanted[j] = (wanted[j] as number) + weight * ((x[j] as number) - (wanted[j] as number));
  }

  /** Turns the direction of the link prices towards the present subgradient; its squared length. */
  #turn(memory: number): number {
    const [direction, demand, links, x] = [this.#direction, this.#demand, this.#links, this.#knapsack.x];
    const { bagOf, rowCount } = this.#open;
    let norm = 0;
    for (let k = 0; k < rowCount; k++) {
      const bag = bagOf[k] as number;
      let lacks = (demand[k] as number) - (bag >= 0 ? (x[bag] as number) : this.#supplyOf(k));
      if (lacks < 0 && links[k] === 0) lacks = 0;
      const turned = lacks + memory * (direction[k] as number);
      direction[k] = turned;
      norm += turned * turned;
    }
    return norm;
  }
  #supplyOf(k: number): number {
    const { bagsFrom, bagList } = this.#open;
    let supply = 0;
    for (let b = bagsFrom[k] as number; b < (bagsFrom[k + 1] as number); b++) supply += this.#knapsack.x[bagList[b] as number] as number;
    return supply;
  }
  /** Moves the prices, and pays the bags anew. */
  #move(length: number): void {
    const [links, direction, profit, bagOf, rowCount] = [this.#links, this.#direction, this.#profit, this.#open.bagOf, this.#open.rowCount];
    profit.fill(0);
    for (let k = 0; k < rowCount; k++) {
      const next = (links[k] as number) + length * (direction[k] as number);
      const price = Math.max(next, 0);
      links[k] = price;
      const bag = bagOf[k] as number;
      if (bag >= 0) profit[bag] = (profit[bag] as number) + price;
      else this.#payFor(k, price);
    }
  }

  #rounded(bound: number): number {
    return this.#model.wholeValues ? Math.floor(bound + 1e-6) : bound - 1e-9;
  }

  /** Fixes each bag whose other choice could not beat `beat` even in the relaxation; the money this takes, undefined if nothing was fixed. */
  #fix(fixed: Int8Array, money: number, value: number, beat: number): number | undefined {
    this.#losses.weigh(this.#open, this.#links, this.#knapsack, this.#profit, fixed);
    const { ofIn, ofOut } = this.#losses;
    const costs = this.#model.costs;
    let taken: number | undefined;
    for (let bag = 0; bag < fixed.length; bag++) {
      if (fixed[bag] !== free) continue;
      const cost = costs[bag] as number;
      const within = this.#rounded(value - (ofIn[bag] as number));
      const without = this.#rounded(value - (ofOut[bag] as number));
      if (cost > money || within <= beat) {
        fixed[bag] = 0;
        taken ??= 0;
        if (cost <= money) this.#largestCut = Math.max(this.#largestCut, within);
      } else if (without <= beat) {
        fixed[bag] = 1;
        taken = (taken ?? 0) + cost;
        this.#largestCut = Math.max(this.#largestCut, without);
      }
    }
    return taken;
  }
}
