import { type Book, type BookProblemCode, type Finish, finishes, type Item } from '@twistwright/books';

/** What a line of a price list says about the goods. */
export interface GoodsWords {
  readonly size?: string;
  readonly colour?: string;
  readonly finish?: string;
  readonly print?: string;
  readonly description?: string;
}
export type Match =
  | { readonly item: Item; readonly count?: number }
  | { readonly code: BookProblemCode & `prices.${string}`; readonly why: string };

/** Words that say nothing about which balloon it is. */
const fillers = new Set(
  'balloon balloons latex twisting twist modelling modeling entertainer pencil plain single colour color coloured colored solid standard fashion opaque round rounds heart hearts bag bags pack packs packet of the a an in with and size x pcs pc pieces ct count printed print'.split(
    ' ',
  ),
);
/** Other words for a finish. */
const finishWords: Readonly<Record<string, Finish>> = {
  chrome: 'mirror',
  transparent: 'clear',
  crystal: 'clear',
  jewel: 'clear',
  fluorescent: 'neon',
  pearlescent: 'pearl',
  pearlised: 'pearl',
  matte: 'pastel',
  retro: 'muted',
  marble: 'marbled',
  ...Object.fromEntries(finishes.map((finish) => [finish, finish])),
};
const shapeWords: Readonly<Record<string, string>> = {
  round: 'round',
  rounds: 'round',
  heart: 'heart',
  hearts: 'heart',
  flower: 'flower',
  flowers: 'flower',
  ring: 'ring',
  rings: 'ring',
  donut: 'ring',
  link: 'link',
  links: 'link',
  linking: 'link',
};
/** Other words for a colour, used only where the book has no colour of that name itself. */
const colourWords: Readonly<Record<string, string>> = {
  purple: 'violet',
  gray: 'grey',
  'light blue': 'sky',
  'sky blue': 'sky',
  skin: 'blush',
};

/** Small letters without accents; inches as `5in`. */
const plain = (text: string): string =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/(\d)[\s-]*(?:inches|inch|in\b|''|["”″])/g, '$1in ')
    .replace(/(\d+(?:[.,]\d+)?)\s*cm\b/g, (_, cm: string) => `${Math.round(Number(cm.replace(',', '.')) / 2.54)}in `);
export const wordsOf = (text: string): readonly string[] => plain(text).match(/[\p{L}\d]+/gu) ?? [];

/** Matches lines of one price list with the items of a book. */
export class ItemMatcher {
  readonly #byId: ReadonlyMap<string, Item>;
  readonly #byLook = new Map<string, Item>();
  readonly #byName = new Map<string, Item>();
  readonly #sizes: ReadonlySet<string>;
  /** Words of a colour, joined by spaces, to its id; most words first. */
  readonly #colours: readonly (readonly [words: readonly string[], id: string])[];
  readonly #common: ReadonlySet<string>;

  /** `common` are words that most lines have, such as a maker's name; they tell nothing apart. */
  constructor(book: Book, common: ReadonlySet<string>) {
    this.#byId = new Map(book.items.map((item) => [item.id, item]));
    for (const item of book.items) {
      if (item.kind === 'balloon')
        this.#byLook.set(lookOf(item.size, item.colour, item.finish ?? 'standard', wordsOf(item.print ?? '')), item);
      else this.#byName.set(wordsOf(item.name).join(' '), item);
    }
    this.#sizes = new Set(book.items.flatMap((item) => (item.kind === 'balloon' ? [item.size] : [])));
    this.#colours = coloursOf(book);
    this.#common = common;
  }

  byId(id: string): Match {
    const item = this.#byId.get(id.trim());
    return item === undefined ? { code: 'prices.item', why: `The book has no item with the id "${id.trim()}".` } : { item };
  }
  match(goods: GoodsWords): Match {
    const columns = goods.size !== undefined && goods.colour !== undefined;
    const text = columns
      ? `${goods.size} ${goods.colour}`
      : [goods.size, goods.colour, goods.description].filter((part) => part !== undefined).join(' ');
    const named = this.#byName.get(wordsOf(columns ? (goods.description ?? '') : text).join(' '));
    if (named !== undefined) return { item: named };
    const counted = countIn(text);
    return this.#balloon(counted.text, goods, counted.count);
  }

  #balloon(text: string, goods: GoodsWords, count: number | undefined): Match {
    const words = [...wordsOf(text)];
    const size = takeSize(words, this.#sizes);
    if (size === undefined) return { code: 'prices.size', why: `"${text.trim()}" has no size code that an item of the book has.` };
    const colour = this.#takeColour(words);
    if (colour === undefined) return { code: 'prices.item', why: `"${text.trim()}" has no colour of the book.` };
    const finish = takeFinish(words, goods.finish);
    const print = [...wordsOf(goods.print ?? ''), ...words].filter((word) => !fillers.has(word) && !this.#common.has(word));
    if (finish === undefined) return { code: 'prices.item', why: `"${goods.finish}" is no finish that is known.` };
    const item = this.#byLook.get(lookOf(size, colour, finish, print));
    if (item !== undefined) return { item, ...(count === undefined ? {} : { count }) };
    const look = [size, colour, ...(finish === 'standard' ? [] : [finish]), ...print].join(' ');
    return { code: 'prices.item', why: `No item of the book is a "${look}".` };
  }
  #takeColour(words: string[]): string | undefined {
    for (const [colour, id] of this.#colours) {
      const at = words.findIndex((_, index) => colour.every((word, k) => words[index + k] === word));
      if (at < 0) continue;
      words.splice(at, colour.length);
      return id;
    }
    return undefined;
  }
}

const lookOf = (size: string, colour: string, finish: Finish, print: readonly string[]): string =>
  [size, colour, finish, ...print.toSorted()].join('\n');

function coloursOf(book: Book): readonly (readonly [readonly string[], string])[] {
  const own = book.colours.flatMap((colour) => [colour.name, colour.id].map((text) => [wordsOf(text), colour.id] as const));
  const known = new Set(own.map(([words]) => words.join(' ')));
  const others = Object.entries(colourWords)
    .filter(([text, id]) => !known.has(text) && known.has(id))
    .map(([text, id]) => [text.split(' '), own.find(([words]) => words.join(' ') === id)?.[1] ?? id] as const);
  return [...own, ...others].filter(([words]) => words.length > 0).sort((a, b) => b[0].length - a[0].length);
}

/** Takes the size out of the words: `260`, `260q`, `5in round`, `round 5`; inches without a shape are a round's. */
function takeSize(words: string[], sizes: ReadonlySet<string>): string | undefined {
  const shapeAt = words.findIndex((word) => shapeWords[word] !== undefined);
  const inchesAt = words.findIndex((word) => /^\d+in$/.test(word));
  const numberAt = inchesAt >= 0 ? inchesAt : shapeAt < 0 ? -1 : nearestNumber(words, shapeAt);
  if (numberAt >= 0) {
    const code = `${shapeWords[words[shapeAt] ?? ''] ?? 'round'}-${Number.parseInt(words[numberAt] ?? '', 10)}`;
    if (!sizes.has(code)) return undefined;
    for (const at of [numberAt, shapeAt].sort((a, b) => b - a)) if (at >= 0) words.splice(at, 1);
    return code;
  }
  const at = words.findIndex((word) => sizes.has(word) || sizes.has(word.replace(/^(\d{3})[a-z]$/, '$1')));
  if (at < 0) return undefined;
  const [word = ''] = words.splice(at, 1);
  return sizes.has(word) ? word : word.slice(0, 3);
}
/** The number that stands next to the shape's word. */
function nearestNumber(words: readonly string[], shapeAt: number): number {
  const near = [shapeAt + 1, shapeAt - 1].find((at) => /^\d{1,2}$/.test(words[at] ?? ''));
  return near ?? -1;
}
function takeFinish(words: string[], column: string | undefined): Finish | undefined {
  const said = wordsOf(column ?? '').filter((word) => !fillers.has(word));
  if (said.length > 0) return finishWords[said.join(' ')];
  const at = words.findIndex((word) => finishWords[word] !== undefined && word !== 'standard');
  return at < 0 ? 'standard' : finishWords[words.splice(at, 1)[0] ?? ''];
}

/** A count that a description has in it: "(100)", "100 pcs", "bag of 50", "x100". */
const countForms = [
  /\((\d{1,5})\)/,
  /\b(\d{1,5})\s*(?:pcs?|pieces|ct|count|pk|pack)\b/i,
  /\b(?:bags?|packs?|packets?)\s+of\s+(\d{1,5})\b/i,
  /\bx\s?(\d{1,5})\b/i,
];
function countIn(text: string): { readonly text: string; readonly count?: number } {
  for (const form of countForms) {
    const found = form.exec(text);
    if (found !== null) return { text: text.replace(found[0], ' '), count: Number(found[1]) };
  }
  return { text };
}
