import type { ColouredTrail } from './colour-classes.ts';
import { exactTrails, mostExactEdges } from './exact-trails.ts';
import type { Frame } from './frame.ts';
import { type Network, oddJoints, partOf } from './network.ts';
import { trailOf } from './trail.ts';
import { packingBoundOf, trailBound } from './trail-bound.ts';

/** Steps of the complete search for one part, some seconds at worst. */
const mixedSteps = 300_000_000;

/** Balloons of one colour each, and a number that no such order can go below. */
export interface MixedTrails {
  readonly trails: readonly ColouredTrail[];
  readonly bound: number;
}

/**
 * The fewest balloons of one colour each for a connected part in which some edges have a colour and some may go with any; from `start` on
 * down where the part is small enough for the complete search.
 */
export function mixedPart(frame: Frame, part: Network, start: readonly ColouredTrail[], capacity: number, quick: boolean): MixedTrails {
  const names: string[] = [];
  const colours = Int32Array.from(part.frameEdges, (edge) => {
    const colour = frame.edges[edge]?.colour;
    if (colour === undefined) return -1;
    if (!names.includes(colour)) names.push(colour);
    return names.indexOf(colour);
  });
  let bound = Math.max(trailBound(part, capacity), byColour(part, colours, names.length, capacity));
  if (quick || part.edgeCount > mostExactEdges) return { trails: start, bound };
  const work = { left: mixedSteps };
  const room = Math.min(
    capacity,
    part.lengths.reduce((sum, length) => sum + length, 0),
  );
  for (; bound < start.length; bound++) {
    const answer = exactTrails(part, room, bound, work, colours);
    if (answer.outcome === 'none') continue;
    if (answer.outcome !== 'walks') break;
    const trails = answer.walks.map((walk) => {
      const trail = trailOf(part, walk);
      return { trail, colour: trail.edges.map((edge) => frame.edges[edge]?.colour).find((colour) => colour !== undefined) };
    });
    return { trails, bound };
  }
  return { trails: start, bound };
}

/** What each colour needs apart from the others: room for its edges, and an end at every odd joint that no edge of any colour can make even. */
function byColour(part: Network, colours: Int32Array, count: number, capacity: number): number {
  const any = new Uint8Array(part.jointCount);
  for (const [end, joint] of part.jointOfEnd.entries()) if (colours[end >> 1] === -1) any[joint] = 1;
  let sum = 0;
  for (let colour = 0; colour < count; colour++) {
    const edges = [...colours.keys()].filter((edge) => colours[edge] === colour);
    const own = partOf(part, edges);
    const places = placesIn(part, edges);
    const odd = oddJoints(own).filter((joint) => any[places[joint] as number] === 0).length;
    sum += Math.max(1, Math.ceil(odd / 2), capacity === Number.POSITIVE_INFINITY ? 1 : packingBoundOf(own, capacity));
  }
  return sum;
}

/** Joints of a part in the order in which `partOf` numbers those of some of its edges. */
function placesIn(part: Network, edges: readonly number[]): readonly number[] {
  return [...new Set(edges.flatMap((edge) => [part.jointOfEnd[2 * edge] as number, part.jointOfEnd[2 * edge + 1] as number]))];
}
