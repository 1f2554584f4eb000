import { type Chance, exp, log } from '@twistwright/units';
import type { Network } from './network.ts';
import type { Walk } from './trail.ts';

const free = -1;
const draws = 4096;
/** Exponential draws by quantile, so that a step needs no logarithm. */
const exponentialTable = Float64Array.from({ length: draws }, (_, index) => -log((index + 0.5) / draws));

/**
 * Which edge end is twisted on to which other end of the same joint. Such a pairing without closed rings is a set of balloons that
 * makes every edge once, so every state is a twisting order; annealing changes one joint at a time until no balloon is too long.
 * The number of balloons stays as it was at the start. Cost: the sum of inches above the capacity.
 */
export class Pairing {
  readonly #network: Network;
  readonly #capacity: number;
  readonly #mate: Int32Array;
  #excess = 0;
  /** What the last walk found: how far, at which end it stopped, and whether that was one of the two ends watched for. */
  #far = 0;
  #last = free;
  #hit = false;

  constructor(network: Network, capacity: number, walks: readonly Walk[]) {
    this.#network = network;
    this.#capacity = capacity;
    this.#mate = new Int32Array(network.edgeCount * 2).fill(free);
    for (const walk of walks) {
      let inches = network.lengths[(walk[0] as number) >> 1] as number;
      for (let step = 1; step < walk.length; step++) {
        this.#join((walk[step - 1] as number) ^ 1, walk[step] as number);
        inches += network.lengths[(walk[step] as number) >> 1] as number;
      }
      this.#excess += this.#above(inches);
    }
  }

  /** Inches above the capacity, summed over the balloons, in the units of the network. */
  get excess(): number {
    return this.#excess;
  }

  /** The balloons as walks, in the order of their first edge. */
  walks(): readonly number[][] {
    const walks: number[][] = [];
    const done = new Uint8Array(this.#network.edgeCount);
    for (let start = 0; start < this.#mate.length; start++) {
      if (this.#mate[start] !== free || done[start >> 1] === 1) continue;
      const walk: number[] = [];
      for (let end = start; end !== free; end = this.#mate[end ^ 1] as number) {
        walk.push(end);
        done[end >> 1] = 1;
      }
      walks.push(walk);
    }
    return walks;
  }

  /** So many steps while the temperature falls evenly on a log scale; returns the steps taken, fewer when nothing is left above. */
  anneal(steps: number, hot: number, cold: number, chance: Chance): number {
    const slices = 64;
    const cooling = exp(log(cold / hot) / slices);
    let heat = hot;
    let taken = 0;
    for (let slice = 0; slice < slices; slice++) {
      for (const stop = (steps * (slice + 1)) / slices; taken < stop; taken++) {
        if (this.#excess === 0) return taken;
        this.#step(heat, chance);
      }
      heat *= cooling;
    }
    return taken;
  }

  #step(heat: number, chance: Chance): void {
    const { jointOfEnd, first, ends } = this.#network;
    const a = Math.floor((chance.next() / 4294967296) * jointOfEnd.length);
    const joint = jointOfEnd[a] as number;
    const start = first[joint] as number;
    const count = (first[joint + 1] as number) - start;
    const c = ends[start + Math.floor((chance.next() / 4294967296) * count)] as number;
    const b = this.#mate[a] as number;
    if (c === a || c === b) return;
    const d = this.#mate[c] as number;
    const limit = heat * (exponentialTable[chance.next() >>> 20] as number);
    if (b !== free && d !== free) this.#cross(a, b, c, d, limit);
    else if (d !== free) this.#take(a, c, d, limit);
    else if (b !== free) this.#take(c, a, b, limit);
    else this.#moveCut(a, c, chance, limit);
  }

  /** Two balloons that pass one joint exchange what comes after it: a-b and c-d become a-c and b-d. */
  #cross(a: number, b: number, c: number, d: number, limit: number): void {
    this.#walk(a, c, d);
    if (this.#hit) {
      if (this.#last === d) this.#crossJoin(a, b, c, d);
      return;
    }
    const fromA = this.#far;
    this.#walk(b, c, d);
    if (this.#hit) {
      if (this.#last === c) this.#crossJoin(a, b, c, d);
      return;
    }
    const fromB = this.#far;
    const fromC = this.#walk(c, free, free);
    const fromD = this.#walk(d, free, free);
    const change = this.#above(fromA + fromC) + this.#above(fromB + fromD) - this.#above(fromA + fromB) - this.#above(fromC + fromD);
    if (change > limit) return;
    this.#excess += change;
    this.#crossJoin(a, b, c, d);
  }

  #crossJoin(a: number, b: number, c: number, d: number): void {
    this.#join(a, c);
    this.#join(b, d);
  }

  /** The balloon that ends with `a` goes on along `c`, and the one that came from `c` to `d` now ends with `d`. */
  #take(a: number, c: number, d: number, limit: number): void {
    this.#walk(a, c, d);
    if (this.#hit) {
      if (this.#last === d) this.#takeJoin(a, c, d);
      return;
    }
    const fromA = this.#far;
    const fromC = this.#walk(c, free, free);
    const fromD = this.#walk(d, free, free);
    const change = this.#above(fromA + fromC) + this.#above(fromD) - this.#above(fromA) - this.#above(fromC + fromD);
    if (change > limit) return;
    this.#excess += change;
    this.#takeJoin(a, c, d);
  }

  #takeJoin(a: number, c: number, d: number): void {
    this.#join(a, c);
    this.#mate[d] = free;
  }

  /** Two balloons that end at one joint become one, and a balloon is cut at a place drawn at random. */
  #moveCut(a: number, c: number, chance: Chance, limit: number): void {
    const x = Math.floor((chance.next() / 4294967296) * this.#mate.length);
    const y = this.#mate[x] as number;
    if (y === free) return;
    let fromA = this.#walk(a, x, y);
    const cutInA = this.#hit;
    const before = fromA;
    if (cutInA) fromA += this.#walk(this.#mate[this.#last] as number, free, free);
    if (this.#last === c) {
      if (cutInA) this.#cutJoin(a, c, x, y);
      return;
    }
    let fromC = this.#walk(c, x, y);
    const cutInC = this.#hit;
    const beforeC = fromC;
    if (cutInC) fromC += this.#walk(this.#mate[this.#last] as number, free, free);
    let change = -this.#above(fromA) - this.#above(fromC);
    if (cutInA) change += this.#above(before + fromC) + this.#above(fromA - before);
    else if (cutInC) change += this.#above(beforeC + fromA) + this.#above(fromC - beforeC);
    else {
      const fromX = this.#walk(x, free, free);
      const fromY = this.#walk(y, free, free);
      change += this.#above(fromA + fromC) + this.#above(fromX) + this.#above(fromY) - this.#above(fromX + fromY);
    }
    if (change > limit) return;
    this.#excess += change;
    this.#cutJoin(a, c, x, y);
  }

  #cutJoin(a: number, c: number, x: number, y: number): void {
    this.#mate[x] = free;
    this.#mate[y] = free;
    this.#join(a, c);
  }

  /** Goes along the edge of `end` and on to where the balloon ends, or to one of two ends watched for; returns the inches gone. */
  #walk(end: number, watched: number, alsoWatched: number): number {
    const mate = this.#mate;
    const lengths = this.#network.lengths;
    let inches = 0;
    let next = end;
    let last = free;
    this.#hit = false;
    while (next !== free) {
      inches += lengths[next >> 1] as number;
      last = next ^ 1;
      if (last === watched || last === alsoWatched) {
        this.#hit = true;
        break;
      }
      next = mate[last] as number;
    }
    this.#far = inches;
    this.#last = last;
    return inches;
  }

  #join(end: number, other: number): void {
    this.#mate[end] = other;
    this.#mate[other] = end;
  }

  #above(inches: number): number {
    return inches > this.#capacity ? inches - this.#capacity : 0;
  }
}
