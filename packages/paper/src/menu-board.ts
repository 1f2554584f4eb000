import { type Book, type Colourway, cautions, type Figure, type Gig, prescribedWording, sizesOf, swordCaution } from '@twistwright/books';
import { type FigureFacts, favouriteColourway, figureFacts, figureGroups, finished, groupOfFigure, paintsOf } from '@twistwright/planner';
import { pictureOfShape, shapeOf } from '@twistwright/repertoire';
import { fail, longDate, ok, type Problem, type Result } from '@twistwright/units';
import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { cautionBox, type PaperSize, pageSizes, pdfOf } from './sheet.ts';

export interface BoardOptions {
  /** Day it was made, ISO date. */
  readonly made: string;
  /** Only the menu of this gig, in its colours; without it every figure of the book. */
  readonly gig?: Gig;
  /** The business's paper if missing. */
  readonly size?: PaperSize;
  readonly landscape?: boolean;
}
export interface MenuBoard {
  readonly pdf: Uint8Array;
  /** How many figures stand on it. */
  readonly figures: number;
  /** Why others do not. */
  readonly leftOut: readonly Problem[];
}

/** One figure on the board. */
interface Entry {
  readonly facts: FigureFacts;
  /** Colourways to choose from; the picture is in the first. */
  readonly ways: readonly Colourway[];
}

const margin = 32;
/** Narrowest room for a figure to point at, points on A4. */
const narrowest = 74;

/**
 * The picture sheet from which guests choose: figures in chosen colours, names, grouped, with the cautions for the public. As large as one page
 * allows; with too many figures for that, several pages. Refuses a menu on which no figure can be drawn.
 */
export async function menuBoardPdf(book: Book, options: BoardOptions): Promise<Result<MenuBoard>> {
  const { gig, made, landscape = false } = options;
  const size = options.size ?? book.business.paper ?? 'A4';
  const leftOut: Problem[] = [];
  const entries = figuresFor(book, gig).flatMap(({ figure, ways }): readonly Entry[] => {
    const facts = figureFacts(book, figure);
    if (facts.ok) return [{ facts: facts.value, ways }];
    leftOut.push({
      code: 'board.unreadable',
      path: ['figures', figure.id],
      sentence: `"${figure.name}" is not on the board: its recipe cannot be read.`,
      weight: 'warning',
    });
    return [];
  });
  if (entries.length === 0)
    return fail([
      ...leftOut,
      {
        code: 'board.empty',
        path: gig === undefined ? ['figures'] : ['gigs', gig.id, 'menu'],
        sentence: gig === undefined ? 'There is no figure to put on the board.' : `"${gig.name}" has no menu to put on the board.`,
        todo: 'Put figures on it first.',
        weight: 'error',
      },
    ]);
  const grouped = figureGroups.flatMap((group) =>
    entries
      .filter(({ facts }) => groupOfFigure(facts.figure) === group)
      .map((entry, index): Grouped => (index === 0 ? { entry, heading: group } : { entry })),
  );
  const page = pageSizes[size];
  const [width, height] = landscape ? [page.height, page.width] : [page.width, page.height];
  const enlarged = Math.min(width, height) / pageSizes.A4.width;
  const cautionHeight = prescribedWording(book.business.country) === undefined ? 88 : 128;
  const titleHeight = 26 * Math.max(1, enlarged) * 1.25 + 13 + (gig === undefined ? 0 : 16);
  const room = { width: width - 2 * margin, height: height - 2 * margin - 14, titleHeight, cautionHeight };
  const grid = gridFor(grouped, room, narrowest * Math.max(1, enlarged * 0.9));
  const sword = entries.some(({ facts }) => facts.figure.tags?.includes('sword-like')) ? [swordCaution] : [];
  const pdf = await pdfOf({
    title: 'Which one would you like?',
    titlePoints: 26 * Math.max(1, enlarged),
    ...(gig === undefined ? {} : { under: `${gig.name}, ${longDate(gig.day)}` }),
    foot: book.business.name,
    made,
    margin,
    size,
    landscape,
    content: [board(book, grouped, grid), cautionBox([...cautions, ...sword], book.business.country)],
  });
  return ok({ pdf, figures: entries.length, leftOut });
}

interface Wanted {
  readonly figure: Figure;
  readonly ways: readonly Colourway[];
}

/** Favourite colourway first. */
function figuresFor(book: Book, gig: Gig | undefined): readonly Wanted[] {
  const favouritesFirst = (figure: Figure, ids?: readonly string[]): readonly Colourway[] => {
    const ways = figure.colourways.filter((way) => ids === undefined || ids.includes(way.id));
    const first = favouriteColourway({ ...figure, colourways: ways });
    return first === undefined ? [] : [first, ...ways.filter((way) => way !== first)];
  };
  if (gig === undefined) return book.figures.map((figure) => ({ figure, ways: favouritesFirst(figure) }));
  return gig.menu.flatMap((line) => {
    const figure = book.figures.find((entry) => entry.id === line.figure);
    return figure === undefined ? [] : [{ figure, ways: favouritesFirst(figure, line.colourways) }];
  });
}

interface Grid {
  readonly columns: number;
  readonly cellWidth: number;
  readonly pictureWidth: number;
  readonly namePoints: number;
}
interface Room {
  readonly width: number;
  /** Of a whole page, title and cautions included. */
  readonly height: number;
  readonly titleHeight: number;
  readonly cautionHeight: number;
}
interface Grouped {
  readonly entry: Entry;
  /** Heading above it, where its group begins. */
  readonly heading?: string;
}

/** Shares of the font size that a letter takes on the whole, bold and plain; a little too much rather than too little. */
const letterWidth = { bold: 0.6, plain: 0.52 } as const;
const colourPoints = 9;
const headingHeight = 14;

/** Points that the words below a picture take. */
function wordsHeight({ facts, ways }: Entry, { namePoints, cellWidth }: Grid): number {
  const linesOf = (text: string, points: number, share: number): number =>
    Math.max(1, Math.ceil((text.length * points * share) / (cellWidth - 8)));
  return (
    9 +
    linesOf(facts.figure.name, namePoints, letterWidth.bold) * namePoints * 1.25 +
    linesOf(waysWords(ways), colourPoints, letterWidth.plain) * colourPoints * 1.25
  );
}
const rowHeight = (row: readonly Grouped[], grid: Grid): number =>
  (row.some(({ heading }) => heading !== undefined) ? headingHeight : 0) +
  grid.pictureWidth * 1.1 +
  Math.max(...row.map(({ entry }) => wordsHeight(entry, grid))) +
  8;

/** How many pages so many columns take, the cautions on the last of them. */
function pagesFor(grouped: readonly Grouped[], grid: Grid, { height, titleHeight, cautionHeight }: Room): number {
  let pages = 1;
  let used = titleHeight;
  for (const row of rowsOf(grouped, grid.columns)) {
    const needed = rowHeight(row, grid);
    if (used + needed > height && used > 0) {
      pages += 1;
      used = 0;
    }
    used += needed;
  }
  return used + cautionHeight > height ? pages + 1 : pages;
}

/** The fewest pages, and on these the fewest columns, so the largest pictures; a figure never has less room than `least` across. */
function gridFor(grouped: readonly Grouped[], room: Room, least: number): Grid {
  const most = Math.max(2, Math.floor(room.width / least));
  const longest = Math.max(...grouped.flatMap(({ entry }) => entry.facts.figure.name.split(/[\s-]+/u).map((word) => word.length)));
  const grids = Array.from({ length: most - 1 }, (_, index) => gridOf(index + 2, room, longest));
  const fewest = Math.min(...grids.map((grid) => pagesFor(grouped, grid, room)));
  return grids.find((grid) => pagesFor(grouped, grid, room) === fewest) ?? gridOf(most, room, longest);
}
/** `longest` letters of a name are never broken. */
function gridOf(columns: number, room: Room, longest: number): Grid {
  const cellWidth = room.width / columns;
  const unbroken = (cellWidth - 8) / (longest * 0.64);
  const namePoints = Math.min(26, unbroken, Math.max(11.5, cellWidth * 0.115));
  const tallest = (room.height - room.titleHeight - room.cautionHeight - 70 - 2.5 * namePoints) / 1.1;
  return { columns, cellWidth, namePoints, pictureWidth: Math.min(cellWidth - 10, tallest, 280) };
}

const rowsOf = (grouped: readonly Grouped[], columns: number): readonly (readonly Grouped[])[] =>
  Array.from({ length: Math.ceil(grouped.length / columns) }, (_, row) => grouped.slice(row * columns, (row + 1) * columns));

function board(book: Book, grouped: readonly Grouped[], grid: Grid): Content {
  const body = rowsOf(grouped, grid.columns).map((row): TableCell[] => {
    const hasHeading = row.some(({ heading }) => heading !== undefined);
    return [
      ...row.map(({ entry, heading }) => cell(book, entry, hasHeading ? (heading ?? ' ') : undefined, grid)),
      ...Array.from({ length: grid.columns - row.length }, (): TableCell => ({ text: '' })),
    ];
  });
  return {
    table: { widths: Array.from({ length: grid.columns }, () => grid.cellWidth), dontBreakRows: true, body },
    layout: {
      hLineWidth: () => 0,
      vLineWidth: () => 0,
      paddingLeft: () => 0,
      paddingRight: () => 0,
      paddingTop: () => 0,
      paddingBottom: () => 8,
    },
  };
}

function cell(book: Book, { facts, ways }: Entry, heading: string | undefined, grid: Grid): TableCell {
  const { figure, recipe } = facts;
  const way = ways[0];
  const shape = shapeOf(finished(recipe, way), sizesOf(book));
  const svg = pictureOfShape(shape, recipe.finishing, paintsOf(book, way?.fill ?? {}));
  return {
    stack: [
      ...(heading === undefined ? [] : [headingOf(heading, grid)]),
      { svg, width: grid.pictureWidth, height: grid.pictureWidth * 1.1, margin: [(grid.cellWidth - 6 - grid.pictureWidth) / 2, 0, 0, 0] },
      { canvas: [{ type: 'line', x1: 0, y1: 0, x2: grid.cellWidth - 6, y2: 0, lineWidth: 1.4, lineColor: '#15171b' }] },
      { text: figure.name, bold: true, fontSize: grid.namePoints, lineHeight: 1.05, margin: [0, 3, 6, 0] },
      { text: waysWords(ways), fontSize: colourPoints, lineHeight: 1.05, margin: [0, 0, 6, 0] },
    ],
  };
}
const longestHeading = Math.max(...figureGroups.map((group) => group.length));
/** All of one size and on one line, so that the pictures of a row stand on one floor. */
const headingOf = (heading: string, { cellWidth }: Grid): Content => ({
  text: sentenceCase(heading),
  bold: true,
  fontSize: Math.min(10.5, (cellWidth - 6) / (longestHeading * letterWidth.bold)),
  color: '#41454b',
});
const sentenceCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "Blue, pink, red or brown". */
function waysWords(ways: readonly Colourway[]): string {
  if (ways.length < 2) return ways[0]?.name ?? '';
  const names = ways.map((way, index) => (index === 0 ? sentenceCase(way.name) : way.name.toLowerCase()));
  return `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}
