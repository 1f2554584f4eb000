import { type Book, errorAt, type Offer, type Supplier } from '@twistwright/books';
import { fail, type Money, ok, type Problem, parseMoney, type Result } from '@twistwright/units';
import { type CsvRow, readCsv } from './csv-rows.ts';
import { otherCurrencyIn, withoutCurrency } from './currencies-in.ts';
import { type GoodsWords, ItemMatcher, wordsOf } from './match-item.ts';
import { canBeRead, guessMapping, missingColumns, type PriceMapping } from './price-mapping.ts';

/** Bytes that a price list may have. */
export const mostPriceBytes = 60_000_000;
/** Rows above the headings that are looked through for them. */
const rowsAbove = 25;
/** Lines from which that is judged. */
const judgedLines = 3000;
/** A word on at least this share of the lines tells nothing apart: a maker's name. */
const commonShare = 0.6;

export interface ReadPricesOptions {
  readonly book: Book;
  /** Id of the supplier whose list it is. */
  readonly supplier: string;
  /** Where the columns are known; otherwise they are guessed from the headings. */
  readonly mapping?: PriceMapping;
}
/** A line that became no offer. */
export interface UnmatchedLine {
  readonly line: number;
  readonly cells: readonly string[];
  readonly problem: Problem;
}
/** What a price list says. Every line of it is accounted for: above, heading, blank, an offer, or unmatched. */
export interface PriceList {
  readonly mapping: PriceMapping;
  /** All offers of the list; those that the book has already keep their id. */
  readonly offers: readonly Offer[];
  readonly added: readonly Offer[];
  readonly changed: readonly { readonly before: Offer; readonly after: Offer }[];
  /** Offers of this supplier that are in the book and not in the list. */
  readonly gone: readonly Offer[];
  readonly unmatched: readonly UnmatchedLine[];
  readonly rows: { readonly all: number; readonly above: number; readonly blank: number };
}

/**
 * Reads a supplier's price list (CSV) against a book. Separator, headings and decimal commas are found out; goods are matched by id, or by
 * size, colour, finish and print in words. Nothing of the book is changed; `withPrices` does that. Fails when the list is no CSV, when its
 * columns cannot be understood, or when its prices are in another currency.
 */
export function readPrices(text: string, { book, supplier, mapping }: ReadPricesOptions): Result<PriceList> {
  const seller = book.suppliers.find((entry) => entry.id === supplier);
  if (seller === undefined)
    return fail([
      errorAt(
        'supplier.unknown',
        [],
        `The book has no supplier "${supplier}".`,
        `It has: ${book.suppliers.map((entry) => entry.id).join(', ')}.`,
      ),
    ]);
  if (text.length > mostPriceBytes)
    return fail([errorAt('file.too-big', [], `The price list has ${text.length} bytes; at most ${mostPriceBytes} can be read.`)]);
  if (text.trim() === '') return fail([errorAt('file.empty', [], 'The price list is empty.')]);
  const csv = readCsv(text, mapping?.separator);
  if (!csv.ok) return csv;
  const heading = findHeading(csv.value.rows, mapping);
  if (!heading.ok) return heading;
  const columns = { separator: csv.value.separator, ...heading.value.mapping };
  const foreign = foreignCurrency(columns, book);
  if (foreign !== undefined) return fail([foreign]);
  return ok(new PriceReading(book, seller, columns, csv.value.rows, heading.value.index).list());
}

function findHeading(
  rows: readonly CsvRow[],
  given: PriceMapping | undefined,
): Result<{ readonly index: number; readonly mapping: PriceMapping }> {
  const first = rows.slice(0, rowsAbove);
  if (given !== undefined) {
    const index = first.findIndex((row) => missingColumns(given, row.cells).length === 0);
    if (index >= 0 && canBeRead(given)) return ok({ index, mapping: given });
    const missing = missingColumns(given, rows[0]?.cells ?? []);
    return fail([
      errorAt(
        'prices.columns',
        [],
        missing.length > 0
          ? `The list has no column "${missing.join('", "')}".`
          : 'The mapping names no column of prices, or none of goods.',
        `Its first row has: ${(rows[0]?.cells ?? []).join(', ')}.`,
      ),
    ]);
  }
  const guesses = first.map((row, index) => ({ index, ...guessMapping(row.cells) })).filter((guess) => canBeRead(guess.mapping));
  const best = guesses.sort((a, b) => b.known - a.known || a.index - b.index)[0];
  if (best !== undefined) return ok(best);
  return fail([
    errorAt(
      'prices.columns',
      [],
      'No row of the list has headings for the goods and for their price.',
      `Say which column is which. Its first row has: ${(rows[0]?.cells ?? []).slice(0, 12).join(', ')}.`,
    ),
  ]);
}

/** A heading such as "Price EUR" in a book in pounds. */
function foreignCurrency(mapping: PriceMapping, book: Book): Problem | undefined {
  const { currency } = book.business;
  const headings = [mapping.price ?? '', ...(mapping.breaks ?? []).map((step) => step.column)];
  const named = headings.map((heading) => otherCurrencyIn(heading, currency)).find((found) => found !== undefined);
  return named === undefined
    ? undefined
    : errorAt(
        'currency.mixed',
        [],
        `The prices of the list are in ${named}; all money of this book is in ${currency}.`,
        `Ask for a list in ${currency}, or change its prices first.`,
      );
}

class PriceReading {
  readonly #book: Book;
  readonly #supplier: Supplier;
  readonly #mapping: PriceMapping;
  readonly #rows: readonly CsvRow[];
  readonly #headingAt: number;
  readonly #position: ReadonlyMap<string, number>;
  readonly #width: number;
  readonly #matcher: ItemMatcher;
  readonly #before: ReadonlyMap<string, Offer>;
  readonly #ids: Set<string>;
  readonly #lineOf = new Map<string, number>();

  constructor(book: Book, supplier: Supplier, mapping: PriceMapping, rows: readonly CsvRow[], headingAt: number) {
    this.#book = book;
    this.#supplier = supplier;
    this.#mapping = mapping;
    this.#rows = rows;
    this.#headingAt = headingAt;
    const headings = rows[headingAt]?.cells ?? [];
    this.#position = new Map(headings.map((heading, index) => [heading, index] as const).reverse());
    this.#width = headings.length;
    this.#matcher = new ItemMatcher(book, this.#commonWords());
    this.#before = new Map(
      book.offers.filter((offer) => offer.supplier === supplier.id).map((offer) => [keyOf(offer.item, offer.count), offer]),
    );
    this.#ids = new Set(book.offers.map((offer) => offer.id));
  }

  list(): PriceList {
    const offers: Offer[] = [];
    const unmatched: UnmatchedLine[] = [];
    let blank = 0;
    for (const row of this.#rows.slice(this.#headingAt + 1)) {
      if (row.cells.every((cell) => cell.trim() === '')) {
        blank++;
        continue;
      }
      const read = this.#offerOf(row);
      if ('problem' in read) unmatched.push({ line: row.line, cells: row.cells, problem: { ...read.problem, line: row.line } });
      else offers.push(read.offer);
    }
    return {
      mapping: this.#mapping,
      offers,
      ...this.#compared(offers),
      unmatched,
      rows: { all: this.#rows.length, above: this.#headingAt, blank },
    };
  }

  #offerOf(row: CsvRow): { readonly offer: Offer } | { readonly problem: Problem } {
    if (row.cells.slice(this.#width).some((cell) => cell.trim() !== ''))
      return {
        problem: errorAt(
          'prices.cells',
          [],
          `Line ${row.line} has ${row.cells.length} cells, the heading ${this.#width}.`,
          'Look for a separator inside a cell.',
        ),
      };
    const goods = this.#goodsOf(row);
    const id = this.#cell(row, this.#mapping.item);
    const match = id === undefined ? this.#matcher.match(goods) : this.#matcher.byId(id);
    if ('why' in match) return { problem: errorAt(match.code, [], match.why, 'Add it to the items if it is to be bought.') };
    const count = wholeNumber(this.#cell(row, this.#mapping.count)) ?? match.count;
    if (count === undefined || count < 1)
      return {
        problem: errorAt(
          'prices.count',
          [],
          `Line ${row.line} does not say how many are in a bag.`,
          'Name the column that holds it, or put it in.',
        ),
      };
    const price = this.#money(row, this.#mapping.price);
    if (price === undefined)
      return {
        problem: errorAt(
          'prices.price',
          [],
          `Line ${row.line} has no price: "${this.#cell(row, this.#mapping.price) ?? ''}".`,
          'Put it in, or leave the line out.',
        ),
      };
    const key = keyOf(match.item.id, count);
    const earlier = this.#lineOf.get(key);
    if (earlier !== undefined)
      return {
        problem: errorAt(
          'prices.twice',
          [],
          `Line ${row.line} offers ${count} of "${match.item.id}" again, after line ${earlier}.`,
          'Leave one of them out.',
        ),
      };
    this.#lineOf.set(key, row.line);
    return { offer: this.#offer(match.item.id, count, price, row) };
  }
  #offer(item: string, count: number, price: Money, row: CsvRow): Offer {
    const before = this.#before.get(keyOf(item, count));
    const breaks = (this.#mapping.breaks ?? []).flatMap((step) => {
      const stepPrice = this.#money(row, step.column);
      return stepPrice === undefined ? [] : [{ bags: step.bags, price: stepPrice }];
    });
    const mostBags = wholeNumber(this.#cell(row, this.#mapping.mostBags));
    const reference = this.#cell(row, this.#mapping.reference);
    return {
      id: before?.id ?? this.#newId(`${this.#supplier.id}-${item}-${count}`),
      supplier: this.#supplier.id,
      item,
      count,
      price,
      ...(breaks.length === 0 ? {} : { breaks }),
      ...(mostBags === undefined || mostBags < 1 ? {} : { mostBags }),
      ...(reference === undefined ? {} : { reference }),
      ...(before?.mix === undefined ? {} : { mix: before.mix }),
    };
  }
  #newId(wanted: string): string {
    let id = wanted;
    for (let next = 2; this.#ids.has(id); next++) id = `${wanted}-${next}`;
    this.#ids.add(id);
    return id;
  }

  #compared(offers: readonly Offer[]): Pick<PriceList, 'added' | 'changed' | 'gone'> {
    const pairs = offers.map((after) => ({ before: this.#before.get(keyOf(after.item, after.count)), after }));
    return {
      added: pairs.flatMap(({ before, after }) => (before === undefined ? [after] : [])),
      changed: pairs.flatMap(({ before, after }) => (before === undefined || sameOffer(before, after) ? [] : [{ before, after }])),
      gone: [...this.#before].flatMap(([key, offer]) => (this.#lineOf.has(key) ? [] : [offer])),
    };
  }

  #cell(row: CsvRow, column: string | undefined): string | undefined {
    const text = column === undefined ? '' : (row.cells[this.#position.get(column) ?? -1] ?? '').trim();
    return text === '' ? undefined : text;
  }
  #money(row: CsvRow, column: string | undefined): Money | undefined {
    const text = this.#cell(row, column) ?? '';
    const { currency } = this.#book.business;
    if (otherCurrencyIn(text, currency) !== undefined) return undefined;
    const amount = parseMoney(withoutCurrency(text), currency);
    return amount === undefined || amount <= 0 ? undefined : amount;
  }
  #goodsOf(row: CsvRow): GoodsWords {
    const goods: Record<string, string> = {};
    for (const key of ['size', 'colour', 'finish', 'print', 'description'] as const) {
      const text = this.#cell(row, this.#mapping[key]);
      if (text !== undefined) goods[key] = text;
    }
    return goods;
  }
  /** Words that most lines have in common. */
  #commonWords(): ReadonlySet<string> {
    const seen = new Map<string, number>();
    const rows = this.#rows.slice(this.#headingAt + 1, this.#headingAt + 1 + judgedLines);
    if (rows.length < 5) return new Set();
    for (const row of rows)
      for (const word of new Set(wordsOf(this.#cell(row, this.#mapping.description) ?? ''))) seen.set(word, (seen.get(word) ?? 0) + 1);
    return new Set([...seen].filter(([, count]) => count >= commonShare * rows.length).map(([word]) => word));
  }
}

const keyOf = (item: string, count: number): string => `${count} ${item}`;
const sameOffer = (a: Offer, b: Offer): boolean => JSON.stringify(inOrder(a)) === JSON.stringify(inOrder(b));
const inOrder = ({ price, breaks, mostBags, reference }: Offer) => [
  price,
  breaks?.map((step) => [step.bags, step.price]),
  mostBags,
  reference,
];
/** "100", "x100", "1,000 pcs". */
function wholeNumber(text: string | undefined): number | undefined {
  const digits = /\d[\d.,\s]*/.exec(text ?? '')?.[0].trim();
  if (digits === undefined) return undefined;
  const grouped = /^\d{1,3}(?:[.,\s]\d{3})+$/.test(digits) ? digits.replace(/\D/g, '') : digits;
  return /^\d{1,6}$/.test(grouped) ? Number(grouped) : undefined;
}
