/** Text that reads like a page: a sentence, then aligned rows. Colour and weight only on a terminal that wants them. */
export interface Page {
  /** A sentence that answers, in bold on a terminal. */
  say(sentence: string): void;
  /** Plain text below it, folded at the width of the page. */
  tell(text: string): void;
  /** A line as it is, however long. */
  verbatim(line: string): void;
  /** Rows in columns; numbers right, words left. */
  table(
    head: readonly string[],
    rows: readonly (readonly (string | number)[])[],
    options?: { readonly foot?: readonly (string | number)[] },
  ): void;
  gap(): void;
  text(): string;
}

const width = 100;

export function pageFor(colours: boolean): Page {
  const lines: string[] = [];
  const bold = (text: string): string => (colours ? `\u001b[1m${text}\u001b[22m` : text);
  const dim = (text: string): string => (colours ? `\u001b[2m${text}\u001b[22m` : text);
  return {
    say: (sentence) => lines.push(...fold(sentence).map(bold)),
    tell: (text) => lines.push(...fold(text)),
    verbatim: (line) => lines.push(line),
    gap: () => lines.push(''),
    table(head, rows, options) {
      const cells = rows.map((row) => row.map(String));
      const foot = options?.foot?.map(String);
      const all = [head, ...cells, ...(foot === undefined ? [] : [foot])];
      const widths = head.map((_, column) => Math.max(...all.map((row) => lengthOf(row[column] ?? ''))));
      const right = head.map((_, column) => rows.length > 0 && rows.every((row) => isNumber(row[column] ?? '')));
      const write = (row: readonly string[]): string =>
        row
          .map((cell, column) =>
            right[column]
              ? ' '.repeat((widths[column] ?? 0) - lengthOf(cell)) + cell
              : column === head.length - 1
                ? cell
                : cell + ' '.repeat((widths[column] ?? 0) - lengthOf(cell)),
          )
          .join('  ')
          .trimEnd();
      lines.push(`  ${dim(write(head))}`, ...cells.map((row) => `  ${write(row)}`));
      if (foot !== undefined) lines.push(`  ${bold(write(foot))}`);
    },
    text: () => `${lines.join('\n')}\n`,
  };
}

const lengthOf = (text: string): number => [...text].length;
/** A cell that is a number, an amount, a clock, or nothing at all counts as one for the alignment of its column. */
const isNumber = (cell: string | number): boolean =>
  typeof cell === 'number' || /^([-+]?[^\w\s]?[\d,.]+( ?%| [A-Z]{3}| min| in| h)?|\d\d:\d\d|)$/.test(cell);

function fold(text: string): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && lengthOf(line) + lengthOf(word) + 1 > width) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
