import type { Book } from '@twistwright/books';
import { longDate, readDate, showMoney } from '@twistwright/units';
import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { qrContent, vCardOf } from './contact-card.ts';
import {
  bareSite,
  contactLines,
  type KitPaper,
  kitCautions,
  kitSentences,
  type ListShop,
  nextNote,
  nextRows,
  nextTitle,
  shopsOf,
  termsWords,
  titleOf,
} from './kit-handout-list.ts';
import { box, cautionBox, type PaperSize, pagesOf, pdfOf } from './sheet.ts';

export interface KitPaperOptions {
  /** Day it was made, ISO date. */
  readonly made: string;
  /** The business's paper if missing. */
  readonly size?: PaperSize;
}

/**
 * The first kit as a list to take to the shop: boxes to tick, grouped by where to buy, why each is there, cautions, the coach's contact. On
 * as few pages as its letters allow, as roomy as these are.
 */
export async function kitHandoutPdf(book: Book, paper: KitPaper, options: KitPaperOptions): Promise<Uint8Array> {
  let best = await handoutAt(book, paper, options, airs[0]);
  for (const air of airs.slice(1)) {
    if (pagesOf(best) === 1) break;
    const closer = await handoutAt(book, paper, options, air);
    if (pagesOf(closer) < pagesOf(best)) best = closer;
  }
  return best;
}

/** How close things stand. */
interface Air {
  /** Points above and below what stands in a row. */
  readonly row: number;
  /** Points of the reasons and of the cautions. */
  readonly why: number;
  readonly care: number;
  /** How many of the next purchases. */
  readonly next: number;
}
const airs: readonly [Air, ...Air[]] = [
  { row: 3.4, why: 8.3, care: 9.5, next: 4 },
  { row: 1.6, why: 8.3, care: 8.8, next: 4 },
  { row: 0.8, why: 8, care: 8.2, next: 2 },
  { row: 0, why: 7.8, care: 7.5, next: 2 },
];

function handoutAt(book: Book, paper: KitPaper, options: KitPaperOptions, air: Air): Promise<Uint8Array> {
  const { currency } = book.business;
  const shops = shopsOf(book, paper.plan);
  const day = readDate(options.made);
  return pdfOf({
    title: `${titleOf(paper, shops, currency)}.`,
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

function shopContent(book: Book, shop: ListShop, air: Air, above: number): Content {
  const { currency } = book.business;
  const head: TableCell = {
    colSpan: 5,
    text: [
      { text: `${shop.name}.`, fontSize: 12.5, bold: true },
      {
        text: `  ${shop.site === undefined ? '' : `${bareSite(shop.site)}  `}${showMoney(shop.total, currency)} in all${termsWords(shop, (amount) => showMoney(amount, currency))}`,
        fontSize: 8.8,
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
    .replace(/ of the \d+ figures; /u, '; ')
    .replace(/(\d+) of them need it/u, '$1 figures need it')
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
      ...(next.length === 0
        ? []
        : [
            {
              width: '*',
              stack: [heading(nextTitle), nextTable(next), { text: nextNote, fontSize: 8.3, margin: [0, 2, 0, 0] }],
            } as Content,
          ]),
      {
        width: next.length === 0 ? '*' : 154,
        fontSize: 9,
        stack: [
          heading('Ask before you buy more.'),
          { text: first ?? '', bold: true, margin: [0, 3, 0, 0] },
          ...rest.map((text): Content => ({ text: bareSite(text) })),
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
    widths: [12, '*', 'auto'],
    body: next.map((row): TableCell[] => [
      box(9),
      {
        stack: [
          { text: row.what, bold: true },
          { text: row.gain, fontSize: 8.3 },
        ],
      },
      { text: row.price, alignment: 'right', noWrap: true },
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
