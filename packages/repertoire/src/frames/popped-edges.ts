import { type Network, oddJoints, wire } from './network.ts';
import { perfectMatching } from './perfect-matching.ts';
import { type ShortestWays, shortestWays } from './shortest-ways.ts';

/** Above so many odd joints in one part, exact pairing is not attempted; so many times the edges, neither are all shortest ways. */
export const mostOddJoints = 500;
export const mostWaySteps = 30_000_000;

/** Whether the shortest pops of a part can be found in reasonable time. */
export function canFindPops(part: Network): boolean {
  const odd = oddJoints(part).length;
  return odd <= mostOddJoints && odd * part.edgeCount <= mostWaySteps;
}

/**
 * The edges of a connected part to go along twice, once popped, so that `trails` balloons suffice and the rubber is as short as possible
 * (`trails` 0: one balloon that comes back to where it began). E. D. Demaine, M. L. Demaine, V. Hart 2008, theorem 3; the Chinese
 * postman problem of M.-K. Kuan 1962, solved after J. Edmonds and E. L. Johnson, "Matching, Euler tours and the Chinese postman",
 * Mathematical Programming 5 (1973) 88-124: all odd joints but 2 x `trails` are paired along shortest ways at least total length; each
 * joint that may stay odd is paired with one of as many dummies for nothing.
 */
export function poppedEdges(part: Network, trails: number): readonly number[] {
  const odd = oddJoints(part);
  const staying = Math.min(odd.length, 2 * trails);
  if (staying === odd.length) return [];
  const ways = odd.map((joint) => shortestWays(part, joint));
  const unit = roundingUnit(ways, odd);
  const cost = (i: number, j: number): number => {
    if (i >= odd.length || j >= odd.length) return i >= odd.length && j >= odd.length ? Number.POSITIVE_INFINITY : 0;
    return Math.round((ways[i]?.lengths[odd[j] as number] as number) / unit);
  };
  const partners = perfectMatching(odd.length + staying, cost);
  const twice = new Set<number>();
  for (let i = 0; i < odd.length; i++) {
    const j = partners[i] as number;
    if (j < i || j >= odd.length) continue;
    for (const edge of wayTo(part, ways[i] as ShortestWays, odd[j] as number)) {
      if (!twice.delete(edge)) twice.add(edge);
    }
  }
  return [...twice].sort((a, b) => a - b);
}

/** Lengths are rounded to this before pairing, so that the matching's whole numbers stay exact: 1 unless a frame is miles long. */
function roundingUnit(ways: readonly ShortestWays[], odd: readonly number[]): number {
  let longest = 0;
  for (const way of ways) for (const joint of odd) longest = Math.max(longest, way.lengths[joint] as number);
  return Math.max(1, Math.ceil((longest * odd.length) / 2 ** 49));
}

function wayTo(part: Network, ways: ShortestWays, goal: number): readonly number[] {
  const edges: number[] = [];
  for (let joint = goal; ways.arrivals[joint] !== -1; ) {
    const end = ways.arrivals[joint] as number;
    edges.push(end >> 1);
    joint = part.jointOfEnd[end ^ 1] as number;
  }
  return edges;
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
