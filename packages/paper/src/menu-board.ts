import {
  type Book,
  type Caution,
  type Colourway,
  cautions,
  deference,
  type Figure,
  type Gig,
  prescribedWording,
  sizesOf,
  swordCaution,
} from '@twistwright/books';
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
  /** Room that a picture has on the paper, inches across: what a finger points at. */
  readonly pictureInches: number;
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
/** How large the letters are and how close together everything stands. */
interface Density {
  readonly titlePoints: number;
  /** Of names, as a share of what the cell has room for, and at least. */
  readonly names: number;
  readonly leastName: number;
  readonly colourPoints: number;
  readonly cautionPoints: number;
  /** Points between rows. */
  readonly rowGap: number;
  readonly headingHeight: number;
}
/** Loosest first. */
const densities: readonly [Density, ...Density[]] = [
  { titlePoints: 26, names: 1, leastName: 11.5, colourPoints: 9, cautionPoints: 9.5, rowGap: 8, headingHeight: 14 },
  { titlePoints: 20, names: 0.8, leastName: 9.5, colourPoints: 7.5, cautionPoints: 7.5, rowGap: 5, headingHeight: 11 },
  { titlePoints: 18, names: 0.7, leastName: 8.5, colourPoints: 7, cautionPoints: 7.5, rowGap: 4, headingHeight: 10 },
];
/** Smallest picture on a board of one page, points: 2 cm, as wide as a pointing finger. */
const leastPicture = (2 / 2.54) * 72;
/** With smaller pictures than this, points, the words give way. */
const goodPicture = (3 / 2.54) * 72;
/** Largest picture, points. */
const mostPicture = 280;
/** Narrowest room for a figure on a board of several pages, points on A4. */
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
  const enlarged = Math.max(1, Math.min(width, height) / pageSizes.A4.width);
  const sword = entries.some(({ facts }) => facts.figure.tags?.includes('sword-like')) ? [swordCaution] : [];
  const said = [...cautions, ...sword];
  const roomAt = (density: Density): Room => ({
    width: width - 2 * margin,
    height: height - 2 * margin - 14,
    titleHeight: density.titlePoints * enlarged * 1.25 + 25 + (gig === undefined ? 0 : 16),
    cautionHeight: heightOfCautions(said, book.business.country, width - 2 * margin, density.cautionPoints),
    density,
  });
  const grid =
    onePageGrid(densities.map((density) => largestOnPage(grouped, roomAt(density)))) ??
    pagedGrid(grouped, roomAt(densities[0]), narrowest * Math.max(1, enlarged * 0.9));
  const pdf = await pdfOf({
    title: 'Which one would you like?',
    titlePoints: grid.density.titlePoints * enlarged,
    ...(gig === undefined ? {} : { under: `${gig.name}, ${longDate(gig.day)}` }),
    foot: book.business.name,
    made,
    margin,
    size,
    landscape,
    content: [board(book, grouped, grid), cautionBox(said, book.business.country, grid.density.cautionPoints)],
  });
  return ok({ pdf, figures: entries.length, pictureInches: grid.pictureWidth / 72, leftOut });
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
  readonly density: Density;
}
interface Room {
  readonly width: number;
  /** Of a whole page, title and cautions included. */
  readonly height: number;
  readonly titleHeight: number;
  readonly cautionHeight: number;
  readonly density: Density;
}
interface Grouped {
  readonly entry: Entry;
  /** Heading above it, where its group begins. */
  readonly heading?: string;
}

/** Points between pictures beside one another. */
const pictureGap = 10;
/** Height of a picture over its width. */
const tall = 1.1;

/** Shares of the font size that letters take in the font of our papers, measured; a little too much rather than too little. */
const letterShares: readonly (readonly [letters: RegExp, share: number])[] = [
  [/[ijlI.,:;|!'’ ]/u, 0.29],
  [/[frt()/-]/u, 0.37],
  [/[mwMW]/u, 0.86],
  [/[csz]/u, 0.5],
  [/[\p{Lu}@%&]/u, 0.66],
];
const otherLetter = 0.57;
const boldShare = 1.1;
const widthOf = (text: string, points: number, bold: boolean): number =>
  [...text].reduce((sum, letter) => sum + (letterShares.find(([letters]) => letters.test(letter))?.[1] ?? otherLetter), 0) *
  points *
  (bold ? boldShare : 1);

/** Lines that a text takes, broken between words. */
function linesOf(text: string, points: number, bold: boolean, width: number): number {
  let lines = 1;
  let used = 0;
  for (const word of text.split(' ')) {
    const needed = widthOf(`${word} `, points, bold);
    if (used > 0 && used + needed > width) {
      lines += 1;
      used = 0;
    }
    used += needed;
  }
  return lines;
}

/** Points that the words below a picture take. */
function wordsHeight({ facts, ways }: Entry, { namePoints, cellWidth, density: { colourPoints } }: Grid): number {
  return (
    6 +
    linesOf(facts.figure.name, namePoints, true, cellWidth - 12) * namePoints * 1.25 +
    linesOf(waysWords(ways), colourPoints, false, cellWidth - 12) * colourPoints * 1.25
  );
}

/** Points that the cautions take in a box so wide. */
function heightOfCautions(all: readonly Caution[], country: string | undefined, width: number, points: number): number {
  const wording = prescribedWording(country);
  const inner = width - 20;
  const small = Math.min(8, points * 0.9);
  const height = (text: string, size: number, bold = false): number => linesOf(text, size, bold, inner) * size * 1.36;
  return (
    18 +
    points * 1.25 +
    height(all.map(({ text }) => text).join(' '), points) +
    height(deference, small) +
    (wording === undefined ? 0 : 5 + height(wording.text, points, true) + height(`${wording.citation}; ${wording.where}.`, small))
  );
}

/** Points of a row without its pictures. */
const plainHeight = (row: readonly Grouped[], grid: Grid): number =>
  (row.some(({ heading }) => heading !== undefined) ? grid.density.headingHeight : 0) +
  Math.max(...row.map(({ entry }) => wordsHeight(entry, grid))) +
  grid.density.rowGap;
const rowHeight = (row: readonly Grouped[], grid: Grid): number => plainHeight(row, grid) + grid.pictureWidth * tall;

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

/** Letters of the longest word of a name, which is never broken. */
const longestWord = (grouped: readonly Grouped[]): number =>
  Math.max(...grouped.flatMap(({ entry }) => entry.facts.figure.name.split(/[\s-]+/u).map((word) => word.length)));

/** Fewer columns, so fuller rows and longer lines, are worth pictures that are a little smaller. */
const mostLost = 0.05;

/** The columns that give the largest pictures on one page. */
function largestOnPage(grouped: readonly Grouped[], room: Room): Grid {
  const most = Math.max(2, Math.floor(room.width / (leastPicture + pictureGap)));
  const grids = Array.from({ length: most - 1 }, (_, index) => shrunkToPage(grouped, gridOf(index + 2, room, longestWord(grouped)), room));
  const largest = Math.max(...grids.map(({ pictureWidth }) => pictureWidth));
  return grids.find(({ pictureWidth }) => pictureWidth >= largest - mostLost * Math.abs(largest)) as Grid;
}

/** The loosest page with good pictures, else the one with the largest; undefined where they are too small to point at. */
function onePageGrid(pages: readonly Grid[]): Grid | undefined {
  const good = pages.find(({ pictureWidth }) => pictureWidth >= goodPicture);
  const largest = pages.reduce((best, grid) => (grid.pictureWidth > best.pictureWidth ? grid : best));
  return good ?? (largest.pictureWidth >= leastPicture ? largest : undefined);
}

/** The fewest pages, and on these the fewest columns, so the largest pictures; a figure never has less room than `least` across. */
function pagedGrid(grouped: readonly Grouped[], room: Room, least: number): Grid {
  const most = Math.max(2, Math.floor(room.width / least));
  const grids = Array.from({ length: most - 1 }, (_, index) => gridOf(index + 2, room, longestWord(grouped)));
  const fewest = Math.min(...grids.map((grid) => pagesFor(grouped, grid, room)));
  return grids.find((grid) => pagesFor(grouped, grid, room) === fewest) ?? gridOf(most, room, longestWord(grouped));
}

/** The grid with pictures so small that everything stands on one page; less than nothing where words alone fill it. */
function shrunkToPage(grouped: readonly Grouped[], grid: Grid, { height, titleHeight, cautionHeight }: Room): Grid {
  const rows = rowsOf(grouped, grid.columns);
  const plain = rows.reduce((sum, row) => sum + plainHeight(row, grid), 0);
  const pictureWidth = (height - titleHeight - cautionHeight - plain) / rows.length / tall;
  return { ...grid, pictureWidth: Math.min(grid.pictureWidth, pictureWidth) };
}

/** `longest` letters of a name are never broken. */
function gridOf(columns: number, room: Room, longest: number): Grid {
  const { density } = room;
  const cellWidth = room.width / columns;
  const unbroken = (cellWidth - 8) / (longest * 0.64);
  const namePoints = Math.min(26, unbroken, Math.max(density.leastName, density.names * cellWidth * 0.115));
  const tallest = (room.height - room.titleHeight - room.cautionHeight - 70 - 2.5 * namePoints) / tall;
  return { columns, cellWidth, namePoints, pictureWidth: Math.min(cellWidth - pictureGap, tallest, mostPicture), density };
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
      paddingBottom: () => grid.density.rowGap,
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
      { svg, width: grid.pictureWidth, height: grid.pictureWidth * tall, margin: [(grid.cellWidth - 6 - grid.pictureWidth) / 2, 0, 0, 0] },
      { canvas: [{ type: 'line', x1: 0, y1: 0, x2: grid.cellWidth - 6, y2: 0, lineWidth: 1.4, lineColor: '#15171b' }] },
      { text: figure.name, bold: true, fontSize: grid.namePoints, lineHeight: 1.05, margin: [0, 3, 6, 0] },
      { text: waysWords(ways), fontSize: grid.density.colourPoints, lineHeight: 1.05, margin: [0, 0, 6, 0] },
    ],
  };
}
const longestHeading = figureGroups.reduce((longest, group) => (widthOf(group, 1, true) > widthOf(longest, 1, true) ? group : longest), '');
/** All of one size and on one line, so that the pictures of a row stand on one floor. */
const headingOf = (heading: string, { cellWidth, density }: Grid): Content => ({
  text: sentenceCase(heading),
  bold: true,
  fontSize: Math.min(density.headingHeight * 0.75, (cellWidth - 6) / widthOf(longestHeading, 1, true)),
  color: '#41454b',
});
const sentenceCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "Blue, pink, red or brown". */
function waysWords(ways: readonly Colourway[]): string {
  if (ways.length < 2) return ways[0]?.name ?? '';
  const names = ways.map((way, index) => (index === 0 ? sentenceCase(way.name) : way.name.toLowerCase()));
  return `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}
