/** A word of a line with its place, 1-based. */
export interface FrameWord {
  readonly text: string;
  readonly column: number;
  /** Written in quotation marks, so never a comment. */
  readonly quoted: boolean;
}

/** The words of a line; `"left ear"` is one word, `#` starts a comment. An open quotation mark gives its column instead. */
export function frameWords(line: string): readonly FrameWord[] | { readonly openAt: number } {
  const words: FrameWord[] = [];
  const pattern = /\s*(?:#.*|"([^"]*)"|([^\s"#][^\s"]*)|("))/uy;
  while (pattern.lastIndex < line.length) {
    const found = pattern.exec(line);
    if (found === null) break;
    const [whole, quoted, plain, open] = found;
    const text = quoted ?? plain;
    const start = found.index + whole.length - whole.trimStart().length;
    if (open !== undefined) return { openAt: start + 1 };
    if (text === undefined) break;
    words.push({ text: text.normalize('NFC'), column: start + 1, quoted: quoted !== undefined });
  }
  return words;
}

/** A word as it must be written so that it is read back as one. */
export const asWord = (text: string): string => (/^[^\s"#][^\s"]*$/u.test(text) ? text : `"${text.replaceAll('"', "'")}"`);
