import { eulerTrails } from './euler-trails.ts';
import { type Network, partOf } from './network.ts';
import { nearestOutside, type PooledBound, tightestBound } from './pooled-bound.ts';
import { withPopped } from './popped-trails.ts';
import { putTogether, type Step, type Steps } from './putting-together.ts';
import { canStop, dominates, goneOn, joined, type Made, mostThatMeet, type Ready, type Stretch, type Way } from './stretches.ts';
import type { Work } from './work.ts';

/** What the search found: the part with its popped edges and walks through it, `none` when so few balloons are proven not to do, else `unknown`. */
export type StretchAnswer =
  | { readonly outcome: 'walks'; readonly doubled: Network; readonly walks: readonly (readonly number[])[] }
  | { readonly outcome: 'none' | 'unknown' };

/** Ways that are kept at each step: few at first, and more only where they have not sufficed. */
const widths = { narrow: [30, 300, 3000], wide: [30_000] } as const;
export type SearchWidth = keyof typeof widths;
/** Above, ways are thinned out while they are found. */
const crowdOfWidths = 20;
/** With more joints open at a time it is not tried. */
const mostPlaces = 6;
const stepsOfWay = 60;
const stepsOfComparison = 5;

/**
 * Fewest balloons with pops for a connected part, for one number of balloons after another. Puts the part together step by step and keeps, at each,
 * the ways in which balloons can have made what is there: only what the rest needs to know of them, none that another does better, and none that
 * would come to more rubber and ends than there are (dynamic programming over a tree decomposition, after S. Arnborg and A. Proskurowski 1989, with
 * dominance). Complete as long as nothing is thinned out.
 */
export class StretchSearch {
  readonly #part: Network;
  readonly #capacity: number;
  readonly #steps: Steps;
  readonly #nearest: readonly Float64Array[];
  /** How often an edge is gone along to come back to where it begins. */
  readonly #timesBack: number;

  constructor(part: Network, capacity: number) {
    this.#part = part;
    this.#capacity = capacity;
    this.#steps = putTogether(part);
    this.#nearest = nearestOutside(part, this.#steps);
    this.#timesBack = part.jointOfEnd.some((joint, end) => end % 2 === 0 && joint === part.jointOfEnd[end + 1]) ? 1 : 2;
  }

  answer(count: number, width: SearchWidth, work: Work): StretchAnswer {
    if (this.#steps.places > mostPlaces) return { outcome: 'unknown' };
    const bound = tightestBound(this.#part, this.#steps, count, this.#capacity);
    if (bound.whole > count * (this.#capacity + 2 * bound.price)) return { outcome: 'none' };
    for (const most of widths[width]) {
      const run = new Run(this.#part, this.#capacity, this.#steps, this.#nearest, this.#timesBack, bound, count, most, work);
      const way = run.cheapest();
      if (way !== undefined) return { outcome: 'walks', ...this.#walks(way) };
      if (work.left <= 0) return { outcome: 'unknown' };
      if (!run.thinned) return { outcome: 'none' };
    }
    return { outcome: 'unknown' };
  }

  /** The second time that an edge is gone along, by whichever balloon, makes it a popped one. */
  #walks({ balloons }: Way): { readonly doubled: Network; readonly walks: readonly (readonly number[])[] } {
    const { edgeCount } = this.#part;
    const isMade = new Uint8Array(edgeCount);
    const popped: number[] = [];
    const collect = ({ edge, times, before }: Made, list: number[]): readonly number[] => {
      for (let time = 0; time < times; time++) {
        list.push(isMade[edge] === 0 ? edge : edgeCount + popped.push(edge) - 1);
        isMade[edge] = 1;
      }
      for (const part of before) collect(part, list);
      return list;
    };
    const lists: (readonly number[])[] = [];
    for (let its = balloons; its !== undefined; its = its.others) lists.push(collect(its.balloon, []));
    const doubled = withPopped(this.#part, popped);
    return { doubled, walks: lists.map((edges) => walkThrough(doubled, edges)) };
  }
}

function walkThrough(doubled: Network, edges: readonly number[]): readonly number[] {
  const [walk, ...others] = eulerTrails(partOf(doubled, edges));
  if (walk === undefined || others.length > 0) throw new Error(`a balloon in ${others.length + 1} pieces`);
  return Array.from(walk, (end) => 2 * (edges[end >> 1] as number) + (end & 1));
}

/** One look with so many ways kept. */
class Run {
  /** Whether a way was left out that might have led on. */
  thinned = false;
  readonly #part: Network;
  readonly #capacity: number;
  readonly #steps: readonly Step[];
  readonly #nearest: readonly Float64Array[];
  readonly #timesBack: number;
  readonly #bound: PooledBound;
  readonly #count: number;
  readonly #width: number;
  readonly #work: Work;
  /** Rubber and ends of one balloon, and of all. */
  readonly #worth: number;
  readonly #most: number;
  /** Of the step that is being done: what is outside at least by odd places, at all, and the shortest edge to come at each place. */
  #outside: Float64Array = new Float64Array(0);
  #leastOutside = 0;
  #shortest: Float64Array = new Float64Array(0);
  #found: Way[] = [];
  /** What takes more than this is not kept. */
  #limit = 0;

  constructor(
    part: Network,
    capacity: number,
    { steps }: Steps,
    nearest: readonly Float64Array[],
    timesBack: number,
    bound: PooledBound,
    count: number,
    width: number,
    work: Work,
  ) {
    this.#part = part;
    this.#capacity = capacity;
    this.#steps = steps;
    this.#nearest = nearest;
    this.#timesBack = timesBack;
    this.#bound = bound;
    this.#count = count;
    this.#width = width;
    this.#work = work;
    this.#worth = capacity + 2 * bound.price;
    this.#most = count * this.#worth;
  }

  cheapest(): Way | undefined {
    const ways: (readonly Way[])[] = [];
    for (const [number, step] of this.#steps.entries()) {
      this.#outside = this.#bound.outside[number] as Float64Array;
      this.#leastOutside = this.#outside.reduce((a, b) => Math.min(a, b));
      this.#shortest = this.#nearest[number] as Float64Array;
      this.#limit = this.#most;
      this.#found = [];
      this.#take(step, ways);
      this.#thin();
      if (this.#found.length === 0 || this.#work.left <= 0) return undefined;
      ways.push(this.#found);
    }
    return this.#found[0];
  }

  #take(step: Step, ways: (readonly Way[])[]): void {
    if (step.kind === 'nothing') {
      this.#found.push({ ready: 0, balloons: undefined, stretches: [], cost: 0, least: this.#bound.whole });
      return;
    }
    const before = ways[step.after] as readonly Way[];
    ways[step.after] = [];
    if (step.kind === 'beside') {
      this.#layBeside(before, ways[step.beside] as readonly Way[]);
      ways[step.beside] = [];
      return;
    }
    for (const way of before) {
      if (this.#work.left <= 0) return;
      if (step.kind === 'edge') this.#addEdge(way, step);
      else this.#leaveJoint(way, step.place);
    }
  }

  /** Which balloons go along an edge, and whether once or there and back. */
  #addEdge(way: Way, { edge, from, to }: Extract<Step, { kind: 'edge' }>): void {
    const length = this.#part.lengths[edge] as number;
    const leadsOn = [from, to].every((place) => Number.isFinite(this.#shortest[31 - Math.clz32(place)]));
    const atEdge = way.stretches.filter(({ touched }) => (touched & (from | to)) !== 0);
    const elsewhere = way.stretches.filter(({ touched }) => (touched & (from | to)) === 0);
    const taken = new Uint8Array(atEdge.length);
    const along: Stretch[] = [];
    let rubber = this.#limit - way.cost - this.#leastOutside;
    const goAlong = (stretches: readonly Stretch[], goOn: () => void): void => {
      for (let times = 1; times <= 2 && times * length <= rubber; times++) {
        const next = goneOn(stretches, edge, times, length, from, to);
        if (next.used > this.#capacity || next.ends > 2) return;
        along.push(next);
        rubber -= times * length;
        goOn();
        rubber += times * length;
        along.pop();
      }
    };
    const withNew = (): void => {
      this.#work.left -= stepsOfWay;
      if (along.length > 0)
        this.#add(way.ready, way.balloons, [...elsewhere, ...atEdge.filter((_, index) => taken[index] === 0), ...along]);
      if (along.length === 0 || (leadsOn && along.length < this.#count)) goAlong([], withNew);
    };
    const choose = (index: number): void => {
      this.#work.left -= stepsOfWay;
      const its = atEdge[index];
      if (its === undefined) {
        withNew();
        return;
      }
      choose(index + 1);
      if (taken[index] === 1) return;
      taken[index] = 1;
      goAlong([its], () => choose(index + 1));
      for (let place = index + 1; place < atEdge.length; place++) {
        const other = atEdge[place] as Stretch;
        if (taken[place] === 1 || (other.touched & its.touched) !== 0) continue;
        taken[place] = 1;
        goAlong([its, other], () => choose(index + 1));
        taken[place] = 0;
      }
      taken[index] = 0;
    };
    choose(0);
  }

  /** A joint that has all its edges: where a stretch is odd there, its balloon ends there. */
  #leaveJoint(way: Way, place: number): void {
    let { ready, balloons } = way;
    const stretches: Stretch[] = [];
    for (const its of way.stretches) {
      const ends = its.ends + ((its.odd & place) === 0 ? 0 : 1);
      if (ends > 2) return;
      if (its.touched !== place) stretches.push({ ...its, ends, touched: its.touched & ~place, odd: its.odd & ~place });
      else {
        ready++;
        balloons = { balloon: its.made, others: balloons };
      }
    }
    this.#add(ready, balloons, stretches);
  }

  #layBeside(before: readonly Way[], beside: readonly Way[]): void {
    const cheapestFirst = beside.toSorted((a, b) => a.cost - b.cost);
    for (const a of before) {
      for (const b of cheapestFirst) {
        if (a.cost + b.cost + this.#leastOutside > this.#limit || this.#work.left <= 0) break;
        this.#joinWhereTheyMeet(a, b);
      }
    }
  }

  /** Every choice of which stretches of two halves are of one balloon. */
  #joinWhereTheyMeet(a: Way, b: Way): void {
    let { balloons } = a;
    for (let its = b.balloons; its !== undefined; its = its.others) balloons = { balloon: its.balloon, others: balloons };
    /** Stretches so far, each with the places that the second half brought; undefined where joined to another. */
    const all: ({ readonly its: Stretch; readonly brought: number } | undefined)[] = a.stretches.map((its) => ({ its, brought: 0 }));
    const next = (index: number): void => {
      this.#work.left -= stepsOfWay;
      const its = b.stretches[index];
      if (its === undefined)
        this.#add(
          a.ready + b.ready,
          balloons,
          all.flatMap((each) => each?.its ?? []),
        );
      else join(its, index, its, its.touched, 0, 0);
    };
    /** `whole` is the stretch with what it is joined to, which touched `met` before. */
    const join = (its: Stretch, index: number, whole: Stretch, brought: number, met: number, from: number): void => {
      all.push({ its: whole, brought });
      next(index + 1);
      all.pop();
      for (let place = from; place < all.length; place++) {
        const other = all[place];
        if (other === undefined || (other.its.touched & its.touched) === 0) continue;
        if ((other.brought & its.touched) !== 0 || (other.its.touched & met) !== 0) continue;
        const both = joined(whole, other.its);
        if (both.used > this.#capacity || both.ends > 2) continue;
        all[place] = undefined;
        join(its, index, both, brought | other.brought, met | other.its.touched, place + 1);
        all[place] = other;
      }
    };
    next(0);
  }

  /** Keeps a way, with stretches that no edge can follow as ready balloons, unless it takes too much. */
  #add(readyBefore: number, balloonsBefore: Ready | undefined, all: readonly Stretch[]): void {
    let [ready, balloons, cost, odd] = [readyBefore, balloonsBefore, 0, 0];
    const stretches: Stretch[] = [];
    for (const its of all) {
      if (this.#mayGoOn(its)) {
        stretches.push(its);
        cost += its.used + this.#bound.price * its.ends;
        odd ^= its.odd;
      } else if (!canStop(its)) return;
      else {
        ready++;
        balloons = { balloon: its.made, others: balloons };
      }
    }
    cost += ready * this.#worth;
    const least = cost + (this.#outside[odd] as number);
    if (least > this.#limit || ready + mostThatMeet(stretches) > this.#count) return;
    this.#found.push({ ready, balloons, stretches: stretches.sort((a, b) => b.used - a.used), cost, least });
    if (this.#found.length < crowdOfWidths * this.#width) return;
    this.#thin();
    if (this.#found.length === this.#width) this.#limit = (this.#found.at(-1) as Way).least;
  }

  #mayGoOn({ used, ends, touched, odd }: Stretch): boolean {
    const times = ends === 2 && odd === 0 ? this.#timesBack : 1;
    for (let rest = touched; rest !== 0; rest &= rest - 1) {
      if (used + times * (this.#shortest[31 - Math.clz32(rest & -rest)] as number) <= this.#capacity) return true;
    }
    return false;
  }

  /** Leaves the cheapest ways that no other does better. */
  #thin(): void {
    const cheapestFirst = this.#found.sort((a, b) => a.least - b.least || a.ready - b.ready);
    const kept: Way[] = [];
    const costs = new Float64Array(this.#width);
    for (const way of cheapestFirst) {
      if (this.#isDominated(way, kept, costs)) continue;
      if (kept.length === this.#width || this.#work.left <= 0) {
        this.thinned = true;
        break;
      }
      costs[kept.length] = way.cost;
      kept.push(way);
    }
    this.#found = kept;
  }

  /** The costs beside the ways, since many comparisons end with them. */
  #isDominated(way: Way, by: readonly Way[], costs: Float64Array): boolean {
    this.#work.left -= by.length;
    for (let index = 0; index < by.length; index++) {
      if ((costs[index] as number) > way.cost) continue;
      this.#work.left -= stepsOfComparison;
      if (dominates(by[index] as Way, way)) return true;
    }
    return false;
  }
}
