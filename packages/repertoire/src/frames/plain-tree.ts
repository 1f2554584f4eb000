import type { Network } from './network.ts';
import type { Walk } from './trail.ts';

/** Whether a connected part has no rings. */
export const isTree = (part: Network): boolean => part.edgeCount === part.jointCount - 1;

/**
 * The fewest balloons of `capacity` for a tree whose edges all fit, each edge made once. From the twigs inward: at a joint as many of the stretches
 * that come up are joined in pairs, and one goes on towards the root, as can be; of these choices the shortest goes on. That is the best there
 * is, since a stretch less below is worth as much as the most that a short stretch can save above. Time n log n.
 */
export function treeTrails(part: Network, capacity: number): readonly Walk[] {
  const { order, up } = fromTheRoot(part);
  const coming: Stretch[][] = Array.from({ length: part.jointCount }, () => []);
  const done: Stretch[] = [];
  for (const joint of order.toReversed()) {
    const here = (coming[joint] as Stretch[]).sort((a, b) => a.length - b.length);
    coming[joint] = [];
    const edge = up[joint] as number;
    if (edge === -1) {
      pairUp(here, capacity, done);
      continue;
    }
    const length = part.lengths[edge >> 1] as number;
    const on = goesOn(here, capacity, length);
    const below = on === -1 ? undefined : here[on];
    pairUp(on === -1 ? here : here.filter((_, index) => index !== on), capacity, done);
    const above = part.jointOfEnd[edge ^ 1] as number;
    coming[above]?.push({ length: length + (below?.length ?? 0), end: edge, below, joined: undefined });
  }
  return done.map(walkOf);
}

/** A stretch that comes up to a joint: its last edge, by the end away from the root, and what it went on from; joined to another at the top. */
interface Stretch {
  readonly length: number;
  readonly end: number;
  readonly below: Stretch | undefined;
  readonly joined: Stretch | undefined;
}

/** The shortest that may go on without costing a pair; -1 where going on costs as much as it saves. */
function goesOn(sorted: readonly Stretch[], capacity: number, length: number): number {
  const most = mostPairs(sorted, capacity, -1);
  const fits = (index: number) => (sorted[index] as Stretch).length + length <= capacity;
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (mostPairs(sorted, capacity, middle) === most) high = middle;
    else low = middle + 1;
  }
  return low < sorted.length && fits(low) ? low : -1;
}

/** Most pairs that fit among sorted stretches without one: the longest with the longest that it can take, from both sides. */
function mostPairs(sorted: readonly Stretch[], capacity: number, without: number): number {
  let pairs = 0;
  for (let [low, high] = [0, sorted.length - 1]; low < high; high--) {
    if (low === without) low++;
    if (high === without) high--;
    if (low >= high) break;
    if ((sorted[low] as Stretch).length + (sorted[high] as Stretch).length > capacity) continue;
    pairs++;
    low++;
  }
  return pairs;
}

function pairUp(sorted: readonly Stretch[], capacity: number, done: Stretch[]): void {
  let low = 0;
  for (let high = sorted.length - 1; high >= low; high--) {
    const long = sorted[high] as Stretch;
    const short = sorted[low] as Stretch;
    const fits = low < high && short.length + long.length <= capacity;
    done.push(fits ? { ...long, joined: short } : long);
    if (fits) low++;
  }
}

function walkOf(stretch: Stretch): Walk {
  const walk: number[] = [];
  for (let its: Stretch | undefined = stretch; its !== undefined; its = its.below) walk.push(its.end);
  walk.reverse();
  for (let its = stretch.joined; its !== undefined; its = its.below) walk.push(its.end ^ 1);
  return walk;
}

/** Joints in the order they are reached from joint 0, and the end, at each, of the edge towards it. */
function fromTheRoot(part: Network): { readonly order: readonly number[]; readonly up: Int32Array } {
  const up = new Int32Array(part.jointCount).fill(-1);
  const order = [0];
  for (let index = 0; index < order.length; index++) {
    const joint = order[index] as number;
    for (let place = part.first[joint] as number; place < (part.first[joint + 1] as number); place++) {
      const end = part.ends[place] as number;
      if (end === up[joint]) continue;
      const other = part.jointOfEnd[end ^ 1] as number;
      up[other] = end ^ 1;
      order.push(other);
    }
  }
  return { order, up };
}
