import { fail, ok, type Problem, type Result } from '@twistwright/units';
import { limits } from './limits.ts';
import type { Line } from './line.ts';
import { readLine } from './read-line.ts';
import { readRecipe } from './read-recipe.ts';
import { indented } from './write-recipe.ts';

/**
 * The same text in its plain form: words, spaces and indents as `writeRecipe` puts them, comments and the order of lines kept, at most one
 * blank line in a row. Formatting twice is the same as once, and the recipe it means is unchanged. A text that cannot be read is refused with
 * its problems.
 * @example formatRecipe('balloon  dog:260 in body\nBUBBLE 3.0 nose   # long') // -> { ok: true, value: 'balloon dog: 260 in body\n  bubble 3 nose # long\n' }
 */
export function formatRecipe(text: string): Result<string> {
  if (text.length > limits.characters) return readFailure(text);
  const lines: string[] = [];
  let level = 0;
  for (const [index, source] of text.split(/\r\n|\r|\n/u).entries()) {
    const read = readLine(source, index + 1);
    if (read.line === undefined) return readFailure(text);
    if (read.line.kind === 'piece') level = 0;
    if (read.line.kind === 'end') level = Math.max(1, level - 1);
    lines.push(withComment(indented(levelOf(read.line, level), read.line), read.comment, level));
    if (read.line.kind === 'piece') level = 1;
    if (read.line.kind === 'repeat') level = Math.min(limits.depth + 1, level + 1);
  }
  return readable(text) ?? ok(joined(lines));
}

const levelOf = (line: Line, level: number): number => (line.kind === 'finish' || line.kind === 'minutes' ? 0 : level);

function withComment(line: string, comment: string | undefined, level: number): string {
  if (comment === undefined) return line;
  const said = comment === '' ? '#' : `# ${comment}`;
  return line === '' ? '  '.repeat(level) + said : `${line} ${said}`;
}

/** No blank lines at the ends, none doubled, one line break at the end. */
function joined(lines: readonly string[]): string {
  const kept = lines.filter((line, i) => line !== '' || (i > 0 && lines[i - 1] !== ''));
  const text = kept.join('\n').replace(/^\n+|\n+$/gu, '');
  return text === '' ? '' : `${text}\n`;
}

/** Problems that only show when lines are put together, such as a group that is not closed. Sizes do not matter for the form. */
function readable(text: string): { readonly ok: false; readonly error: readonly Problem[] } | undefined {
  const read = readRecipe(text);
  return read.ok || read.error.every((problem) => problem.code === 'recipe.size') ? undefined : read;
}

function readFailure(text: string): Result<string> {
  const read = readRecipe(text);
  return read.ok ? fail([]) : read;
}
