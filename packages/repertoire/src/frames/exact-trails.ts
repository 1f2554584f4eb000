import { balloonsAlong } from './balloons-along.ts';
import { type EdgeSet, edgesOf, mostEdgesInSet, without } from './edge-set.ts';
import { eulerTrails } from './euler-trails.ts';
import { type Network, partOf } from './network.ts';
import type { Walk } from './trail.ts';
import { longestSum } from './trail-bound.ts';
import { balloonsBySum } from './trails-by-sum.ts';
import type { Work } from './work.ts';

export const mostExactEdges = mostEdgesInSet;

/** What the search found: `walks` when there are that few, `none` when there are proven to be none, `unknown` when the work was used up. */
export type ExactAnswer = { readonly outcome: 'walks'; readonly walks: readonly Walk[] } | { readonly outcome: 'none' | 'unknown' };

/**
 * Searches for at most `count` balloons of `capacity` for a part of at most `mostExactEdges` edges, and is complete: branch and bound
 * over which balloon makes the most cramped edge, parts that fall apart solved on their own, what is proven of a set of edges remembered.
 * A set of edges is one balloon if it hangs together, fits, and has at most two odd joints (Euler 1736), so orders are not told apart;
 * and if it has one colour, where `colours` gives that of each edge from 0 on, -1 where any will do.
 */
export function exactTrails(part: Network, capacity: number, count: number, work: Work, colours?: Int32Array): ExactAnswer {
  if (part.edgeCount > mostExactEdges) throw new Error(`${part.edgeCount} edges are too many for the exact search`);
  return new ExactSearch(part, capacity, work, colours).answer(count);
}

/** Following edges gives way to matching sums after so many steps, or where the sums of half the edges are fewer. */
const mostFollowSteps = 40_000;
/** What a step of following edges costs. */
const stepsOfFollow = 10;
/** Edges whose balloons are listed to branch over the shortest list; a list this short is not bettered. */
const mostTried = 4;
const few = 2;
/** Steps that looking at a set of edges as a whole costs. */
const stepsOfVisit = 100;

class ExactSearch {
  readonly #part: Network;
  readonly #capacity: number;
  readonly #work: Work;
  readonly #colours: Int32Array | undefined;
  /** Fewest balloons that are proven necessary for a connected set, and the first balloon of an answer with so many. */
  readonly #needed = new Map<EdgeSet, number>();
  readonly #found = new Map<EdgeSet, { readonly count: number; readonly balloon: EdgeSet }>();

  constructor(part: Network, capacity: number, work: Work, colours: Int32Array | undefined) {
    this.#part = part;
    this.#capacity = longestSum(part, capacity);
    this.#work = work;
    this.#colours = colours;
  }

  answer(count: number): ExactAnswer {
    const all = 2 ** this.#part.edgeCount - 1;
    if (!this.#canMake(all, count)) return { outcome: this.#work.left > 0 ? 'none' : 'unknown' };
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
        if (wanted - least > spare || this.#work.left <= 0) return false;
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
    const bound = Math.max(1, odd / 2, Math.ceil(length / this.#capacity), this.#byColour(edges));
    this.#needed.set(group, bound);
    return bound;
  }

  /** What the edges of each colour need by their length. */
  #byColour(edges: readonly number[]): number {
    if (this.#colours === undefined) return 0;
    const lengths = new Map<number, number>();
    for (const edge of edges) {
      const colour = this.#colours[edge] as number;
      if (colour !== -1) lengths.set(colour, (lengths.get(colour) ?? 0) + (this.#part.lengths[edge] as number));
    }
    return [...lengths.values()].reduce((sum, length) => sum + Math.ceil(length / this.#capacity), 0);
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
      this.#work.left -= stepsOfVisit;
      if (this.#work.left <= 0) return false;
      if (!this.#canMake(without(group, balloon), count - 1)) continue;
      this.#found.set(group, { count, balloon });
      return true;
    }
    if (this.#work.left > 0) this.#needed.set(group, count + 1);
    return false;
  }

  /** Every balloon that does not already leave too much for the others, through an edge that has few of them. */
  #balloonsThroughTightest(group: EdgeSet, count: number): Iterable<EdgeSet> {
    const edges = edgesOf(group);
    const degree = this.#degrees(edges);
    const total = edges.reduce((sum, edge) => sum + (this.#part.lengths[edge] as number), 0);
    const odd = degree.reduce((sum, ends) => sum + (ends % 2), 0);
    const bounds = {
      least: total - (count - 1) * this.#capacity,
      most: this.#capacity,
      ...(this.#colours === undefined ? {} : { colours: this.#colours }),
    };
    const along = { set: group, degree, ...bounds, oddRoom: 2 * (count - 1) - odd };
    const tightest = this.#tightest(edges, degree);
    let fewest: readonly EdgeSet[] | undefined;
    for (const edge of new Set([tightest, ...this.#longest(edges)])) {
      const { steps, found } = balloonsAlong(this.#part, edge, along, Math.min(mostFollowSteps, 2 ** (edges.length / 2 - 1)));
      this.#work.left -= stepsOfFollow * steps;
      if (found === undefined) break;
      if (fewest === undefined || found.length < fewest.length) fewest = found;
      if (fewest.length <= few) break;
    }
    return fewest ?? balloonsBySum(this.#part, { through: tightest, among: edges, ...bounds, oddLeft: 2 * (count - 1) }, this.#work);
  }

  #longest(edges: readonly number[]): readonly number[] {
    const { lengths } = this.#part;
    return edges.toSorted((a, b) => (lengths[b] as number) - (lengths[a] as number)).slice(0, mostTried - 1);
  }

  #tightest(edges: readonly number[], degree: Int32Array): number {
    const { jointOfEnd, lengths } = this.#part;
    const ways = (edge: number) =>
      (degree[jointOfEnd[2 * edge] as number] as number) + (degree[jointOfEnd[2 * edge + 1] as number] as number);
    return edges.reduce((best, edge) => {
      const difference = ways(edge) - ways(best) || (lengths[best] as number) - (lengths[edge] as number);
      return difference < 0 ? edge : best;
    });
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

/** An order through a connected set of edges with at most two odd joints. */
function walkThrough(part: Network, edges: readonly number[]): Walk {
  const walk = eulerTrails(partOf(part, edges))[0];
  if (walk === undefined) throw new Error('a balloon without edges');
  return Array.from(walk, (end) => 2 * (edges[end >> 1] as number) + (end & 1));
}
