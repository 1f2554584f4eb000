import { type Frame, type FrameEdge, type FrameJoint, isEdgeLength, isJoint } from './frame.ts';

/**
 * A frame in numbers, for the algorithms. Edge `e` has two ends, `2e` (at its `from` joint) and `2e + 1` (at its `to` joint), so the
 * other end of `h` is `h ^ 1` and its edge is `h >> 1`. Lengths are whole millionths of an inch, so that sums are exact.
 */
export interface Network {
  readonly jointCount: number;
  readonly edgeCount: number;
  /** Joint of each end. */
  readonly jointOfEnd: Int32Array;
  readonly lengths: Float64Array;
  /** The ends at joint `j` are `ends[first[j]]` to `ends[first[j + 1] - 1]`. */
  readonly first: Int32Array;
  readonly ends: Int32Array;
  /** Number of each joint and edge in the frame. */
  readonly frameJoints: Int32Array;
  readonly frameEdges: Int32Array;
}

export const lengthUnitsPerInch = 1e6;
/** Rounding that is forgiven on a whole balloon: a ten-thousandth of an inch. */
export const forgivenInches = 1e-4;

/** What one balloon of so many inches holds, in the units of `Network.lengths`. */
export const capacityOf = (balloonInches: number): number => Math.round((balloonInches + forgivenInches) * lengthUnitsPerInch);

/** The whole of a frame, or undefined where `checkFrame` finds something wrong with its joints or lengths. */
export function networkOf(frame: Frame): Network | undefined {
  const numbers = new Map<string, number>();
  for (let index = 0; index < frame.joints.length; index++) {
    const { name, at } = frame.joints[index] as FrameJoint;
    if (numbers.has(name) || !isJoint(name, at)) return undefined;
    numbers.set(name, index);
  }
  const jointOfEnd = new Int32Array(frame.edges.length * 2);
  const lengths = new Float64Array(frame.edges.length);
  for (let index = 0; index < frame.edges.length; index++) {
    const { from, to, lengthInches } = frame.edges[index] as FrameEdge;
    const start = numbers.get(from);
    const end = numbers.get(to);
    if (start === undefined || end === undefined || !isEdgeLength(lengthInches)) return undefined;
    jointOfEnd[2 * index] = start;
    jointOfEnd[2 * index + 1] = end;
    lengths[index] = Math.round(lengthInches * lengthUnitsPerInch);
  }
  return wire(jointOfEnd, lengths, upTo(frame.joints.length), upTo(frame.edges.length));
}

/** The frame with each joint taken apart by colour, so that no way leads from one colour to another. */
export function splitByColour(frame: Frame, network: Network): Network {
  const colours = new Map<string | undefined, number>();
  const numbers = new Map<number, number>();
  const frameJoints: number[] = [];
  const jointOfEnd = new Int32Array(network.jointOfEnd.length);
  for (let end = 0; end < jointOfEnd.length; end++) {
    const name = frame.edges[network.frameEdges[end >> 1] as number]?.colour;
    const colour = colours.get(name) ?? colours.size;
    colours.set(name, colour);
    const joint = network.jointOfEnd[end] as number;
    const key = colour * network.jointCount + joint;
    const number = numbers.get(key) ?? frameJoints.length;
    if (number === frameJoints.length) {
      numbers.set(key, number);
      frameJoints.push(network.frameJoints[joint] as number);
    }
    jointOfEnd[end] = number;
  }
  return wire(jointOfEnd, network.lengths, Int32Array.from(frameJoints), network.frameEdges);
}

/** The part of a network with the given edges, joints without an edge left out. */
export function partOf(network: Network, edges: ArrayLike<number>): Network {
  const seen = new Map<number, number>();
  const joints: number[] = [];
  const jointOfEnd = new Int32Array(edges.length * 2);
  const lengths = new Float64Array(edges.length);
  const frameEdges = new Int32Array(edges.length);
  for (let index = 0; index < edges.length; index++) {
    const edge = edges[index] as number;
    for (let side = 0; side < 2; side++) {
      const joint = network.jointOfEnd[2 * edge + side] as number;
      const number = seen.get(joint) ?? joints.length;
      if (number === joints.length) {
        seen.set(joint, number);
        joints.push(network.frameJoints[joint] as number);
      }
      jointOfEnd[2 * index + side] = number;
    }
    lengths[index] = network.lengths[edge] as number;
    frameEdges[index] = network.frameEdges[edge] as number;
  }
  return wire(jointOfEnd, lengths, Int32Array.from(joints), frameEdges);
}

/** Puts the list of ends at each joint beside a list of edges. */
export function wire(jointOfEnd: Int32Array, lengths: Float64Array, frameJoints: Int32Array, frameEdges: Int32Array): Network {
  const jointCount = frameJoints.length;
  const first = new Int32Array(jointCount + 1);
  for (let end = 0; end < jointOfEnd.length; end++) {
    const joint = jointOfEnd[end] as number;
    first[joint + 1] = (first[joint + 1] as number) + 1;
  }
  for (let joint = 0; joint < jointCount; joint++) first[joint + 1] = (first[joint + 1] as number) + (first[joint] as number);
  const next = first.slice(0, jointCount);
  const ends = new Int32Array(jointOfEnd.length);
  for (let end = 0; end < jointOfEnd.length; end++) {
    const joint = jointOfEnd[end] as number;
    const place = next[joint] as number;
    ends[place] = end;
    next[joint] = place + 1;
  }
  return { jointCount, edgeCount: lengths.length, jointOfEnd, lengths, first, ends, frameJoints, frameEdges };
}

/** The edges of each connected part, parts in the order of their first edge. */
export function connectedParts(network: Network): readonly Int32Array[] {
  const taken = new Uint8Array(network.edgeCount);
  const reached = new Uint8Array(network.jointCount);
  const edges = new Int32Array(network.edgeCount);
  const waiting = new Int32Array(network.jointCount);
  const parts: Int32Array[] = [];
  let count = 0;
  for (let start = 0; start < network.edgeCount; start++) {
    if (taken[start] === 1) continue;
    const from = count;
    waiting[0] = network.jointOfEnd[2 * start] as number;
    reached[waiting[0]] = 1;
    for (let index = 0, known = 1; index < known; index++) {
      const joint = waiting[index] as number;
      const stop = network.first[joint + 1] as number;
      for (let place = network.first[joint] as number; place < stop; place++) {
        const end = network.ends[place] as number;
        if (taken[end >> 1] === 0) {
          taken[end >> 1] = 1;
          edges[count++] = end >> 1;
        }
        const other = network.jointOfEnd[end ^ 1] as number;
        if (reached[other] === 1) continue;
        reached[other] = 1;
        waiting[known++] = other;
      }
    }
    parts.push(edges.subarray(from, count));
  }
  return parts;
}

/** How many edge ends are at a joint; a loop counts twice. */
export const endsAt = (network: Network, joint: number): number => (network.first[joint + 1] as number) - (network.first[joint] as number);

/** The joints with an odd number of edge ends: at each of them some balloon must begin or end. */
export function oddJoints(network: Network): readonly number[] {
  const odd: number[] = [];
  for (let joint = 0; joint < network.jointCount; joint++) if (endsAt(network, joint) % 2 === 1) odd.push(joint);
  return odd;
}

function upTo(count: number): Int32Array {
  const numbers = new Int32Array(count);
  for (let index = 0; index < count; index++) numbers[index] = index;
  return numbers;
}
