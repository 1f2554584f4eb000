import { endsAt, type Network } from './network.ts';
import { sparseMatching } from './sparse-matching.ts';
import { WaysAround } from './ways-around.ts';
import type { Work } from './work.ts';

/** Lists of edges to go along once more, an edge as often as it is gone along more than once, and whether there are no others. */
export interface PopChoices {
  readonly choices: readonly (readonly number[])[];
  readonly complete: boolean;
}

/** Choices that are kept; more are of no use, since each costs a search of its own. */
const mostChoices = 3000;

/**
 * Every way to choose stretches of a small connected part that are made once more and popped, so that at most `mostOdd` joints are odd
 * and the pops are not longer than `room`; shortest first. Branches over the edges at an odd joint, and leaves off where the joints
 * that are still odd cannot be paired in the room that is left.
 */
export function popChoices(part: Network, mostOdd: number, room: number, work: Work): PopChoices {
  const search = new ChoiceSearch(part, mostOdd, work);
  search.from(room);
  const lengthOf = (edges: readonly number[]) => edges.reduce((sum, edge) => sum + (part.lengths[edge] as number), 0);
  const choices = search.found.map((edges) => ({ edges, length: lengthOf(edges) })).toSorted((a, b) => a.length - b.length);
  return { choices: choices.map(({ edges }) => edges), complete: !search.stopped };
}

class ChoiceSearch {
  readonly found: number[][] = [];
  readonly #part: Network;
  readonly #mostOdd: number;
  readonly #work: Work;
  readonly #far: readonly Float64Array[];
  readonly #odd: Uint8Array;
  /** 1 for a joint that is odd and will stay so. */
  readonly #stays: Uint8Array;
  readonly #decided: Uint8Array;
  readonly #chosen: number[] = [];
  #staying = 0;
  #stopped = false;

  constructor(part: Network, mostOdd: number, work: Work) {
    this.#part = part;
    this.#mostOdd = mostOdd;
    this.#work = work;
    const joints = Array.from({ length: part.jointCount }, (_, joint) => joint);
    const ways = new WaysAround(part, []);
    this.#far = joints.map((joint) => {
      ways.from(joint, {});
      return Float64Array.from(joints, (other) => ways.lengthTo(other));
    });
    this.#odd = Uint8Array.from(joints, (joint) => endsAt(part, joint) % 2);
    this.#stays = new Uint8Array(part.jointCount);
    this.#decided = new Uint8Array(part.edgeCount);
  }

  get stopped(): boolean {
    return this.#stopped;
  }

  from(room: number): void {
    if (this.#found()) return;
    this.#work.left -= 100;
    const open = [...this.#odd.keys()].filter((joint) => this.#odd[joint] === 1 && this.#stays[joint] === 0);
    const mayStay = this.#mostOdd - this.#staying;
    if (this.#leastLeft(open, mayStay) > room) return;
    const joint = open[0];
    if (joint === undefined) {
      this.#addPairs(0, room);
      this.#chooseAmong([...this.#decided.keys()], room);
      return;
    }
    const around = [
      ...new Set(Array.from(this.#part.ends.subarray(this.#part.first[joint], this.#part.first[joint + 1]), (end) => end >> 1)),
    ];
    this.#chooseAmong(around, room, () => {
      if (mayStay === 0) return;
      this.#stays[joint] = 1;
      this.#staying++;
      this.from(room);
      this.#stays[joint] = 0;
      this.#staying--;
    });
  }

  /** With each of the edges that are not decided as the first one chosen, and, last, with none of them. */
  #chooseAmong(edges: readonly number[], room: number, withNone: () => void = () => {}): void {
    const free = edges.filter((edge) => this.#decided[edge] === 0);
    for (const edge of free) {
      this.#decided[edge] = 1;
      const left = room - (this.#part.lengths[edge] as number);
      if (left < 0) continue;
      this.#turn(edge);
      this.#chosen.push(edge);
      this.from(left);
      this.#chosen.pop();
      this.#turn(edge);
    }
    withNone();
    for (const edge of free) this.#decided[edge] = 0;
  }

  #turn(edge: number): void {
    for (const end of [2 * edge, 2 * edge + 1]) {
      const joint = this.#part.jointOfEnd[end] as number;
      this.#odd[joint] = 1 - (this.#odd[joint] as number);
    }
  }

  /** What is chosen, and with it every list of edges gone along there and back once more. */
  #addPairs(from: number, room: number): void {
    if (this.#found()) return;
    this.found.push([...this.#chosen]);
    for (let edge = from; edge < this.#part.edgeCount; edge++) {
      const left = room - 2 * (this.#part.lengths[edge] as number);
      if (left < 0) continue;
      this.#chosen.push(edge, edge);
      this.#addPairs(edge, left);
      this.#chosen.length -= 2;
    }
  }

  #found(): boolean {
    if (this.found.length >= mostChoices || this.#work.left <= 0) this.#stopped = true;
    return this.#stopped;
  }

  /** No ways that pair all but `mayStay` of these joints are shorter. */
  #leastLeft(open: readonly number[], mayStay: number): number {
    if (open.length <= mayStay) return 0;
    const pairs: { readonly from: number; readonly to: number; readonly cost: number }[] = [];
    for (const [number, joint] of open.entries()) {
      for (let other = 0; other < number; other++)
        pairs.push({ from: number, to: other, cost: this.#far[joint]?.[open[other] as number] as number });
      for (let alone = 0; alone < mayStay; alone++) pairs.push({ from: number, to: open.length + alone, cost: 0 });
    }
    const count = open.length + mayStay;
    const costed = { count, from: pairs.map(({ from }) => from), to: pairs.map(({ to }) => to), costs: pairs.map(({ cost }) => cost) };
    return sparseMatching(costed, Number.POSITIVE_INFINITY, this.#work).least;
  }
}
