const separators = ['\t', ';', ',', '|'] as const;

/**
 * The headings of a price list as somebody would read them: the cells of its first line that is not blank.
 * @example headingsOf('\nArt;Ware;"Preis, netto"\n1;260 rot;7,90') // -> ['Art', 'Ware', 'Preis, netto']
 */
export function headingsOf(text: string): readonly string[] {
  const line = text.split(/\r?\n/u).find((entry) => entry.trim() !== '') ?? '';
  const separator = separators.map((mark) => ({ mark, cells: line.split(mark).length })).sort((a, b) => b.cells - a.cells)[0]?.mark ?? ',';
  const cells: string[] = [];
  let cell = '';
  let isQuoted = false;
  for (const letter of line) {
    if (letter === '"') isQuoted = !isQuoted;
    else if (letter === separator && !isQuoted) {
      cells.push(cell);
      cell = '';
    } else cell += letter;
  }
  return [...cells, cell].map((entry) => entry.trim()).filter((entry) => entry !== '');
}
