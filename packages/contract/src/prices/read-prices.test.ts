import { type Book, emptyBook, type Item, type Offer } from '@twistwright/books';
import { money } from '@twistwright/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type PriceList, type ReadPricesOptions, readPrices } from './read-prices.ts';
import { withPrices } from './with-prices.ts';
import { writeCsv } from './write-csv.ts';

const balloon = (id: string, size: string, colour: string, more: Partial<Extract<Item, { kind: 'balloon' }>> = {}): Item => ({
  id,
  kind: 'balloon',
  size,
  colour,
  ...more,
});
const book: Book = {
  ...emptyBook({ name: 'Six Turns', currency: 'GBP', zone: 'Europe/London' }),
  colours: ['white', 'red', 'green', 'blue', 'sky', 'violet', 'rose'].map((id) => ({ id, name: id })),
  items: [
    balloon('260-red', '260', 'red'),
    balloon('260-green', '260', 'green'),
    balloon('260-sky', '260', 'sky'),
    balloon('260-violet', '260', 'violet'),
    balloon('260-red-mirror', '260', 'red', { finish: 'mirror' }),
    balloon('5-white', 'round-5', 'white'),
    balloon('5-white-eyes', 'round-5', 'white', { print: 'eyes' }),
    balloon('11-white', 'round-11', 'white'),
    balloon('heart-red', 'heart-6', 'red'),
    { id: 'pump', kind: 'tool', name: 'hand pump' },
  ],
  suppliers: [
    { id: 'shop', name: 'a shop', leadWorkingDays: 3, carriage: money(400) },
    { id: 'other', name: 'another', leadWorkingDays: 3, carriage: money(400) },
  ],
};
const read = (text: string, options: Partial<ReadPricesOptions> = {}): PriceList => {
  const list = readPrices(text, { book, supplier: 'shop', ...options });
  if (!list.ok) throw new Error(JSON.stringify(list.error));
  return list.value;
};
const goods = (list: PriceList) => list.offers.map(({ item, count, price }) => `${item} ${count} ${price}`);
const reasons = (list: PriceList) => list.unmatched.map(({ line, problem }) => `${line} ${problem.code} ${problem.sentence}`);

describe('lists as suppliers send them', () => {
  test('commas, a column for each property', () => {
    const list = read(
      'Code,Size,Colour,Finish,Print,Per bag,Price GBP\r\nA1,260,Red,Standard,,100,8.20\r\nA2,5 in round,White,,Eyes,50,6.40\r\nA3,260,Red,Chrome,,50,"1,007.5"\r\n',
    );
    expect(list.mapping).toEqual({
      separator: ',',
      reference: 'Code',
      size: 'Size',
      colour: 'Colour',
      finish: 'Finish',
      print: 'Print',
      count: 'Per bag',
      price: 'Price GBP',
    });
    expect(goods(list)).toEqual(['260-red 100 820', '5-white-eyes 50 640', '260-red-mirror 50 100750']);
    expect(list.offers[0]).toMatchObject({ id: 'shop-260-red-100', supplier: 'shop', reference: 'A1' });
  });
  test('semicolons, decimal commas, words, price breaks', () => {
    const list = read(
      'Art. no.;Description;Pack;1 pack;3+ packs;6+ packs\n7;260 red;x100;7,60;7,00;6,40\n8;Heart 6", red;x100;8,00;;7,00\n',
    );
    expect(list.mapping).toMatchObject({
      separator: ';',
      breaks: [
        { column: '3+ packs', bags: 3 },
        { column: '6+ packs', bags: 6 },
      ],
    });
    expect(list.offers.map(({ item, price, breaks }) => ({ item, price, breaks }))).toEqual([
      {
        item: '260-red',
        price: 760,
        breaks: [
          { bags: 3, price: 700 },
          { bags: 6, price: 640 },
        ],
      },
      { item: 'heart-red', price: 800, breaks: [{ bags: 6, price: 700 }] },
    ]);
  });
  test('tabs, signs of currency, the count within the words, rows above the headings', () => {
    const list = read(
      'Price list of a shop\t\t\n\t\t\nwhat\tprice\tat most\nred 260 (25)\t£2.75\t4\nwhite 11 inch round, bag of 10\t£3\t\n',
    );
    expect(goods(list)).toEqual(['260-red 25 275', '11-white 10 300']);
    expect(list.offers[0]).toMatchObject({ mostBags: 4 });
    expect(list.rows).toEqual({ all: 5, above: 2, blank: 0 });
  });
  test('a word that most lines have, such as a maker, tells nothing apart; one that few have does', () => {
    const lines = ['260 red', '260 green', '260 sky', '260 violet', '260 teal', '260 dark red'];
    const list = read(`Description,Count,Price\n${lines.map((line) => `Bestelow ${line},100,5`).join('\n')}`);
    expect(goods(list).map((text) => text.split(' ')[0])).toEqual(['260-red', '260-green', '260-sky', '260-violet']);
    expect(reasons(list)).toEqual([
      '6 prices.item "Bestelow 260 teal" has no colour of the book.',
      '7 prices.item No item of the book is a "260 red dark".',
    ]);
  });
  test.each([
    ['260Q red', '260-red'],
    ['Red 260', '260-red'],
    ['purple 260', '260-violet'],
    ['light blue 260', '260-sky'],
    ['chrome red 260', '260-red-mirror'],
    ['5" round white', '5-white'],
    ['5-inch white round', '5-white'],
    ['Round 5 white', '5-white'],
    ['13 cm white round', '5-white'],
    ['white 5in round, printed eyes', '5-white-eyes'],
    ['WHITE ROUNDS 28CM', '11-white'],
    ['heart 6 inch red', 'heart-red'],
    ['hand pump', 'pump'],
  ])('"%s" is %s', (words, item) => {
    expect(read(`Description,Count,Price\n"${words.replaceAll('"', '""')}",100,5\n`).offers.map((offer) => offer.item)).toEqual([item]);
  });
  test.each(['260', 'red', 'blue 260', '350 red', '9 in round white', 'pale red 260', '260 red green'])(
    '"%s" is nothing of this book',
    (words) => {
      const list = read(`Description,Count,Price\n${words},100,5\n`);
      expect(list.offers).toEqual([]);
      expect(list.unmatched).toHaveLength(1);
    },
  );
  test('signs and codes of the own currency are no matter, nor are other words in capitals', () => {
    const list = read('Description,Count,RRP price incl VAT\n260 red,100,GBP 8.20\n260 green,100,£ 7\n260 sky,100,USD 9\n');
    expect(goods(list)).toEqual(['260-red 100 820', '260-green 100 700']);
    expect(reasons(list)).toEqual(['4 prices.price Line 4 has no price: "USD 9".']);
  });
  test('a mapping that is given holds, and may name items by id', () => {
    const list = read('a,b,c\n260-red,100,8.20\n260-mauve,100,8.20\n', { mapping: { item: 'a', count: 'b', price: 'c' } });
    expect(goods(list)).toEqual(['260-red 100 820']);
    expect(reasons(list)).toEqual(['3 prices.item The book has no item with the id "260-mauve".']);
  });
});

describe('every line is accounted for', () => {
  test('with its number and a reason', () => {
    const text = `Description,Count,Price\n260 red,100,8.20\n\n260 green,,7\n260 green,100,free\n260 green,100,€7\n260 red,100,9\n260 sky,100,0\n"260\nviolet",100,5\n260 green,100,5,6\n`;
    const list = read(text);
    expect(goods(list)).toEqual(['260-red 100 820', '260-violet 100 500']);
    expect(reasons(list)).toEqual([
      '4 prices.count Line 4 does not say how many are in a bag.',
      '5 prices.price Line 5 has no price: "free".',
      '6 prices.price Line 6 has no price: "€7".',
      '7 prices.twice Line 7 offers 100 of "260-red" again, after line 2.',
      '8 prices.price Line 8 has no price: "0".',
      '11 prices.cells Line 11 has 4 cells, the heading 3.',
    ]);
    expect(list.rows).toEqual({ all: 10, above: 0, blank: 1 });
  });
  test('law: above, heading, blank, offers and unmatched make up all rows', () => {
    const cell = fc.constantFrom('260 red', '260', 'red', '', '100', '8,20', '5.00', 'x', '"', 'a\nb', 'Price', '=1+1', '5 in round white');
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 1, maxLength: 5 }), { maxLength: 20 }),
        fc.constantFrom(',' as const, ';' as const),
        (rows, separator) => {
          const list = read(writeCsv([['Description', 'Count', 'Price'], ...rows], separator), {
            mapping: { separator, description: 'Description', count: 'Count', price: 'Price' },
          });
          expect(list.rows.above + 1 + list.rows.blank + list.offers.length + list.unmatched.length).toBe(list.rows.all);
          expect(list.rows.all).toBe(rows.length + 1);
        },
      ),
      { numRuns: 300, seed: 11 },
    );
  });
  test('two hundred thousand lines', () => {
    const colours = ['red', 'green', 'teal', 'sky'];
    const lines = Array.from(
      { length: 200_000 },
      (_, index) => `260 ${colours[index % 4]},${Math.floor(index / 4) + 1},"${(index % 900) + 1},25"`,
    );
    const list = read(`Description,Count,Price\n${lines.join('\n')}\n`);
    expect(list.offers).toHaveLength(150_000);
    expect(list.unmatched).toHaveLength(50_000);
    expect(list.unmatched.at(-1)?.line).toBe(200_000);
  });
});

describe('against what the book has', () => {
  const offer = (item: string, price: number, more: Partial<Offer> = {}): Offer => ({
    id: `mine-${item}`,
    supplier: 'shop',
    item,
    count: 100,
    price: money(price),
    ...more,
  });
  const stocked: Book = {
    ...book,
    offers: [
      offer('260-red', 820),
      offer('260-green', 700),
      offer('260-sky', 600),
      { ...offer('260-red', 1), id: 'theirs', supplier: 'other' },
    ],
  };
  const list = read('Description,Count,Price\n260 red,100,8.20\n260 green,100,7.50\n260 violet,100,9\n', { book: stocked });
  test('added, changed and gone; what is in the book keeps its id', () => {
    expect(list.added.map((entry) => entry.id)).toEqual(['shop-260-violet-100']);
    expect(list.changed.map(({ before, after }) => [before.id, before.price, after.id, after.price])).toEqual([
      ['mine-260-green', 700, 'mine-260-green', 750],
    ]);
    expect(list.gone.map((entry) => entry.id)).toEqual(['mine-260-sky']);
  });
  test('the book with the new prices: places are kept, what is gone stays unless it is to be dropped', () => {
    expect(withPrices(stocked, list).offers.map(({ id, price }) => `${id} ${price}`)).toEqual([
      'mine-260-red 820',
      'mine-260-green 750',
      'mine-260-sky 600',
      'theirs 1',
      'shop-260-violet-100 900',
    ]);
    expect(withPrices(stocked, list, { gone: 'drop' }).offers.map((entry) => entry.id)).toEqual([
      'mine-260-red',
      'mine-260-green',
      'theirs',
      'shop-260-violet-100',
    ]);
    expect(
      read('Description,Count,Price\n260 red,100,8.20\n260 green,100,7.50\n260 violet,100,9\n', { book: withPrices(stocked, list) }),
    ).toMatchObject({ added: [], changed: [] });
  });
});

describe('lists that cannot be read at all', () => {
  test.each<[string, string, Partial<ReadPricesOptions>, string]>([
    ['no headings', 'a,b\n1,2\n', {}, 'prices.columns'],
    ['a mapping with a column that is not there', 'a,b\n1,2\n', { mapping: { item: 'a', price: 'Preis' } }, 'prices.columns'],
    ['a mapping without prices', 'a,b\n1,2\n', { mapping: { item: 'a' } }, 'prices.columns'],
    ['prices in another currency', 'Description,Count,Price EUR\n260 red,100,5\n', {}, 'currency.mixed'],
    ['an unknown supplier', 'Description,Count,Price\n', { supplier: 'nobody' }, 'supplier.unknown'],
    ['nothing', ' \n', {}, 'file.empty'],
    ['an open quotation mark', 'Description,Count,Price\n"260 red,100,5\n', {}, 'file.syntax'],
  ])('%s', (_, text, options, code) => {
    const list = readPrices(text, { book, supplier: 'shop', ...options });
    expect(list.ok ? [] : list.error.map((problem) => problem.code)).toEqual([code]);
  });
});
