import { Blossoms, none } from './blossoms.ts';
import { EventHeap } from './event-heap.ts';
import type { Work } from './work.ts';

/** Which vertices may be paired at which cost: pair k joins `from[k]` and `to[k]`, both from 0 (included) to `count` (not included). */
export interface CostedPairs {
  readonly count: number;
  readonly from: ArrayLike<number>;
  readonly to: ArrayLike<number>;
  /** Whole numbers, not negative. */
  readonly costs: ArrayLike<number>;
}

/** What came of a matching. */
export interface SparseMatching {
  /** Partner of each vertex, -1 for one alone. */
  readonly partners: Int32Array;
  /** Costs of the pairs. */
  readonly cost: number;
  readonly alone: number;
  /** No matching with so many alone costs less among the pairs given; equal to `cost` unless the work was used up. */
  readonly least: number;
  /** A pair that was not given can make the matching cheaper only if it costs less than the reach of the two, less what the rings around both take off. */
  readonly reach: Float64Array;
  readonly ringsAround: (vertex: number) => (other: number) => number;
}

/**
 * Least sum of costs and prices of being alone: each vertex without partner costs `price / 2`; with an infinite price, all are paired,
 * which must be possible. Exact, one tree grown at a time from each vertex without partner, only that tree's values changed
 * (J. Edmonds 1965; Z. Galil, ACM Computing Surveys 18 (1986) 23-38; trees one by one and pairs in a heap as in W. Cook and A. Rohe,
 * "Computing minimum-weight perfect matchings", INFORMS J. Computing 11 (1999) 138-148). Sum of costs below 2^50.
 * @example sparseMatching({ count: 4, from: [0, 1, 2], to: [1, 2, 3], costs: [5, 1, 5] }, Infinity, { left: 1e6 }).cost // -> 10
 */
export function sparseMatching(pairs: CostedPairs, price: number, work: Work): SparseMatching {
  return new SparseSearch(pairs, price, work).matched();
}

const unreached = 0;
const outer = 1;
const inner = 2;
const onTheWay = 5;

class SparseSearch {
  readonly #pairs: CostedPairs;
  readonly #mayBeAlone: boolean;
  /** Pairs are worth this less their cost. */
  readonly #worth: number;
  readonly #rings: Blossoms;
  readonly #work: Work;
  /** Sides of pairs at each vertex that lie at the other end. */
  readonly #first: Int32Array;
  readonly #sides: Int32Array;
  /** Twice the value of each vertex, and the value of each blossom; while in the tree, as of the moment when nothing had moved yet. */
  readonly #value: Float64Array;
  readonly #label: Int8Array;
  /** Side, at the other end, of the pair by which an outermost one got its label. */
  readonly #labelSide: Int32Array;
  readonly #events = new EventHeap();
  /** By how much the values in the tree have moved. */
  #moved = 0;
  #tree: number[] = [];

  constructor(pairs: CostedPairs, price: number, work: Work) {
    const { count, from, to, costs } = pairs;
    let dearest = 0;
    for (let pair = 0; pair < costs.length; pair++) dearest = Math.max(dearest, costs[pair] as number);
    this.#pairs = pairs;
    this.#work = work;
    this.#mayBeAlone = price !== Number.POSITIVE_INFINITY;
    this.#worth = this.#mayBeAlone ? price : 2 * dearest;
    this.#rings = new Blossoms(pairs);
    this.#first = new Int32Array(count + 1);
    for (const vertex of this.#rings.vertexOf) this.#first[vertex + 1] = (this.#first[vertex + 1] as number) + 1;
    for (let vertex = 0; vertex < count; vertex++)
      this.#first[vertex + 1] = (this.#first[vertex + 1] as number) + (this.#first[vertex] as number);
    const next = this.#first.slice(0, count);
    this.#sides = new Int32Array(2 * costs.length);
    this.#value = new Float64Array(2 * count);
    for (let pair = 0; pair < costs.length; pair++) {
      this.#addSide(next, from[pair] as number, 2 * pair + 1);
      this.#addSide(next, to[pair] as number, 2 * pair);
    }
    this.#label = new Int8Array(2 * count);
    this.#labelSide = new Int32Array(2 * count).fill(none);
  }

  matched(): SparseMatching {
    this.#pairTight();
    const { count, mate } = this.#rings;
    for (let vertex = 0; vertex < count && this.#work.left > 0; vertex++) {
      if (mate[vertex] === none && !(this.#mayBeAlone && this.#value[vertex] === 0)) this.#grow(vertex);
    }
    return this.#result();
  }

  #addSide(next: Int32Array, vertex: number, side: number): void {
    const place = next[vertex] as number;
    this.#sides[place] = side;
    next[vertex] = place + 1;
    this.#value[vertex] = Math.max(this.#value[vertex] as number, this.#worthOf(side >> 1));
  }

  #worthOf(pair: number): number {
    return this.#worth - (this.#pairs.costs[pair] as number);
  }

  /** Pairs that no value has to move for. */
  #pairTight(): void {
    const { mate, vertexOf } = this.#rings;
    for (let pair = 0; pair < this.#pairs.costs.length; pair++) {
      const [u, v] = [vertexOf[2 * pair] as number, vertexOf[2 * pair + 1] as number];
      if (u === v || mate[u] !== none || mate[v] !== none) continue;
      if ((this.#value[u] as number) + (this.#value[v] as number) > 2 * this.#worthOf(pair)) continue;
      mate[u] = 2 * pair + 1;
      mate[v] = 2 * pair;
    }
  }

  /** Grows the tree from a vertex without partner until one more is paired, or one is left alone as the cheapest way. */
  #grow(root: number): void {
    this.#moved = 0;
    this.#tree = [];
    this.#events.clear();
    this.#labelOuter(this.#rings.outermost(root), none);
    while (!this.#nextEvent()) {
      if (this.#work.left <= 0) break;
    }
    for (const x of this.#tree) if (this.#label[x] !== unreached) this.#settle(x);
  }

  /** Returns whether the tree is done. */
  #nextEvent(): boolean {
    const key = this.#events.key;
    const event = this.#events.pop();
    if (event === undefined) throw new Error('there is no way to pair all');
    this.#work.left -= 4;
    if (event >= 2 * this.#rings.count) return this.#pairEvent(event - 2 * this.#rings.count, key);
    if (this.#rings.isBlossom(event)) {
      const due = this.#rings.base[event] !== none && this.#rings.parentOf(event) === none && this.#label[event] === inner;
      if (!due || (this.#value[event] as number) !== key) return false;
      this.#moved = key;
      this.#expand(event);
      return false;
    }
    if (this.#labelOf(event) !== outer || (this.#value[event] as number) !== key) return false;
    this.#moved = key;
    this.#swapToRoot(event, none);
    return true;
  }

  #pairEvent(pair: number, key: number): boolean {
    const { vertexOf, mate, base } = this.#rings;
    const [u, v] = [vertexOf[2 * pair] as number, vertexOf[2 * pair + 1] as number];
    if (this.#rings.outermost(u) === this.#rings.outermost(v)) return false;
    const due = this.#dueAt(pair);
    if (due !== key) {
      if (due > key && due !== Number.POSITIVE_INFINITY) this.#events.push(pair + 2 * this.#rings.count, due);
      return false;
    }
    this.#moved = key;
    const [labelU, labelV] = [this.#labelOf(u), this.#labelOf(v)];
    if (labelU === outer && labelV === outer) {
      this.#shrink(pair);
      return false;
    }
    const side = labelU === outer ? 2 * pair + 1 : 2 * pair;
    const reached = this.#rings.outermost(vertexOf[side] as number);
    const reachedMate = mate[base[reached] as number] as number;
    if (reachedMate === none) {
      this.#rings.turn(reached, vertexOf[side] as number);
      mate[vertexOf[side] as number] = side ^ 1;
      this.#swapToRoot(vertexOf[side ^ 1] as number, side);
      return true;
    }
    this.#labelInner(reached, side ^ 1);
    this.#labelOuter(this.#rings.outermost(vertexOf[reachedMate] as number), reachedMate ^ 1);
    return false;
  }

  /** When a pair becomes tight, in movement of the tree; infinite if it does not as things are. */
  #dueAt(pair: number): number {
    const { vertexOf } = this.#rings;
    const [u, v] = [vertexOf[2 * pair] as number, vertexOf[2 * pair + 1] as number];
    const [labelU, labelV] = [this.#labelOf(u), this.#labelOf(v)];
    const slack = this.#valueNow(u) + this.#valueNow(v) - 2 * this.#worthOf(pair);
    if (labelU === outer && labelV === outer) return this.#moved + slack / 2;
    const grows = (labelU === outer && labelV === unreached) || (labelU === unreached && labelV === outer);
    return grows ? this.#moved + slack : Number.POSITIVE_INFINITY;
  }

  #labelOf(vertex: number): number {
    return this.#label[this.#rings.outermost(vertex)] as number;
  }

  #valueNow(vertex: number): number {
    const label = this.#labelOf(vertex);
    const value = this.#value[vertex] as number;
    if (label === unreached) return value;
    return label === outer ? value - this.#moved : value + this.#moved;
  }

  #labelOuter(x: number, side: number): void {
    this.#label[x] = outer;
    this.#labelSide[x] = side;
    this.#tree.push(x);
    const vertices = this.#leaves(x);
    for (const vertex of vertices) this.#value[vertex] = (this.#value[vertex] as number) + this.#moved;
    if (this.#rings.isBlossom(x)) this.#value[x] = (this.#value[x] as number) - this.#moved;
    for (const vertex of vertices) this.#look(vertex);
  }

  #labelInner(x: number, side: number): void {
    this.#label[x] = inner;
    this.#labelSide[x] = side;
    this.#tree.push(x);
    for (const vertex of this.#leaves(x)) this.#value[vertex] = (this.#value[vertex] as number) - this.#moved;
    if (!this.#rings.isBlossom(x)) return;
    this.#value[x] = (this.#value[x] as number) + this.#moved;
    this.#events.push(x, this.#value[x] as number);
  }

  /** Notes when the pairs of an outer vertex become tight, and when it could be left alone. */
  #look(vertex: number): void {
    const stop = this.#first[vertex + 1] as number;
    const around = this.#rings.outermost(vertex);
    if (this.#mayBeAlone) this.#events.push(vertex, this.#value[vertex] as number);
    this.#work.left -= stop - (this.#first[vertex] as number);
    for (let place = this.#first[vertex] as number; place < stop; place++) {
      const side = this.#sides[place] as number;
      if (this.#rings.outermost(this.#rings.vertexOf[side] as number) !== around) this.#note(side >> 1);
    }
  }

  #note(pair: number): void {
    const due = this.#dueAt(pair);
    if (due !== Number.POSITIVE_INFINITY) this.#events.push(pair + 2 * this.#rings.count, due);
  }

  #leaves(x: number): readonly number[] {
    const leaves = this.#rings.leaves(x);
    this.#work.left -= leaves.length;
    return leaves;
  }

  /** Takes an outermost one out of the tree, its values as they are now. */
  #settle(x: number): void {
    const turned = this.#label[x] === outer ? -this.#moved : this.#moved;
    for (const vertex of this.#leaves(x)) this.#value[vertex] = (this.#value[vertex] as number) + turned;
    if (this.#rings.isBlossom(x)) this.#value[x] = (this.#value[x] as number) - turned;
    this.#label[x] = unreached;
    this.#labelSide[x] = none;
  }

  #expand(blossom: number): void {
    const { vertexOf } = this.#rings;
    const entrySide = this.#labelSide[blossom] as number;
    const [members, links] = [this.#rings.membersOf(blossom), this.#rings.linksOf(blossom)];
    this.#settle(blossom);
    this.#rings.expand(blossom);
    const entry = members.indexOf(this.#rings.outermost(vertexOf[entrySide ^ 1] as number));
    const forward = entry % 2 === 1;
    const length = members.length;
    let side = entrySide;
    let at = entry;
    while (at !== (forward ? length : 0)) {
      this.#labelInner(members[at] as number, side);
      const next = at + (forward ? 1 : -1);
      const matched = forward ? (links[at] as number) : (links[next] as number) ^ 1;
      this.#labelOuter(members[next] as number, matched);
      at = next + (forward ? 1 : -1);
      side = forward ? (links[next] as number) : (links[at] as number) ^ 1;
    }
    this.#labelInner(members[0] as number, side);
    for (const member of members) if (this.#label[member] === unreached) this.#lookBack(member);
  }

  /** Notes the pairs between a member that is free again and the outer ones. */
  #lookBack(member: number): void {
    for (const vertex of this.#rings.leaves(member)) {
      const stop = this.#first[vertex + 1] as number;
      this.#work.left -= stop - (this.#first[vertex] as number);
      for (let place = this.#first[vertex] as number; place < stop; place++) this.#note((this.#sides[place] as number) >> 1);
    }
  }

  #shrink(pair: number): void {
    const { vertexOf } = this.#rings;
    const meeting = this.#meeting(vertexOf[2 * pair] as number, vertexOf[2 * pair + 1] as number);
    const members: number[] = [];
    const links: number[] = [];
    for (let x = this.#rings.outermost(vertexOf[2 * pair] as number); x !== meeting; ) {
      const up = this.#labelSide[x] as number;
      members.push(x);
      links.push(up);
      x = this.#rings.outermost(vertexOf[up] as number);
    }
    members.push(meeting);
    members.reverse();
    links.reverse();
    links.push(2 * pair);
    for (let x = this.#rings.outermost(vertexOf[2 * pair + 1] as number); x !== meeting; ) {
      const up = this.#labelSide[x] as number;
      members.push(x);
      links.push(up ^ 1);
      x = this.#rings.outermost(vertexOf[up] as number);
    }
    const side = this.#labelSide[meeting] as number;
    const wereInner: number[] = [];
    for (const member of members) {
      const turned = this.#label[member] === outer ? -this.#moved : this.#moved;
      if (this.#label[member] === inner) this.#rings.leaves(member, wereInner);
      if (this.#rings.isBlossom(member)) this.#value[member] = (this.#value[member] as number) - turned;
      this.#label[member] = unreached;
      this.#labelSide[member] = none;
    }
    const blossom = this.#rings.shrink(members, links);
    this.#label[blossom] = outer;
    this.#labelSide[blossom] = side;
    this.#tree.push(blossom);
    this.#value[blossom] = -this.#moved;
    this.#work.left -= members.length + wereInner.length;
    for (const vertex of wereInner) this.#value[vertex] = (this.#value[vertex] as number) + 2 * this.#moved;
    for (const vertex of wereInner) this.#look(vertex);
  }

  /** Outermost one where the ways to the root from two outer vertices meet. */
  #meeting(u: number, v: number): number {
    const { vertexOf } = this.#rings;
    const marked: number[] = [];
    let [x, y] = [this.#rings.outermost(u), this.#rings.outermost(v)];
    for (;;) {
      if (x !== none) {
        if (this.#label[x] === onTheWay) break;
        this.#label[x] = onTheWay;
        marked.push(x);
        const side = this.#labelSide[x] as number;
        const above = side === none ? none : this.#rings.outermost(vertexOf[side] as number);
        x = above === none ? none : this.#rings.outermost(vertexOf[this.#labelSide[above] as number] as number);
      }
      if (y !== none) [x, y] = [y, x];
    }
    for (const one of marked) this.#label[one] = outer;
    return x;
  }

  /** Gives an outer vertex the mate `side` (or none) and swaps matched and unmatched pairs from there to the root. */
  #swapToRoot(start: number, startSide: number): void {
    const { vertexOf, mate } = this.#rings;
    let [vertex, side] = [start, startSide];
    for (;;) {
      const around = this.#rings.outermost(vertex);
      this.#rings.turn(around, vertex);
      mate[vertex] = side;
      const up = this.#labelSide[around] as number;
      if (up === none) return;
      const innerOne = this.#rings.outermost(vertexOf[up] as number);
      const through = this.#labelSide[innerOne] as number;
      const entered = vertexOf[through ^ 1] as number;
      this.#rings.turn(innerOne, entered);
      mate[entered] = through;
      vertex = vertexOf[through] as number;
      side = through ^ 1;
    }
  }

  #result(): SparseMatching {
    const { count, mate, vertexOf } = this.#rings;
    const partners = Int32Array.from(mate, (side) => (side === none ? none : (vertexOf[side] as number)));
    let [cost, alone, worth] = [0, 0, 0];
    for (let vertex = 0; vertex < count; vertex++) {
      const side = mate[vertex] as number;
      if (side === none) alone++;
      else cost += (this.#pairs.costs[side >> 1] as number) / 2;
      worth += (this.#value[vertex] as number) / 2;
    }
    for (const blossom of this.#rings.inUse()) {
      worth += (this.#value[blossom] as number) * ((this.#rings.leaves(blossom).length - 1) / 2);
    }
    const least = (this.#worth * (count - alone)) / 2 - worth;
    const reach = Float64Array.from({ length: count }, (_, vertex) => (this.#worth - (this.#value[vertex] as number)) / 2);
    return { partners, cost, alone, least, reach, ringsAround: (vertex) => this.#ringsAround(vertex) };
  }

  #ringsAround(vertex: number): (other: number) => number {
    const taken = new Map<number, number>();
    const rings: number[] = [];
    for (let ring = this.#rings.parentOf(vertex); ring !== none; ring = this.#rings.parentOf(ring)) rings.push(ring);
    let sum = 0;
    for (const ring of rings.toReversed()) {
      sum += this.#value[ring] as number;
      taken.set(ring, sum);
    }
    return (other) => {
      if (rings.length === 0) return 0;
      for (let ring = this.#rings.parentOf(other); ring !== none; ring = this.#rings.parentOf(ring)) {
        const both = taken.get(ring);
        if (both !== undefined) return both;
      }
      return 0;
    };
  }
}
