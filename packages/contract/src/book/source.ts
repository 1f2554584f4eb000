/** A value of a file together with where it stands: enough to say line and column of any problem found later. */
export interface SourceNode {
  /** Offset of its first character. */
  readonly at: number;
  readonly value: unknown;
  /** How a number, truth value or nothing is written, for where a text was meant: `260`, `007`, `no`. */
  readonly written?: string;
  readonly parts?: ReadonlyMap<string | number, SourcePart>;
}
export interface SourcePart {
  /** Offset of its key, or of the entry itself in a list. */
  readonly keyAt: number;
  readonly node: SourceNode;
}

/** Deepest nesting; the deepest place of a book lies less than ten deep. */
export const deepest = 60;

/** The node at the end of the path, or the last one on the way to it that is there. */
export function nodeAt(
  root: SourceNode,
  path: readonly PropertyKey[],
): { readonly node: SourceNode; readonly keyAt: number; readonly whole: boolean } {
  let node = root;
  let keyAt = root.at;
  for (const key of path) {
    const part = node.parts?.get(typeof key === 'symbol' ? String(key) : key);
    if (part === undefined) return { node, keyAt, whole: false };
    node = part.node;
    keyAt = part.keyAt;
  }
  return { node, keyAt, whole: true };
}

/** Line and column, both from 1, of an offset. */
export class Lines {
  readonly #starts: number[] = [0];
  constructor(text: string) {
    for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) this.#starts.push(at + 1);
  }
  placeOf(at: number): { readonly line: number; readonly column: number } {
    let low = 0;
    let high = this.#starts.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((this.#starts[middle] ?? 0) <= at) low = middle;
      else high = middle;
    }
    return { line: low + 1, column: at - (this.#starts[low] ?? 0) + 1 };
  }
}

/** A problem of the text itself, with its offset. */
export interface SourceProblem {
  readonly code:
    | 'file.syntax'
    | 'file.too-deep'
    | 'file.cycle'
    | 'file.alias'
    | 'file.merge-key'
    | 'file.tag'
    | 'file.duplicate-key'
    | 'key.form'
    | 'value.missing';
  readonly at: number;
  readonly sentence: string;
  readonly todo?: string;
}
export interface Source {
  /** Missing when the text could not be read at all. */
  readonly root?: SourceNode;
  readonly problems: readonly SourceProblem[];
}
