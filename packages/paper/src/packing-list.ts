import { type Book, cautions, type Gig } from '@twistwright/books';
import type { PackingLine, PackingPlan } from '@twistwright/planner';
import { longDate } from '@twistwright/units';
import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { box, cautionBox, type PaperSize, pdfOf, ruled } from './sheet.ts';

/** The packing list of one gig as PDF: places in the order in which they are filled, numbers first, a box a line. */
export function packingListPdf(book: Book, gig: Gig, plan: PackingPlan, made: string, size?: PaperSize): Promise<Uint8Array> {
  const missing =
    plan.missing.length === 0
      ? 'Nothing is missing.'
      : `Missing: ${plan.missing.map((line) => `${line.missing} ${line.name}`).join(', ')}.`;
  return pdfOf({
    title: `Pack for ${gig.name}.`,
    under: `${longDate(gig.day)}, ${gig.starts} to ${gig.ends}${gig.where === undefined ? '' : `, ${gig.where.name}`}. ${missing}`,
    foot: book.business.name,
    made,
    size: size ?? book.business.paper ?? 'A4',
    content: [
      ...plan.places.flatMap((place): readonly Content[] => [
        { text: `Into the ${place.name.toLowerCase()}.`, fontSize: 13, bold: true, margin: [0, 8, 0, 4] },
        {
          table: {
            headerRows: 1,
            dontBreakRows: true,
            widths: [14, 36, '*', '*'],
            body: [head(), ...place.lines.map((line) => row(book, line))],
          },
          layout: ruled,
        },
      ]),
      ...(plan.leaveAtHome.length === 0
        ? []
        : [
            {
              text: `Leave at home: ${plan.leaveAtHome.map((line) => `${line.count} ${line.name}`).join(', ')}.`,
              margin: [0, 10, 0, 0] as [number, number, number, number],
            },
          ]),
      cautionBox(cautions, book.business.country),
    ],
  });
}

const head = (): TableCell[] =>
  ['', 'Count', 'What', 'From'].map((text, column) => ({ text, fontSize: 9, alignment: column === 1 ? 'right' : 'left' }));

function row(book: Book, line: PackingLine): TableCell[] {
  const placeName = (id: string): string => book.places.find((place) => place.id === id)?.name.toLowerCase() ?? id;
  const from = line.from.map((part) => `${part.count} ${part.already ? 'there already' : `from ${placeName(part.place)}`}`);
  const lacking = line.missing === 0 ? [] : [`${line.missing} missing${line.onOrder > 0 ? `, ${line.onOrder} on order` : ''}`];
  return [
    box(),
    { text: String(line.count), alignment: 'right', bold: true },
    { text: line.name },
    { text: [...from, ...lacking].join('; ') },
  ];
}
