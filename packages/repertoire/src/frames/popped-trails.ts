import { eulerTrails } from './euler-trails.ts';
import { EventHeap } from './event-heap.ts';
import { type Network, wire } from './network.ts';
import { OddPairing } from './odd-pairs.ts';
import { type Trail, trailOf, type Walk } from './trail.ts';
import type { Work } from './work.ts';

export interface PoppedTrails {
  readonly trails: readonly Trail[];
  /** No number of pops makes fewer balloons do. */
  readonly bound: number;
  /** No so many balloons take less rubber, in units of the network. */
  readonly least: number;
}

/**
 * The shortest total for exactly `balloons` balloons over all parts, or for one closed tour of each part. E. D. Demaine, M. L. Demaine,
 * V. Hart 2008, theorem 3; the Chinese postman problem of M.-K. Kuan 1962, solved after J. Edmonds and E. L. Johnson, "Matching, Euler tours
 * and the Chinese postman", Mathematical Programming 5 (1973) 88-124: all odd joints but two for each balloon are paired along ways as
 * short as possible in all. Balloons beyond those that save anything are made by cutting the longest.
 */
export function poppedParts(parts: readonly Network[], balloons: number, closed: boolean, work: Work): readonly PoppedTrails[] {
  const pairings = parts.map((part) => new OddPairing(part, work));
  const shares = closed ? parts.map(() => 1) : parts.length === 1 ? [balloons] : shareOut(parts, pairings, balloons, work);
  return parts.map((part, index) => {
    const count = shares[index] as number;
    const { edges, least } = (pairings[index] as OddPairing).pairs(closed ? 0 : 2 * count);
    const doubled = withPopped(part, edges);
    const trails = markedTrails(doubled, part.edgeCount, eulerTrails(doubled), closed);
    return { trails: closed ? trails : cutUpTo(trails, count), bound: count, least: totalOf(part) + least };
  });
}

export const totalOf = (part: Network): number => part.lengths.reduce((sum, length) => sum + length, 0);

/**
 * How many balloons each part gets. What a further balloon saves in a part never rises (the least cost of a matching is convex in
 * its size), so there is a price at which every part takes as many as are worth it and all together are as many as there are.
 */
function shareOut(parts: readonly Network[], pairings: readonly OddPairing[], balloons: number, work: Work): readonly number[] {
  const atPrice = (price: number) =>
    pairings.map((pairing) => (pairing.count <= 2 || price === Number.POSITIVE_INFINITY ? 1 : Math.max(1, pairing.stayingAt(price) / 2)));
  const sum = (shares: readonly number[]) => shares.reduce((all, share) => all + share, 0);
  let [many, few] = [pairings.map(({ count }) => Math.max(1, count / 2)), atPrice(Number.POSITIVE_INFINITY)];
  if (sum(many) > balloons) {
    let [low, high] = [0, 2 * parts.reduce((longest, part) => Math.max(longest, totalOf(part)), 0)];
    while (high - low > 1 && sum(few) < balloons && work.left > 0) {
      const price = Math.floor((low + high) / 2);
      const shares = atPrice(price);
      if (sum(shares) >= balloons) [many, low] = [shares, price];
      else [few, high] = [shares, price];
    }
  } else {
    few = many;
    many = parts.map(({ edgeCount }) => edgeCount);
  }
  let left = balloons - sum(few);
  return few.map((share, index) => {
    const more = Math.max(0, Math.min(left, (many[index] as number) - share));
    left -= more;
    return share + more;
  });
}

/** The part with its popped edges added as further edges, which keep the number of the edge they run along. */
export function withPopped(part: Network, popped: readonly number[]): Network {
  const jointOfEnd = new Int32Array(part.jointOfEnd.length + 2 * popped.length);
  const lengths = new Float64Array(part.edgeCount + popped.length);
  const frameEdges = new Int32Array(part.edgeCount + popped.length);
  jointOfEnd.set(part.jointOfEnd);
  lengths.set(part.lengths);
  frameEdges.set(part.frameEdges);
  for (const [index, edge] of popped.entries()) {
    const copy = part.edgeCount + index;
    jointOfEnd[2 * copy] = part.jointOfEnd[2 * edge] as number;
    jointOfEnd[2 * copy + 1] = part.jointOfEnd[2 * edge + 1] as number;
    lengths[copy] = part.lengths[edge] as number;
    frameEdges[copy] = part.frameEdges[edge] as number;
  }
  return wire(jointOfEnd, lengths, part.frameJoints, frameEdges);
}

/**
 * Of an edge that is gone along twice, the second time in the order of twisting is the popped one: then both of its joints are there
 * already and hold it. A popped stretch at the end of a balloon is left out, unless it must come back to where it began.
 */
export function markedTrails(doubled: Network, edgeCount: number, walks: readonly Walk[], closed: boolean): readonly Trail[] {
  const twice = new Set(Array.from(doubled.frameEdges.subarray(edgeCount)));
  const made = new Set<number>();
  return walks.flatMap((walk) => {
    const trail = trailOf(doubled, walk);
    const popped = trail.edges.map((edge) => {
      const again = twice.has(edge) && made.has(edge);
      made.add(edge);
      return again;
    });
    const first = closed ? 0 : popped.indexOf(false);
    if (first === -1) return [];
    const end = closed ? popped.length : popped.lastIndexOf(false) + 1;
    const edges = trail.edges.slice(first, end);
    const joints = trail.joints.slice(first, end + 1);
    return popped.includes(true) ? [{ joints, edges, popped: popped.slice(first, end) }] : [{ joints, edges }];
  });
}

/** Cuts the trails with the most edges in two until there are `count`, each with an edge that stays. */
function cutUpTo(trails: readonly Trail[], count: number): readonly Trail[] {
  const list = [...trails];
  const longest = new EventHeap();
  for (const [index, trail] of trails.entries()) longest.push(index, -madeIn(trail));
  while (list.length < count) {
    const index = longest.pop();
    const [before, after] = cutInTwo(list[index ?? 0] as Trail);
    if (before === undefined || after === undefined) throw new Error(`${count} balloons for fewer edges`);
    list[index ?? 0] = before;
    longest.push(index ?? 0, -madeIn(before));
    longest.push(list.length, -madeIn(after));
    list.push(after);
  }
  return list;
}

const madeIn = ({ edges, popped }: Trail): number => edges.length - (popped?.filter((gone) => gone).length ?? 0);

function cutInTwo(trail: Trail): readonly Trail[] {
  const half = madeIn(trail) >> 1;
  if (half === 0) return [];
  const isPopped = (step: number): boolean => trail.popped?.[step] === true;
  let step = 0;
  for (let made = 0; made < half; step++) if (!isPopped(step)) made++;
  let next = step;
  while (isPopped(next)) next++;
  return [stretch(trail, 0, step), stretch(trail, next, trail.edges.length)];
}

function stretch({ joints, edges, popped }: Trail, from: number, to: number): Trail {
  const kept = popped?.slice(from, to) ?? [];
  const cut = { joints: joints.slice(from, to + 1), edges: edges.slice(from, to) };
  return kept.includes(true) ? { ...cut, popped: kept } : cut;
}
