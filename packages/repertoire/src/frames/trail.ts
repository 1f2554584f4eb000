import type { Problem } from '@twistwright/units';
import { type Frame, frameProblem, mostFrameProblems } from './frame.ts';
import { capacityOf, lengthUnitsPerInch, type Network } from './network.ts';

/**
 * The order in which one balloon is twisted: edge `edges[i]` of the frame is made on the way from joint `joints[i]` to `joints[i + 1]`.
 * Numbers are places in `frame.joints` and `frame.edges`. `popped[i]` marks a stretch that is popped afterwards and counts as no edge.
 */
export interface Trail {
  readonly joints: readonly number[];
  readonly edges: readonly number[];
  readonly popped?: readonly boolean[];
}

/** A way through a network as the ends it leaves by, one for each edge. */
export type Walk = ArrayLike<number>;

/** The walk in the numbers of the frame. */
export function trailOf(network: Network, walk: Walk): Trail {
  const joints = new Array<number>(walk.length + 1);
  const edges = new Array<number>(walk.length);
  joints[0] = network.frameJoints[network.jointOfEnd[walk[0] as number] as number] as number;
  for (let step = 0; step < walk.length; step++) {
    const end = walk[step] as number;
    edges[step] = network.frameEdges[end >> 1] as number;
    joints[step + 1] = network.frameJoints[network.jointOfEnd[end ^ 1] as number] as number;
  }
  return { joints, edges };
}

/** Rubber that a trail takes, popped stretches included, in inches. */
export function trailInches(frame: Frame, trail: Trail): number {
  let inches = 0;
  for (const edge of trail.edges) inches += frame.edges[edge]?.lengthInches ?? Number.NaN;
  return inches;
}

/** The joints of a trail by name, in order. */
export const trailNames = (frame: Frame, trail: Trail): readonly string[] => trail.joints.map((joint) => frame.joints[joint]?.name ?? '?');

/**
 * Checks twisting orders against their frame: every edge is made exactly once, each step leads along its edge from one joint to the
 * next, no balloon is longer than `balloonInches` (when given), and popped stretches run along edges that are there. An empty list
 * means that the orders are right. Whoever makes trails, by hand or by program, can be held to this.
 * @example verifyTrails({ joints: [{ name: 'A' }], edges: [{ from: 'A', to: 'A', lengthInches: 3 }] }, [{ joints: [0, 0], edges: [0] }]) // -> []
 */
export function verifyTrails(frame: Frame, trails: readonly Trail[], balloonInches = Number.POSITIVE_INFINITY): readonly Problem[] {
  const problems: Problem[] = [];
  const made = new Uint32Array(frame.edges.length);
  for (const [index, trail] of trails.entries()) {
    if (problems.length >= mostFrameProblems) return problems;
    verifySteps(frame, trail, index, made, problems);
    const inches = trailInches(frame, trail);
    if (Math.round(inches * lengthUnitsPerInch) > capacityOf(balloonInches)) {
      problems.push(
        frameProblem('trail.too-long', ['trails', index], `Balloon ${index + 1} takes ${inches} inches of the ${balloonInches} it has.`),
      );
    }
  }
  for (const [edge, times] of made.entries()) {
    if (times === 1) continue;
    if (problems.length >= mostFrameProblems) return problems;
    problems.push(frameProblem('trail.edge-count', ['edges', edge], `Edge ${edge + 1} is made ${times} times instead of once.`));
  }
  return problems;
}

function verifySteps(frame: Frame, trail: Trail, index: number, made: Uint32Array, problems: Problem[]): void {
  const path = ['trails', index];
  if (trail.edges.length === 0) problems.push(frameProblem('trail.empty', path, `Balloon ${index + 1} makes no edge.`));
  if (trail.joints.length !== trail.edges.length + 1 || (trail.popped?.length ?? trail.edges.length) !== trail.edges.length) {
    problems.push(frameProblem('trail.shape', path, `Balloon ${index + 1} has lists of lengths that do not go together.`));
    return;
  }
  for (const [step, number] of trail.edges.entries()) {
    const edge = frame.edges[number];
    const from = frame.joints[trail.joints[step] ?? -1]?.name;
    const to = frame.joints[trail.joints[step + 1] ?? -1]?.name;
    const along = edge !== undefined && ((edge.from === from && edge.to === to) || (edge.from === to && edge.to === from));
    if (!along) {
      problems.push(
        frameProblem('trail.step', [...path, step], `Balloon ${index + 1} cannot go from ${from} to ${to} along edge ${number + 1}.`),
      );
      return;
    }
    if (trail.popped?.[step] !== true) made[number] = (made[number] ?? 0) + 1;
  }
}
