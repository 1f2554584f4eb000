import { type Book, emptyBook, type Figure } from '@twistwright/books';
import { api } from '@twistwright/contract';
import type { FrameWishes } from '@twistwright/repertoire';
import { readyFrames } from '@twistwright/repertoire';
import type { Hono } from 'hono';
import { answer, pdfFile, Refusal } from './answers.ts';
import type { Ports } from './app.ts';
import type { GivenFrame } from './jobs/frame-jobs.ts';
import { tellState } from './revisions.ts';

type Needs = Pick<Ports, 'shelf' | 'jobs' | 'today' | 'version'>;

/** What can be made: lists, pictures, cards, the menu board, checks of recipes, frames. */
export function repertoireRoutes(app: Hono, needs: Needs): void {
  figureRoutes(app, needs);
  recipeRoutes(app, needs);
  frameRoutes(app, needs);
}

function figureRoutes(app: Hono, { shelf, jobs, today, version }: Needs): void {
  const { list, facts, picture, card, board } = api.repertoire;
  answer(app, list, async ({ query }, context) => {
    const { book, revision } = await shelf.read();
    const day = today(book.business.zone);
    tellState(context, revision, version, day);
    const { from, minutes, least, most, makeable, order } = query;
    const filter = {
      makeable: makeable === 'yes',
      ...(minutes === undefined ? {} : { mostMinutes: minutes }),
      ...(least === undefined ? {} : { leastBalloons: least }),
      ...(most === undefined ? {} : { mostBalloons: most }),
    };
    const place = from === undefined ? {} : { place: from };
    return jobs.run('figureList', { book, today: day, filter, inLearningOrder: order === 'learning', ...place }, context.req.raw.signal);
  });
  answer(app, facts, async ({ params, query }, context) => {
    const { book, revision } = await shelf.read();
    tellState(context, revision, version);
    return jobs.run('figureShown', { book, figure: params.id, ...inColourway(query), ...rescaled(query) }, context.req.raw.signal);
  });
  answer(app, picture, async ({ params, query }, context) => {
    const { book, revision } = await shelf.read();
    tellState(context, revision, version);
    return jobs.run('figurePicture', { book, figure: params.id, ...query }, context.req.raw.signal);
  });
  answer(app, card, async ({ params, query }, context) => {
    const { book, revision } = await shelf.read();
    const made = today(book.business.zone);
    tellState(context, revision, version, made);
    const pdf = await jobs.run('figureCard', { book, figure: params.id, made, ...query }, context.req.raw.signal);
    context.header('content-disposition', `inline; filename="${plainName(params.id)}-card.pdf"`);
    return pdfFile(pdf, 'card.pdf');
  });
  answer(app, board, async ({ query: { landscape, ...query } }, context) => {
    const { book, revision } = await shelf.read();
    const made = today(book.business.zone);
    tellState(context, revision, version, made);
    const pdf = await jobs.run('menuBoard', { book, made, landscape: landscape === 'yes', ...query }, context.req.raw.signal);
    context.header('content-disposition', 'inline; filename="menu-board.pdf"');
    return pdfFile(pdf, 'menu-board.pdf');
  });
}

/** Recipes that are looked at before they are kept. */
function recipeRoutes(app: Hono, { shelf, jobs, today }: Needs): void {
  const { check, recipeFacts, recipePicture, recipeCard } = api.repertoire;
  /** The book whose sizes, pump and colours count; before there is one, those of nobody. */
  const background = async (): Promise<Book> => (await shelf.kept())?.book ?? emptyBook({ name: 'Nobody', currency: 'EUR', zone: 'UTC' });
  answer(app, check, async ({ body }, context) =>
    jobs.run('recipeProblems', { recipe: body.recipe, book: await background() }, context.req.raw.signal),
  );
  answer(app, recipeFacts, async ({ body }, context) =>
    jobs.run('figureShown', { book: await background(), figure: figureOf(body), ...rescaled(body) }, context.req.raw.signal),
  );
  answer(app, recipePicture, async ({ body }, context) => {
    const { recipe: _recipe, name: _name, ...look } = body;
    return jobs.run('figurePicture', { book: await background(), figure: figureOf(body), ...look }, context.req.raw.signal);
  });
  answer(app, recipeCard, async ({ body }, context) => {
    const book = await background();
    const { paper } = body;
    const made = today(book.business.zone);
    const order = { book, figure: figureOf(body), made, ...(paper === undefined ? {} : { paper }) };
    context.header('content-disposition', 'inline; filename="card.pdf"');
    return pdfFile(await jobs.run('figureCard', order, context.req.raw.signal), 'card.pdf');
  });
}

function frameRoutes(app: Hono, { jobs }: Needs): void {
  answer(app, api.repertoire.readyFrames, () => ({ frames: readyFrames }));
  answer(app, api.repertoire.frame, ({ body }, context) => {
    const given = [body.text, body.frame, body.solid].filter((part) => part !== undefined);
    if (given.length !== 1) throw new Refusal(422, 'Give one of "text", "frame" and "solid".');
    const frame: GivenFrame =
      body.text !== undefined
        ? { text: body.text }
        : body.solid !== undefined
          ? { solid: body.solid, edgeInches: body.edgeInches ?? 5 }
          : { json: body.frame };
    const wishes: FrameWishes = {
      ...(body.balloonInches === undefined ? {} : { balloonInches: body.balloonInches }),
      ...(body.oneColour === true ? { colours: 'ignore' } : {}),
      ...(body.pops === undefined ? {} : { pops: body.pops }),
      ...(body.seed === undefined ? {} : { seed: body.seed }),
    };
    return jobs.run('frame', { frame, wishes, ...(body.size === undefined ? {} : { size: body.size }) }, context.req.raw.signal);
  });
}

const figureOf = ({ recipe, name }: { readonly recipe: string; readonly name?: string }): Figure => ({
  id: 'figure',
  name: name ?? 'Figure',
  recipe,
  colourways: [],
});
const inColourway = ({ colourway }: { readonly colourway?: string }) => (colourway === undefined ? {} : { colourway });
function rescaled({ rescale }: { readonly rescale?: string }): { readonly rescale?: readonly [string, string] } {
  const [from, to] = rescale?.split('=') ?? [];
  return from === undefined || to === undefined ? {} : { rescale: [from, to] };
}
const plainName = (id: string): string => id.replace(/[^a-z0-9-]+/giu, '-').slice(0, 60);
