import type { RecipeWord } from '@twistwright/repertoire';

/** A text with what was put into it selected, ready to be written over. */
export interface Written {
  readonly text: string;
  readonly from: number;
  readonly to: number;
  /** The line that was written, from 1. */
  readonly line: number;
}

const step = '  ';

/**
 * Puts a word into a recipe where the cursor stands. A word that starts a line gets a line of its own below the one with the cursor, indented
 * as its neighbours are; what follows a comma goes to the end of the cursor's line; a length takes the place of the length there.
 * @example writeWord('balloon dog: 260 in body', 24, lockWord).text // -> 'balloon dog: 260 in body\n  lock'
 */
export function writeWord(text: string, cursor: number, { stands, writes, example }: RecipeWord): Written {
  const before = text.slice(0, cursor).split('\n');
  const at = before.length - 1;
  const lines = text.split('\n');
  const line = lines[at] ?? '';
  if (stands === 'option') {
    const isFor = writes.startsWith('finish') || writes.startsWith('printed') ? balloonLine : optionLine;
    if (isFor.test(line)) {
      const written = withOption(line, writes, (before[at] ?? '').length);
      return put(lines, at, written.line, written.from, written.from + writes.length);
    }
  }
  if (stands === 'length') {
    const found = lengthOf.exec(line);
    if (found !== null) {
      const from = (found[1] ?? '').length;
      const after = line.slice(from + (found[2] ?? '').length);
      const gap = after === '' || /^[\s,#]/u.test(after) ? '' : ' ';
      return put(lines, at, `${line.slice(0, from)}${writes}${gap}${after}`, from, from + writes.length);
    }
  }
  const place = line.trim() === '' ? at : at + 1;
  const whole = `${indentAt(lines.slice(0, place), example)}${example}`;
  const first = /^\s*\S+\s?/u.exec(whole)?.[0].length ?? 0;
  const others = place === at ? lines.toSpliced(at, 1) : lines;
  return put(others.toSpliced(place, 0, ''), place, whole, first, whole.length);
}

function put(lines: readonly string[], at: number, line: string, from: number, to: number): Written {
  const start = lines.slice(0, at).reduce((sum, entry) => sum + entry.length + 1, 0);
  return { text: lines.toSpliced(at, 1, line).join('\n'), from: start + from, to: start + to, line: at + 1 };
}

const balloonLine = /^\s*balloon\b/iu;
const optionLine = /^\s*(?:bubble|pinch|fold|loop|tulip|apple|roll|flat)\b/iu;
const lengthOf =
  /^(\s*(?:bubble|pinch|fold|loop|tulip|apple|roll|flat)\s+)((?:\d*\.?\d+\s*(?:inches|inch|in|cm)?(?![^\s,#])|(?:half\s+of\s+|\d+\/\d+\s+of\s+)?rest(?![^\s,#]))?)/iu;

/**
 * A direction is added to the directions at the cursor, or to those the line has; anything else takes the place of what the line says of it. What
 * the line does not say yet goes to its end, before a comment.
 */
function withOption(line: string, writes: string, cursor: number): { readonly line: string; readonly from: number } {
  const hash = line.indexOf('#');
  const end = hash < 0 ? line.length : hash;
  const parts: { readonly from: number; readonly text: string }[] = [];
  for (let from = 0; from <= end; ) {
    const comma = line.indexOf(',', from);
    const to = comma < 0 || comma > end ? end : comma;
    parts.push({ from, text: line.slice(from, to).trimEnd() });
    from = to + 1;
  }
  const kind = kindOf(writes);
  const here = parts.slice(1).find(({ from, text }) => cursor >= from && cursor <= from + text.length);
  const part =
    kind === 'aim' && here !== undefined && /^(?:aim|facing|bend)$/u.test(kindOf(here.text))
      ? here
      : parts.slice(1).find(({ text }) => text.trim() === '' || kindOf(text) === kind);
  if (part === undefined) {
    const body = line.slice(0, end).trimEnd();
    return { line: `${body}, ${writes}${hash < 0 ? '' : ` ${line.slice(hash)}`}`, from: body.length + 2 };
  }
  const { from, text } = part;
  const after = line.slice(from + text.length);
  const isAdded = kind === 'aim' && text.trim() !== '';
  const start = isAdded ? `${line.slice(0, from)}${text} ` : `${line.slice(0, from)} `;
  return { line: `${start}${writes}${after}`, from: start.length };
}
/** What a part of a line speaks of: where it points, how often, which way it faces ... */
function kindOf(part: string): string {
  const word = /^\s*([a-z×]*)/iu.exec(part)?.[1]?.toLowerCase() ?? '';
  return /^(?:up|down|left|right|forward|back)$/u.test(word) ? 'aim' : word === '×' ? 'x' : word;
}

/** Balloons, minutes and finishing stand at the edge, all else two blanks further in than the balloon or group it belongs to. */
function indentAt(above: readonly string[], example: string): string {
  if (/^(?:balloon|minutes|finish)\b/u.test(example)) return '';
  const last = above.findLast((line) => line.trim() !== '' && !line.trimStart().startsWith('#')) ?? '';
  const indent = /^\s*/u.exec(last)?.[0] ?? '';
  if (example === 'end' && !/^\s*repeat\b/iu.test(last)) return indent.slice(step.length) || step;
  if (example === 'end') return indent;
  return /^\s*(?:balloon|repeat)\b/iu.test(last) ? `${indent}${step}` : indent || step;
}
