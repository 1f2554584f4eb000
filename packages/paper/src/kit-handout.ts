import type { Book } from '@twistwright/books';
import { longDate, readDate, showMoney } from '@twistwright/units';
import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { qrContent, vCardOf } from './contact-card.ts';
import {
  contactLines,
  type KitPaper,
  kitCautions,
  kitSentences,
  type ListShop,
  nextRows,
  shopsOf,
  termsWords,
  thingsOf,
} from './kit-handout-list.ts';
import { box, cautionBox, type PaperSize, pdfOf } from './sheet.ts';

export interface KitPaperOptions {
  /** Day it was made, ISO date. */
  readonly made: string;
  /** The business's paper if missing. */
  readonly size?: PaperSize;
}

/** The first kit as a list to take to the shop: boxes to tick, grouped by where to buy, why each is there, cautions, the coach's contact. */
export function kitHandoutPdf(book: Book, paper: KitPaper, options: KitPaperOptions): Promise<Uint8Array> {
  const { currency } = book.business;
  const shops = shopsOf(book, paper.plan);
  const things = thingsOf(shops);
  const lines = shops.reduce((sum, shop) => sum + shop.rows.length, 0);
  const air = airFor(lines);
  const day = readDate(options.made);
  return pdfOf({
    title: `${paper.name === undefined ? 'Your first kit' : paper.name}: ${things} ${things === 1 ? 'thing' : 'things'} for ${showMoney(paper.plan.kit.spent, currency)}.`,
    under: kitSentences(paper),
    foot: `${book.business.name}, first kit${day === undefined ? '' : `, prices as on ${longDate(day)}`}`,
    made: options.made,
    size: options.size ?? book.business.paper ?? 'A4',
    margin: 38,
    content: [
      ...shops.map((shop, index) => shopContent(book, shop, air, index === 0 ? -8 : 6)),
      nextAndContact(book, paper, air.next),
      cautionBox(kitCautions(book, paper.plan), book.business.country, air.care),
    ],
  });
}

/** How close things stand, so that a list of about twenty lines still is one page. */
interface Air {
  /** Points above and below what stands in a row. */
  readonly row: number;
  /** Points of the reasons and of the cautions. */
  readonly why: number;
  readonly care: number;
  /** How many of the next purchases. */
  readonly next: number;
}
function airFor(lines: number): Air {
  if (lines <= 16) return { row: 3.4, why: 8.3, care: 9.5, next: 4 };
  return lines <= 20 ? { row: 1.6, why: 8.3, care: 8.8, next: 3 } : { row: 0.8, why: 8, care: 8.2, next: 2 };
}

function shopContent(book: Book, shop: ListShop, air: Air, above: number): Content {
  const { currency } = book.business;
  const head: TableCell = {
    colSpan: 5,
    text: [
      { text: `${shop.name}.`, fontSize: 12.5, bold: true },
      {
        text: `  ${shop.site === undefined ? '' : `${shop.site}  `}${showMoney(shop.total, currency)} in all${termsWords(shop, (amount) => showMoney(amount, currency))}`,
        fontSize: 9,
      },
    ],
  };
  return {
    margin: [0, above, 0, 0],
    fontSize: 9.5,
    table: {
      headerRows: 1,
      keepWithHeaderRows: 1,
      dontBreakRows: true,
      widths: [13, 57, 30, 105, '*', 36],
      body: [
        [head, '', '', '', '', { text: currency, fontSize: 8.5, alignment: 'right', margin: [0, 4.5, 0, 0] }],
        ...shop.rows.map((row): TableCell[] => [
          box(10),
          { text: row.count },
          row.swatch === undefined ? { text: '' } : { svg: row.swatch, width: 30, margin: [0, -0.5, 0, -2] },
          { text: row.what, bold: true },
          { text: inShort(row.why), fontSize: air.why, margin: [0, 1, 0, 0] },
          { text: plain(showMoney(row.price, currency)), alignment: 'right' },
        ]),
      ],
    },
    layout: {
      hLineWidth: (line: number, node: { table: { body: unknown[] } }): number =>
        line === 0 ? 0 : line === 1 || line === node.table.body.length ? 1.2 : 0.4,
      vLineWidth: (): number => 0,
      hLineColor: (line: number, node: { table: { body: unknown[] } }): string =>
        line === 1 || line === node.table.body.length ? '#15171b' : '#9a9ea3',
      paddingLeft: (column: number): number => (column === 0 ? 0 : 5),
      paddingRight: (column: number): number => (column === 5 ? 0 : 3),
      paddingTop: (): number => air.row,
      paddingBottom: (): number => air.row,
    },
  };
}
/** The reason without how many figures there are, which stands in the sentence on top. */
export const inShort = (why: string): string =>
  why
    .replace(/ of the \d+ figures?; /u, '; ')
    .replace(/(\d+) of them (needs?) it/u, (_, count, verb) => `${count} ${count === '1' ? 'figure' : 'figures'} ${verb} it`)
    .replace('more choice of colour or more pieces', 'more choice, more pieces');
/** The number alone; the currency stands in the head of its column. */
const plain = (shown: string): string => shown.replace(/[^\d.,-]/gu, '');

/** What to buy later, and beside it who to ask, the same as a code that a phone keeps. */
function nextAndContact(book: Book, paper: KitPaper, most: number): Content {
  const next = nextRows(book, paper.plan, most);
  const [first, ...rest] = contactLines(book);
  return {
    margin: [0, 10, 0, 0],
    unbreakable: true,
    columnGap: 12,
    columns: [
      ...(next.length === 0 ? [] : [{ width: '*', stack: [heading('Next, when there is money again.'), nextTable(next)] } as Content]),
      {
        width: next.length === 0 ? '*' : 154,
        fontSize: 9,
        stack: [
          heading('Ask before you buy more.'),
          { text: first ?? '', bold: true, margin: [0, 3, 0, 0] },
          ...rest.map((text): Content => ({ text })),
          { text: 'Point a phone at the square to keep this contact.', fontSize: 8.3, margin: [0, 4, 0, 0] },
        ],
      },
      // Its own quiet zone stands out over the edge, so that the modules end where the tables do.
      { width: codePoints - 8, stack: [qrContent(vCardOf(book.business), codePoints)], margin: [0, -7, 0, 0] },
    ],
  };
}
const codePoints = 124;
const heading = (text: string): Content => ({ text, fontSize: 11, bold: true });

const nextTable = (next: ReturnType<typeof nextRows>): Content => ({
  fontSize: 9,
  table: {
    dontBreakRows: true,
    widths: [12, '*', 34],
    body: next.map((row): TableCell[] => [
      box(9),
      {
        stack: [
          { text: row.what, bold: true },
          { text: row.gain, fontSize: 8.3 },
        ],
      },
      { text: row.price, alignment: 'right' },
    ]),
  },
  layout: {
    hLineWidth: (): number => 0,
    vLineWidth: (): number => 0,
    paddingLeft: (column: number): number => (column === 0 ? 0 : 5),
    paddingRight: (): number => 0,
    paddingTop: (): number => 1.5,
    paddingBottom: (): number => 1,
  },
});
