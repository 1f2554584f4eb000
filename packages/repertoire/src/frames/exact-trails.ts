import { eulerTrails } from './euler-trails.ts';
import { type Network, partOf } from './network.ts';
import type { Walk } from './trail.ts';
import { longestSum } from './trail-bound.ts';
import { balloonsBySum, canListBySum } from './trails-by-sum.ts';

/** A set of edges as a whole number below 2^52: a low and a high half of 26 bits. */
type EdgeSet = number;
const halfBits = 26;
const half = 2 ** halfBits;
export const mostExactEdges = 52;

/** What the search found: `walks` when there are that few, `none` when there are proven to be none, `unknown` when it was stopped. */
export type ExactAnswer = { readonly outcome: 'walks'; readonly walks: readonly Walk[] } | { readonly outcome: 'none' | 'unknown' };

/**
 * Searches for at most `count` balloons of `capacity` for a part of at most `mostExactEdges` edges, and is complete: branch and bound
 * over which balloon makes the most cramped edge, parts that fall apart solved on their own, what is proven of a set of edges remembered.
 * A set of edges is one balloon if it hangs together, fits, and has at most two odd joints (Euler 1736), so orders are not told apart.
 * Visits at most `visits` sets of edges.
 */
export function exactTrails(part: Network, capacity: number, count: number, visits: number): ExactAnswer {
  if (part.edgeCount > mostExactEdges) throw new Error(`${part.edgeCount} edges are too many for the exact search`);
  return new ExactSearch(part, capacity, visits).answer(count);
}

class ExactSearch {
  readonly #part: Network;
  readonly #capacity: number;
  #visitsLeft: number;
  /** Fewest balloons that are proven necessary for a connected set, and the first balloon of an answer with so many. */
  readonly #needed = new Map<EdgeSet, number>();
  readonly #found = new Map<EdgeSet, { readonly count: number; readonly balloon: EdgeSet }>();

  constructor(part: Network, capacity: number, visits: number) {
    this.#part = part;
    this.#capacity = longestSum(part, capacity);
    this.#visitsLeft = visits;
  }

  answer(count: number): ExactAnswer {
    const all = 2 ** this.#part.edgeCount - 1;
    if (!this.#canMake(all, count)) return { outcome: this.#visitsLeft > 0 ? 'none' : 'unknown' };
    const balloons: EdgeSet[] = [];
    this.#collect(all, balloons);
    return { outcome: 'walks', walks: balloons.map((balloon) => walkThrough(this.#part, edgesOf(balloon))) };
  }

  /** Whether a set of edges, connected or not, can be made with at most `count` balloons. */
  #canMake(set: EdgeSet, count: number): boolean {
    if (set === 0) return count >= 0;
    const groups = this.#connectedGroups(set);
    let spare = count;
    for (const group of groups) spare -= this.#bound(group);
    for (const group of groups.toSorted((a, b) => a - b)) {
      if (spare < 0) return false;
      const least = this.#bound(group);
      let wanted = least;
      while (!this.#canMakeGroup(group, wanted)) {
        wanted++;
        if (wanted - least > spare || this.#visitsLeft <= 0) return false;
      }
      spare -= wanted - least;
    }
    return true;
  }

  #bound(group: EdgeSet): number {
    const known = this.#needed.get(group);
    if (known !== undefined) return known;
    const edges = edgesOf(group);
    const length = edges.reduce((sum, edge) => sum + (this.#part.lengths[edge] as number), 0);
    const odd = this.#degrees(edges).reduce((sum, ends) => sum + (ends % 2), 0);
    const bound = Math.max(1, odd / 2, Math.ceil(length / this.#capacity));
    this.#needed.set(group, bound);
    return bound;
  }

  #canMakeGroup(group: EdgeSet, count: number): boolean {
    const found = this.#found.get(group);
    if (found !== undefined && found.count <= count) return true;
    if (this.#bound(group) > count) return false;
    if (count === 1) {
      this.#found.set(group, { count: 1, balloon: group });
      return true;
    }
    for (const balloon of this.#balloonsThroughTightest(group, count)) {
      this.#visitsLeft--;
      if (this.#visitsLeft <= 0) return false;
      if (!this.#canMake(without(group, balloon), count - 1)) continue;
      this.#found.set(group, { count, balloon });
      return true;
    }
    if (this.#visitsLeft > 0) this.#needed.set(group, count + 1);
    return false;
  }

  /** Every balloon, fullest first, through the edge with the fewest ways on, that does not already leave too much for the others. */
  #balloonsThroughTightest(group: EdgeSet, count: number): readonly EdgeSet[] {
    const edges = edgesOf(group);
    const degree = this.#degrees(edges);
    const { jointOfEnd, lengths } = this.#part;
    const ways = (edge: number) =>
      (degree[jointOfEnd[2 * edge] as number] as number) + (degree[jointOfEnd[2 * edge + 1] as number] as number);
    const tightest = edges.reduce((best, edge) => {
      const difference = ways(edge) - ways(best) || (lengths[best] as number) - (lengths[edge] as number);
      return difference < 0 ? edge : best;
    });
    const total = edges.reduce((sum, edge) => sum + (lengths[edge] as number), 0);
    const odd = degree.reduce((sum, ends) => sum + (ends % 2), 0);
    const least = total - (count - 1) * this.#capacity;
    const list = new BalloonList(this.#part, this.#capacity, group, degree, least, 2 * (count - 1) - odd);
    const bySum = canListBySum(this.#part, edges);
    const mostVisits = bySum ? Math.min(this.#visitsLeft, visitsBeforeSums) : this.#visitsLeft;
    const visits = list.from(tightest, mostVisits);
    this.#visitsLeft -= visits;
    if (!bySum || visits < mostVisits) return list.fullestFirst();
    this.#visitsLeft -= Math.ceil(2 ** (edges.length / 2) / sumsPerVisit);
    const demand = { through: tightest, among: edges, least, most: this.#capacity, oddLeft: 2 * (count - 1) };
    const { looked, found } = balloonsBySum(this.#part, demand, Math.max(0, this.#visitsLeft) * stepsPerVisit);
    this.#visitsLeft -= Math.ceil(looked / stepsPerVisit);
    if (found === undefined) this.#visitsLeft = 0;
    return found ?? [];
  }

  #degrees(edges: readonly number[]): Int32Array {
    const degree = new Int32Array(this.#part.jointCount);
    for (const edge of edges) {
      for (let end = 2 * edge; end < 2 * edge + 2; end++) {
        const joint = this.#part.jointOfEnd[end] as number;
        degree[joint] = (degree[joint] as number) + 1;
      }
    }
    return degree;
  }

  #connectedGroups(set: EdgeSet): readonly EdgeSet[] {
    const parent = Int32Array.from({ length: this.#part.jointCount }, (_, joint) => joint);
    const root = (joint: number): number => {
      let top = joint;
      while (parent[top] !== top) top = parent[top] as number;
      return top;
    };
    const edges = edgesOf(set);
    for (const edge of edges) parent[root(this.#part.jointOfEnd[2 * edge] as number)] = root(this.#part.jointOfEnd[2 * edge + 1] as number);
    const groups = new Map<number, EdgeSet>();
    for (const edge of edges) {
      const top = root(this.#part.jointOfEnd[2 * edge] as number);
      groups.set(top, (groups.get(top) ?? 0) + 2 ** edge);
    }
    return [...groups.values()];
  }

  #collect(set: EdgeSet, balloons: EdgeSet[]): void {
    if (set === 0) return;
    for (const group of this.#connectedGroups(set)) {
      const found = this.#found.get(group);
      if (found === undefined) throw new Error(`a set of edges that was said to be made and is not: ${group}`);
      balloons.push(found.balloon);
      this.#collect(without(group, found.balloon), balloons);
    }
  }
}

/** The balloons through one edge inside a set of edges: first on from its far joint, then on from its near one. */
class BalloonList {
  readonly #part: Network;
  readonly #capacity: number;
  readonly #group: EdgeSet;
  readonly #degree: Int32Array;
  readonly #leastLength: number;
  readonly #parityRoom: number;
  readonly #lengthOf = new Map<EdgeSet, number>();
  #steps = 0;
  #mostSteps = 0;

  constructor(part: Network, capacity: number, group: EdgeSet, degree: Int32Array, leastLength: number, parityRoom: number) {
    this.#part = part;
    this.#capacity = capacity;
    this.#group = group;
    this.#degree = degree;
    this.#leastLength = leastLength;
    this.#parityRoom = parityRoom;
  }

  /** Returns the work done, in the measure of visits. */
  from(edge: number, mostSteps: number): number {
    this.#mostSteps = mostSteps * stepsPerVisit;
    const { jointOfEnd, lengths } = this.#part;
    this.#onward(jointOfEnd[2 * edge + 1] as number, jointOfEnd[2 * edge] as number, 2 ** edge, lengths[edge] as number, false);
    return Math.floor(this.#steps / stepsPerVisit);
  }

  fullestFirst(): readonly EdgeSet[] {
    return [...this.#lengthOf].toSorted((a, b) => b[1] - a[1]).map(([set]) => set);
  }

  #onward(head: number, tail: number, set: EdgeSet, length: number, headDone: boolean): void {
    this.#steps++;
    if (this.#steps > this.#mostSteps) return;
    if (!headDone) this.#onward(tail, head, set, length, true);
    else if (length >= this.#leastLength && this.#parityFits(head, tail)) this.#lengthOf.set(set, length);
    const { first, ends, jointOfEnd, lengths } = this.#part;
    for (let place = first[head] as number; place < (first[head + 1] as number); place++) {
      const end = ends[place] as number;
      const next = length + (lengths[end >> 1] as number);
      if (next > this.#capacity || !has(this.#group, end >> 1) || has(set, end >> 1)) continue;
      this.#onward(jointOfEnd[end ^ 1] as number, tail, set + 2 ** (end >> 1), next, headDone);
    }
  }

  /** Taking a balloon away turns the joints it ends at from odd to even and back; the rest must not have too many odd ones. */
  #parityFits(head: number, tail: number): boolean {
    if (head === tail) return this.#parityRoom >= 0;
    const turned = (joint: number) => ((this.#degree[joint] as number) % 2 === 1 ? -1 : 1);
    return turned(head) + turned(tail) <= this.#parityRoom;
  }
}
const stepsPerVisit = 20;
/** Following edges gives way to matching sums after so much work; what that costs goes with the sums of half the edges. */
const visitsBeforeSums = 2000;
const sumsPerVisit = 500;

/** An order through a connected set of edges with at most two odd joints. */
function walkThrough(part: Network, edges: readonly number[]): Walk {
  const walk = eulerTrails(partOf(part, edges))[0];
  if (walk === undefined) throw new Error('a balloon without edges');
  return Array.from(walk, (end) => 2 * (edges[end >> 1] as number) + (end & 1));
}

function has(set: EdgeSet, edge: number): boolean {
  return edge < halfBits ? ((set % half) & (1 << edge)) !== 0 : (Math.floor(set / half) & (1 << (edge - halfBits))) !== 0;
}

const without = (set: EdgeSet, subset: EdgeSet): EdgeSet => set - subset;

function edgesOf(set: EdgeSet): readonly number[] {
  const edges: number[] = [];
  for (let edge = 0, rest = set; rest > 0; edge++, rest = Math.floor(rest / 2)) if (rest % 2 === 1) edges.push(edge);
  return edges;
}
