import type { CostedPairs } from './sparse-matching.ts';

export const none = -1;

/**
 * The odd rings that a matching has shrunk, one inside another (J. Edmonds 1965). Vertices are 0 to n - 1, blossoms n to 2n - 1.
 * Pair k has two sides, 2k and 2k + 1; a vertex's mate is the side where its partner is, or none. The representation, members
 * around the ring with the pairs between them, is that of Z. Galil, ACM Computing Surveys 18 (1986) 23-38.
 */
export class Blossoms {
  readonly count: number;
  /** Vertex on each side of each pair. */
  readonly vertexOf: Int32Array;
  readonly mate: Int32Array;
  readonly base: Int32Array;
  /** A blossom around each vertex that was the outermost once, and from there on towards the outermost: R. E. Tarjan's sets (1975). */
  readonly #around: Int32Array;
  readonly #onward: Int32Array;
  readonly #parent: Int32Array;
  readonly #members: number[][] = [];
  /** Of the pair between member i and the next one around, the side that lies in member i. */
  readonly #links: number[][] = [];
  readonly #unused: number[] = [];

  constructor({ count, from, to }: CostedPairs) {
    this.count = count;
    this.vertexOf = new Int32Array(2 * from.length);
    for (let pair = 0; pair < from.length; pair++) {
      this.vertexOf[2 * pair] = from[pair] as number;
      this.vertexOf[2 * pair + 1] = to[pair] as number;
    }
    this.mate = new Int32Array(count).fill(none);
    this.#around = Int32Array.from({ length: count }, (_, vertex) => vertex);
    this.#onward = new Int32Array(2 * count).fill(none);
    this.base = Int32Array.from({ length: 2 * count }, (_, vertex) => (vertex < count ? vertex : none));
    this.#parent = new Int32Array(2 * count).fill(none);
    for (let blossom = 2 * count - 1; blossom >= count; blossom--) this.#unused.push(blossom);
  }

  /** Outermost blossom around a vertex, or the vertex itself. */
  outermost(vertex: number): number {
    const onward = this.#onward;
    let x = this.#around[vertex] as number;
    for (let next = onward[x] as number; next !== none; next = onward[x] as number) {
      const afterNext = onward[next] as number;
      if (afterNext === none) return next;
      onward[x] = afterNext;
      x = afterNext;
    }
    return x;
  }

  isBlossom(x: number): boolean {
    return x >= this.count;
  }

  /** Blossom numbers in use. */
  *inUse(): Generator<number> {
    for (let blossom = this.count; blossom < 2 * this.count; blossom++) if (this.base[blossom] !== none) yield blossom;
  }

  parentOf(x: number): number {
    return this.#parent[x] as number;
  }

  membersOf(blossom: number): readonly number[] {
    return this.#members[blossom - this.count] as number[];
  }

  linksOf(blossom: number): readonly number[] {
    return this.#links[blossom - this.count] as number[];
  }

  /** Adds the vertices inside to a list and returns it. */
  leaves(x: number, list: number[] = []): number[] {
    const waiting = [x];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      if (next < this.count) list.push(next);
      else for (const member of this.membersOf(next)) waiting.push(member);
    }
    return list;
  }

  /** Shrinks a ring: members from the base on, and the links between them. */
  shrink(members: number[], links: number[]): number {
    const blossom = this.#unused.pop();
    if (blossom === undefined) throw new Error(`more blossoms than vertices: ${this.count}`);
    this.base[blossom] = this.base[members[0] as number] as number;
    this.#parent[blossom] = none;
    this.#members[blossom - this.count] = members;
    this.#links[blossom - this.count] = links;
    this.#onward[blossom] = none;
    for (const member of members) {
      this.#parent[member] = blossom;
      this.#onward[member] = blossom;
    }
    return blossom;
  }

  /** Undoes `shrink`; the members are outermost then. */
  expand(blossom: number): void {
    for (const member of this.membersOf(blossom)) {
      this.#parent[member] = none;
      this.#onward[member] = none;
      for (const vertex of this.leaves(member)) this.#around[vertex] = member;
    }
    this.base[blossom] = none;
    this.#unused.push(blossom);
  }

  /** Makes `vertex` the base of everything around it, up to and including `around`, by swapping matched and unmatched pairs inside. */
  turn(around: number, vertex: number): void {
    if (!this.isBlossom(around)) return;
    let member = vertex;
    while (this.#parent[member] !== around) member = this.#parent[member] as number;
    this.turn(member, vertex);
    const members = this.membersOf(around);
    const links = this.linksOf(around);
    const place = members.indexOf(member);
    const length = members.length;
    const forward = place % 2 === 1;
    for (let at = place; at !== (forward ? length : 0); ) {
      at += forward ? 1 : -1;
      const side = forward ? (links[at] as number) : (links[at - 1] as number) ^ 1;
      this.turn(members[at] as number, this.vertexOf[side] as number);
      at += forward ? 1 : -1;
      this.turn(members[at % length] as number, this.vertexOf[side ^ 1] as number);
      this.mate[this.vertexOf[side] as number] = side ^ 1;
      this.mate[this.vertexOf[side ^ 1] as number] = side;
    }
    this.#members[around - this.count] = [...members.slice(place), ...members.slice(0, place)];
    this.#links[around - this.count] = [...links.slice(place), ...links.slice(0, place)];
    this.base[around] = vertex;
  }
}
