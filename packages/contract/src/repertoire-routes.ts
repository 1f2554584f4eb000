import { z } from 'zod';
import { figureAnswerSchema, frameAnswerSchema, listedFigureSchema } from './answers/index.ts';
import { id, name } from './book/basic-values.ts';
import { problemSchema } from './http/problem-details.ts';
import { route } from './http/route.ts';

const byId = z.strictObject({ id });
const paper = z
  .exactOptional(z.enum(['A4', 'Letter', 'A3', 'Tabloid']))
  .meta({ description: "Size of the paper; the business's own if missing" });
const colourway = z.exactOptional(id).meta({ description: 'Colourway of the figure, by id; the one asked for most if missing' });
const recipe = z.string().max(200_000).meta({ description: 'Recipe notation, docs/recipes.md' });
const recipeName = z.exactOptional(name).meta({ description: 'What the figure is called; "Figure" if missing' });
const length = z.number().positive().max(1_000_000).meta({ description: 'Inflated inches' });
const view = z.exactOptional(z.enum(['side', 'quarter', 'front', 'turned', 'top'])).meta({ description: 'From the side if missing' });
const rescale = z
  .exactOptional(z.string().regex(/^[^=]{1,40}=[^=]{1,40}$/))
  .meta({ description: 'With other balloons: size code = size code', examples: ['260=160'] });
const stepOf = (number: z.ZodType<number>) => z.exactOptional(number).meta({ description: 'The figure as it is after so many steps' });
const yes = z.exactOptional(z.enum(['yes', 'no']));
const dog =
  'balloon dog: 260 in body\n  leave 3.5\n  bubble 3 nose, forward\n  bubble 2 ear, up left, x 2 mirrored\n  lock\n  bubble 3 neck, down back';
const offBook = 'Sizes, pump and colours are those of the book in the server, if there is one. Nothing is stored.';

/** What a frame can be given as: the text of a frame file, its JSON, or the name of a ready-made one. */
const frameWishes = z.strictObject({
  text: z.exactOptional(z.string().max(20_000_000)).meta({ description: 'A frame file, docs/frames.md' }),
  frame: z.exactOptional(z.record(z.string(), z.unknown())).meta({ description: 'The same as JSON: name, joints, edges' }),
  solid: z.exactOptional(z.string().max(100)).meta({ description: 'A ready-made frame by name', examples: ['cube', 'prism 6'] }),
  edgeInches: z.exactOptional(length).meta({ description: 'With `solid`: its shortest edge, inflated inches; 5 if missing' }),
  balloonInches: z.exactOptional(length).meta({ description: 'Inflated inches that one balloon gives; as long as needed if missing' }),
  oneColour: z.exactOptional(z.boolean()).meta({ description: 'As if all edges were one colour' }),
  pops: z
    .exactOptional(z.strictObject({ balloons: z.exactOptional(z.int().min(1)), closed: z.exactOptional(z.boolean()) }))
    .meta({ description: 'Stretches may be made twice and one of the two popped' }),
  seed: z.exactOptional(z.int().min(0).max(4_294_967_295)).meta({ description: 'Another answer of the same number' }),
  size: z.exactOptional(id).meta({ description: 'Size code of the balloons in the recipe; 260 if missing' }),
});

/** Pictures, cards, the menu board, recipes that are looked at before they are kept, and frames. */
export const repertoireRoutes = {
  repertoire: {
    list: route({
      method: 'get',
      path: '/api/repertoire',
      summary: 'All figures, and how many of each can be made from the stock',
      query: z.strictObject({
        from: z.exactOptional(id).meta({ description: 'Only from what lies in this place, by id' }),
        minutes: z.exactOptional(z.coerce.number().gt(0).max(1000)).meta({ description: 'In at most so many minutes' }),
        least: z.exactOptional(z.coerce.number().int().min(0).max(1000)).meta({ description: 'With at least so many balloons' }),
        most: z.exactOptional(z.coerce.number().int().min(0).max(1000)).meta({ description: 'With at most so many balloons' }),
        makeable: yes.meta({ description: '`yes`: only what can be made' }),
        order: z
          .exactOptional(z.enum(['book', 'learning']))
          .meta({ description: '`learning`: each adds as little new as possible to those before; the order of the book if missing' }),
      }),
      response: z.strictObject({ figures: z.array(listedFigureSchema) }),
      refuses: [404],
      heavy: true,
      book: 'reads',
      example: { query: { minutes: 3, most: 2, makeable: 'yes', order: 'learning' } },
    }),
    facts: route({
      method: 'get',
      path: '/api/figures/:id/facts',
      summary: 'What a figure takes, air and tail of every balloon, the steps, the minutes',
      params: byId,
      query: z.strictObject({ colourway, rescale }),
      response: figureAnswerSchema,
      refuses: [404, 409],
      heavy: true,
      book: 'reads',
      example: { params: { id: 'dog' }, query: { rescale: '260=160' } },
    }),
    picture: route({
      method: 'get',
      path: '/api/figures/:id/picture.svg',
      summary: 'A figure as a flat picture: in a colourway, after so many steps, from one side',
      params: byId,
      query: z.strictObject({ colourway, step: stepOf(z.coerce.number().int().min(1).max(10_000)), view }),
      gives: 'svg',
      response: z.string(),
      refuses: [404, 409],
      heavy: true,
      book: 'reads',
      example: { params: { id: 'dog' }, query: { view: 'quarter', step: 3 } },
    }),
    card: route({
      method: 'get',
      path: '/api/figures/:id/card.pdf',
      summary: 'The card to make a figure by',
      params: byId,
      query: z.strictObject({ colourway, paper }),
      gives: 'pdf',
      response: z.file(),
      refuses: [404, 409],
      heavy: true,
      book: 'reads',
      example: { params: { id: 'dog' }, query: { paper: 'A4' } },
    }),
    board: route({
      method: 'get',
      path: '/api/menu-board.pdf',
      summary: 'The menu board of one gig, or of all figures',
      query: z.strictObject({
        gig: z.exactOptional(id).meta({ description: 'Only the menu of this gig' }),
        paper,
        landscape: yes.meta({ description: '`yes`: wider than high' }),
      }),
      gives: 'pdf',
      response: z.file(),
      refuses: [404, 409],
      heavy: true,
      book: 'reads',
      example: { query: { gig: 'harbour-day', landscape: 'yes' } },
    }),
    check: route({
      method: 'post',
      path: '/api/recipe/check',
      summary: 'What is wrong with a recipe, with line and column; nothing is stored',
      body: z.strictObject({ recipe }),
      response: z.strictObject({ problems: z.array(problemSchema) }),
      heavy: true,
      example: { body: { recipe: dog } },
    }),
    recipeFacts: route({
      method: 'post',
      path: '/api/recipe/facts',
      summary: 'The same as of a figure of the book, of a recipe that is not kept',
      description: offBook,
      body: z.strictObject({ recipe, name: recipeName, rescale }),
      response: figureAnswerSchema,
      heavy: true,
      example: { body: { recipe: dog, name: 'Dog' } },
    }),
    recipePicture: route({
      method: 'post',
      path: '/api/recipe/picture.svg',
      summary: 'The picture of a recipe that is not kept',
      description: offBook,
      body: z.strictObject({
        recipe,
        name: recipeName,
        colours: z
          .exactOptional(z.record(name, name))
          .meta({ description: 'Colour by role: a colour of the book, a plain colour word or #rrggbb', examples: [{ body: '#3366cc' }] }),
        step: stepOf(z.int().min(1).max(10_000)),
        view,
      }),
      gives: 'svg',
      response: z.string(),
      heavy: true,
      example: { body: { recipe: dog, colours: { body: 'orange' }, view: 'front' } },
    }),
    recipeCard: route({
      method: 'post',
      path: '/api/recipe/card.pdf',
      summary: 'The card of a recipe that is not kept',
      description: offBook,
      body: z.strictObject({ recipe, name: recipeName, paper }),
      gives: 'pdf',
      response: z.file(),
      heavy: true,
      example: { body: { recipe: dog, name: 'Dog', paper: 'A4' } },
    }),
    frame: route({
      method: 'post',
      path: '/api/frame',
      summary: 'The fewest balloons for a wire frame, and the order in which each is twisted, with the recipe',
      description: 'Give one of `text`, `frame` and `solid`.',
      body: frameWishes,
      response: frameAnswerSchema,
      heavy: true,
      mostBytes: 20_000_000,
      example: { body: { solid: 'cube', edgeInches: 6, balloonInches: 50 } },
    }),
    readyFrames: route({
      method: 'get',
      path: '/api/frames',
      summary: 'The ready-made frames; a family takes a number of sides after its name',
      response: z.strictObject({
        frames: z.array(
          z.strictObject({ name: z.string(), kind: z.enum(['Platonic', 'Archimedean', 'Catalan', 'family']), says: z.string() }),
        ),
      }),
    }),
  },
} as const;
