import { type Book, type Gig, type Item, nameOfItem, type Place, type Stock } from '@twistwright/books';

/** What the forecast says about one item at one gig. */
export interface Take {
  /** Pieces used in the middle afternoon. */
  readonly usual: number;
  /** Pieces that are enough with the chosen chance, jointly with all other items. */
  readonly enough: number;
}
/** One line of a packing list; a box to tick. */
export interface PackingLine {
  /** Stable within the gig: `item@place`. */
  readonly id: string;
  readonly item: string;
  readonly name: string;
  readonly count: number;
  /** Where it lies now and how much comes from there; the place it goes to itself means "already there". */
  readonly from: readonly { readonly place: string; readonly count: number; readonly already: boolean }[];
  /** Pieces that are nowhere: on order, or still to be bought. */
  readonly missing: number;
  /** Of those, on order and expected before the gig. */
  readonly onOrder: number;
  readonly why: string;
  readonly ticked: boolean;
}
/** Everything that goes into one place, in the order in which it is filled. */
export interface PackingPlace {
  readonly place: string;
  readonly name: string;
  readonly kind: Place['kind'];
  readonly lines: readonly PackingLine[];
}
export interface PackingPlan {
  readonly places: readonly PackingPlace[];
  /** Lines that are not complete. */
  readonly missing: readonly PackingLine[];
  /** What lies in the apron or the case and is not wanted at this gig. */
  readonly leaveAtHome: readonly { readonly item: string; readonly name: string; readonly place: string; readonly count: number }[];
  readonly ticked: number;
  readonly total: number;
}

/**
 * The packing list of one gig. The usual use goes into the apron in the order of its pockets, as far as it has room; the rest of
 * what is enough goes into the case; tools and spares come after. Pieces are taken from where they already are first, then from the place nearest
 * to the hands (apron, case, car, home), and from no place twice. What gigs before this one use, `goesBefore` in pieces by item, is gone from there in
 * the same order, then from what is on order.
 */
export function packFor(
  book: Book,
  gig: Gig,
  stock: Stock,
  takes: ReadonlyMap<string, Take>,
  goesBefore: ReadonlyMap<string, number> = new Map(),
): PackingPlan {
  const apron = book.places.find((place) => place.kind === 'apron');
  const bag = book.places.find((place) => place.kind === 'case') ?? apron ?? book.places[0];
  if (bag === undefined) return { places: [], missing: [], leaveAtHome: [], ticked: 0, total: 0 };
  const packer = new Packer(book, gig, stock, goesBefore);
  const pockets = new Map((apron?.pockets ?? []).map((item, index) => [item, index]));
  const wanted = [...takes]
    .filter(([, take]) => take.enough > 0)
    .sort(([a], [b]) => order(pockets, a) - order(pockets, b) || (a < b ? -1 : 1));
  const aproned = apron === undefined || gig.kind === 'made to order' ? new Map<string, number>() : fillApron(apron, wanted);
  // Apron first for every item, so that what lies in it stays there; then the case takes what is left.
  if (apron !== undefined) for (const [item, count] of aproned) packer.put(apron, item, count, 'usual use');
  for (const [item, take] of wanted) {
    const inApron = aproned.get(item) ?? 0;
    if (take.enough > inApron)
      packer.put(bag, item, take.enough - inApron, inApron > 0 ? 'so that it does not run out' : 'usual use and reserve');
  }
  for (const tool of book.settings?.tools ?? []) {
    if (!isWanted(tool.when, gig)) continue;
    packer.put(
      book.places.find((place) => place.id === tool.place) ?? bag,
      tool.item,
      tool.count,
      tool.when === 'spare' ? 'spare' : 'tool',
    );
  }
  return packer.plan(new Set([...wanted.map(([item]) => item), ...(book.settings?.tools ?? []).map((tool) => tool.item)]));
}

const isWanted = (when: 'always' | 'spare' | 'outdoors' | 'tables', gig: Gig): boolean =>
  when === 'always' || when === 'spare' || (when === 'outdoors' && gig.outdoors === true) || (when === 'tables' && gig.kind === 'tables');
const order = (pockets: ReadonlyMap<string, number>, item: string): number => pockets.get(item) ?? Number.MAX_SAFE_INTEGER;

/** The usual use of every item that has a pocket; in proportion if the apron has less room than that. */
function fillApron(apron: Place, wanted: readonly (readonly [string, Take])[]): Map<string, number> {
  const pocketed = wanted.filter(([item, take]) => take.usual > 0 && (apron.pockets === undefined || apron.pockets.includes(item)));
  const all = pocketed.reduce((sum, [, take]) => sum + take.usual, 0);
  const share = apron.room === undefined || all <= apron.room ? 1 : apron.room / all;
  return new Map(
    pocketed.map(([item, take]) => [item, Math.floor(Math.min(take.usual, take.enough) * share)] as const).filter(([, count]) => count > 0),
  );
}

const nearness: Readonly<Record<Place['kind'], number>> = { apron: 0, case: 1, car: 2, home: 3, other: 4 };

/** Pieces that can still be taken, by item and place. */
class Shelf {
  readonly #left: Map<string, { readonly place: Place; count: number }[]>;
  constructor(book: Book, stock: Stock) {
    this.#left = new Map();
    for (const line of stock.lines) {
      const place = book.places.find((p) => p.id === line.place);
      if (place === undefined) continue;
      const rows = this.#left.get(line.item) ?? [];
      rows.push({ place, count: line.count });
      rows.sort((a, b) => nearness[a.place.kind] - nearness[b.place.kind]);
      this.#left.set(line.item, rows);
    }
  }
  take(item: string, count: number, goingTo?: Place): PackingLine['from'] {
    const rows = this.#left.get(item) ?? [];
    const first = [...rows].sort((a, b) => Number(b.place.id === goingTo?.id) - Number(a.place.id === goingTo?.id));
    const from: { place: string; count: number; already: boolean }[] = [];
    let left = count;
    for (const row of first) {
      const part = Math.min(left, row.count);
      if (part <= 0) continue;
      row.count -= part;
      left -= part;
      from.push({ place: row.place.id, count: part, already: row.place.id === goingTo?.id });
    }
    return from;
  }
}

class Packer {
  readonly #book: Book;
  readonly #gig: Gig;
  readonly #stock: Stock;
  readonly #shelf: Shelf;
  readonly #lines = new Map<string, PackingLine[]>();
  readonly #onOrder: Map<string, number>;
  readonly #goesBefore: ReadonlyMap<string, number>;
  constructor(book: Book, gig: Gig, stock: Stock, goesBefore: ReadonlyMap<string, number>) {
    this.#book = book;
    this.#gig = gig;
    this.#goesBefore = goesBefore;
    this.#stock = stock;
    this.#shelf = new Shelf(book, stock);
    this.#onOrder = new Map();
    for (const placed of book.orders)
      if (placed.arrivedOn === undefined && placed.expectedOn <= gig.day)
        for (const line of placed.lines) this.#onOrder.set(line.item, (this.#onOrder.get(line.item) ?? 0) + line.bags * line.count);
    for (const [item, count] of goesBefore) {
      const fromShelf = this.#shelf.take(item, count).reduce((sum, part) => sum + part.count, 0);
      this.#onOrder.set(item, Math.max(0, (this.#onOrder.get(item) ?? 0) - (count - fromShelf)));
    }
  }
  put(place: Place, item: string, count: number, why: string): void {
    const from = this.#shelf.take(item, count, place);
    const missing = count - from.reduce((sum, part) => sum + part.count, 0);
    const coming = Math.min(missing, this.#onOrder.get(item) ?? 0);
    this.#onOrder.set(item, (this.#onOrder.get(item) ?? 0) - coming);
    const id = `${item}@${place.id}`;
    const lines = this.#lines.get(place.id) ?? [];
    const before = this.#goesBefore.get(item) ?? 0;
    lines.push({
      id,
      item,
      name: nameOf(this.#book, item),
      count,
      from,
      missing,
      onOrder: coming,
      why: missing > 0 && before > 0 ? `${why}; gigs before this one take about ${before}` : why,
      ticked: this.#gig.packed?.includes(id) ?? false,
    });
    this.#lines.set(place.id, lines);
  }
  plan(wanted: ReadonlySet<string>): PackingPlan {
    const places = this.#book.places
      .filter((place) => this.#lines.has(place.id))
      .sort((a, b) => nearness[a.kind] - nearness[b.kind])
      .map((place): PackingPlace => ({ place: place.id, name: place.name, kind: place.kind, lines: this.#lines.get(place.id) ?? [] }));
    const lines = places.flatMap((place) => place.lines);
    return {
      places,
      missing: lines.filter((line) => line.missing > 0),
      leaveAtHome: this.#unwanted(wanted),
      ticked: lines.filter((line) => line.ticked).length,
      total: lines.length,
    };
  }
  #unwanted(wanted: ReadonlySet<string>): PackingPlan['leaveAtHome'] {
    const carried = new Set(this.#book.places.filter((place) => place.kind === 'apron' || place.kind === 'case').map((place) => place.id));
    return this.#stock.lines
      .filter((line) => carried.has(line.place) && !wanted.has(line.item))
      .map((line) => ({ item: line.item, name: nameOf(this.#book, line.item), place: line.place, count: line.count }));
  }
}

const nameOf = (book: Book, id: string): string => {
  const item = book.items.find((candidate: Item) => candidate.id === id);
  return item === undefined ? id : nameOfItem(item, book.colours);
};
