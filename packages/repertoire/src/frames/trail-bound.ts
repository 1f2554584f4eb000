import { endsAt, type Network, oddJoints } from './network.ts';

/**
 * A number of balloons that no twisting order of a connected part can go below, when a balloon holds `capacity`: the largest of
 * one; odd joints / 2 (Demaine, Demaine and Hart 2008, theorem 2); ends that cannot be joined to any neighbour / 2; and the packing
 * bound of S. Martello and P. Toth, "Lower bounds and reduction procedures for the bin packing problem", Discrete Applied
 * Mathematics 28 (1990) 59-70, with the capacity first brought down to the longest sum of edges that there is.
 */
export function trailBound(part: Network, capacity: number): number {
  if (capacity === Number.POSITIVE_INFINITY) return Math.max(1, oddJoints(part).length / 2);
  const lengths = part.lengths.toSorted();
  const loose = part.edgeCount > mostLooseEdges ? oddJoints(part).length : looseEnds(part, capacity);
  return Math.max(1, Math.ceil(loose / 2), packingBound(lengths, reachableCapacity(lengths, capacity)));
}

/** What packing alone asks for, pops or not: they only add rubber. */
export function packingBoundOf(part: Network, capacity: number): number {
  const lengths = part.lengths.toSorted();
  return Math.max(1, packingBound(lengths, reachableCapacity(lengths, capacity)));
}

/** The longest sum of edges that one balloon of `capacity` can hold, or a little more where finding it would take too long. */
export const longestSum = (part: Network, capacity: number): number => reachableCapacity(part.lengths, capacity);

/** The longest stretch that one balloon of `capacity` can make of edges that may be gone along again and again, or a little more. */
export function longestRepeatedSum(part: Network, capacity: number): number {
  const measure = part.lengths.reduce(commonMeasure, 0);
  const room = Math.floor(capacity / measure);
  const steps = [...new Set(Array.from(part.lengths, (length) => length / measure))];
  if (room * steps.length > mostSumSteps) return room * measure;
  const reached = new Uint8Array(room + 1);
  reached[0] = 1;
  for (let sum = 1; sum <= room; sum++) if (steps.some((step) => step <= sum && reached[sum - step] === 1)) reached[sum] = 1;
  return reached.lastIndexOf(1) * measure;
}

const mostLooseEdges = 20_000;

/** Edge ends that stay free at their joint whatever the order, because joining any two of them makes a stretch that is too long. */
function looseEnds(part: Network, capacity: number): number {
  let loose = 0;
  for (let joint = 0; joint < part.jointCount; joint++) {
    const ends = part.ends.subarray(part.first[joint], part.first[joint + 1]);
    const lengths = Float64Array.from(ends, (end) => part.lengths[end >> 1] as number).sort();
    loose += endsAt(part, joint) - 2 * mostPairs(lengths, capacity);
  }
  return loose;
}

/** Most disjoint pairs of sorted lengths that fit together: the shortest with the longest that it can take. */
function mostPairs(lengths: Float64Array, capacity: number): number {
  let pairs = 0;
  let low = 0;
  let high = lengths.length - 1;
  while (low < high) {
    if ((lengths[low] as number) + (lengths[high] as number) <= capacity) {
      pairs++;
      low++;
    }
    high--;
  }
  return pairs;
}

/** Work that finding all sums may cost; beyond it only the common measure of the lengths is used. */
const mostSumSteps = 3_000_000;

function reachableCapacity(lengths: Float64Array, capacity: number): number {
  const measure = lengths.reduce(commonMeasure, 0);
  const room = Math.floor(capacity / measure);
  if (room * lengths.length > mostSumSteps) return room * measure;
  const reached = new Uint8Array(room + 1);
  reached[0] = 1;
  for (const length of lengths) {
    const units = length / measure;
    for (let sum = room; sum >= units; sum--) if (reached[sum - units] === 1) reached[sum] = 1;
  }
  return reached.lastIndexOf(1) * measure;
}

function commonMeasure(a: number, b: number): number {
  let [large, small] = [a, b];
  while (small > 0) [large, small] = [small, large % small];
  return large;
}

/** Martello and Toth's L2 for sorted lengths, none above the capacity. */
function packingBound(lengths: Float64Array, capacity: number): number {
  const sums = new Float64Array(lengths.length + 1);
  for (let index = 0; index < lengths.length; index++) sums[index + 1] = (sums[index] as number) + (lengths[index] as number);
  const half = countUpTo(lengths, capacity / 2);
  let bound = Math.ceil((sums[lengths.length] as number) / capacity);
  for (let smallest = 0; smallest <= half; smallest++) {
    if (smallest > 0 && smallest < half && lengths[smallest] === lengths[smallest - 1]) continue;
    const threshold = smallest < half ? (lengths[smallest] as number) : 0;
    const alone = countUpTo(lengths, capacity - threshold);
    const shared = (alone - half) * capacity - ((sums[alone] as number) - (sums[half] as number));
    const small = smallest < half ? (sums[half] as number) - (sums[smallest] as number) : 0;
    bound = Math.max(bound, lengths.length - half + Math.max(0, Math.ceil((small - shared) / capacity)));
  }
  return bound;
}

/** How many of the sorted lengths are at most `limit`. */
function countUpTo(lengths: Float64Array, limit: number): number {
  let low = 0;
  let high = lengths.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((lengths[middle] as number) <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}
