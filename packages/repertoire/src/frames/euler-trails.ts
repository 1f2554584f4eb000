import { endsAt, type Network } from './network.ts';

/**
 * The fewest ways that together go along every edge exactly once: max(1, odd joints / 2) for each connected part.
 * E. D. Demaine, M. L. Demaine, V. Hart, "Computational Balloon Twisting: The Theory of Balloon Polyhedra", CCCG 2008, theorems 1 and 2:
 * odd joints are paired by bridges that do not exist, the closed tour through everything is found after C. Hierholzer (1873), and the
 * tour is cut at the bridges. Time and memory are linear in the edges.
 */
export function eulerTrails(network: Network): readonly (readonly number[])[] {
  const tours = new Tours(network, bridges(network));
  const trails: (readonly number[])[] = [];
  for (let edge = 0; edge < network.edgeCount; edge++) {
    if (!tours.isUsed(edge)) tours.cutFrom(network.jointOfEnd[2 * edge] as number, trails);
  }
  return trails;
}

const none = -1;

/** For each odd joint another one of the same connected part, in pairs; none for the even ones. */
function bridges(network: Network): Int32Array {
  const bridge = new Int32Array(network.jointCount).fill(none);
  const reached = new Uint8Array(network.jointCount);
  const waiting = new Int32Array(network.jointCount);
  let unpaired = none;
  for (let start = 0; start < network.jointCount; start++) {
    if (reached[start] === 1) continue;
    reached[start] = 1;
    waiting[0] = start;
    for (let index = 0, count = 1; index < count; index++) {
      const joint = waiting[index] as number;
      const stop = network.first[joint + 1] as number;
      for (let place = network.first[joint] as number; place < stop; place++) {
        const other = network.jointOfEnd[(network.ends[place] as number) ^ 1] as number;
        if (reached[other] === 1) continue;
        reached[other] = 1;
        waiting[count++] = other;
      }
      if (endsAt(network, joint) % 2 === 0) continue;
      if (unpaired === none) {
        unpaired = joint;
        continue;
      }
      bridge[joint] = unpaired;
      bridge[unpaired] = joint;
      unpaired = none;
    }
  }
  return bridge;
}

/** Closed tours over edges and bridges, as the ends they leave by and `none` for a bridge. */
class Tours {
  readonly #network: Network;
  readonly #bridge: Int32Array;
  readonly #used: Uint8Array;
  readonly #next: Int32Array;
  /** How each joint of the way so far was reached: by an end, or over the bridge from joint j as -2 - j. */
  readonly #arrivals: Int32Array;
  readonly #tour: Int32Array;

  constructor(network: Network, bridge: Int32Array) {
    this.#network = network;
    this.#bridge = bridge;
    this.#used = new Uint8Array(network.edgeCount);
    this.#next = network.first.slice(0, network.jointCount);
    this.#arrivals = new Int32Array(network.edgeCount + network.jointCount);
    this.#tour = new Int32Array(network.edgeCount + network.jointCount);
  }

  isUsed(edge: number): boolean {
    return this.#used[edge] === 1;
  }

  /** Follows the tour through everything connected to `start` and adds what lies between its bridges. */
  cutFrom(start: number, trails: (readonly number[])[]): void {
    cutAtBridges(this.#tour, this.#follow(start), trails);
  }

  #follow(start: number): number {
    let length = 0;
    let depth = 0;
    let joint = start;
    for (;;) {
      const end = this.#unusedEnd(joint);
      if (end !== none) {
        this.#used[end >> 1] = 1;
        this.#arrivals[depth++] = end ^ 1;
        joint = this.#network.jointOfEnd[end ^ 1] as number;
        continue;
      }
      const over = this.#bridge[joint] as number;
      if (over !== none) {
        this.#bridge[joint] = none;
        this.#bridge[over] = none;
        this.#arrivals[depth++] = -2 - joint;
        joint = over;
        continue;
      }
      if (depth === 0) return length;
      const arrival = this.#arrivals[--depth] as number;
      this.#tour[length++] = Math.max(none, arrival);
      joint = arrival < none ? -2 - arrival : (this.#network.jointOfEnd[arrival ^ 1] as number);
    }
  }

  #unusedEnd(joint: number): number {
    const { first, ends } = this.#network;
    const stop = first[joint + 1] as number;
    let place = this.#next[joint] as number;
    while (place < stop && this.#used[(ends[place] as number) >> 1] === 1) place++;
    this.#next[joint] = place;
    return place < stop ? (ends[place] as number) : none;
  }
}

/** Adds the stretches between bridges; what comes before the first one is the end of what comes after the last. */
function cutAtBridges(tour: Int32Array, length: number, trails: (readonly number[])[]): void {
  let trail: number[] = [];
  let beforeFirst: number[] | undefined;
  for (let step = 0; step < length; step++) {
    const end = tour[step] as number;
    if (end !== none) {
      trail.push(end);
      continue;
    }
    if (beforeFirst === undefined) beforeFirst = trail;
    else trails.push(trail);
    trail = [];
  }
  for (const end of beforeFirst ?? []) trail.push(end);
  trails.push(trail);
}
