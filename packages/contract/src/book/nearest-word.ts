/** Largest share of a word's letters that may be wrong in it to be taken for another. */
const mostWrong = 0.4;

/** The known word that differs least from the one that was written, if one is near enough to be meant. */
export function nearestWord(written: string, known: readonly string[]): string | undefined {
  let best: string | undefined;
  let least = Math.max(1, Math.floor(written.length * mostWrong)) + 1;
  for (const word of known) {
    if (word.toLowerCase() === written.toLowerCase()) return word;
    const distance = editDistance(written.toLowerCase().slice(0, 60), word.toLowerCase().slice(0, 60));
    if (distance < least) {
      best = word;
      least = distance;
    }
  }
  return best;
}

/** Fewest letters put in, left out, exchanged for another or for their neighbour (optimal string alignment). */
export function editDistance(a: string, b: string): number {
  let before: readonly number[] = [];
  let last: readonly number[] = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row: number[] = [i];
    for (let j = 1; j <= b.length; j++) {
      const exchanged = (last[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swapped =
        i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? (before[j - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY;
      row.push(Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, exchanged, swapped));
    }
    before = last;
    last = row;
  }
  return last[b.length] ?? 0;
}
