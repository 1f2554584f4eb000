import { daysBetween, type LocalDate, mean, percentile } from '@twistwright/units';
import { chanceOfStock, jointLevel } from './joint-level.ts';
import { type HandNeed, type JointSamples, requireSoundSamples } from './joint-samples.ts';

/** Stock of one item that counts towards the needs. */
export interface StockOfItem {
  readonly item: string;
  /** Usable pieces in all places. */
  readonly have: number;
  /** Pieces on order that arrive in time. */
  readonly onOrder: number;
}
export interface ItemNeed {
  readonly item: string;
  readonly mean: number;
  /** Percentiles of the pieces asked for over all gigs, hand-entered needs included, rounded up to whole pieces. */
  readonly p50: number;
  readonly p90: number;
  readonly p95: number;
  readonly have: number;
  readonly onOrder: number;
  /** Pieces missing to the joint stock for the chosen chance. */
  readonly short: number;
  /** Pieces of this item in the joint stock. */
  readonly wanted: number;
  /** Gigs that cause the need and their share of the mean, largest first; hand-entered needs under their reason. */
  readonly causes: readonly NeedCause[];
}
export interface NeedCause {
  readonly gig?: string;
  readonly reason?: string;
  readonly mean: number;
  readonly share: number;
}
export interface Needs {
  readonly items: readonly ItemNeed[];
  /** The chance asked for. */
  readonly chance: number;
  /** Share of runs in which nothing runs out with what there is and what is on order. */
  readonly chanceNow: number;
  /** The same with the joint stock. */
  readonly chanceThen: number;
  readonly runs: number;
}

/**
 * Needs of all gigs up to and including `until`, jointly: the wanted counts together make "nothing asked for ran out" true in at least
 * `chance` of the runs. `weight` (price of a piece, by item id) says which items are dear to hold.
 */
export function needsOf(
  samples: JointSamples,
  options: {
    readonly until?: LocalDate;
    readonly chance: number;
    readonly stock?: readonly StockOfItem[];
    readonly byHand?: readonly HandNeed[];
    readonly weight?: ReadonlyMap<string, number>;
  },
): Needs {
  requireSoundSamples(samples);
  const byHand = (options.byHand ?? []).filter((need) => isIn(need.by, options.until));
  const gigs = samples.perGig.filter((gig) => isIn(gig.day, options.until));
  const ids = [...samples.items, ...new Set(byHand.map((need) => need.item).filter((item) => !samples.items.includes(item)))];
  const totals = totalsOf({ ...samples, perGig: gigs }, ids, byHand);
  const stock = new Map((options.stock ?? []).map((entry) => [entry.item, entry]));
  const level = jointLevel(
    totals,
    ids.length,
    options.chance,
    ids.map((id) => options.weight?.get(id) ?? 1),
  );
  const items = ids.map((id, i): ItemNeed => {
    const counts = Float64Array.from({ length: samples.runs }, (_, r) => totals[r * ids.length + i] ?? 0).sort();
    const have = stock.get(id)?.have ?? 0;
    const onOrder = stock.get(id)?.onOrder ?? 0;
    const wanted = level.stock[i] ?? 0;
    return {
      item: id,
      mean: mean(counts),
      p50: Math.ceil(percentile(counts, 0.5)),
      p90: Math.ceil(percentile(counts, 0.9)),
      p95: Math.ceil(percentile(counts, 0.95)),
      have,
      onOrder,
      wanted,
      short: Math.max(0, wanted - have - onOrder),
      causes: causesOf(samples, gigs, byHand, id),
    };
  });
  const now = items.map((item) => item.have + item.onOrder);
  return {
    items,
    chance: options.chance,
    chanceNow: chanceOfStock(totals, ids.length, now),
    chanceThen: chanceOfStock(
      totals,
      ids.length,
      items.map((item) => Math.max(item.wanted, item.have + item.onOrder)),
    ),
    runs: samples.runs,
  };
}

const isIn = (day: LocalDate, until: LocalDate | undefined): boolean => until === undefined || daysBetween(day, until) >= 0;

/** Pieces asked for per run and item over all gigs of the samples, hand-entered needs added to every run. */
export function totalsOf(samples: JointSamples, ids: readonly string[], byHand: readonly HandNeed[]): Int32Array {
  const totals = new Int32Array(samples.runs * ids.length);
  const width = samples.items.length;
  for (const { used } of samples.perGig)
    for (let r = 0; r < samples.runs; r++)
      for (let i = 0; i < width; i++) totals[r * ids.length + i] = (totals[r * ids.length + i] ?? 0) + (used[r * width + i] ?? 0);
  for (const need of byHand) {
    const i = ids.indexOf(need.item);
    for (let r = 0; r < samples.runs; r++) totals[r * ids.length + i] = (totals[r * ids.length + i] ?? 0) + need.count;
  }
  return totals;
}

function causesOf(samples: JointSamples, gigs: JointSamples['perGig'], byHand: readonly HandNeed[], id: string): readonly NeedCause[] {
  const column = samples.items.indexOf(id);
  const width = samples.items.length;
  const fromGigs = gigs.map(({ gig, used }) => ({
    gig,
    mean: column < 0 ? 0 : mean(Float64Array.from({ length: samples.runs }, (_, r) => used[r * width + column] ?? 0)),
  }));
  const fromHand = byHand
    .filter((need) => need.item === id)
    .map((need) => ({ reason: need.reason ?? 'entered by hand', mean: need.count }));
  const causes = [...fromGigs, ...fromHand].filter((cause) => cause.mean > 0);
  const sum = causes.reduce((total, cause) => total + cause.mean, 0);
  return causes.map((cause) => ({ ...cause, share: cause.mean / sum })).sort((a, b) => b.share - a.share);
}
