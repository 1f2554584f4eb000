import type { Separator } from './csv-rows.ts';

/** Which column of a price list holds what, by its heading. What is missing is not in the list. */
export interface PriceMapping {
  readonly separator?: Separator;
  /** Id of an item of the book; settles it. */
  readonly item?: string;
  readonly size?: string;
  readonly colour?: string;
  readonly finish?: string;
  readonly print?: string;
  /** Everything in words: "5 in round white, printed eyes". */
  readonly description?: string;
  /** Pieces in a bag. */
  readonly count?: string;
  readonly price?: string;
  /** Price of a bag when at least `bags` are bought. */
  readonly breaks?: readonly { readonly column: string; readonly bags: number }[];
  /** Most bags that can be had. */
  readonly mostBags?: string;
  /** The supplier's own number. */
  readonly reference?: string;
}
type Column = Exclude<keyof PriceMapping, 'separator' | 'breaks'>;

/** Words by which a heading is known, the surest first. A heading counts for the first column of this table that it fits. */
const headings: readonly (readonly [Column, RegExp])[] = [
  ['item', /^(item ?id|our (item|id))$/],
  [
    'reference',
    /^(code|sku|ref(erence)?|art(icle)?\.? ?(no|nr|number|code)\.?|item (no|number|code)\.?|product code|number|no\.?|nr\.?|bestell-?nr\.?|artikelnummer)$/,
  ],
  ['size', /\b(size|dimension|gr(ö|oe)(ß|ss)e|taille)\b/],
  ['colour', /\b(colou?r|shade|farbe|couleur)\b/],
  ['finish', /\b(finish|surface|effect)\b/],
  ['print', /\b(print(ed)?|design|motif|druck)\b/],
  ['mostBags', /\b(at most|max(imum)?|available|availability|in stock|limit)\b/],
  ['price', /\b(price|cost|preis|prix|net)\b|^(1 ?x?|one) ?(bag|pack|packet|pkt)? ?[£€$¥]?$|^(a|per)? ?each$|^[£€$¥]$/],
  [
    'count',
    /\b(count|pieces|pcs|pc|per bag|in a bag|bag of|pack( size)?|bag( size)?|qty|quantity|how many|units|contents?|st(ü|ue)ck|inhalt)\b/,
  ],
  ['description', /\b(description|item|product|what|name|article|title|bezeichnung|artikel|d(é|e)signation)\b/],
];
/** "3+ packs", "from 6", "10 bags", "6 or more": the price of a bag from so many on. */
const breakHeading = /^(?:from |ab |price (?:at|from) )?(\d+) ?(?:\+|x|or more|and more|and up|up)? ?(?:bags?|packs?|packets?|pkts?)?\+?$/;

export interface GuessedMapping {
  readonly mapping: PriceMapping;
  /** Columns that were recognised. */
  readonly known: number;
}
/** What the headings of a row seem to mean. */
export function guessMapping(cells: readonly string[]): GuessedMapping {
  const columns = new Map<Column, string>();
  const breaks: { column: string; bags: number }[] = [];
  for (const heading of cells) {
    const text = heading.trim().toLowerCase();
    if (text === '') continue;
    const bags = Number(breakHeading.exec(text)?.[1]);
    if (bags > 1 && /\D/.test(text)) {
      breaks.push({ column: heading, bags });
      continue;
    }
    const fitting = headings.find(([column, words]) => !columns.has(column) && words.test(text))?.[0];
    if (fitting !== undefined) columns.set(fitting, heading);
  }
  breaks.sort((a, b) => a.bags - b.bags);
  return { mapping: { ...Object.fromEntries(columns), ...(breaks.length === 0 ? {} : { breaks }) }, known: columns.size + breaks.length };
}

/** Columns that are named in a mapping and not among the headings. */
export function missingColumns(mapping: PriceMapping, cells: readonly string[]): readonly string[] {
  const { separator: _separator, breaks = [], ...columns } = mapping;
  return [...Object.values(columns), ...breaks.map((step) => step.column)].filter((column) => !cells.includes(column));
}
/** A list can be read when it names its goods and says what they cost. */
export const canBeRead = (mapping: PriceMapping): boolean =>
  mapping.price !== undefined && (mapping.item !== undefined || mapping.description !== undefined || mapping.size !== undefined);
