import { type Book, type Colourway, countsByItem, type Figure, stockOf } from '@twistwright/books';
import { figureAnswer, listedFigure } from '@twistwright/contract';
import type { PaperSize } from '@twistwright/paper';
import {
  airOptionsOf,
  type FigureFacts,
  favouriteColourway,
  figureFacts,
  filterMakeable,
  finished,
  knownPaint,
  type MakeableFigure,
  type MakeableFilter,
  makeableFigures,
  paintsOf,
  usualFill,
} from '@twistwright/planner';
import { checkRecipe, learningOrder, pictureOfShape, rescale, shapeOf, stepsOf, type View, writeRecipe } from '@twistwright/repertoire';
import type { LocalDate } from '@twistwright/units';
import { type Done, done, doneAsJson, type Refused, refused } from './outcome.ts';

/** A figure of the book by id, or one that is not kept. */
interface Which {
  readonly book: Book;
  readonly figure: string | Figure;
  readonly colourway?: string;
  /** Two size codes. */
  readonly rescale?: readonly [from: string, to: string];
}

export function figureShown(which: Which) {
  const found = figureIn(which);
  return found.kind === 'refused' ? found : doneAsJson(figureAnswer(which.book, found.value.facts, found.value.way));
}

interface PictureOrder extends Which {
  /** Colours by role, over those of the colourway. */
  readonly colours?: Readonly<Record<string, string>>;
  readonly step?: number;
  readonly view?: View;
}
export function figurePicture(order: PictureOrder) {
  const found = figureIn(order);
  if (found.kind === 'refused') return found;
  const { facts, way } = found.value;
  const unknown = Object.keys(order.colours ?? {}).find((role) => !facts.roles.includes(role));
  if (unknown !== undefined) return refused(422, `There is no role "${unknown}"; the recipe has ${facts.roles.join(', ')}.`);
  const lost = Object.values(order.colours ?? {}).find((colour) => knownPaint(order.book, colour) === undefined);
  if (lost !== undefined) return refused(422, `"${lost}" is no colour: write one of the book, a plain name such as red, or #rrggbb.`);
  const options = airOptionsOf(order.book);
  const steps = stepsOf(facts.recipe, options);
  const step = order.step === undefined ? undefined : steps.find(({ number }) => number === order.step);
  if (order.step !== undefined && step === undefined)
    return refused(422, `"${facts.figure.name}" has steps 1 to ${steps.length}, not ${order.step}.`);
  const recipe = finished(facts.recipe, way);
  const paints = paintsOf(order.book, { ...way.fill, ...order.colours });
  return done(
    pictureOfShape(shapeOf(recipe, options.sizes), recipe.finishing, paints, {
      title: facts.figure.name,
      ...(order.view === undefined ? {} : { view: order.view }),
      ...(step === undefined ? {} : { upToMove: step.deeds }),
    }),
  );
}

interface Printed {
  readonly made: LocalDate;
  readonly paper?: PaperSize;
}
export async function figureCard({ made, paper, ...which }: Which & Printed) {
  const found = figureIn(which);
  if (found.kind === 'refused') return found;
  const { recipeCardPdf } = await import('@twistwright/paper');
  return done(
    await recipeCardPdf(which.book, found.value.facts, found.value.way, { made, ...(paper === undefined ? {} : { size: paper }) }),
  );
}

interface BoardOrder extends Printed {
  readonly book: Book;
  readonly gig?: string;
  readonly landscape: boolean;
}
export async function menuBoard({ book, gig: id, made, paper, landscape }: BoardOrder) {
  const gig = book.gigs.find((entry) => entry.id === id);
  if (id !== undefined && gig === undefined) return refused(404, `There is no gig "${id}".`);
  const { menuBoardPdf } = await import('@twistwright/paper');
  const board = await menuBoardPdf(book, {
    made,
    landscape,
    ...(gig === undefined ? {} : { gig }),
    ...(paper === undefined ? {} : { size: paper }),
  });
  return board.ok ? done(board.value.pdf) : refused(409, 'There is nothing to put on the board.', board.error);
}

interface ListOrder {
  readonly book: Book;
  readonly today: LocalDate;
  readonly place?: string;
  readonly filter: MakeableFilter;
  readonly inLearningOrder: boolean;
}
export function figureList({ book, today, place, filter, inLearningOrder }: ListOrder) {
  if (place !== undefined && !book.places.some((entry) => entry.id === place))
    return refused(404, `There is no place "${place}" in the book; there are ${book.places.map(({ id }) => id).join(', ') || 'none'}.`);
  const stock = stockOf(book.moves, today);
  const lines = place === undefined ? stock.lines : stock.lines.filter((line) => line.place === place);
  const matching = filterMakeable(makeableFigures(book, countsByItem({ ...stock, lines })), filter);
  return doneAsJson({ figures: (inLearningOrder ? asLessons(matching) : matching).map(listedFigure) });
}
/** Each adding as little new as possible to those before; figures that cannot be read come last. */
function asLessons(figures: readonly MakeableFigure[]): readonly MakeableFigure[] {
  const lessons = learningOrder(
    figures.flatMap(({ figure: { id, difficulty }, facts }) =>
      facts === undefined
        ? []
        : [{ id, recipe: facts.recipe, minutes: facts.minutes.p50, ...(difficulty === undefined ? {} : { difficulty }) }],
    ),
  );
  const place = new Map(lessons.map((lesson, index) => [lesson.id, index]));
  return figures.toSorted((a, b) => (place.get(a.figure.id) ?? figures.length) - (place.get(b.figure.id) ?? figures.length));
}

export const recipeProblems = ({ recipe, book }: { readonly recipe: string; readonly book: Book }) =>
  doneAsJson({ problems: checkRecipe(recipe, airOptionsOf(book)) });

function figureIn({
  book,
  figure: wanted,
  colourway,
  rescale: sizes,
}: Which): Done<{ readonly facts: FigureFacts; readonly way: Colourway }> | Refused {
  const figure = typeof wanted === 'string' ? book.figures.find((entry) => entry.id === wanted) : wanted;
  if (figure === undefined) return refused(404, `There is no "${String(wanted)}" among the figures.`);
  const way = colourway === undefined ? favouriteColourway(figure) : figure.colourways.find((entry) => entry.id === colourway);
  const read = figureFacts(book, figure, { way });
  const status = typeof wanted === 'string' ? 409 : 422;
  if (!read.ok) return refused(status, `The recipe of "${figure.name}" cannot be read.`, read.error);
  const facts = sizes === undefined ? read : rescaled(book, read.value, sizes, way);
  if (!facts.ok) return refused(422, `"${figure.name}" cannot be made with such balloons.`, facts.error);
  if (way === undefined && colourway !== undefined) return refused(404, `"${figure.name}" has no colourway "${colourway}".`);
  return done({ facts: facts.value, way: way ?? { id: 'usual', name: 'Usual', fill: usualFill(facts.value.roles) } });
}

function rescaled(
  book: Book,
  facts: FigureFacts,
  [from, to]: readonly [string, string],
  way: Colourway | undefined,
): ReturnType<typeof figureFacts> {
  const recipe = rescale(facts.recipe, from, to, airOptionsOf(book).sizes);
  if (!recipe.ok) return recipe;
  const { minutes: _minutes, ...figure } = facts.figure;
  return figureFacts(book, { ...figure, recipe: writeRecipe(recipe.value) }, { way });
}
