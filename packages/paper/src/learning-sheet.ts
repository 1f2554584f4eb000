import type { Book } from '@twistwright/books';
import { sizesOf } from '@twistwright/books';
import { balloonsTaken, finished, type KitLesson, lessonsOfKit, paintsOf } from '@twistwright/planner';
import { pictureOfShape, shapeOf } from '@twistwright/repertoire';
import type { Content, TableCell } from 'pdfmake/interfaces.js';
import type { KitPaperOptions } from './kit-handout.ts';
import { type KitPaper, kitCautions } from './kit-handout-list.ts';
import { box, cautionBox, pageSizes, pdfOf } from './sheet.ts';

/** The figures that a kit makes in the order in which to learn them: picture in the colours of the kit, balloons, minutes, what is new in each. */
export function learningSheetPdf(book: Book, paper: KitPaper, options: KitPaperOptions): Promise<Uint8Array> {
  const lessons = lessonsOfKit(book, paper.plan.kit, paper.wishes.have);
  const size = options.size ?? book.business.paper ?? 'A4';
  const cellWidth = (pageSizes[size].width - 84 - gap) / columns;
  return pdfOf({
    title: `${paper.name === undefined ? '' : `${paper.name}: `}${lessonsTitle(lessons)}`,
    under:
      'Each can be made from your kit, and adds as little as possible to what your hands know by then. Tick it when three in a row came out well.',
    foot: `${book.business.name}, figures to learn`,
    made: options.made,
    size,
    content: [grid(book, lessons, cellWidth), cautionBox(kitCautions(book, paper.plan), book.business.country)],
  });
}

const columns = 2;
const gap = 16;
const picture = { width: 70, height: 77 } as const;

function grid(book: Book, lessons: readonly KitLesson[], cellWidth: number): Content {
  const cells = lessons.map((lesson, index) => cell(book, lesson, index, cellWidth));
  const rows = Array.from({ length: Math.ceil(cells.length / columns) }, (_, row): TableCell[] =>
    Array.from({ length: columns }, (_unused, column) => cells[row * columns + column] ?? { text: '' }),
  );
  return {
    table: { widths: Array.from({ length: columns }, () => cellWidth), dontBreakRows: true, body: rows.length === 0 ? [['', '']] : rows },
    layout: {
      hLineWidth: (line: number, node: { table: { body: unknown[] } }) => (line === 0 || line === node.table.body.length ? 1.2 : 0.4),
      vLineWidth: () => 0,
      hLineColor: () => '#15171b',
      paddingLeft: (column: number) => (column === 0 ? 0 : gap),
      paddingRight: () => 0,
      paddingTop: () => 6,
      paddingBottom: () => 6,
    },
  };
}

/** "40 figures to learn, in this order." */
export const lessonsTitle = ({ length }: readonly KitLesson[]): string =>
  length === 0 ? 'No figure to learn yet.' : length === 1 ? '1 figure to learn.' : `${length} figures to learn, in this order.`;
/** The picture of a lesson in the colours that the kit has. */
export function lessonPicture(book: Book, { facts, way }: KitLesson, title?: string): string {
  const recipe = finished(facts.recipe, way);
  return pictureOfShape(shapeOf(recipe, sizesOf(book)), recipe.finishing, paintsOf(book, way.fill), title === undefined ? {} : { title });
}
/** "1 x 260 green, 2 x 160 red". */
export const lessonTakes = (book: Book, { facts, way }: KitLesson): string =>
  balloonsTaken(book, facts.recipe, way)
    .map(({ count, name }) => `${count} x ${name}`)
    .join(', ');
/** "New: lock, pinch." or that nothing is. */
export const lessonNew = ({ adds }: KitLesson): string => (adds.length === 0 ? 'Nothing new: practice.' : `New: ${adds.join(', ')}.`);
export const lessonMinutes = ({ facts: { minutes } }: KitLesson): string => `${minutes.p50.toFixed(1)} minutes for a practised hand`;

function cell(book: Book, lesson: KitLesson, index: number, width: number): TableCell {
  return {
    columns: [
      { width: picture.width, svg: lessonPicture(book, lesson), fit: [picture.width, picture.height] },
      {
        width: width - picture.width - 8,
        margin: [8, 0, 0, 0],
        fontSize: 9,
        stack: [
          {
            columns: [
              { width: 16, stack: [box(10)] },
              { width: '*', text: `${index + 1}. ${lesson.facts.figure.name}`, bold: true, fontSize: 11.5 },
            ],
          },
          { text: lessonTakes(book, lesson), margin: [0, 3, 0, 0] },
          { text: lessonMinutes(lesson) },
          { text: lessonNew(lesson), bold: lesson.adds.length > 0 },
        ],
      },
    ],
  };
}
