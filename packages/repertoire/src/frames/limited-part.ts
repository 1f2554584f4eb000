import { eulerTrails } from './euler-trails.ts';
import { exactTrails, mostExactEdges } from './exact-trails.ts';
import { hubTrails, isHubOfLoops, mostHubLoops, packedAsTheyCome } from './hub-trails.ts';
import type { Network } from './network.ts';
import { pairTrails, takesPairsOnly } from './pair-trails.ts';
import { isTree, treeTrails } from './plain-tree.ts';
import { shortTrails } from './short-trails.ts';
import type { Walk } from './trail.ts';
import { trailBound } from './trail-bound.ts';

/** Balloons for a part, and a number that no order can go below; where the two are equal the answer is proven. */
export interface BoundedWalks {
  readonly walks: readonly Walk[];
  readonly bound: number;
}

/** Steps of the complete search for one part: some seconds at worst, which no frame of up to 40 edges among thousands drawn has used up. */
const exactSteps = 600_000_000;
const hubVisits = 20_000;

/** The fewest balloons of `capacity` for one connected part whose edges all fit; exact where it can be, else with its bound. `quick` leaves out the complete search. */
export function limitedPart(part: Network, capacity: number, seed: number, quick: boolean): BoundedWalks {
  const total = part.lengths.reduce((sum, length) => sum + length, 0);
  if (total <= capacity) {
    const walks = eulerTrails(part);
    return { walks, bound: walks.length };
  }
  if (takesPairsOnly(part, capacity)) {
    const walks = pairTrails(part);
    return { walks, bound: walks.length };
  }
  if (isTree(part)) {
    const walks = treeTrails(part, capacity);
    return { walks, bound: walks.length };
  }
  const bound = trailBound(part, capacity);
  const found = isHubOfLoops(part) ? packedHub(part, capacity, bound) : { walks: shortTrails(part, capacity, bound, seed), bound };
  return quick ? found : improve(part, capacity, found);
}

/** Number by number from the bound up until the loops fit; the bound rises as long as a number is proven too small. */
function packedHub(part: Network, capacity: number, start: number): BoundedWalks {
  if (part.edgeCount > mostHubLoops) return { walks: packedAsTheyCome(part, capacity), bound: start };
  let bound = start;
  for (let count = start; ; count++) {
    const packed = hubTrails(part, capacity, count, hubVisits);
    if (packed.outcome === 'walks') return { walks: packed.walks, bound };
    if (packed.outcome === 'none' && bound === count) bound++;
  }
}

/** Asks the complete searches for fewer, number by number from the bound up, until one is found or proven impossible. */
function improve(part: Network, capacity: number, start: BoundedWalks): BoundedWalks {
  if (part.edgeCount > mostExactEdges) return start;
  let bound = start.bound;
  const work = { left: exactSteps };
  while (bound < start.walks.length) {
    const answer = exactTrails(part, capacity, bound, work);
    if (answer.outcome === 'walks') return { walks: answer.walks, bound };
    if (answer.outcome === 'unknown') return { walks: start.walks, bound };
    bound++;
  }
  return { walks: start.walks, bound };
}
