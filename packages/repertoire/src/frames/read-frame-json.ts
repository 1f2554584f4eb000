import { fail, ok, type Problem, type Result } from '@twistwright/units';
import {
  checkFrame,
  type Frame,
  type FrameEdge,
  type FrameJoint,
  frameProblem,
  mostFrameEdges,
  mostFrameProblems,
  noEdges,
  tooManyEdges,
} from './frame.ts';

/**
 * Reads a frame from parsed JSON: `{ name?, joints?, edges: [{ from, to, lengthInches, colour? }] }`. `joints` are names or
 * `{ name, at? }`; left out, the names in the edges make them. Unknown keys are refused, so that a misspelt one is not lost.
 * @example readFrameJson({ edges: [{ from: 'A', to: 'B', lengthInches: 5 }] }).value.joints // -> [{ name: 'A' }, { name: 'B' }]
 */
export function readFrameJson(value: unknown): Result<Frame> {
  const problems: Problem[] = [];
  if (!isRecord(value)) return fail([frameProblem('frame.json', [], 'A frame is an object with edges.')]);
  checkKeys(value, ['name', 'joints', 'edges'], [], problems);
  if (!Array.isArray(value.edges)) return fail([...problems, noEdges()]);
  if (value.edges.length > mostFrameEdges) return fail([tooManyEdges(value.edges.length)]);
  const edges: FrameEdge[] = [];
  for (const [index, edge] of value.edges.entries()) {
    if (problems.length >= mostFrameProblems) break;
    const read = readEdge(edge, index, problems);
    if (read !== undefined) edges.push(read);
  }
  const joints = value.joints === undefined ? namedIn(edges) : readJoints(value.joints, problems);
  const name = optionalText(value, 'name', [], problems);
  if (problems.length > 0) return fail(problems.slice(0, mostFrameProblems));
  const frame: Frame = { ...(name === undefined ? {} : { name }), joints, edges };
  const wrong = checkFrame(frame);
  return wrong.length === 0 ? ok(frame) : fail(wrong);
}

function readEdge(value: unknown, index: number, problems: Problem[]): FrameEdge | undefined {
  const path = ['edges', index];
  if (!isRecord(value)) return refuse(problems, path, `Edge ${index + 1} is not an object.`);
  checkKeys(value, ['from', 'to', 'lengthInches', 'colour'], path, problems);
  const { from, to, lengthInches } = value;
  const colour = optionalText(value, 'colour', path, problems);
  if (typeof from !== 'string' || typeof to !== 'string') return refuse(problems, path, `Edge ${index + 1} needs “from” and “to” as text.`);
  if (typeof lengthInches !== 'number') return refuse(problems, path, `Edge ${index + 1} needs “lengthInches” as a number.`);
  return { from, to, lengthInches, ...(colour === undefined ? {} : { colour }) };
}

function readJoints(value: unknown, problems: Problem[]): readonly FrameJoint[] {
  if (!Array.isArray(value)) return refuse(problems, ['joints'], 'The joints are not a list.') ?? [];
  return value.flatMap((joint: unknown, index): readonly FrameJoint[] => {
    if (typeof joint === 'string') return [{ name: joint }];
    const path = ['joints', index];
    if (!isRecord(joint) || typeof joint.name !== 'string') return refuse(problems, path, `Joint ${index + 1} has no name.`) ?? [];
    checkKeys(joint, ['name', 'at'], path, problems);
    const at = joint.at;
    if (at === undefined) return [{ name: joint.name }];
    if (!isPlace(at)) return refuse(problems, path, `The place of joint ${joint.name} is not three numbers.`) ?? [];
    return [{ name: joint.name, at }];
  });
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value);

const isPlace = (value: unknown): value is readonly [number, number, number] =>
  Array.isArray(value) && value.length === 3 && value.every((part) => typeof part === 'number');

function namedIn(edges: readonly FrameEdge[]): readonly FrameJoint[] {
  const names = new Set<string>();
  for (const { from, to } of edges) names.add(from).add(to);
  return [...names].map((name) => ({ name }));
}

function checkKeys(value: Record<string, unknown>, known: readonly string[], path: Problem['path'], problems: Problem[]): void {
  for (const key of Object.keys(value)) {
    if (!known.includes(key)) refuse(problems, [...path, key], `“${key.slice(0, 40)}” is not known here; known: ${known.join(', ')}.`);
  }
}

function optionalText(value: Record<string, unknown>, key: string, path: Problem['path'], problems: Problem[]): string | undefined {
  const text = value[key];
  if (text === undefined || typeof text === 'string') return text;
  return refuse(problems, [...path, key], `“${key}” is not text.`);
}

function refuse(problems: Problem[], path: Problem['path'], sentence: string): undefined {
  if (problems.length < mostFrameProblems) problems.push(frameProblem('frame.json', path, sentence));
  return undefined;
}
