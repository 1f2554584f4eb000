import type { Network } from './network.ts';

/** Shortest ways along the edges from one joint: the length to each joint, and the end by which it is reached (-1 at the start). */
export interface ShortestWays {
  readonly lengths: Float64Array;
  readonly arrivals: Int32Array;
}

/** E. W. Dijkstra (1959) with a binary heap. Joints that cannot be reached are at infinity. */
export function shortestWays(network: Network, start: number): ShortestWays {
  const lengths = new Float64Array(network.jointCount).fill(Number.POSITIVE_INFINITY);
  const arrivals = new Int32Array(network.jointCount).fill(-1);
  const heap = new Heap();
  lengths[start] = 0;
  heap.push(start, 0);
  for (let joint = heap.pop(); joint !== undefined; joint = heap.pop()) {
    const here = lengths[joint] as number;
    for (let place = network.first[joint] as number; place < (network.first[joint + 1] as number); place++) {
      const end = network.ends[place] as number;
      const other = network.jointOfEnd[end ^ 1] as number;
      const there = here + (network.lengths[end >> 1] as number);
      if (there >= (lengths[other] as number)) continue;
      lengths[other] = there;
      arrivals[other] = end ^ 1;
      heap.push(other, there);
    }
  }
  return { lengths, arrivals };
}

/** Joints by length, shortest first; a joint may be in it more than once, which costs time only. */
class Heap {
  readonly #joints: number[] = [];
  readonly #lengths: number[] = [];

  push(joint: number, length: number): void {
    let place = this.#joints.length;
    while (place > 0) {
      const above = (place - 1) >> 1;
      if ((this.#lengths[above] as number) <= length) break;
      this.#move(above, place);
      place = above;
    }
    this.#joints[place] = joint;
    this.#lengths[place] = length;
  }

  pop(): number | undefined {
    const top = this.#joints[0];
    const joint = this.#joints.pop();
    const length = this.#lengths.pop();
    if (joint === undefined || length === undefined || this.#joints.length === 0) return top;
    let place = 0;
    for (;;) {
      let below = 2 * place + 1;
      if (below >= this.#joints.length) break;
      if ((this.#lengths[below + 1] ?? Number.POSITIVE_INFINITY) < (this.#lengths[below] as number)) below++;
      if ((this.#lengths[below] as number) >= length) break;
      this.#move(below, place);
      place = below;
    }
    this.#joints[place] = joint;
    this.#lengths[place] = length;
    return top;
  }

  #move(from: number, to: number): void {
    this.#joints[to] = this.#joints[from] as number;
    this.#lengths[to] = this.#lengths[from] as number;
  }
}
