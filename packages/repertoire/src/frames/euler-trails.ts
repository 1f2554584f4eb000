import { connectedParts, endsAt, type Network, wire } from './network.ts';

/**
 * The fewest ways that together go along every edge exactly once: max(1, odd joints / 2) for each connected part.
 * E. D. Demaine, M. L. Demaine, V. Hart, "Computational Balloon Twisting: The Theory of Balloon Polyhedra", CCCG 2008, theorems 1 and 2:
 * odd joints are paired by bridges that do not exist, the closed tour through everything is found after C. Hierholzer (1873), and the
 * tour is cut at the bridges. Time and memory are linear in the edges.
 */
export function eulerTrails(network: Network): readonly Int32Array[] {
  const bridged = bridgeOddJoints(network);
  const tours = closedTours(bridged);
  return tours.flatMap((tour) => cutAtBridges(tour, network.edgeCount));
}

/** Adds an edge between the first and second, third and fourth, ... odd joint of each connected part. */
function bridgeOddJoints(network: Network): Network {
  const bridges: number[] = [];
  const seen = new Uint8Array(network.jointCount);
  for (const part of connectedParts(network)) {
    for (const edge of part) {
      for (let end = 2 * edge; end < 2 * edge + 2; end++) {
        const joint = network.jointOfEnd[end] as number;
        if (seen[joint] === 1) continue;
        seen[joint] = 1;
        if (endsAt(network, joint) % 2 === 1) bridges.push(joint);
      }
    }
  }
  if (bridges.length === 0) return network;
  const jointOfEnd = new Int32Array(network.jointOfEnd.length + bridges.length);
  jointOfEnd.set(network.jointOfEnd);
  jointOfEnd.set(bridges, network.jointOfEnd.length);
  const count = network.edgeCount + bridges.length / 2;
  return wire(jointOfEnd, new Float64Array(count), network.frameJoints, new Int32Array(count));
}

/** One closed tour for each connected part of a network without odd joints, as the ends it leaves by. */
function closedTours(network: Network): readonly Int32Array[] {
  const used = new Uint8Array(network.edgeCount);
  const next = network.first.slice(0, network.jointCount);
  const arrivals = new Int32Array(network.edgeCount);
  const tour = new Int32Array(network.edgeCount);
  const tours: Int32Array[] = [];
  for (let edge = 0; edge < network.edgeCount; edge++) {
    if (used[edge] === 1) continue;
    const length = writeTour(network, network.jointOfEnd[2 * edge] as number, used, next, arrivals, tour);
    tours.push(tour.slice(0, length));
  }
  return tours;
}

/** Writes the closed tour from `start` into `tour` and returns how many steps it has. `arrivals` is room to work in. */
function writeTour(network: Network, start: number, used: Uint8Array, next: Int32Array, arrivals: Int32Array, tour: Int32Array): number {
  let length = 0;
  let depth = 0;
  let joint = start;
  for (;;) {
    const end = unusedEnd(network, joint, used, next);
    if (end !== -1) {
      used[end >> 1] = 1;
      arrivals[depth++] = end ^ 1;
      joint = network.jointOfEnd[end ^ 1] as number;
      continue;
    }
    if (depth === 0) return length;
    const arrival = arrivals[--depth] as number;
    tour[length++] = arrival;
    joint = network.jointOfEnd[arrival ^ 1] as number;
  }
}

function unusedEnd(network: Network, joint: number, used: Uint8Array, next: Int32Array): number {
  const stop = network.first[joint + 1] as number;
  let place = next[joint] as number;
  while (place < stop && used[(network.ends[place] as number) >> 1] === 1) place++;
  next[joint] = place;
  return place < stop ? (network.ends[place] as number) : -1;
}

/** Edges from `bridgesFrom` on are bridges. A tour without bridges stays whole. */
function cutAtBridges(tour: Int32Array, bridgesFrom: number): readonly Int32Array[] {
  const firstBridge = tour.findIndex((end) => end >> 1 >= bridgesFrom);
  if (firstBridge === -1) return [tour];
  const trails: Int32Array[] = [];
  let trail: number[] = [];
  for (let step = 1; step <= tour.length; step++) {
    const end = tour[(firstBridge + step) % tour.length] as number;
    if (end >> 1 < bridgesFrom) {
      trail.push(end);
      continue;
    }
    if (trail.length > 0) trails.push(Int32Array.from(trail));
    trail = [];
  }
  return trails;
}
