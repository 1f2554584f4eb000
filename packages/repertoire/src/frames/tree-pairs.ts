import type { Network } from './network.ts';

/** Edges of a set of ways and the joints that they join, two by two. */
export interface TreePairs {
  readonly pairs: readonly (readonly [number, number])[];
  /** Edges that lie on an odd number of the ways. */
  readonly edges: readonly number[];
}

/** Pairs the given joints of a connected part, an even number, along a spanning tree, near ones first: linear time, seldom the shortest. */
export function treePairs(part: Network, joints: readonly number[]): TreePairs {
  const { first, ends, jointOfEnd } = part;
  const open = new Uint8Array(part.jointCount);
  for (const joint of joints) open[joint] = 1;
  const up = new Int32Array(part.jointCount).fill(-1);
  const reached = new Uint8Array(part.jointCount);
  const order = new Int32Array(part.jointCount);
  let known = 0;
  const reach = (joint: number, end: number): void => {
    reached[joint] = 1;
    up[joint] = end;
    order[known++] = joint;
  };
  reach(joints[0] ?? 0, -1);
  for (let index = 0; index < known; index++) {
    const joint = order[index] as number;
    for (let place = first[joint] as number; place < (first[joint + 1] as number); place++) {
      const end = ends[place] as number;
      const other = jointOfEnd[end ^ 1] as number;
      if (reached[other] === 0) reach(other, end ^ 1);
    }
  }
  const waiting = Int32Array.from({ length: part.jointCount }, (_, joint) => (open[joint] === 1 ? joint : -1));
  const pairs: (readonly [number, number])[] = [];
  const edges: number[] = [];
  for (let index = known - 1; index > 0; index--) {
    const joint = order[index] as number;
    const carried = waiting[joint] as number;
    if (carried === -1) continue;
    const end = up[joint] as number;
    const above = jointOfEnd[end ^ 1] as number;
    edges.push(end >> 1);
    if (waiting[above] === -1) waiting[above] = carried;
    else {
      pairs.push([waiting[above] as number, carried]);
      waiting[above] = -1;
    }
  }
  return { pairs, edges };
}
