/**
 * The stock that makes "nothing asked for ran out" true with a chosen chance, for all items at once. Exact on the sample: a run counts
 * as covered only if every item lasts.
 */
export interface JointLevel {
  /** Pieces of each item. */
  readonly stock: readonly number[];
  /** Share of runs in which nothing runs out with this stock; at least what was asked. */
  readonly chance: number;
}

/** Share of runs in which `stock` covers every item. `totals[r * items + i]` is what run r asks for. */
export function chanceOfStock(totals: Int32Array, items: number, stock: readonly number[]): number {
  const runs = totals.length / items;
  let covered = 0;
  for (let r = 0; r < runs; r++) {
    let lasts = true;
    for (let i = 0; i < items && lasts; i++) lasts = (totals[r * items + i] ?? 0) <= (stock[i] ?? 0);
    if (lasts) covered++;
  }
  return items === 0 ? 1 : covered / runs;
}

/**
 * Least stock for the chance: begins with what covers every run and takes away, again and again, the top count of the item that saves
 * most weight for each run it gives up (weight = price of a piece where given, else 1), until no run more may be given up. The chance
 * is exact; that no lighter stock exists is not claimed, the purchase programme decides that with real bags and prices.
 * @example jointLevel(Int32Array.from([1, 0, 0, 1, 1, 1, 2, 2]), 2, 0.75).stock // -> [1, 1]
 */
export function jointLevel(totals: Int32Array, items: number, chance: number, weight: readonly number[] = []): JointLevel {
  if (!(chance >= 0 && chance <= 1)) throw new RangeError(`a chance is from 0 to 1, not ${chance}`);
  if (items === 0) return { stock: [], chance: 1 };
  const runs = totals.length / items;
  let mayLose = runs - Math.ceil(chance * runs - 1e-9);
  const isLost = new Uint8Array(runs);
  const ranked = Array.from({ length: items }, (_, i) => runsByCount(totals, items, i));
  const next = new Uint32Array(items);
  const countOf = (i: number, at: number): number => totals[(ranked[i]?.[at] ?? 0) * items + i] ?? 0;
  for (;;) {
    let choice: { readonly item: number; readonly lost: readonly number[]; readonly to: number; readonly gain: number } | undefined;
    for (let i = 0; i < items; i++) {
      const step = stepDown(i, next[i] ?? 0, runs, countOf, (at) => ranked[i]?.[at] ?? 0, isLost, mayLose);
      if (step === undefined) continue;
      const gain = ((weight[i] ?? 1) * step.saved) / Math.max(step.lost.length, 1e-9);
      if (choice === undefined || gain > choice.gain) choice = { item: i, lost: step.lost, to: step.to, gain };
    }
    if (choice === undefined) break;
    for (const run of choice.lost) isLost[run] = 1;
    mayLose -= choice.lost.length;
    next[choice.item] = choice.to;
  }
  const stock = ranked.map((_, i) => ((next[i] ?? 0) < runs ? countOf(i, next[i] ?? 0) : 0));
  return { stock, chance: chanceOfStock(totals, items, stock) };
}

/** Runs in falling order of what they ask of one item, equal ones in order of their number; a counting sort, since counts are small. */
function runsByCount(totals: Int32Array, items: number, item: number): Uint32Array {
  const runs = totals.length / items;
  let most = 0;
  for (let r = 0; r < runs; r++) most = Math.max(most, totals[r * items + item] ?? 0);
  const next = new Uint32Array(most + 2);
  for (let r = 0; r < runs; r++) {
    const after = most - (totals[r * items + item] ?? 0) + 1;
    next[after] = (next[after] ?? 0) + 1;
  }
  for (let k = 1; k < next.length; k++) next[k] = (next[k] ?? 0) + (next[k - 1] ?? 0);
  const ranked = new Uint32Array(runs);
  for (let r = 0; r < runs; r++) {
    const count = most - (totals[r * items + item] ?? 0);
    const at = next[count] ?? 0;
    ranked[at] = r;
    next[count] = at + 1;
  }
  return ranked;
}

/** From the present top count of an item to the next lower one: the runs that would run out and the pieces saved. */
function stepDown(
  item: number,
  from: number,
  runs: number,
  countOf: (item: number, at: number) => number,
  runAt: (at: number) => number,
  isLost: Uint8Array,
  mayLose: number,
): { readonly lost: readonly number[]; readonly to: number; readonly saved: number } | undefined {
  if (from >= runs || countOf(item, from) === 0) return undefined;
  const top = countOf(item, from);
  const lost: number[] = [];
  let to = from;
  for (; to < runs && countOf(item, to) === top; to++) {
    const run = runAt(to);
    if (isLost[run] === 0) lost.push(run);
    if (lost.length > mayLose) return undefined;
  }
  return { lost, to, saved: top - (to < runs ? countOf(item, to) : 0) };
}
