import type { Problem } from '@twistwright/units';
import { readJsonSource } from './json-source.ts';
import { Lines, nodeAt } from './source.ts';
import { readYamlSource } from './yaml-source.ts';

/**
 * Problems found later, by `checkBook`, with the line and column of the file that the book was read from. A problem whose place is not in the text keeps
 * its path only.
 */
export function placeProblems(text: string, { name }: { readonly name: string }, problems: readonly Problem[]): readonly Problem[] {
  const clean = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const json = name.toLowerCase().endsWith('.json') || /^\s*\{/.test(clean.slice(0, 1000));
  const { root } = json ? readJsonSource(clean) : readYamlSource(clean);
  if (root === undefined) return problems;
  const lines = new Lines(clean);
  return problems.map((problem) => {
    if (problem.line !== undefined || problem.path.length === 0) return problem;
    const { node, keyAt, whole } = nodeAt(root, problem.path);
    return { ...problem, ...lines.placeOf(whole ? node.at : keyAt) };
  });
}
