import { Chance } from '@twistwright/units';
import { eulerTrails } from './euler-trails.ts';
import type { Network } from './network.ts';
import { Pairing } from './pairing.ts';
import type { Walk } from './trail.ts';

/** Steps of annealing for each edge, and the most in all: a quarter of a microsecond each. */
const stepsPerEdge = 8000;
const leastSteps = 300_000;
const mostSteps = 3_000_000;
/** Of the steps that are left, this share goes to each number of balloons that is tried. */
const shareOfFirstTry = 0.8;
/** Steps for each edge in the first round; each further round has three times as many. */
const firstSteps = 40;
/** Temperature at the start and at the end, in mean edge lengths. */
const hotEdges = 0.4;
const coldEdges = 0.01;
/** Above this, changing one joint at a time within `mostSteps` would hardly be felt. */
const mostAnnealedEdges = 50_000;

/**
 * Few balloons, none longer than `capacity`, for one connected part whose edges all fit. Fewer than `bound` are not looked for.
 * Starts from the fewest balloons without a limit, then anneals the pairing of ends with as many balloons as the bound says, then one
 * more, and so on; whatever is still too long is cut. The same part gives the same answer on every machine.
 */
export function shortTrails(part: Network, capacity: number, bound: number, seed: number): readonly Walk[] {
  const whole = eulerTrails(part);
  let best = cutToFit(part, whole, capacity);
  if (part.edgeCount > mostAnnealedEdges) return best;
  const chance = new Chance(seed, part.edgeCount, bound);
  const warm = part.lengths.reduce((sum, length) => sum + length, 0) / part.edgeCount;
  if (part.edgeCount > mostTightEdges && whole.length < bound) return loosened(part, capacity, bound, whole, best, chance);
  let left = Math.min(mostSteps, Math.max(leastSteps, stepsPerEdge * part.edgeCount));
  for (let count = Math.max(bound, whole.length); count < best.length; count++) {
    const start = cutInto(part, whole, count);
    let budget = Math.ceil(left * shareOfFirstTry);
    left -= budget;
    for (let steps = firstSteps * part.edgeCount; budget > 0; steps *= 3) {
      const pairing = new Pairing(part, capacity, start);
      const allowed = steps * 2 > budget ? budget : steps;
      pairing.anneal(allowed, hotEdges * warm, coldEdges * warm, chance);
      budget -= allowed;
      const found = cutToFit(part, pairing.walks(), capacity);
      if (found.length < best.length) best = found;
      if (best.length <= count) return best;
    }
  }
  return best;
}

/** Above, as many balloons as the bound says are not looked for, but so many times as many, nearer and nearer. */
const mostTightEdges = 3000;
const looseShares = [1.08, 1.05, 1.03, 1.015];
/** Steps of annealing for each edge and for each of them. */
const looseStepsPerEdge = 400;
const mostLooseSteps = 8_000_000;

function loosened(part: Network, capacity: number, bound: number, whole: readonly Walk[], start: readonly Walk[], chance: Chance) {
  const warm = part.lengths.reduce((sum, length) => sum + length, 0) / part.edgeCount;
  let best = start;
  for (const share of looseShares) {
    const count = Math.ceil(share * bound);
    if (count >= best.length) continue;
    const pairing = new Pairing(part, capacity, cutInto(part, whole, count));
    pairing.anneal(Math.min(mostLooseSteps, looseStepsPerEdge * part.edgeCount), hotEdges * warm, coldEdges * warm, chance);
    const found = cutToFit(part, pairing.walks(), capacity);
    if (found.length < best.length) best = found;
    if (found.length > count) return best;
  }
  return best;
}

/** Each walk cut as late as possible, which for a given walk is as seldom as possible. */
export function cutToFit(part: Network, walks: readonly Walk[], capacity: number): readonly Walk[] {
  const pieces: number[][] = [];
  for (const walk of walks) {
    let piece: number[] = [];
    let inches = 0;
    for (let step = 0; step < walk.length; step++) {
      const end = walk[step] as number;
      const length = part.lengths[end >> 1] as number;
      if (piece.length > 0 && inches + length > capacity) {
        pieces.push(piece);
        piece = [];
        inches = 0;
      }
      piece.push(end);
      inches += length;
    }
    pieces.push(piece);
  }
  return pieces;
}

/** The walks cut into exactly `count` pieces of about the same number of edges. */
function cutInto(part: Network, walks: readonly Walk[], count: number): readonly Walk[] {
  const pieces = walks.map(() => 1);
  for (let cuts = count - walks.length; cuts > 0; cuts--) {
    let longest = 0;
    for (let index = 1; index < walks.length; index++) {
      const share = (walks[index] as Walk).length / (pieces[index] as number);
      if (share > (walks[longest] as Walk).length / (pieces[longest] as number)) longest = index;
    }
    pieces[longest] = (pieces[longest] as number) + 1;
  }
  if (count > part.edgeCount) throw new Error(`${count} balloons for ${part.edgeCount} edges`);
  return walks.flatMap((walk, index) => {
    const number = pieces[index] as number;
    return Array.from({ length: number }, (_, piece) =>
      Array.prototype.slice.call(walk, Math.round((piece * walk.length) / number), Math.round(((piece + 1) * walk.length) / number)),
    );
  });
}
