import { errorAt } from '@twistwright/books';
import { type Coverage, coverageOf } from '@twistwright/planner';
import { fail, ok, type Problem, type Result } from '@twistwright/units';
import { readJsonSource } from './json-source.ts';
import { Lines, nodeAt } from './source.ts';
import { readYamlSource } from './yaml-source.ts';

/** More than any problem that can be solved; as text of either form. */
const mostCharacters = 8_000_000;

/**
 * The plain coverage problem in the text of a file, YAML or JSON, or everything that is wrong with it, with line and column.
 * @param name name of the file, for sentences
 * @example readCoverage('budget: -5', 'bags.yaml').ok // -> false
 */
export function readCoverage(text: string, name: string): Result<Coverage> {
  const clean = text.startsWith('\uFEFF') ? text.slice(1) : text;
  if (clean.length > mostCharacters)
    return fail([errorAt('file.too-big', [], `${name} has ${clean.length} characters; a coverage problem has at most ${mostCharacters}.`)]);
  if (clean.trim() === '')
    return fail([errorAt('file.empty', [], `${name} is empty.`, 'A coverage problem has a budget, bags and figures.')]);
  const source = /^\s*[{[]/u.test(clean) ? readJsonSource(clean) : readYamlSource(clean);
  const lines = new Lines(clean);
  const { root } = source;
  if (root === undefined || source.problems.length > 0)
    return fail(source.problems.map(({ code, at, sentence, todo }) => ({ ...errorAt(code, [], sentence, todo), ...lines.placeOf(at) })));
  const placed = (problem: Problem): Problem => ({ ...problem, ...lines.placeOf(nodeAt(root, problem.path).node.at) });
  const read = coverageOf(root.value);
  return read.ok ? ok(read.value) : fail(read.error.map(placed));
}
