import { type EdgeSet, edgesOf } from './edge-set.ts';
import type { Network } from './network.ts';

/** What a balloon taken out of a set of edges must be like. */
export interface AlongDemand {
  readonly set: EdgeSet;
  /** Ends of the set's edges at each joint. */
  readonly degree: Int32Array;
  /** Shortest and longest length (both included). */
  readonly least: number;
  readonly most: number;
  /** By how much a balloon may raise the number of odd joints of what it leaves. */
  readonly oddRoom: number;
  /** Colour of each edge, -1 where any will do: a balloon has one. */
  readonly colours?: Int32Array;
}

/** The balloons, fullest first, left out when it took more than the steps allowed, and the steps taken. */
export interface BalloonsAlong {
  readonly steps: number;
  readonly found?: readonly EdgeSet[];
}

/** Every balloon through one edge inside a set of edges, found by following edges: first on from its far joint, then on from its near one. */
export function balloonsAlong(part: Network, edge: number, demand: AlongDemand, mostSteps: number): BalloonsAlong {
  const ways = new Following(part, demand, mostSteps);
  ways.from(edge);
  return ways.steps > mostSteps ? { steps: mostSteps } : { steps: ways.steps, found: ways.fullestFirst() };
}

class Following {
  readonly #part: Network;
  readonly #demand: AlongDemand;
  readonly #lengthOf = new Map<EdgeSet, number>();
  readonly #mostSteps: number;
  /** 1 for an edge that cannot be taken: outside the set, or in the balloon already. */
  readonly #taken: Uint8Array;
  readonly #colours: Int32Array;
  #steps = 0;

  constructor(part: Network, demand: AlongDemand, mostSteps: number) {
    this.#part = part;
    this.#demand = demand;
    this.#mostSteps = mostSteps;
    this.#taken = new Uint8Array(part.edgeCount).fill(1);
    for (const edge of edgesOf(demand.set)) this.#taken[edge] = 0;
    this.#colours = demand.colours ?? new Int32Array(part.edgeCount).fill(-1);
  }

  get steps(): number {
    return this.#steps;
  }

  from(edge: number): void {
    const { jointOfEnd, lengths } = this.#part;
    this.#taken[edge] = 1;
    this.#onward(
      jointOfEnd[2 * edge + 1] as number,
      jointOfEnd[2 * edge] as number,
      2 ** edge,
      lengths[edge] as number,
      this.#colours[edge] as number,
      false,
    );
  }

  fullestFirst(): readonly EdgeSet[] {
    return [...this.#lengthOf].toSorted((a, b) => b[1] - a[1]).map(([set]) => set);
  }

  #onward(head: number, tail: number, set: EdgeSet, length: number, colour: number, headDone: boolean): void {
    this.#steps++;
    if (this.#steps > this.#mostSteps) return;
    if (!headDone) this.#onward(tail, head, set, length, colour, true);
    else if (length >= this.#demand.least && this.#oddFits(head, tail)) this.#lengthOf.set(set, length);
    const { first, ends, jointOfEnd, lengths } = this.#part;
    const taken = this.#taken;
    const stop = first[head + 1] as number;
    for (let place = first[head] as number; place < stop; place++) {
      const end = ends[place] as number;
      const edge = end >> 1;
      if (taken[edge] === 1) continue;
      const next = length + (lengths[edge] as number);
      const its = this.#colours[edge] as number;
      if (next > this.#demand.most || (its !== -1 && colour !== -1 && its !== colour)) continue;
      taken[edge] = 1;
      this.#onward(jointOfEnd[end ^ 1] as number, tail, set + 2 ** edge, next, Math.max(colour, its), headDone);
      taken[edge] = 0;
    }
  }

  /** Taking a balloon away turns the joints it ends at from odd to even and back; the rest must not have too many odd ones. */
  #oddFits(head: number, tail: number): boolean {
    if (head === tail) return this.#demand.oddRoom >= 0;
    const turned = (joint: number) => ((this.#demand.degree[joint] as number) % 2 === 1 ? -1 : 1);
    return turned(head) + turned(tail) <= this.#demand.oddRoom;
  }
}
