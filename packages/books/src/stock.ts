import { exhausted, type LocalDate, type Money } from '@twistwright/units';

/** Where stock lies. */
export interface Place {
  readonly id: string;
  readonly name: string;
  readonly kind: 'home' | 'car' | 'case' | 'apron' | 'other';
  /** Pockets in the order in which the apron is filled: item ids. */
  readonly pockets?: readonly string[];
  /** Most pieces that fit. */
  readonly room?: number;
}

/** One line of the ledger. Stock is the fold over these in order of `day`, then of the list. */
export type StockMove =
  /** Bags come in. */
  | (MoveBase & {
      readonly kind: 'arrived';
      readonly place: string;
      readonly bags: number;
      readonly perBag: number;
      readonly bagPrice?: Money;
      readonly order?: string;
      readonly goodUntil?: LocalDate;
    })
  /** Single pieces come in. */
  | (MoveBase & { readonly kind: 'found'; readonly place: string; readonly count: number })
  /** A sealed bag is opened. */
  | (MoveBase & { readonly kind: 'opened'; readonly place: string; readonly perBag: number })
  | (MoveBase & { readonly kind: 'moved'; readonly from: string; readonly to: string; readonly count: number })
  | (MoveBase & { readonly kind: 'used'; readonly place: string; readonly count: number; readonly gig?: string })
  | (MoveBase & { readonly kind: 'lost'; readonly place: string; readonly count: number; readonly why?: string })
  /** A stocktake: there are this many, whatever the ledger said before. */
  | (MoveBase & {
      readonly kind: 'counted';
      readonly place: string;
      readonly count: number;
      readonly bags?: readonly { readonly perBag: number; readonly bags: number }[];
    });
interface MoveBase {
  readonly id: string;
  readonly day: LocalDate;
  readonly item: string;
}

/** Pieces of one age and price. */
export interface Lot {
  readonly count: number;
  /** Day it came in. */
  readonly since: LocalDate;
  readonly goodUntil?: LocalDate;
  /** Price of one piece in minor units, with fractions; missing when it is not known. */
  readonly pieceCost?: number;
  /** Pieces in a sealed bag of this lot; missing for loose ones. */
  readonly sealedPerBag?: number;
}
export interface StockLine {
  readonly item: string;
  readonly place: string;
  /** All pieces, sealed and loose. */
  readonly count: number;
  readonly sealed: readonly { readonly perBag: number; readonly bags: number }[];
  readonly loose: number;
  readonly lots: readonly Lot[];
}
/** A difference that a stocktake, or taking more than there was, has shown. */
export interface StockDifference {
  readonly move: string;
  readonly item: string;
  readonly place: string;
  readonly expected: number;
  readonly counted: number;
}
export interface Stock {
  readonly lines: readonly StockLine[];
  readonly differences: readonly StockDifference[];
}

interface OpenLot {
  count: number;
  readonly since: LocalDate;
  readonly goodUntil?: LocalDate;
  readonly pieceCost?: number;
  sealedPerBag?: number;
}

/**
 * Stock by item and place after all moves up to and including `day` (all moves if missing). Oldest lots leave first, loose before sealed.
 * Taking more than there is leaves nothing and shows as a difference, so that a wrong count is seen and never turns negative.
 */
export function stockOf(moves: readonly StockMove[], day?: LocalDate): Stock {
  const shelves = new Map<string, OpenLot[]>();
  const differences: StockDifference[] = [];
  const shelf = (item: string, place: string): OpenLot[] => {
    const key = JSON.stringify([item, place]);
    const found = shelves.get(key) ?? [];
    shelves.set(key, found);
    return found;
  };
  const inOrder = moves
    .map((move, index) => ({ move, index }))
    .sort((a, b) => (a.move.day < b.move.day ? -1 : a.move.day > b.move.day ? 1 : a.index - b.index));
  for (const { move } of inOrder) {
    if (day !== undefined && move.day > day) break;
    switch (move.kind) {
      case 'arrived':
        shelf(move.item, move.place).push({
          count: move.bags * move.perBag,
          since: move.day,
          sealedPerBag: move.perBag,
          ...(move.goodUntil === undefined ? {} : { goodUntil: move.goodUntil }),
          ...(move.bagPrice === undefined ? {} : { pieceCost: move.bagPrice / move.perBag }),
        });
        break;
      case 'found':
        shelf(move.item, move.place).push({ count: move.count, since: move.day });
        break;
      case 'opened':
        openBag(shelf(move.item, move.place), move.perBag);
        break;
      case 'moved': {
        const taken = take(shelf(move.item, move.from), move.count);
        if (taken.short > 0)
          differences.push({ move: move.id, item: move.item, place: move.from, expected: move.count - taken.short, counted: move.count });
        shelf(move.item, move.to).push(...taken.lots);
        break;
      }
      case 'used':
      case 'lost': {
        const taken = take(shelf(move.item, move.place), move.count);
        if (taken.short > 0)
          differences.push({ move: move.id, item: move.item, place: move.place, expected: move.count - taken.short, counted: move.count });
        break;
      }
      case 'counted': {
        const lots = shelf(move.item, move.place);
        const expected = total(lots);
        if (expected !== move.count) differences.push({ move: move.id, item: move.item, place: move.place, expected, counted: move.count });
        if (move.count < expected) take(lots, expected - move.count);
        if (move.count > expected) lots.push({ count: move.count - expected, since: move.day });
        if (move.bags !== undefined) seal(lots, move.bags);
        break;
      }
      default:
        exhausted(move);
    }
  }
  const lines = [...shelves].map(([key, lots]): StockLine => {
    const [item, place] = JSON.parse(key) as [string, string];
    return lineOf(item, place, lots);
  });
  return { lines: lines.filter((line) => line.count > 0), differences };
}

const total = (lots: readonly OpenLot[]): number => lots.reduce((sum, lot) => sum + lot.count, 0);

/** Takes the oldest first, loose before sealed; a sealed bag that is broken into becomes loose. */
function take(lots: OpenLot[], count: number): { readonly lots: OpenLot[]; readonly short: number } {
  const taken: OpenLot[] = [];
  let left = count;
  const whole = lots.filter((lot) => lot.sealedPerBag !== undefined && left >= lot.count && total(lots) - lot.count < count);
  const order = [...lots].sort(
    (a, b) =>
      Number(a.sealedPerBag !== undefined) - Number(b.sealedPerBag !== undefined) || (a.since < b.since ? -1 : a.since > b.since ? 1 : 0),
  );
  for (const lot of order) {
    if (left <= 0) break;
    const part = Math.min(left, lot.count);
    if (part > 0) taken.push(partOf(lot, part, whole.includes(lot)));
    lot.count -= part;
    left -= part;
    if (lot.sealedPerBag !== undefined && lot.count > 0) breakInto(lots, lot);
  }
  for (let i = lots.length - 1; i >= 0; i--) if (lots[i]?.count === 0) lots.splice(i, 1);
  return { lots: taken, short: left };
}
function partOf(lot: OpenLot, count: number, asItIs: boolean): OpenLot {
  const sealed = lot.sealedPerBag !== undefined && (asItIs || count % lot.sealedPerBag === 0);
  const { sealedPerBag, ...rest } = lot;
  return sealed && sealedPerBag !== undefined ? { ...rest, count, sealedPerBag } : { ...rest, count };
}
/** After taking part of a sealed lot, the bag that is no longer full lies there loose. */
function breakInto(lots: OpenLot[], lot: OpenLot): void {
  const perBag = lot.sealedPerBag ?? 1;
  const rest = lot.count % perBag;
  if (rest === 0) return;
  const { sealedPerBag: _sealed, ...age } = lot;
  lot.count -= rest;
  lots.push({ ...age, count: rest });
}
function openBag(lots: OpenLot[], perBag: number): void {
  const oldest = lots.filter((lot) => lot.sealedPerBag === perBag && lot.count >= perBag).sort((a, b) => (a.since < b.since ? -1 : 1))[0];
  if (oldest === undefined) return;
  const { sealedPerBag: _sealed, ...age } = oldest;
  oldest.count -= perBag;
  lots.push({ ...age, count: perBag });
}
/** A stocktake may say how much of the count is in sealed bags; the rest is loose. */
function seal(lots: OpenLot[], bags: readonly { readonly perBag: number; readonly bags: number }[]): void {
  for (const lot of lots) delete lot.sealedPerBag;
  for (const { perBag, bags: count } of bags) {
    let left = perBag * count;
    for (const lot of [...lots].sort((a, b) => (a.since < b.since ? 1 : -1))) {
      if (left <= 0 || lot.sealedPerBag !== undefined) continue;
      const part = Math.min(left, lot.count);
      if (part < lot.count) lots.push({ ...lot, count: lot.count - part });
      lot.count = part;
      lot.sealedPerBag = perBag;
      left -= part;
    }
  }
}
function lineOf(item: string, place: string, lots: readonly OpenLot[]): StockLine {
  const sealed = new Map<number, number>();
  for (const lot of lots)
    if (lot.sealedPerBag !== undefined) sealed.set(lot.sealedPerBag, (sealed.get(lot.sealedPerBag) ?? 0) + lot.count / lot.sealedPerBag);
  return {
    item,
    place,
    count: total(lots),
    sealed: [...sealed].map(([perBag, bags]) => ({ perBag, bags: Math.floor(bags) })).filter((s) => s.bags > 0),
    loose: lots.filter((lot) => lot.sealedPerBag === undefined).reduce((sum, lot) => sum + lot.count, 0),
    lots: lots.filter((lot) => lot.count > 0).map((lot) => ({ ...lot })),
  };
}

/** Pieces of every item, all places together. */
export function countsByItem(stock: Stock): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const line of stock.lines) counts.set(line.item, (counts.get(line.item) ?? 0) + line.count);
  return counts;
}
