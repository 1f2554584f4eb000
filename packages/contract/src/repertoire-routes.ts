import { z } from 'zod';
import { id } from './book/basic-values.ts';
import { problemSchema } from './http/problem-details.ts';
import { route } from './http/route.ts';

const byId = z.strictObject({ id });
const paper = z.exactOptional(z.enum(['A4', 'Letter', 'A3', 'Tabloid']));
const colourway = z.exactOptional(id);
const recipe = z.string().max(200_000).meta({ description: 'Recipe notation, docs/recipes.md' });
const length = z.number().positive().max(1_000_000);

/** What a frame can be given as: the text of a frame file, its JSON, or the name of a ready-made one. */
const frameWishes = z.strictObject({
  text: z.exactOptional(z.string().max(5_000_000)),
  frame: z.exactOptional(z.record(z.string(), z.unknown())),
  solid: z.exactOptional(z.string().max(100)),
  edgeInches: z.exactOptional(length),
  balloonInches: z.exactOptional(length),
  oneColour: z.exactOptional(z.boolean()),
  pops: z.exactOptional(z.strictObject({ balloons: z.exactOptional(z.int().min(1)), closed: z.exactOptional(z.boolean()) })),
  seed: z.exactOptional(z.int().min(0).max(4_294_967_295)),
});

/** Pictures, cards, the menu board, recipes that are looked at before they are kept, and frames. */
export const repertoireRoutes = {
  repertoire: {
    picture: route({
      method: 'get',
      path: '/api/figures/:id/picture.svg',
      summary: 'A figure as a flat picture: in a colourway (its favourite one if missing), after so many steps, from one side',
      params: byId,
      query: z.strictObject({
        colourway,
        step: z.exactOptional(z.coerce.number().int().min(1).max(10_000)),
        view: z.exactOptional(z.enum(['side', 'quarter', 'front', 'turned', 'top'])),
      }),
      gives: 'svg',
      response: z.string(),
    }),
    card: route({
      method: 'get',
      path: '/api/figures/:id/card.pdf',
      summary: 'The card to make a figure by',
      params: byId,
      query: z.strictObject({ colourway, paper }),
      gives: 'pdf',
      response: z.file(),
    }),
    board: route({
      method: 'get',
      path: '/api/menu-board.pdf',
      summary: 'The menu board of one gig, or of all figures',
      query: z.strictObject({ gig: z.exactOptional(id), paper, landscape: z.exactOptional(z.enum(['yes', 'no'])) }),
      gives: 'pdf',
      response: z.file(),
    }),
    check: route({
      method: 'post',
      path: '/api/recipe/check',
      summary: 'What is wrong with a recipe, with line and column; nothing is stored',
      body: z.strictObject({ recipe }),
      response: z.strictObject({ problems: z.array(problemSchema) }),
    }),
    frame: route({
      method: 'post',
      path: '/api/frame',
      summary: 'The fewest balloons for a wire frame, and the order in which each is twisted, with the recipe',
      body: frameWishes,
      response: z.record(z.string(), z.unknown()),
    }),
  },
} as const;
