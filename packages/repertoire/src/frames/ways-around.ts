import { EventHeap } from './event-heap.ts';
import type { Network } from './network.ts';

/** How far to look: not beyond a length, and not after so many of the joints looked for. */
export interface Reach {
  readonly length?: number;
  readonly most?: number;
  readonly goal?: number;
}

/** Shortest ways along the edges from one joint to those around it (E. W. Dijkstra 1959), as often as asked for; one at a time. */
export class WaysAround {
  readonly #network: Network;
  readonly #lookedFor: Uint8Array;
  readonly #lengths: Float64Array;
  /** End by which each joint is reached, -1 at the start. */
  readonly #arrivals: Int32Array;
  readonly #heap = new EventHeap();
  #touched: number[] = [];

  constructor(network: Network, lookedFor: Iterable<number>) {
    this.#network = network;
    this.#lookedFor = new Uint8Array(network.jointCount);
    for (const joint of lookedFor) this.#lookedFor[joint] = 1;
    this.#lengths = new Float64Array(network.jointCount).fill(Number.POSITIVE_INFINITY);
    this.#arrivals = new Int32Array(network.jointCount);
  }

  /** Joints looked at so far, for counting work. */
  get touched(): number {
    return this.#touched.length;
  }

  /** The joints looked for, nearest first, without the start. */
  from(start: number, { length = Number.POSITIVE_INFINITY, most = Number.POSITIVE_INFINITY, goal = -1 }: Reach): readonly number[] {
    const { first, ends, jointOfEnd, lengths } = this.#network;
    for (const joint of this.#touched) this.#lengths[joint] = Number.POSITIVE_INFINITY;
    this.#heap.clear();
    this.#touched = [start];
    this.#lengths[start] = 0;
    this.#arrivals[start] = -1;
    this.#heap.push(start, 0);
    const found: number[] = [];
    for (let key = 0; key <= length && key !== Number.POSITIVE_INFINITY && found.length < most; key = this.#heap.key) {
      const joint = this.#heap.pop() as number;
      const here = this.#lengths[joint] as number;
      if (key > here) continue;
      if (joint === goal) break;
      if (this.#lookedFor[joint] === 1 && joint !== start) found.push(joint);
      for (let place = first[joint] as number; place < (first[joint + 1] as number); place++) {
        const end = ends[place] as number;
        const other = jointOfEnd[end ^ 1] as number;
        const there = here + (lengths[end >> 1] as number);
        const before = this.#lengths[other] as number;
        if (there >= before) continue;
        if (before === Number.POSITIVE_INFINITY) this.#touched.push(other);
        this.#lengths[other] = there;
        this.#arrivals[other] = end ^ 1;
        this.#heap.push(other, there);
      }
    }
    return found;
  }

  /** How far it is to a joint that the last look has found. */
  lengthTo(joint: number): number {
    return this.#lengths[joint] as number;
  }

  /** The edges of a shortest way. */
  between(start: number, goal: number): readonly number[] {
    this.from(start, { goal });
    const edges: number[] = [];
    for (let joint = goal; (this.#arrivals[joint] as number) !== -1; ) {
      const end = this.#arrivals[joint] as number;
      edges.push(end >> 1);
      joint = this.#network.jointOfEnd[end ^ 1] as number;
    }
    return edges;
  }
}
