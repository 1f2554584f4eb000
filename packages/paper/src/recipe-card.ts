import { type Book, type Colourway, cautions, swordCaution } from '@twistwright/books';
import {
  airOptionsOf,
  balloonsTaken,
  colourNames,
  type FigureFacts,
  finished,
  type MinutesSpread,
  paintOf,
  paintsOf,
} from '@twistwright/planner';
import { airOf, type PieceAir, pictureOfShape, type Recipe, type Step, shapeOf, stepsOf, unfold } from '@twistwright/repertoire';
import { showLength } from '@twistwright/units';
import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { beyondRuler, checkInches, checkLineSvg, rulerInches, rulerSvg, tailsOf, together } from './recipe-card-rulers.ts';
import { box, cautionBox, type PaperSize, pagesOf, pdfOf, ruled } from './sheet.ts';
import { balloonSwatch } from './swatch.ts';

export interface CardOptions {
  /** Day it was made, ISO date. */
  readonly made: string;
  /** The business's paper if missing. */
  readonly size?: PaperSize;
}

/**
 * A card to make a figure by: picture, what to take, air and tail with two rulers at true size (flat above, inflated below, never one scale)
 * and a line to measure, numbered steps with the figure so far, minutes, cautions.
 */
export async function recipeCardPdf(book: Book, facts: FigureFacts, way: Colourway, options: CardOptions): Promise<Uint8Array> {
  const drawn = drawnFigure(book, facts, way);
  const [first, ...closer] = drawn.steps.length > mostLooseSteps ? closeness.slice(looseOnes) : closeness;
  let pdf = await cardPdf(book, way, options, drawn, first ?? closeness[0]);
  for (const close of closer) {
    if (pagesOf(pdf) <= mostPages) break;
    pdf = await cardPdf(book, way, options, drawn, close);
  }
  return pdf;
}

/** What a card shows of its figure: solved and drawn once, however often the card is laid out. */
interface DrawnFigure {
  /** With the air of the balloons that this colourway takes. */
  readonly facts: FigureFacts;
  readonly recipe: Recipe;
  readonly steps: readonly Step[];
  readonly deeds: number;
  /** The figure so far, with what is new since another deed standing out, or the whole of it. */
  readonly picture: (upToMove?: number, newAfterMove?: number) => string;
}

function drawnFigure(book: Book, facts: FigureFacts, way: Colourway): DrawnFigure {
  const options = airOptionsOf(book, way);
  const recipe = finished(facts.recipe, way);
  const shape = shapeOf(recipe, options.sizes);
  const paints = paintsOf(book, way.fill);
  const known = new Map<string, string>();
  return {
    facts: { ...facts, air: airOf(facts.recipe, options) },
    recipe,
    steps: stepsOf(recipe, { ...options, colours: colourNames(book, way.fill) }),
    deeds: shape.deeds,
    picture: (upToMove, newAfterMove = 0) => {
      const key = `${upToMove} ${newAfterMove}`;
      const soFar = upToMove === undefined ? {} : { upToMove, newAfterMove, small: true };
      const text = known.get(key) ?? pictureOfShape(shape, recipe.finishing, paints, soFar);
      known.set(key, text);
      return text;
    },
  };
}

/** With more steps than this the first, loose layouts need not be tried. */
const mostLooseSteps = 40;
const looseOnes = 2;

/** A card is a sheet, printed on both sides at most. */
const mostPages = 2;

/** How close together the steps stand. */
interface Closeness {
  readonly picture: readonly [number, number];
  readonly points: number;
  /** With more steps than this, several share a picture; with more than `byBalloon`, those of one balloon do. */
  readonly byBubble: number;
  readonly byBalloon: number;
  readonly columns: number;
  /** Bubble lengths on the inflated ruler, at most. */
  readonly bars: number;
  /** Points on each side of the page. */
  readonly margin: number;
  readonly cautionPoints: number;
}
const closeness: readonly [Closeness, ...Closeness[]] = [
  { picture: [80, 88], points: 9, byBubble: 20, byBalloon: 40, columns: 4, bars: 7, margin: 40, cautionPoints: 9.5 },
  { picture: [58, 64], points: 7.8, byBubble: 12, byBalloon: 30, columns: 5, bars: 5, margin: 40, cautionPoints: 9.5 },
  { picture: [44, 48], points: 7.5, byBubble: 8, byBalloon: Number.POSITIVE_INFINITY, columns: 6, bars: 3, margin: 28, cautionPoints: 8 },
  { picture: [48, 53], points: 7.5, byBubble: 8, byBalloon: 16, columns: 5, bars: 3, margin: 28, cautionPoints: 8 },
  { picture: [48, 53], points: 7.5, byBubble: 8, byBalloon: 16, columns: 6, bars: 3, margin: 28, cautionPoints: 7.5 },
];

function cardPdf(
  book: Book,
  way: Colourway,
  { made, size }: CardOptions,
  { facts, recipe, steps, deeds, picture }: DrawnFigure,
  close: Closeness,
): Promise<Uint8Array> {
  const { figure } = facts;
  const sword = figure.tags?.includes('sword-like') === true ? [swordCaution] : [];
  return pdfOf({
    title: figure.name,
    titlePoints: 28,
    under: `${minutesWords(facts.minutes)}. ${facts.bubbles === 1 ? '1 bubble' : `${facts.bubbles} bubbles`}. ${way.name}.`,
    foot: `${book.business.name}, recipe card`,
    made,
    margin: close.margin,
    size: size ?? book.business.paper ?? 'A4',
    content: [
      {
        columns: [
          { width: 140, svg: picture(), fit: [140, 154] },
          { width: '*', stack: takeStack(book, facts, way), margin: [16, 6, 0, 0] },
        ],
      },
      ...airSection(book, facts, close.bars),
      stepTable({
        steps,
        deeds,
        close,
        picture,
        swatch: (index) => {
          const piece = recipe.pieces[index];
          return balloonSwatch(piece?.size ?? '260', paintOf(book, way.fill[piece?.role ?? ''] ?? 'grey'), piece?.print);
        },
      }),
      cautionBox([...cautions, ...sword], book.business.country, close.cautionPoints),
    ],
  });
}

const heading = (text: string): Content => ({ text, fontSize: 14, bold: true, margin: [0, 12, 0, 4] });

/** "About 0.6 minutes (0.4 to 0.8)". */
const minutesWords = ({ p10, p50, p90 }: MinutesSpread): string =>
  `About ${p50.toFixed(1)} minutes${p10 === p90 ? '' : ` (${p10.toFixed(1)} to ${p90.toFixed(1)})`}`;

function takeStack(book: Book, facts: FigureFacts, way: Colourway): Content[] {
  const taken = balloonsTaken(book, facts.recipe, way);
  const extras = (facts.figure.extras ?? []).map(({ item, count }) => {
    const entry = book.items.find(({ id }) => id === item);
    return { count, name: entry === undefined || entry.kind === 'balloon' ? item : entry.name };
  });
  const marker = facts.recipe.finishing.some((finishing) => finishing.with === 'marker') ? [{ count: 1, name: 'marker' }] : [];
  const rows = [
    ...taken.map(({ count, name, size, colour, print }): TableCell[] =>
      takeRow(count, name, balloonSwatch(size, colour === undefined ? 'grey' : paintOf(book, colour), print)),
    ),
    ...[...extras, ...marker].map(({ count, name }): TableCell[] => takeRow(count, name, undefined)),
  ];
  return [
    { text: 'Take.', fontSize: 14, bold: true, margin: [0, 0, 0, 4] },
    ...(rows.length === 0
      ? [{ text: 'No balloon.' }]
      : [
          {
            table: { widths: [14, 22, 40, '*'], body: rows },
            layout: { ...ruled, hLineWidth: () => 0.4, hLineColor: () => '#9a9ea3', paddingTop: () => 2, paddingBottom: () => 2 },
          } as Content,
        ]),
    ...(facts.techniques.length === 0
      ? []
      : [{ text: `Hands need: ${facts.techniques.join(', ')}.`, margin: [0, 8, 0, 0] as [number, number, number, number], fontSize: 9.5 }]),
    ...((facts.figure.tags ?? []).length === 0
      ? []
      : [
          {
            text: `Good to know: ${facts.figure.tags?.join(', ')}.`,
            margin: [0, 2, 0, 0] as [number, number, number, number],
            fontSize: 9.5,
          },
        ]),
  ];
}
const takeRow = (count: number, name: string, svg: string | undefined): TableCell[] => [
  box(10),
  { text: String(count), bold: true, alignment: 'right' },
  svg === undefined ? { text: '' } : { svg, width: 36 },
  { text: name },
];

function airSection(book: Book, facts: FigureFacts, mostBars: number): readonly Content[] {
  const { pieces } = facts.air;
  if (pieces.length === 0) return [];
  const unit = book.business.ruler ?? 'in';
  const flat = tailsOf(pieces);
  const inflated = bubbleLengths(facts, mostBars);
  const flatRuler = rulerSvg(flat, 'flat', unit);
  const inflatedRuler = rulerSvg(inflated, 'inflated', unit);
  return [
    heading('Air and tail.'),
    {
      fontSize: 9.5,
      table: {
        headerRows: 1,
        dontBreakRows: true,
        widths: ['*', 'auto', 'auto', 'auto', 'auto', 'auto'],
        body: [airHead(pieces.some((piece) => piece.strokes !== undefined)), ...airRows(pieces, unit)],
      },
      layout: ruled,
    },
    {
      unbreakable: true,
      margin: [0, 8, 0, 0],
      stack: [
        {
          columns: [
            {
              width: checkInches * 72 + 12,
              stack: [{ svg: checkLineSvg(), width: checkInches * 72 }],
              margin: [0, 2, 0, 0] as [number, number, number, number],
            },
            {
              width: '*',
              text: `This line is ${checkInches} in (${(checkInches * 2.54).toFixed(1)} cm) long. Measure it: if it is not, print again at 100 %.`,
              fontSize: 8.5,
            },
          ],
        },
        ...(flat.length === 0
          ? []
          : [
              {
                text: `Flat rubber, true size: the tail to leave without air.${beyondRuler(flat, unit)}`,
                fontSize: 9.5,
                bold: true,
                margin: [0, 8, 0, 3] as [number, number, number, number],
              },
              { svg: flatRuler.svg, width: rulerInches * 72, height: flatRuler.height },
            ]),
        ...(inflated.length === 0
          ? []
          : [
              {
                text: `Inflated, true size: bubbles from twist to twist.${beyondRuler(inflated, unit)}`,
                fontSize: 9.5,
                bold: true,
                margin: [0, 8, 0, 3] as [number, number, number, number],
              },
              { svg: inflatedRuler.svg, width: rulerInches * 72, height: inflatedRuler.height },
            ]),
      ],
    },
  ];
}

const airHead = (hasPump: boolean): TableCell[] =>
  ['Balloon', 'Size', 'Blow up to', 'Leave flat', hasPump ? 'Pump' : '', ''].map((text) => ({ text, fontSize: 8.5 }));
/** One row for all balloons that are blown up alike. */
function airRows(pieces: readonly PieceAir[], unit: 'in' | 'cm'): TableCell[][] {
  const rows = new Map<string, { names: string[]; piece: PieceAir }>();
  for (const piece of pieces) {
    const key = `${piece.size} ${piece.inflatedInches.toFixed(1)} ${piece.tailInches.toFixed(1)} ${piece.verdict}`;
    const name = piece.count > 1 ? `${piece.name} x ${piece.count}` : piece.name;
    const row = rows.get(key);
    if (row === undefined) rows.set(key, { names: [name], piece });
    else row.names.push(name);
  }
  return [...rows.values()].map(({ names, piece }) => [
    { text: names.length > 5 ? `${names.slice(0, 5).join(', ')} and ${names.length - 5} more` : names.join(', ') },
    { text: piece.size },
    { text: showLength(piece.inflatedInches, unit) },
    { text: piece.tailInches > 0.04 ? showLength(piece.tailInches, unit) : '' },
    { text: piece.strokes === undefined ? '' : strokesText(Math.max(1, Math.round(piece.strokes))) },
    { text: piece.verdict, bold: piece.verdict !== 'fits' },
  ]);
}

/** Lengths of the bubbles of all pieces with what they are; if there are too many, the most usual ones. */
function bubbleLengths(facts: FigureFacts, mostBars: number) {
  const { bubbles } = unfold(facts.recipe);
  const lengths = facts.air.pieces.flatMap((piece) => {
    const own = bubbles.filter((bubble) => bubble.piece === piece.piece && bubble.copy === 0);
    return piece.inches.flatMap((inches, index) => {
      const bubble = own[index];
      return bubble === undefined || bubble.kind === 'flat' ? [] : [{ inches, name: bubble.label ?? piece.name }];
    });
  });
  const measures = together(lengths);
  if (measures.length <= mostBars) return measures;
  const uses = (inches: number): number => lengths.filter((length) => Math.abs(length.inches - inches) < 0.06).length;
  return measures
    .toSorted((a, b) => uses(b.inches) - uses(a.inches))
    .slice(0, mostBars)
    .toSorted((a, b) => a.inches - b.inches);
}

/** Steps that share one picture: those that add a bubble, with what is done before and after. */
interface Panel {
  readonly steps: readonly Step[];
  /** Deeds done in its picture; missing: only the balloon is shown. */
  readonly deeds?: number;
}

/** One panel a step, or, where there are many, one a picture: taking a balloon goes with its first bubble, tying off with its last. */
function panelsOf(steps: readonly Step[], deeds: number, close: Closeness): readonly Panel[] {
  const isSeen = (step: Step, index: number): boolean =>
    step.bubbles > (steps[index - 1]?.bubbles ?? 0) || (step.piece === undefined && step.deeds >= deeds);
  const single = steps.map((step, index): Panel => (isSeen(step, index) ? { steps: [step], deeds: step.deeds } : { steps: [step] }));
  if (steps.length <= close.byBubble) return single;
  if (steps.length > close.byBalloon) return balloonPanels(steps, deeds);
  const panels: Panel[] = [];
  let waiting: readonly Step[] = [];
  for (const panel of single) {
    const [step] = panel.steps;
    const last = panels.at(-1);
    if (panel.deeds !== undefined) {
      panels.push({ steps: [...waiting, ...panel.steps], deeds: panel.deeds });
      waiting = [];
    } else if (last !== undefined && waiting.length === 0 && last.steps.at(-1)?.piece === step?.piece)
      panels[panels.length - 1] = { ...last, steps: [...last.steps, ...panel.steps] };
    else waiting = [...waiting, ...panel.steps];
  }
  return waiting.length === 0 ? panels : [...panels, { steps: waiting }];
}

/** No picture stands for more steps than this. */
const mostStepsOfPicture = 7;

/** One panel a balloon, or several, each with about as many steps, where one would be too long. */
function balloonPanels(steps: readonly Step[], deeds: number): readonly Panel[] {
  const pieces = [...new Set(steps.map((step) => step.piece))];
  return pieces.flatMap((piece): readonly Panel[] => {
    const own = steps.filter((step) => step.piece === piece);
    const count = Math.ceil(own.length / mostStepsOfPicture);
    return Array.from({ length: count }, (_, k): Panel => {
      const part = own.slice(Math.round((k * own.length) / count), Math.round(((k + 1) * own.length) / count));
      return { steps: part, deeds: piece === undefined ? deeds : (part.at(-1)?.deeds ?? 0) };
    });
  });
}

interface Drawing {
  readonly steps: readonly Step[];
  readonly deeds: number;
  readonly close: Closeness;
  readonly picture: DrawnFigure['picture'];
  readonly swatch: (piece: number) => string;
}

/** The deeds of the last picture before; nothing when the panel adds no bubble, as the last one, which shows the whole figure. */
function seenBefore(panels: readonly Panel[], index: number, deeds: number): number {
  const before = panels.slice(0, index).findLast((panel) => panel.deeds !== undefined)?.deeds ?? 0;
  const isWhole = (panels[index]?.deeds ?? 0) >= deeds;
  return isWhole ? 0 : before;
}

function stepTable({ steps, deeds, close, picture, swatch }: Drawing): Content {
  const panels = panelsOf(steps, deeds, close);
  const columns = panels.length <= 3 ? 3 : Math.min(7, close.columns + (panels.length > 12 ? 1 : 0));
  const [width, height] = close.picture;
  const cells = panels.map((panel, index): TableCell => {
    const piece = panel.steps[0]?.piece;
    const isNewBalloon = piece !== undefined && panels[index - 1]?.steps.at(-1)?.piece !== piece;
    const image: Content =
      panel.deeds !== undefined
        ? { svg: picture(panel.deeds, seenBefore(panels, index, deeds)), fit: [width, height], alignment: 'center' }
        : isNewBalloon
          ? { svg: swatch(piece), width: width * 0.75, alignment: 'center', margin: [0, height * 0.36, 0, height * 0.36] }
          : { text: '' };
    const words = panel.steps.flatMap((step) => [{ text: `${step.number}. `, bold: true }, `${step.sentence} `]);
    return { stack: [image, { text: words, fontSize: close.points, lineHeight: 1.05, margin: [0, 2, 0, 0] }] };
  });
  const head: TableCell[] = [
    { text: 'Make it.', fontSize: 14, bold: true, colSpan: columns, margin: [-4, 8, 0, 2] },
    ...Array.from({ length: columns - 1 }, (): TableCell => ({ text: '' })),
  ];
  const rows: TableCell[][] = [];
  for (let at = 0; at < cells.length; at += columns) {
    const row = cells.slice(at, at + columns);
    rows.push([...row, ...Array.from({ length: columns - row.length }, (): TableCell => ({ text: '' }))]);
  }
  return {
    table: {
      widths: Array.from({ length: columns }, () => '*'),
      dontBreakRows: true,
      headerRows: 1,
      keepWithHeaderRows: 1,
      body: [head, ...rows],
    },
    layout: {
      ...ruled,
      hLineWidth: (line: number) => (line === 0 ? 0 : line === 1 ? 1.2 : 0.4),
      hLineColor: () => '#9a9ea3',
      paddingLeft: () => 4,
      paddingRight: () => 4,
    },
  };
}

const strokesText = (strokes: number): string => `${strokes} ${strokes === 1 ? 'stroke' : 'strokes'}`;
