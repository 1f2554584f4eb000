import type { Network } from './network.ts';

/** What a balloon must be like to be listed. */
export interface BalloonDemand {
  /** The edge that must be in it. */
  readonly through: number;
  /** Edges that it may have, `through` among them. */
  readonly among: readonly number[];
  /** Shortest and longest length (both included). */
  readonly least: number;
  readonly most: number;
  /** Most odd joints that the edges left over may have. */
  readonly oddLeft: number;
}

const mostJoints = 31;
const mostHalf = 20;

/** Whether `balloonsBySum` can be asked. */
export const canListBySum = (part: Network, among: readonly number[]): boolean =>
  part.jointCount <= mostJoints && among.length - 1 <= 2 * mostHalf && lengthOf(part, among) < 2 ** 32;

/** The sets, left out when there was too much to look at, and how many pairs of sums were looked at. */
export interface BalloonsBySum {
  readonly looked: number;
  readonly found?: readonly number[];
}

/**
 * Every set of edges that can be one balloon as demanded, each once, as a sum of 2^edge. Sums of the
 * two halves of the edges are sorted and matched (E. Horowitz and S. Sahni, "Computing partitions with applications to the knapsack problem",
 * J. ACM 21 (1974) 277-292): quick where few sums are in range, which is where following the edges one by one is slow.
 */
export function balloonsBySum(part: Network, demand: BalloonDemand, mostLooks: number): BalloonsBySum {
  const others = demand.among.filter((edge) => edge !== demand.through);
  const first = halfOf(part, others.slice(0, others.length >> 1));
  const second = halfOf(part, others.slice(others.length >> 1));
  const start = part.lengths[demand.through] as number;
  const startParity = parityOf(part, demand.through);
  const allParity = demand.among.reduce((parity, edge) => parity ^ parityOf(part, edge), 0);
  const found: number[] = [];
  let looked = 0;
  let high = second.keys.length - 1;
  for (const key of first.keys) {
    const sum = start + Math.floor(key / maskSpace);
    while (high >= 0 && sum + Math.floor((second.keys[high] as number) / maskSpace) > demand.most) high--;
    const mask = key % maskSpace;
    const parity = startParity ^ (first.parity[mask] as number);
    for (let place = high; place >= 0; place--) {
      const other = second.keys[place] as number;
      if (sum + Math.floor(other / maskSpace) < demand.least) break;
      if (++looked > mostLooks) return { looked };
      const together = parity ^ (second.parity[other % maskSpace] as number);
      if (ones(together) > 2 || ones(together ^ allParity) > demand.oddLeft) continue;
      const edges = [demand.through, ...chosen(first.edges, mask), ...chosen(second.edges, other % maskSpace)];
      if (hangsTogether(part, edges)) found.push(edges.reduce((set, edge) => set + 2 ** edge, 0));
    }
  }
  return { looked, found };
}

interface Half {
  readonly edges: readonly number[];
  /** Sum x 2^20 + chosen edges as bits, smallest sum first. */
  readonly keys: Float64Array;
  /** Joints with an odd number of chosen ends, as bits, by chosen edges. */
  readonly parity: Int32Array;
}
const maskSpace = 2 ** mostHalf;

function halfOf(part: Network, edges: readonly number[]): Half {
  const keys = new Float64Array(2 ** edges.length);
  const parity = new Int32Array(2 ** edges.length);
  for (const [bit, edge] of edges.entries()) {
    const added = (part.lengths[edge] as number) * maskSpace + 2 ** bit;
    const turned = parityOf(part, edge);
    for (let mask = 0; mask < 1 << bit; mask++) {
      keys[mask + (1 << bit)] = (keys[mask] as number) + added;
      parity[mask + (1 << bit)] = (parity[mask] as number) ^ turned;
    }
  }
  return { edges, keys: keys.sort(), parity };
}

const parityOf = (part: Network, edge: number): number =>
  (1 << (part.jointOfEnd[2 * edge] as number)) ^ (1 << (part.jointOfEnd[2 * edge + 1] as number));

const lengthOf = (part: Network, edges: readonly number[]): number => edges.reduce((sum, edge) => sum + (part.lengths[edge] as number), 0);

function ones(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count++;
  return count;
}

const chosen = (edges: readonly number[], mask: number): readonly number[] => edges.filter((_, bit) => (mask & (1 << bit)) !== 0);

function hangsTogether(part: Network, edges: readonly number[]): boolean {
  let reached = jointsOf(part, edges[0] as number);
  let waiting = edges.slice(1);
  for (let left = -1; left !== waiting.length; ) {
    left = waiting.length;
    waiting = waiting.filter((edge) => {
      const joints = jointsOf(part, edge);
      if ((joints & reached) === 0) return true;
      reached |= joints;
      return false;
    });
  }
  return waiting.length === 0;
}

const jointsOf = (part: Network, edge: number): number =>
  (1 << (part.jointOfEnd[2 * edge] as number)) | (1 << (part.jointOfEnd[2 * edge + 1] as number));
