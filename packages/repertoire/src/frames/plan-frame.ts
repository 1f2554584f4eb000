import { fail, ok, type Problem, type Result } from '@twistwright/units';
import { type ColouredTrail, joinUncoloured, lendColours } from './colour-classes.ts';
import { eulerTrails } from './euler-trails.ts';
import { checkFrame, type Frame, frameProblem, mostFrameEdges } from './frame.ts';
import { limitedPart } from './limited-part.ts';
import { type MixedTrails, mixedPart } from './mixed-colours.ts';
import { capacityOf, connectedParts, lengthUnitsPerInch, type Network, networkOf, partOf, splitByColour } from './network.ts';
import { poppedLimited } from './popped-limited.ts';
import { type PoppedTrails, poppedParts } from './popped-trails.ts';
import { type Trail, trailInches, trailOf } from './trail.ts';
import { trailBound } from './trail-bound.ts';

/** What is asked of the twisting orders. */
export interface FrameWishes {
  /** Inflated inches that one balloon gives; left out, a balloon is as long as it needs to be. */
  readonly balloonInches?: number;
  /**
   * `keep`: every edge in its own colour, so each colour is twisted apart (an edge without a colour may go with any); `ignore`: as if
   * all were one colour. Left out: keep. With pops, colours are ignored.
   */
  readonly colours?: 'keep' | 'ignore';
  /**
   * Pops allowed: stretches may be made twice and one of the two popped, so that fewer balloons suffice. Without `balloonInches`: the
   * shortest total for `balloons` balloons (left out: one for each connected part), `closed` for a balloon that ends where it began. With
   * `balloonInches`: the fewest balloons, so that neither may be given.
   */
  readonly pops?: { readonly balloons?: number; readonly closed?: boolean };
  /** Leaves out the complete search, which may take seconds on contrived lengths: for an answer while somebody types. */
  readonly quick?: boolean;
  /** Seed of the search, for those who want another answer of the same number; left out, 1. */
  readonly seed?: number;
}

/** The twisting orders of a frame, one a balloon, and how good they are. */
export interface FramePlan {
  readonly trails: readonly Trail[];
  /** Colour role of each balloon; undefined where any colour will do. */
  readonly colours: readonly (string | undefined)[];
  /** No order needs fewer balloons than this. */
  readonly leastBalloons: number;
  /** Whether `trails` is proven to be the fewest. */
  readonly proven: boolean;
  /** Balloons that keeping the colours costs beyond what the same frame would take in one colour; 0 where colours do not matter. */
  readonly balloonsForColours: number;
  /** Rubber in all balloons, popped stretches included, and the popped stretches alone, in inflated inches. */
  readonly totalInches: number;
  readonly poppedInches: number;
  /** So many balloons cannot take less rubber than this. */
  readonly leastInches: number;
  readonly longestInches: number;
}

/**
 * The fewest balloons for a frame and the order in which each is twisted.
 *
 * Any length: max(1, odd joints / 2) for each connected part (Demaine, Demaine and Hart 2008), in linear time. Limited length: a complete search
 * up to 52 edges a part, of some seconds at most, a bounded one above, with the number that no order can go below. Pops: see `FrameWishes`.
 * Problems: those of `checkFrame`, `frame.balloon-length`, `frame.edge-longer-than-balloon`, `frame.balloons`.
 * @example planFrame({ joints: [{ name: 'A' }, { name: 'B' }], edges: [{ from: 'A', to: 'B', lengthInches: 5 }] }).value.trails.length // -> 1
 */
export function planFrame(frame: Frame, wishes: FrameWishes = {}): Result<FramePlan> {
  const wrong = checkWishes(wishes);
  if (wrong.length > 0) return fail(wrong);
  const network = frame.edges.length === 0 || frame.edges.length > mostFrameEdges ? undefined : networkOf(frame);
  if (network === undefined) return fail(checkFrame(frame));
  const tooLong = tooLongEdge(frame, wishes.balloonInches);
  if (tooLong !== undefined) return fail([tooLong]);
  if (wishes.pops !== undefined) return planWithPops(frame, network, wishes, wishes.pops);
  return ok(planWithoutPops(frame, network, wishes));
}

function checkWishes({ balloonInches, pops }: FrameWishes): readonly Problem[] {
  const problems: Problem[] = [];
  if (balloonInches !== undefined && !(balloonInches > 0 && Number.isFinite(balloonInches))) {
    problems.push(frameProblem('frame.balloon-length', ['balloonInches'], `A balloon cannot be ${balloonInches} inches long.`));
  }
  const balloons = pops?.balloons;
  if (balloons !== undefined && !(Number.isInteger(balloons) && balloons >= 1)) {
    problems.push(frameProblem('frame.balloons', ['pops', 'balloons'], `${balloons} is not a number of balloons.`, 'Give 1 or more.'));
  }
  if (pops?.closed === true && (balloons ?? 1) !== 1) {
    problems.push(frameProblem('frame.balloons', ['pops', 'closed'], `${balloons} balloons cannot be one closed tour.`, 'Ask for 1.'));
  }
  if (balloonInches !== undefined && (balloons !== undefined || pops?.closed === true)) {
    const [wish, path] = balloons === undefined ? ['A closed tour', 'closed'] : ['A number of balloons', 'balloons'];
    const sentence = `${wish} cannot be asked for together with the length of a balloon.`;
    problems.push(frameProblem('frame.balloons', ['pops', path], sentence, 'Leave one of the two out.'));
  }
  return problems;
}

function tooLongEdge(frame: Frame, balloonInches = Number.POSITIVE_INFINITY): Problem | undefined {
  if (balloonInches === Number.POSITIVE_INFINITY) return undefined;
  const capacity = capacityOf(balloonInches);
  const index = frame.edges.findIndex((edge) => Math.round(edge.lengthInches * lengthUnitsPerInch) > capacity);
  const edge = frame.edges[index];
  if (edge === undefined) return undefined;
  return frameProblem(
    'frame.edge-longer-than-balloon',
    ['edges', index, 'lengthInches'],
    `The edge ${edge.from} to ${edge.to} is ${edge.lengthInches} inches long, and a balloon gives ${balloonInches}.`,
    'Put a joint into the edge, or use longer balloons.',
  );
}

interface Found {
  readonly trails: readonly Trail[];
  readonly bound: number;
}

function planWithoutPops(frame: Frame, network: Network, wishes: FrameWishes): FramePlan {
  const keep = wishes.colours !== 'ignore' && frame.edges.some(({ colour }) => colour !== undefined);
  const oneColour = fewest(network, wishes);
  if (!keep)
    return finish(
      frame,
      oneColour.trails.map((trail) => ({ colour: undefined, trail })),
      oneColour.bound,
      0,
    );
  const kept = keepColours(frame, network, wishes);
  return finish(frame, kept.trails, kept.bound, Math.max(0, kept.trails.length - oneColour.trails.length));
}

/** Each colour apart; where a part also has edges without a colour, these hung on to the balloons of others. */
function keepColours(frame: Frame, network: Network, wishes: FrameWishes): MixedTrails {
  const colourOfEdge = (edge: number): string | undefined => frame.edges[network.frameEdges[edge] as number]?.colour;
  const whole: number[] = [];
  const trails: ColouredTrail[] = [];
  let bound = 0;
  const mixed = connectedParts(network).filter((edges) => {
    const plain = edges.filter((edge) => colourOfEdge(edge) === undefined).length;
    if (plain > 0 && plain < edges.length) return true;
    for (const edge of edges) whole.push(edge);
    return false;
  });
  if (whole.length > 0) {
    const apart = fewest(splitByColour(frame, partOf(network, whole)), wishes);
    for (const trail of apart.trails) trails.push({ colour: colourOf(frame, trail), trail });
    bound += apart.bound;
  }
  const lentFrame = mixed.length === 0 ? frame : lendColours(frame);
  const capacity = wishes.balloonInches === undefined ? Number.POSITIVE_INFINITY : capacityOf(wishes.balloonInches);
  for (const edges of mixed) {
    const part = partOf(network, edges);
    const [hung, lent] = [hangOn(frame, part, wishes), hangOn(lentFrame, part, wishes)];
    const found = mixedPart(frame, part, lent.length < hung.length ? lent : hung, capacity, wishes.quick === true);
    for (const trail of found.trails) trails.push(trail);
    bound += found.bound;
  }
  return { trails, bound };
}

/** Each colour of a part apart, edges without one hung on afterwards. */
function hangOn(frame: Frame, part: Network, wishes: FrameWishes): readonly ColouredTrail[] {
  const apart = fewest(splitByColour(frame, part), wishes);
  const coloured = apart.trails.map((trail) => ({ colour: colourOf(frame, trail), trail }));
  return joinUncoloured(frame, coloured, wishes.balloonInches ?? Number.POSITIVE_INFINITY);
}

const colourOf = (frame: Frame, trail: Trail): string | undefined => frame.edges[trail.edges[0] as number]?.colour;

/** Fewest balloons for every part of a network. */
function fewest(network: Network, wishes: FrameWishes): Found {
  const capacity = wishes.balloonInches === undefined ? undefined : capacityOf(wishes.balloonInches);
  const trails: Trail[] = [];
  let bound = 0;
  const add = (found: readonly Trail[], least: number): void => {
    bound += least;
    for (const trail of found) trails.push(trail);
  };
  if (capacity === undefined) {
    for (const walk of eulerTrails(network)) add([trailOf(network, walk)], 1);
    return { trails, bound };
  }
  for (const edges of connectedParts(network)) {
    if (edges.length === 1) {
      add([trailOf(network, [2 * (edges[0] as number)])], 1);
      continue;
    }
    const part = partOf(network, edges);
    const found = limitedPart(part, capacity, wishes.seed ?? 1, wishes.quick === true);
    add(
      found.walks.map((walk) => trailOf(part, walk)),
      found.bound,
    );
  }
  return { trails, bound };
}

/** Steps of pairing odd joints, some seconds at worst; used up only by many thousands of them. */
const pairingSteps = 150_000_000;

function planWithPops(frame: Frame, network: Network, wishes: FrameWishes, pops: NonNullable<FrameWishes['pops']>): Result<FramePlan> {
  const parts = connectedParts(network).map((edges) => partOf(network, edges));
  const work = { left: pairingSteps };
  if (wishes.balloonInches !== undefined) {
    const capacity = capacityOf(wishes.balloonInches);
    const found = parts.map((part) => poppedLimited(part, capacity, wishes.seed ?? 1, wishes.quick === true, work));
    return ok(
      finishPopped(
        frame,
        found,
        found.reduce((sum, { bound }) => sum + bound, 0),
      ),
    );
  }
  const balloons = pops.balloons ?? parts.length;
  if (balloons < parts.length || balloons > network.edgeCount) {
    const sentence = `${balloons} balloons cannot make ${parts.length} separate parts with ${network.edgeCount} edges.`;
    return fail([frameProblem('frame.balloons', ['pops', 'balloons'], sentence, `Ask for ${parts.length} to ${network.edgeCount}.`)]);
  }
  return ok(finishPopped(frame, poppedParts(parts, balloons, pops.closed === true, work), balloons));
}

function finishPopped(frame: Frame, found: readonly PoppedTrails[], least: number): FramePlan {
  const trails = found.flatMap((part) => part.trails.map((trail) => ({ colour: undefined, trail })));
  const plan = finish(frame, trails, least, 0);
  const leastInches = found.reduce((sum, part) => sum + part.least, 0) / lengthUnitsPerInch;
  return { ...plan, leastInches: Math.min(plan.totalInches, leastInches) };
}

function finish(frame: Frame, coloured: readonly ColouredTrail[], leastBalloons: number, balloonsForColours: number): FramePlan {
  let totalInches = 0;
  let poppedInches = 0;
  let longestInches = 0;
  for (const { trail } of coloured) {
    const inches = trailInches(frame, trail);
    totalInches += inches;
    longestInches = Math.max(longestInches, inches);
    poppedInches += poppedInchesOf(frame, trail);
  }
  return {
    trails: coloured.map(({ trail }) => trail),
    colours: coloured.map(({ colour }) => colour),
    leastBalloons,
    proven: coloured.length === leastBalloons,
    balloonsForColours,
    totalInches,
    leastInches: totalInches,
    poppedInches,
    longestInches,
  };
}

function poppedInchesOf(frame: Frame, { edges, popped }: Trail): number {
  if (popped === undefined) return 0;
  return edges.reduce((sum, edge, step) => sum + (popped[step] === true ? (frame.edges[edge]?.lengthInches ?? 0) : 0), 0);
}

/** A number of balloons of this length that no order of the frame without pops goes below; undefined for a frame that is not in order. */
export function leastBalloons(frame: Frame, balloonInches?: number): number | undefined {
  const network = networkOf(frame);
  if (network === undefined || tooLongEdge(frame, balloonInches) !== undefined) return undefined;
  const capacity = balloonInches === undefined ? Number.POSITIVE_INFINITY : capacityOf(balloonInches);
  return connectedParts(network).reduce((sum, edges) => sum + trailBound(partOf(network, edges), capacity), 0);
}
