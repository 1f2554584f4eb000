import { type Network, oddJoints } from './network.ts';
import { type CostedPairs, type SparseMatching, sparseMatching } from './sparse-matching.ts';
import { treePairs } from './tree-pairs.ts';
import { WaysAround } from './ways-around.ts';
import type { Work } from './work.ts';

/** Ways between odd joints of a part, as the edges that lie on them. */
export interface OddPairs {
  readonly edges: readonly number[];
  /** Their length, and a length that no others are shorter than, in units of the network. */
  readonly length: number;
  readonly least: number;
}

const shortestAt = (part: Network, joint: number): number =>
  part.ends
    .subarray(part.first[joint], part.first[joint + 1])
    .reduce((least, end) => Math.min(least, part.lengths[end >> 1] as number), Number.POSITIVE_INFINITY);

interface Matched {
  readonly partners: Int32Array;
  /** 0 where the work was used up. */
  readonly least: number;
}

/** So many of the nearest odd joints are looked at first for each; all, where there are few. */
const nearest = 10;
const mostForAll = 64;
/** In a very large part, fewer. */
const crowd = 50_000;
const nearestInCrowd = 4;
/** How often pairs that were left out are looked for. */
const mostRounds = 100;
/** So many of them are offered to a joint at once, those that help most. */
const mostAtOnce = 20;
/** Exact while the sum of all costs stays below this. */
const mostSum = 2 ** 50;

/**
 * Pairs the odd joints of a connected part along shortest ways so that `staying` of them are left over and the ways are as short as
 * possible in all. Only near ones are offered as pairs at first; the values of the matching then tell which others might help, and when none
 * is left the answer is the best of all pairs (W. Cook and A. Rohe, INFORMS J. Computing 11 (1999) 138-148). How many stay is settled by a price
 * for staying, since what one pair more costs never falls. When the work is used up the rest is paired along a tree, and `least` says
 * how much too long that may be.
 */
export class OddPairing {
  readonly #part: Network;
  readonly #odd: readonly number[];
  readonly #numbers: Map<number, number>;
  readonly #ways: WaysAround;
  readonly #work: Work;
  readonly #from: number[] = [];
  readonly #to: number[] = [];
  readonly #lengths: number[] = [];
  readonly #offered = new Set<number>();
  /** Half the way to the nearest other odd joint, shortest first. */
  readonly #halves: Float64Array;
  /** Lengths of ways are divided by this and rounded, so that the matching's whole numbers stay exact: 1 unless a frame is miles long. */
  #unit = 1;
  readonly #known = new Map<number, SparseMatching>();
  readonly #settled = new Map<number, Matched>();

  constructor(part: Network, work: Work) {
    this.#part = part;
    this.#work = work;
    this.#odd = oddJoints(part);
    this.#numbers = new Map(this.#odd.map((joint, number) => [joint, number]));
    this.#ways = new WaysAround(part, this.#odd);
    const count = this.#odd.length;
    const most = count <= mostForAll ? count : count > crowd ? nearestInCrowd : nearest;
    this.#halves = new Float64Array(count);
    for (let number = 0; number < count; number++) {
      const start = this.#odd[number] as number;
      this.#halves[number] = shortestAt(part, start) / 2;
      if (this.#work.left <= 0) continue;
      const around = this.#ways.from(start, { most });
      this.#work.left -= 10 * this.#ways.touched;
      this.#halves[number] = this.#ways.lengthTo(around[0] as number) / 2;
      for (const joint of around) this.#offer(number, joint);
    }
    this.#halves.sort();
    for (const [a, b] of treePairs(part, this.#odd).pairs) {
      if (this.#work.left <= 0) break;
      if (this.#offered.has(this.#key(this.#numbers.get(a) as number, this.#numbers.get(b) as number))) continue;
      this.#ways.from(a, { goal: b });
      this.#work.left -= 10 * this.#ways.touched;
      this.#offer(this.#numbers.get(a) as number, b);
    }
  }

  get count(): number {
    return this.#odd.length;
  }

  /** How many stay when two that stay cost `price`, in units of the network. */
  stayingAt(price: number): number {
    return this.#best(Math.round(price / this.#unit)).alone;
  }

  pairs(staying: number): OddPairs {
    if (staying >= this.count) return { edges: [], length: 0, least: 0 };
    const { partners } = this.#matched(staying);
    const twice = new Set<number>();
    const toggle = (edges: readonly number[]): void => {
      for (const edge of edges) if (!twice.delete(edge)) twice.add(edge);
    };
    const left: number[] = [];
    for (const [number, partner] of partners.entries()) {
      const joint = this.#odd[number] as number;
      if (partner === -1) left.push(joint);
      else if (partner > number) toggle(this.#ways.between(joint, this.#odd[partner] as number));
    }
    if (left.length > staying) toggle(treePairs(this.#part, left.slice(staying)).edges);
    const edges = [...twice].sort((a, b) => a - b);
    const length = edges.reduce((sum, edge) => sum + (this.#part.lengths[edge] as number), 0);
    return { edges, length, least: Math.min(length, this.least(staying)) };
  }

  /** A length that no ways between all but `staying` of the odd joints go below. */
  least(staying: number): number {
    if (staying >= this.count) return 0;
    const byNearest = this.#leastByNearest(staying);
    return this.#work.left > 0 ? Math.max(this.#matched(staying).least * this.#unit, byNearest) : byNearest;
  }

  /** Every joint that is paired goes at least halfway to the nearest one. */
  #leastByNearest(staying: number): number {
    let sum = 0;
    for (let number = 0; number < this.count - staying; number++) sum += this.#halves[number] as number;
    return Math.ceil(sum);
  }

  #matched(staying: number): Matched {
    const known = this.#settled.get(staying) ?? this.#settle(staying);
    this.#settled.set(staying, known);
    return known;
  }

  #settle(staying: number): Matched {
    const whole = this.#best(Number.POSITIVE_INFINITY);
    if (this.#work.left <= 0) return { partners: this.#withoutLongest(whole, staying), least: 0 };
    if (staying === 0) return { partners: whole.partners, least: whole.least };
    let few = whole;
    let many: SparseMatching = nonePaired(this.count);
    let [low, high, least] = [0, Number.POSITIVE_INFINITY, 0];
    let price = this.#longestPairs(whole, staying / 2);
    while (high - low > 1) {
      const found = this.#best(price);
      if (this.#work.left <= 0) return { partners: between(few, many, staying, (a, b) => this.#costOf(a, b)), least: 0 };
      least = Math.max(least, found.least + (price * (found.alone - staying)) / 2);
      if (found.alone === staying) return { partners: found.partners, least };
      if (found.alone < staying) [few, high] = [found, price];
      else [many, low] = [found, price];
      const even = Math.floor((2 * (few.cost - many.cost)) / (many.alone - few.alone));
      price = Math.max(low + 1, Math.min(even, high - 1));
    }
    return { partners: between(few, many, staying, (a, b) => this.#costOf(a, b)), least };
  }

  /** Length of the pair that is so many from the longest, as a first guess at the price. */
  #longestPairs({ partners }: SparseMatching, place: number): number {
    const costs = Float64Array.from(partners, (partner, number) => (partner > number ? this.#costOf(number, partner) : 0)).sort();
    return Math.max(1, costs[costs.length - Math.min(costs.length, place)] ?? 0);
  }

  /** The longest pairs taken apart until `staying` are alone. */
  #withoutLongest({ partners, alone }: SparseMatching, staying: number): Int32Array {
    if (alone >= staying) return partners;
    const left = Int32Array.from(partners);
    const pairs = Array.from(partners, (partner, number) => ({ number, partner })).filter(({ number, partner }) => partner > number);
    const costed = pairs.map((pair) => ({ ...pair, cost: this.#costOf(pair.number, pair.partner) })).toSorted((a, b) => b.cost - a.cost);
    for (const { number, partner } of costed.slice(0, Math.max(0, (staying - alone) / 2))) {
      left[number] = -1;
      left[partner] = -1;
    }
    return left;
  }

  /** The best matching at a price per two that stay, over all pairs there are. */
  #best(price: number): SparseMatching {
    const known = this.#known.get(price);
    if (known !== undefined) return known;
    for (let round = 1; ; round++) {
      const offered = this.#from.length;
      const found = sparseMatching(this.#costed(), price, this.#work);
      if (this.#work.left > 0 && offered < (this.count * (this.count - 1)) / 2) this.#offerWithin(found);
      if (this.#from.length > offered && round < mostRounds && this.#work.left > 0) continue;
      if (this.#from.length > offered) this.#work.left = 0;
      this.#known.set(price, found);
      return found;
    }
  }

  /** Offers the pairs that the values of a matching do not rule out. */
  #offerWithin({ reach, ringsAround }: SparseMatching): void {
    for (const [number, joint] of this.#odd.entries()) {
      const far = (reach[number] as number) * this.#unit;
      if (far <= 0 || this.#work.left <= 0) continue;
      const around = this.#ways.from(joint, { length: 2 * far });
      this.#work.left -= 10 * this.#ways.touched;
      const rings = ringsAround(number);
      const short = around.flatMap((joint) => {
        const other = this.#numbers.get(joint) as number;
        const its = (reach[other] as number) * this.#unit;
        const by = far + its - this.#unit / 2 - this.#ways.lengthTo(joint);
        if (its > far || by <= 0 || by <= rings(other) * this.#unit) return [];
        return this.#offered.has(this.#key(number, other)) ? [] : [{ joint, by: by - rings(other) * this.#unit }];
      });
      for (const { joint } of short.toSorted((a, b) => b.by - a.by).slice(0, mostAtOnce)) this.#offer(number, joint);
    }
  }

  /** Offers an odd joint that the last look around `number` has found. */
  #offer(number: number, joint: number): void {
    const other = this.#numbers.get(joint) as number;
    const key = this.#key(number, other);
    if (this.#offered.has(key)) return;
    this.#offered.add(key);
    this.#from.push(number);
    this.#to.push(other);
    const length = this.#ways.lengthTo(joint);
    this.#lengths.push(length);
    this.#unit = Math.max(this.#unit, Math.ceil((length * this.count) / mostSum));
  }

  #key(a: number, b: number): number {
    return a < b ? a * this.count + b : b * this.count + a;
  }

  #costed(): CostedPairs {
    return {
      count: this.count,
      from: this.#from,
      to: this.#to,
      costs: Float64Array.from(this.#lengths, (length) => Math.round(length / this.#unit)),
    };
  }

  #costOf(a: number, b: number): number {
    this.#ways.from(this.#odd[a] as number, { goal: this.#odd[b] as number });
    return Math.round(this.#ways.lengthTo(this.#odd[b] as number) / this.#unit);
  }
}

const nonePaired = (count: number): SparseMatching => ({
  partners: new Int32Array(count).fill(-1),
  cost: 0,
  alone: count,
  least: 0,
  reach: new Float64Array(count),
  ringsAround: () => () => 0,
});

/**
 * A matching that leaves `staying` alone, out of one that leaves fewer and one that leaves more. Where the two differ they are chains of
 * pairs of one and the other; each chain that ends in two joints which only the first pairs is one pair more, and the cheapest are taken.
 */
function between(few: SparseMatching, many: SparseMatching, staying: number, costOf: (a: number, b: number) => number): Int32Array {
  const partners = Int32Array.from(many.partners);
  const chains: { readonly joints: readonly number[]; readonly cost: number }[] = [];
  const done = new Uint8Array(partners.length);
  for (let start = 0; start < partners.length; start++) {
    if (many.partners[start] !== -1 || few.partners[start] === -1 || done[start] === 1) continue;
    const joints = [start];
    let cost = 0;
    let last = start;
    for (let step = 0; ; step++) {
      const next = (step % 2 === 0 ? few : many).partners[last] as number;
      if (next === -1) break;
      cost += step % 2 === 0 ? costOf(last, next) : -costOf(last, next);
      joints.push(next);
      last = next;
    }
    done[last] = 1;
    if (joints.length % 2 === 0) chains.push({ joints, cost });
  }
  const wanted = (many.alone - staying) / 2;
  for (const { joints } of chains.toSorted((a, b) => a.cost - b.cost).slice(0, wanted)) {
    for (let index = 0; index < joints.length; index += 2) {
      partners[joints[index] as number] = joints[index + 1] as number;
      partners[joints[index + 1] as number] = joints[index] as number;
    }
  }
  return partners;
}
