/** A stretch of a line with its place, 1-based, in UTF-16 units as editors count. */
export interface Span {
  readonly text: string;
  readonly column: number;
}

/** The words of a span, each with its column. */
export function wordsOf(span: Span): readonly Span[] {
  return [...span.text.matchAll(/\S+/gu)].map((match) => ({ text: match[0], column: span.column + match.index }));
}

/** The parts between commas, white space trimmed, each with its column; an empty part keeps its place. */
export function partsOf(span: Span): readonly Span[] {
  const parts: Span[] = [];
  let from = 0;
  for (const text of span.text.split(',')) {
    const lead = text.length - text.trimStart().length;
    parts.push({ text: text.trim(), column: span.column + from + lead });
    from += text.length + 1;
  }
  return parts;
}

/** Names are compared in Unicode's composed form with single spaces, so that the same word typed on two machines is one name. */
export const tidyName = (text: string): string => text.normalize('NFC').trim().replace(/\s+/gu, ' ');

/** What would clear a terminal, hide, or turn the direction of writing: controls, halves of characters, marks of direction, blanks without width. */
const unseen = '\\p{Cc}\\p{Cs}\\u200b\\u200e\\u200f\\u2028-\\u202e\\u2060-\\u2069\\ufeff';
/** Whether a name has a character that nobody sees. */
export const hasUnseen = (text: string): boolean => new RegExp(`[${unseen}]`, 'u').test(text);

/**
 * What somebody wrote, fit to be quoted in a sentence: short, and with a mark for each character that cannot be seen.
 * @example quoted('bub\u0000bel') // -> '“bub\ufffdbel”'
 */
export function quoted(text: string): string {
  const characters = Array.from(text.slice(0, 2 * mostQuoted + 2));
  const kept = characters
    .slice(0, mostQuoted)
    .join('')
    .replace(new RegExp(`[${unseen}]`, 'gu'), '\ufffd');
  return `“${kept}${characters.length > mostQuoted ? '…' : ''}”`;
}
const mostQuoted = 40;

/** Single insertions, deletions, exchanges and neighbours swapped that lead from one word to the other. */
function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) best = Math.min(best, (beforeLast[j - 2] ?? 0) + 1);
      row.push(best);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length] ?? 0;
}

/**
 * The known word that was probably meant: at most two slips away, and at most a third of its letters.
 * @example nearestWord('bubbel', ['bubble', 'fold']) // -> 'bubble'
 */
export function nearestWord(word: string, known: readonly string[]): string | undefined {
  if (word.length > 30) return undefined;
  const lower = word.toLowerCase();
  const ranked = known
    .map((candidate) => ({ candidate, slips: editDistance(lower, candidate.toLowerCase()) }))
    .sort((a, b) => a.slips - b.slips);
  const best = ranked[0];
  return best !== undefined && best.slips <= Math.min(2, Math.ceil(best.candidate.length / 3)) ? best.candidate : undefined;
}
