import type { Book, Colourway, Figure } from '@twistwright/books';
import { api } from '@twistwright/contract';
import { menuBoardPdf, recipeCardPdf } from '@twistwright/paper';
import { airOptionsOf, type FigureFacts, favouriteColourway, figureFacts, finished, paintsOf } from '@twistwright/planner';
import {
  checkRecipe,
  type Frame,
  pictureOfShape,
  planFrame,
  readFrame,
  readFrameJson,
  readyFrame,
  recipeOfFrame,
  shapeOf,
  stepsOf,
  verifyTrails,
  writeRecipe,
} from '@twistwright/repertoire';
import { fail, type Result } from '@twistwright/units';
import type { Hono } from 'hono';
import { answer, Refusal } from './answers.ts';
import type { Ports } from './app.ts';
import { bookOf } from './keep-book.ts';

/** More edges than this are not asked for over HTTP: the answer is made while others wait. */
const mostEdges = 20_000;

/** Pictures, cards, the menu board, checks of recipes, frames. */
export function repertoireRoutes(app: Hono, { store, today }: Pick<Ports, 'store' | 'today'>): void {
  const { picture, card, board, check, frame } = api.repertoire;
  answer(app, picture, async ({ params, query }) => {
    const { book } = await bookOf(store);
    const { facts, way } = figureIn(book, params.id, query.colourway);
    const options = airOptionsOf(book);
    const steps = stepsOf(facts.recipe, options);
    const step = query.step === undefined ? undefined : steps.find(({ number }) => number === query.step);
    if (query.step !== undefined && step === undefined)
      throw new Refusal(422, `"${facts.figure.name}" has steps 1 to ${steps.length}, not ${query.step}.`);
    const recipe = finished(facts.recipe, way);
    return pictureOfShape(shapeOf(recipe, options.sizes), recipe.finishing, paintsOf(book, way.fill), {
      title: facts.figure.name,
      ...(query.view === undefined ? {} : { view: query.view }),
      ...(step === undefined ? {} : { upToMove: step.deeds }),
    });
  });
  answer(app, card, async ({ params, query }, context) => {
    const { book } = await bookOf(store);
    const { facts, way } = figureIn(book, params.id, query.colourway);
    const pdf = await recipeCardPdf(book, facts, way, {
      made: today(book.business.zone),
      ...(query.paper === undefined ? {} : { size: query.paper }),
    });
    context.header('content-disposition', `inline; filename="${plainName(params.id)}-card.pdf"`);
    return fileOf(pdf, 'card.pdf');
  });
  answer(app, board, async ({ query }, context) => {
    const { book } = await bookOf(store);
    const gig = book.gigs.find((entry) => entry.id === query.gig);
    if (query.gig !== undefined && gig === undefined) throw new Refusal(404, `There is no gig "${query.gig}".`);
    const made = await menuBoardPdf(book, {
      made: today(book.business.zone),
      landscape: query.landscape === 'yes',
      ...(gig === undefined ? {} : { gig }),
      ...(query.paper === undefined ? {} : { size: query.paper }),
    });
    if (!made.ok) throw new Refusal(409, made.error[0]?.sentence ?? 'There is nothing to put on the board.', made.error);
    context.header('content-disposition', 'inline; filename="menu-board.pdf"');
    return fileOf(made.value.pdf, 'menu-board.pdf');
  });
  answer(app, check, async ({ body }) => {
    const kept = await store.read();
    return { problems: checkRecipe(body.recipe, kept === undefined ? {} : airOptionsOf(kept.book)) };
  });
  answer(app, frame, async ({ body }) => {
    const given = [body.text, body.frame, body.solid].filter((part) => part !== undefined);
    if (given.length !== 1) throw new Refusal(422, 'Give one of "text", "frame" and "solid".');
    const read = frameOf(body.text, body.frame, body.solid, body.edgeInches);
    if (!read.ok) throw new Refusal(422, 'The frame cannot be read.', read.error);
    if (read.value.edges.length > mostEdges)
      throw new Refusal(
        422,
        `The frame has ${read.value.edges.length} edges; over HTTP it may have ${mostEdges}. The command line takes more.`,
      );
    const plan = planFrame(read.value, {
      ...(body.balloonInches === undefined ? {} : { balloonInches: body.balloonInches }),
      ...(body.oneColour === true ? { colours: 'ignore' as const } : {}),
      ...(body.pops === undefined ? {} : { pops: body.pops }),
      ...(body.seed === undefined ? {} : { seed: body.seed }),
    });
    if (!plan.ok) throw new Refusal(422, plan.error[0]?.sentence ?? 'The frame cannot be planned.', plan.error);
    const broken = verifyTrails(read.value, plan.value.trails, body.balloonInches);
    if (broken.length > 0) throw new Error(`twisting orders that do not hold: ${broken[0]?.sentence}`);
    const recipe = recipeOfFrame(read.value, plan.value);
    return { frame: read.value, ...plan.value, ...(recipe.ok ? { recipe: writeRecipe(recipe.value) } : {}) } as unknown as Record<
      string,
      unknown
    >;
  });
}

function frameOf(text: string | undefined, json: unknown, solid: string | undefined, edgeInches = 5): Result<Frame> {
  if (text !== undefined) return readFrame(text);
  if (solid !== undefined) return readyFrame(solid, edgeInches);
  return json === undefined ? fail([]) : readFrameJson(json);
}

const fileOf = (bytes: Uint8Array, name: string): File => new File([bytes as Uint8Array<ArrayBuffer>], name, { type: 'application/pdf' });
const plainName = (id: string): string => id.replace(/[^a-z0-9-]+/giu, '-').slice(0, 60);

function figureIn(book: Book, id: string, colourway: string | undefined): { readonly facts: FigureFacts; readonly way: Colourway } {
  const figure = book.figures.find((entry) => entry.id === id);
  if (figure === undefined) throw new Refusal(404, `There is no "${id}" among the figures.`);
  const facts = figureFacts(book, figure);
  if (!facts.ok) throw new Refusal(409, `The recipe of "${figure.name}" cannot be read.`, facts.error);
  return { facts: facts.value, way: wayOf(figure, colourway) };
}
function wayOf(figure: Figure, id: string | undefined): Colourway {
  const way = id === undefined ? favouriteColourway(figure) : figure.colourways.find((entry) => entry.id === id);
  if (way === undefined && id !== undefined) throw new Refusal(404, `"${figure.name}" has no colourway "${id}".`);
  return way ?? { id: 'usual', name: 'Usual', fill: {} };
}
