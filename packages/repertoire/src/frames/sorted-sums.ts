/** Edges of a part in numbers of their own: lengths, and the joints at which one end of the edge lies, as bits of two words. */
export interface SumEdges {
  readonly lengths: readonly number[];
  readonly parityLow: readonly number[];
  readonly parityHigh: readonly number[];
}

/** Every subset of some edges, shortest sum first: its sum, which edges (as bits), and the joints with an odd number of its ends (as bits). */
export interface SortedSums {
  readonly sums: Float64Array;
  readonly masks: Int32Array;
  readonly parityLow: Int32Array;
  readonly parityHigh: Int32Array;
}

/**
 * The subsets of the edges from `from` (included) to `to` (not included), at most 26 of them. Each edge merges the list so far with the
 * list that has it added, so nothing needs to be sorted.
 */
export function sortedSums(edges: SumEdges, from: number, to: number): SortedSums {
  let have = emptySums(1);
  for (let edge = from; edge < to; edge++) {
    const count = have.sums.length;
    const next = emptySums(2 * count);
    const length = edges.lengths[edge] as number;
    const [low, high, bit] = [edges.parityLow[edge] as number, edges.parityHigh[edge] as number, 1 << (edge - from)];
    let plain = 0;
    let added = 0;
    for (let place = 0; place < 2 * count; place++) {
      if (plain < count && (have.sums[plain] as number) <= (have.sums[added] as number) + length) {
        next.sums[place] = have.sums[plain] as number;
        next.masks[place] = have.masks[plain] as number;
        next.parityLow[place] = have.parityLow[plain] as number;
        next.parityHigh[place] = have.parityHigh[plain] as number;
        plain++;
      } else {
        next.sums[place] = (have.sums[added] as number) + length;
        next.masks[place] = (have.masks[added] as number) | bit;
        next.parityLow[place] = (have.parityLow[added] as number) ^ low;
        next.parityHigh[place] = (have.parityHigh[added] as number) ^ high;
        added++;
      }
    }
    have = next;
  }
  return have;
}

const emptySums = (count: number): SortedSums => ({
  sums: new Float64Array(count),
  masks: new Int32Array(count),
  parityLow: new Int32Array(count),
  parityHigh: new Int32Array(count),
});
