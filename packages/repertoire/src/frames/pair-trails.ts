import type { Network } from './network.ts';
import type { Walk } from './trail.ts';

/**
 * Whether a balloon of `capacity` takes any two edges of a part and never three: the "doubloons" of E. D. Demaine, M. L. Demaine,
 * V. Hart, "Computational Balloon Twisting: The Theory of Balloon Polyhedra", CCCG 2008.
 */
export function takesPairsOnly(part: Network, capacity: number): boolean {
  const sorted = part.lengths.toSorted();
  const [a = 0, b = 0, c = 0] = sorted;
  const [last = 0, beforeLast = 0] = [sorted.at(-1), sorted.at(-2)];
  return sorted.length >= 3 && a + b + c > capacity && last + beforeLast <= capacity;
}

/**
 * A connected part in balloons of two edges, and one of a single edge if the count is odd (theorem 4 there). Going back from the leaves
 * of a spanning tree, the edges that a joint still has are put in pairs, the last one with the edge towards the root. Linear time.
 */
export function pairTrails(part: Network): readonly Walk[] {
  const { order, towardsRoot } = spanningTree(part);
  const used = new Uint8Array(part.edgeCount);
  const walks: number[][] = [];
  for (const joint of order.toReversed()) {
    const up = towardsRoot[joint] as number;
    const waiting: number[] = [];
    for (let place = part.first[joint] as number; place < (part.first[joint + 1] as number); place++) {
      const end = part.ends[place] as number;
      if (used[end >> 1] === 1 || end === up) continue;
      used[end >> 1] = 1;
      waiting.push(end);
    }
    if (waiting.length % 2 === 1 && up !== -1) {
      used[up >> 1] = 1;
      waiting.push(up);
    }
    for (let index = 0; index < waiting.length; index += 2) {
      const first = (waiting[index] as number) ^ 1;
      const second = waiting[index + 1];
      walks.push(second === undefined ? [first] : [first, second]);
    }
  }
  return walks;
}

/** Joints in the order they are reached from joint 0, and for each the end of the edge towards it that lies there (-1 for the root). */
function spanningTree(part: Network): { readonly order: readonly number[]; readonly towardsRoot: Int32Array } {
  const towardsRoot = new Int32Array(part.jointCount).fill(-1);
  const reached = new Uint8Array(part.jointCount);
  reached[0] = 1;
  const order = [0];
  for (let index = 0; index < order.length; index++) {
    const joint = order[index] as number;
    for (let place = part.first[joint] as number; place < (part.first[joint + 1] as number); place++) {
      const end = part.ends[place] as number;
      const other = part.jointOfEnd[end ^ 1] as number;
      if (reached[other] === 1) continue;
      reached[other] = 1;
      towardsRoot[other] = end ^ 1;
      order.push(other);
    }
  }
  return { order, towardsRoot };
}
