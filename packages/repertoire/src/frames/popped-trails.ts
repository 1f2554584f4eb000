import { eulerTrails } from './euler-trails.ts';
import { limitedPart } from './limited-part.ts';
import { type Network, oddJoints } from './network.ts';
import { poppedEdges, withPopped } from './popped-edges.ts';
import { shortTrails } from './short-trails.ts';
import { type Trail, trailOf, type Walk } from './trail.ts';
import { packingBoundOf } from './trail-bound.ts';

export interface PoppedTrails {
  readonly trails: readonly Trail[];
  /** No number of pops makes fewer balloons do. */
  readonly bound: number;
}

/**
 * The shortest total for exactly `balloons` balloons over all parts, or for one closed tour of each part. What a further balloon saves
 * gets less from one to the next (the least cost of a matching is convex in its size), so each goes where it saves most. Balloons
 * beyond those that save anything are made by cutting the longest.
 */
export function poppedParts(parts: readonly Network[], balloons: number, closed: boolean): readonly PoppedTrails[] {
  if (closed) return parts.map((part) => ({ trails: markedTrails(part, poppedEdges(part, 0), true), bound: 1 }));
  const shares = parts.length === 1 ? [balloons] : shareOut(parts, balloons);
  return parts.map((part, index) => {
    const count = shares[index] as number;
    return { trails: cutUpTo(markedTrails(part, poppedEdges(part, count), false), count), bound: count };
  });
}

function shareOut(parts: readonly Network[], balloons: number): readonly number[] {
  const shares = parts.map(() => 1);
  const saving = parts.map((part) => savingOf(part, 1));
  for (let left = balloons - parts.length; left > 0; left--) {
    let best = -1;
    for (const [index, part] of parts.entries()) {
      if ((shares[index] as number) >= part.edgeCount) continue;
      if (best === -1 || (saving[index] as number) > (saving[best] as number)) best = index;
    }
    if (best === -1) throw new Error(`${balloons} balloons for fewer edges`);
    shares[best] = (shares[best] as number) + 1;
    saving[best] = savingOf(parts[best] as Network, shares[best] as number);
  }
  return shares;
}

/** What one balloon more than `count` saves in a part. */
function savingOf(part: Network, count: number): number {
  if (count >= oddJoints(part).length / 2) return 0;
  const cost = (trails: number) => poppedEdges(part, trails).reduce((sum, edge) => sum + (part.lengths[edge] as number), 0);
  return cost(count) - cost(count + 1);
}

/**
 * Fewest balloons of `capacity` with pops allowed: for one number after another, the shortest pops that make it possible are added as
 * edges and the orders are searched for; never more than without pops. The bound is what the rubber of the edges alone needs.
 */
export function poppedLimited(part: Network, capacity: number, seed: number, quick: boolean): PoppedTrails {
  const bound = packingBoundOf(part, capacity);
  const plain = limitedPart(part, capacity, seed, quick);
  const most = Math.min(plain.walks.length - 1, oddJoints(part).length / 2 - 1);
  for (let count = bound; count <= most; count++) {
    const doubled = withPopped(part, poppedEdges(part, count));
    if (doubled.lengths.reduce((sum, length) => sum + length, 0) > count * capacity) continue;
    const walks = shortTrails(doubled, capacity, count, seed);
    if (walks.length < plain.walks.length) return { trails: marked(doubled, part.edgeCount, walks, false), bound };
  }
  return { trails: plain.walks.map((walk) => trailOf(part, walk)), bound };
}

function markedTrails(part: Network, popped: readonly number[], closed: boolean): readonly Trail[] {
  const doubled = withPopped(part, popped);
  return marked(doubled, part.edgeCount, eulerTrails(doubled), closed);
}

/**
 * Of an edge that is gone along twice, the second time in the order of twisting is the popped one: then both of its joints are there
 * already and hold it. A popped stretch at the end of a balloon is left out, unless it must come back to where it began.
 */
function marked(doubled: Network, edgeCount: number, walks: readonly Walk[], closed: boolean): readonly Trail[] {
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

/** Cuts the trails with the most edges in two until there are `count`. */
function cutUpTo(trails: readonly Trail[], count: number): readonly Trail[] {
  const list = [...trails];
  while (list.length < count) {
    const longest = list.reduce((best, trail, index) => (trail.edges.length > (list[best] as Trail).edges.length ? index : best), 0);
    const { joints, edges } = list[longest] as Trail;
    const middle = edges.length >> 1;
    if (middle === 0) throw new Error(`${count} balloons for ${list.length} edges`);
    list.splice(
      longest,
      1,
      { joints: joints.slice(0, middle + 1), edges: edges.slice(0, middle) },
      { joints: joints.slice(middle), edges: edges.slice(middle) },
    );
  }
  return list;
}
