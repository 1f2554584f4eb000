import type { Problem } from '@twistwright/units';

/** A place where edges meet. `at` is there for pictures only, in inches; no length is taken from it. */
export interface FrameJoint {
  readonly name: string;
  readonly at?: readonly [number, number, number];
}

/** One bubble of a frame. `from` and `to` may be the same joint (a loop), and several edges may join the same two joints. */
export interface FrameEdge {
  readonly from: string;
  readonly to: string;
  /** Inflated length in inches, from 0.001 (included) to 10,000 (included). */
  readonly lengthInches: number;
  /** Colour role; an edge without one may be made in any colour. */
  readonly colour?: string;
}

/** A wire-frame figure as a graph: what must be there in the end, not how it is twisted. */
export interface Frame {
  readonly name?: string;
  readonly joints: readonly FrameJoint[];
  readonly edges: readonly FrameEdge[];
}

/** Shortest and longest edge that is understood, in inches. */
export const shortestEdgeInches = 0.001;
export const longestEdgeInches = 10_000;
/** Most edges in one frame. */
export const mostFrameEdges = 2_000_000;
/** A file with a thousand mistakes is not helped by a thousand sentences. */
export const mostFrameProblems = 20;

/**
 * Everything wrong with a frame; an empty list means that it can be made. At most `mostFrameProblems` are told.
 * @example checkFrame({ joints: [{ name: 'A' }], edges: [] })[0]?.code // -> 'frame.no-edges'
 */
export function checkFrame(frame: Frame): readonly Problem[] {
  if (frame.edges.length === 0) return [noEdges()];
  if (frame.edges.length > mostFrameEdges) return [tooManyEdges(frame.edges.length)];
  const problems: Problem[] = [];
  const known = checkJoints(frame.joints, problems);
  for (let index = 0; index < frame.edges.length && problems.length < mostFrameProblems; index++) {
    checkEdge(frame.edges[index] as FrameEdge, index, known, problems);
  }
  return problems.slice(0, mostFrameProblems);
}

function checkJoints(joints: readonly FrameJoint[], problems: Problem[]): ReadonlySet<string> {
  const known = new Set<string>();
  for (let index = 0; index < joints.length && problems.length < mostFrameProblems; index++) {
    const { name, at } = joints[index] as FrameJoint;
    if (name.trim() === '') problems.push(frameProblem('frame.joint-unnamed', ['joints', index], `Joint ${index + 1} has no name.`));
    if (known.has(name)) {
      const sentence = `Two joints are called ${name}.`;
      problems.push(frameProblem('frame.joint-twice', ['joints', index], sentence, 'Give each joint a name of its own.'));
    }
    if (at?.some((place) => !Number.isFinite(place))) {
      problems.push(frameProblem('frame.joint-place', ['joints', index], `The place of joint ${name} is not three numbers.`));
    }
    known.add(name);
  }
  return known;
}

function checkEdge(edge: FrameEdge, index: number, known: ReadonlySet<string>, problems: Problem[]): void {
  if (!known.has(edge.from)) problems.push(unknownJoint(edge.from, ['edges', index, 'from']));
  if (!known.has(edge.to)) problems.push(unknownJoint(edge.to, ['edges', index, 'to']));
  if (isEdgeLength(edge.lengthInches)) return;
  problems.push(
    frameProblem(
      'frame.edge-length',
      ['edges', index, 'lengthInches'],
      `The edge ${edge.from} to ${edge.to} is ${edge.lengthInches} inches long.`,
      `Give it a length from ${shortestEdgeInches} to 10,000 inches.`,
    ),
  );
}

/** Whether a joint has a name and, if any, a place of finite numbers. */
export const isJoint = (name: string, at: FrameJoint['at']): boolean => name.trim() !== '' && at?.every(Number.isFinite) !== false;

export const isEdgeLength = (inches: number): boolean => inches >= shortestEdgeInches && inches <= longestEdgeInches;

export const frameProblem = (code: string, path: Problem['path'], sentence: string, todo?: string): Problem => ({
  code,
  path,
  sentence,
  weight: 'error',
  ...(todo === undefined ? {} : { todo }),
});

export const noEdges = (): Problem => frameProblem('frame.no-edges', ['edges'], 'The frame has no edges.', 'Add at least one edge.');

export const tooManyEdges = (count: number): Problem =>
  frameProblem(
    'frame.too-many-edges',
    ['edges'],
    `The frame has ${count} edges; ${mostFrameEdges} is the most that is understood.`,
    'Cut the frame into parts and plan each on its own.',
  );

const unknownJoint = (name: string, path: Problem['path']): Problem =>
  frameProblem('frame.joint-unknown', path, `There is no joint called ${name}.`, 'Name it among the joints, or correct the name.');
