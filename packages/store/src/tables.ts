import type { Book } from '@twistwright/books';

/** How a value is kept: whole numbers as bigint, fractions as double, everything nested as JSON text, yes and no as 0 and 1. */
export type ColumnKind = 'text' | 'whole' | 'number' | 'json' | 'flag';
/** The collections of a book, by the name they have in it. */
export type Collection = { readonly [K in keyof Book]-?: NonNullable<Book[K]> extends readonly unknown[] ? K : never }[keyof Book];
export interface Table {
  readonly collection: Collection;
  readonly table: string;
  /** Property that names an entry within its collection. */
  readonly key: 'id' | 'code';
  /** Property names of the domain type, with how each is kept; the column has the same name in snake case. */
  readonly columns: Readonly<Record<string, ColumnKind>>;
}

/** One table a collection; the property names are those of the domain types in packages/books, a test holds both together. */
export const tables: readonly Table[] = [
  {
    collection: 'sizes',
    table: 'size',
    key: 'code',
    columns: {
      code: 'text',
      shape: 'text',
      diameterInches: 'number',
      lengthInches: 'number',
      flatInches: 'number',
      stretch: 'number',
      tailPerBubbleInches: 'number',
      source: 'text',
    },
  },
  { collection: 'colours', table: 'colour', key: 'id', columns: { id: 'text', name: 'text', body: 'text' } },
  {
    collection: 'items',
    table: 'item',
    key: 'id',
    columns: {
      id: 'text',
      kind: 'text',
      name: 'text',
      size: 'text',
      colour: 'text',
      finish: 'text',
      print: 'text',
      maker: 'text',
      chanceOfPop: 'number',
      shelfMonths: 'number',
    },
  },
  {
    collection: 'figures',
    table: 'figure',
    key: 'id',
    columns: {
      id: 'text',
      name: 'text',
      recipe: 'text',
      colourways: 'json',
      minutes: 'json',
      extras: 'json',
      difficulty: 'number',
      tags: 'json',
      worth: 'number',
    },
  },
  { collection: 'artists', table: 'artist', key: 'id', columns: { id: 'text', name: 'text', pace: 'number', figures: 'json' } },
  { collection: 'places', table: 'place', key: 'id', columns: { id: 'text', name: 'text', kind: 'text', pockets: 'json', room: 'whole' } },
  {
    collection: 'suppliers',
    table: 'supplier',
    key: 'id',
    columns: {
      id: 'text',
      name: 'text',
      currency: 'text',
      leadWorkingDays: 'whole',
      orderBefore: 'text',
      carriage: 'whole',
      freeFrom: 'whole',
      leastOrder: 'whole',
      closedOn: 'json',
      site: 'text',
    },
  },
  {
    collection: 'offers',
    table: 'offer',
    key: 'id',
    columns: {
      id: 'text',
      supplier: 'text',
      item: 'text',
      count: 'whole',
      price: 'whole',
      breaks: 'json',
      mostBags: 'whole',
      reference: 'text',
      mix: 'json',
    },
  },
  { collection: 'clients', table: 'client', key: 'id', columns: { id: 'text', name: 'text', contact: 'json' } },
  {
    collection: 'gigs',
    table: 'gig',
    key: 'id',
    columns: {
      id: 'text',
      name: 'text',
      kind: 'text',
      day: 'text',
      starts: 'text',
      ends: 'text',
      zone: 'text',
      client: 'text',
      where: 'json',
      artists: 'json',
      guests: 'number',
      arrivals: 'json',
      menu: 'json',
      line: 'json',
      breaks: 'json',
      premade: 'json',
      special: 'json',
      tables: 'json',
      strolling: 'json',
      order: 'json',
      classPlan: 'json',
      weather: 'text',
      outdoors: 'flag',
      agreement: 'json',
      packed: 'json',
      notes: 'text',
    },
  },
  { collection: 'needs', table: 'need', key: 'id', columns: { id: 'text', item: 'text', count: 'whole', by: 'text', why: 'text' } },
  {
    collection: 'orders',
    table: 'purchase_order',
    key: 'id',
    columns: { id: 'text', supplier: 'text', orderedOn: 'text', expectedOn: 'text', lines: 'json', carriage: 'whole', arrivedOn: 'text' },
  },
  {
    collection: 'moves',
    table: 'stock_move',
    key: 'id',
    columns: {
      id: 'text',
      day: 'text',
      item: 'text',
      kind: 'text',
      place: 'text',
      bags: 'json',
      perBag: 'whole',
      bagPrice: 'whole',
      order: 'text',
      goodUntil: 'text',
      count: 'whole',
      from: 'text',
      to: 'text',
      gig: 'text',
      why: 'text',
    },
  },
  {
    collection: 'kits',
    table: 'saved_kit',
    key: 'id',
    columns: { id: 'text', name: 'text', savedOn: 'text', wishes: 'json', lines: 'json', tools: 'json' },
  },
  {
    collection: 'balloonTests',
    table: 'balloon_test',
    key: 'id',
    columns: {
      id: 'text',
      day: 'text',
      size: 'text',
      maker: 'text',
      item: 'text',
      flatInches: 'json',
      fullInches: 'json',
      twists: 'json',
      note: 'text',
    },
  },
];

export const columnName = (property: string): string => property.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

/** Thrown where a value does not fit its column; a bug of the caller, since entries are checked before they are stored. */
function misfit(table: Table, property: string, value: unknown): never {
  throw new TypeError(`${table.collection}.${property} cannot be stored: ${JSON.stringify(value)}`);
}

/** The row of an entry: every column, absent ones as null. Refuses properties that no column keeps, so that nothing is lost in silence. */
export function rowOf(table: Table, entry: Readonly<Record<string, unknown>>): Record<string, unknown> {
  for (const [property, value] of Object.entries(entry))
    if (value !== undefined && !(property in table.columns)) misfit(table, property, value);
  return Object.fromEntries(
    Object.entries(table.columns).map(([property, kind]) => [columnName(property), cell(table, property, kind, entry[property])]),
  );
}
function cell(table: Table, property: string, kind: ColumnKind, value: unknown): unknown {
  if (value === undefined) return null;
  switch (kind) {
    case 'text':
      return typeof value === 'string' ? value : misfit(table, property, value);
    case 'whole':
      return Number.isSafeInteger(value) ? value : misfit(table, property, value);
    case 'number':
      return typeof value === 'number' && Number.isFinite(value) ? value : misfit(table, property, value);
    case 'flag':
      return typeof value === 'boolean' ? Number(value) : misfit(table, property, value);
    case 'json':
      return JSON.stringify(value);
  }
}
/** The entry of a row; nulls become absent. */
export function entryOf(table: Table, row: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const entry: Record<string, unknown> = {};
  for (const [property, kind] of Object.entries(table.columns)) {
    const value = row[columnName(property)];
    if (value === null || value === undefined) continue;
    entry[property] = kind === 'json' ? JSON.parse(String(value)) : kind === 'flag' ? value === 1 : value;
  }
  return entry;
}
