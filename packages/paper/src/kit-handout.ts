import type { Book } from '@twistwright/books';
import { showMoney } from '@twistwright/units';
import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { qrContent, vCardOf } from './contact-card.ts';
import { contactLines, type KitPaper, kitCautions, kitSentences, type ListShop, nextRows, shopsOf, thingsOf } from './kit-handout-list.ts';
import { box, cautionBox, type PaperSize, pdfOf, ruled } from './sheet.ts';

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
  const next = nextRows(book, paper.plan);
  const things = thingsOf(shops);
  return pdfOf({
    title: `${paper.name === undefined ? 'Your first kit' : paper.name}: ${things} ${things === 1 ? 'thing' : 'things'} for ${showMoney(paper.plan.kit.spent, currency)}.`,
    under: kitSentences(paper),
    foot: `${book.business.name}, first kit`,
    made: options.made,
    size: options.size ?? book.business.paper ?? 'A4',
    content: [
      ...shops.flatMap((shop) => shopContent(book, shop)),
      ...(next.length === 0
        ? []
        : [
            { text: 'Next, when there is money again.', fontSize: 13, bold: true, margin: [0, 12, 0, 4] } as Content,
            {
              fontSize: 9.5,
              table: {
                dontBreakRows: true,
                widths: [14, '*', 46, '*'],
                body: next.map((row): TableCell[] => [
                  box(9),
                  { text: row.what },
                  { text: row.price, alignment: 'right' },
                  { text: row.gain },
                ]),
              },
              layout: { ...ruled, hLineWidth: () => 0.4, hLineColor: () => '#9a9ea3' },
            } as Content,
          ]),
      contact(book),
      cautionBox(kitCautions(book, paper.plan), book.business.country),
    ],
  });
}

function shopContent(book: Book, shop: ListShop): readonly Content[] {
  const { currency } = book.business;
  return [
    {
      margin: [0, 8, 0, 3],
      headlineLevel: 1,
      text: [
        { text: `${shop.name}.`, fontSize: 13, bold: true },
        { text: `  ${shop.site === undefined ? '' : `${shop.site}  `}${showMoney(shop.total, currency)} in all`, fontSize: 9.5 },
      ],
    },
    {
      fontSize: 9.5,
      table: {
        headerRows: 1,
        keepWithHeaderRows: 1,
        dontBreakRows: true,
        widths: [14, 66, 30, 84, '*', 36],
        body: [
          ['', 'How many', '', 'What', 'Why', currency].map(
            (text, column): TableCell => ({ text, fontSize: 8.5, alignment: column === 5 ? 'right' : 'left' }),
          ),
          ...shop.rows.map((row): TableCell[] => [
            box(),
            { text: row.count, bold: true },
            row.swatch === undefined ? { text: '' } : { svg: row.swatch, width: 30 },
            { text: row.what, bold: true },
            { text: row.why, fontSize: 8.8 },
            { text: plain(showMoney(row.price, currency)), alignment: 'right' },
          ]),
          ['', { text: 'Carriage', colSpan: 4 }, '', '', '', { text: plain(showMoney(shop.carriage, currency)), alignment: 'right' }],
        ],
      },
      layout: ruled,
    },
  ];
}
/** The number alone; the currency stands in the head of its column. */
const plain = (shown: string): string => shown.replace(/[^\d.,-]/gu, '');

/** Who to ask, and the same as a code that a phone keeps. */
function contact(book: Book): Content {
  const [first, ...rest] = contactLines(book);
  return {
    margin: [0, 14, 0, 0],
    unbreakable: true,
    columns: [
      {
        width: '*',
        stack: [
          { text: 'Ask before you buy something else.', fontSize: 13, bold: true },
          { text: first ?? '', bold: true, margin: [0, 6, 0, 0] },
          ...rest.map((text): Content => ({ text })),
          { text: 'Point a phone at the square to keep this contact.', fontSize: 8.5, margin: [0, 6, 0, 0] },
        ],
      },
      { width: 'auto', stack: [qrContent(vCardOf(book.business))] },
    ],
  };
}
