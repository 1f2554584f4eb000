import { z } from 'zod';
import { balloonTestSchema } from './book/balloon-test-schema.ts';
import { amount, id, localDate } from './book/basic-values.ts';
import { bookSchema } from './book/book-schema.ts';
import { businessSchema, settingsSchema } from './book/business-schema.ts';
import { colourSchema, figureSchema, itemSchema, sizeSchema } from './book/figure-schema.ts';
import { gigSchema } from './book/gig-schema.ts';
import { artistSchema, clientSchema } from './book/people-schema.ts';
import { savedKitSchema } from './book/saved-kit-schema.ts';
import { needSchema, offerSchema, orderSchema, placeSchema, stockMoveSchema, supplierSchema } from './book/supply-schema.ts';
import { collection } from './http/collection.ts';
import { problemSchema } from './http/problem-details.ts';
import { route } from './http/route.ts';
import { kitRoutes } from './kit-routes.ts';
import { kitWishesSchema } from './kit-wishes-schema.ts';
import { priceListSchema } from './prices/price-list-schema.ts';
import { priceMappingSchema } from './prices/price-mapping-schema.ts';
import { repertoireRoutes } from './repertoire-routes.ts';

/** The day that counts as today; the server's if missing. */
const today = z.exactOptional(localDate);
const seed = z.exactOptional(z.int().min(0).max(4_294_967_295));
/** So many runs that a plan of a full diary still comes back while somebody waits; the command line takes more. */
const runs = z.exactOptional(z.int().min(1).max(20_000));
/** Plans are JSON made by the planner; their form follows its types. */
const json = z.record(z.string(), z.unknown());

const problems = z.strictObject({ problems: z.array(problemSchema) });

/** Everything that can be asked of the server. */
export const api = {
  health: route({
    method: 'get',
    path: '/api/health',
    summary: 'Is it running, and on what',
    response: z.strictObject({ ok: z.literal(true), version: z.string(), store: z.enum(['sqlite', 'postgresql']), hasBook: z.boolean() }),
  }),
  start: route({
    method: 'post',
    path: '/api/start',
    summary: 'Begin with the demo, or with an empty business; refused when there is a book',
    body: z.discriminatedUnion('from', [
      z.strictObject({ from: z.literal('demo') }),
      z.strictObject({ from: z.literal('empty'), business: businessSchema }),
    ]),
    response: problems,
  }),
  book: {
    get: route({ method: 'get', path: '/api/book', summary: 'The whole book as JSON', response: bookSchema }),
    put: route({
      method: 'put',
      path: '/api/book',
      summary: 'Replace the whole book by the text of a book file, YAML or JSON; all of it or nothing',
      query: z.strictObject({ name: z.exactOptional(z.string().max(255)) }),
      takes: 'text',
      body: z.string(),
      response: problems,
    }),
    text: route({
      method: 'get',
      path: '/api/book/file',
      summary: 'The whole book as the text of a book file',
      query: z.strictObject({ form: z.exactOptional(z.enum(['yaml', 'json'])) }),
      gives: 'text',
      response: z.string(),
    }),
  },
  business: {
    get: route({ method: 'get', path: '/api/business', summary: 'Who the book belongs to', response: businessSchema }),
    put: route({ method: 'put', path: '/api/business', summary: 'Change it', body: businessSchema, response: businessSchema }),
  },
  settings: {
    get: route({ method: 'get', path: '/api/settings', summary: 'Habits of the business', response: settingsSchema }),
    put: route({ method: 'put', path: '/api/settings', summary: 'Change them', body: settingsSchema, response: settingsSchema }),
  },
  sizes: collection('sizes', 'size', sizeSchema),
  colours: collection('colours', 'colour', colourSchema),
  items: collection('items', 'item', itemSchema),
  figures: collection('figures', 'figure', figureSchema),
  artists: collection('artists', 'artist', artistSchema),
  places: collection('places', 'place', placeSchema),
  suppliers: collection('suppliers', 'supplier', supplierSchema),
  offers: collection('offers', 'offer', offerSchema),
  clients: collection('clients', 'client', clientSchema),
  gigs: collection('gigs', 'gig', gigSchema),
  needs: collection('needs', 'need', needSchema),
  orders: collection('orders', 'order', orderSchema),
  moves: collection('moves', 'stock move', stockMoveSchema),
  kits: collection('kits', 'kit', savedKitSchema),
  balloonTests: collection('balloonTests', 'two-minute test', balloonTestSchema),
  prices: route({
    method: 'post',
    path: '/api/suppliers/:id/prices',
    summary: 'Read a price list (CSV) of a supplier; with `apply` its prices are put into the book',
    params: z.strictObject({ id }),
    body: z.strictObject({
      text: z.string(),
      mapping: z.exactOptional(priceMappingSchema),
      apply: z.exactOptional(z.boolean()),
      gone: z.exactOptional(z.enum(['keep', 'drop'])),
    }),
    response: priceListSchema,
  }),
  check: route({
    method: 'post',
    path: '/api/check',
    summary: 'Everything that is wrong with a book: the one in the server, or the one sent',
    body: z.strictObject({ today, book: z.exactOptional(bookSchema) }),
    response: problems,
  }),
  plan: route({
    method: 'post',
    path: '/api/plan',
    summary: 'Plan the coming gigs, or one of them: of the book in the server, or of the one sent',
    body: z.strictObject({
      today,
      seed,
      runs,
      gig: z.exactOptional(id),
      until: z.exactOptional(localDate),
      /** Chance that something asked for runs out. */
      risk: z.exactOptional(z.number().min(0).max(0.99)),
      budget: z.exactOptional(amount),
      /** Working days kept between arrival and gig. */
      spareDays: z.exactOptional(z.int().min(0).max(365)),
      book: z.exactOptional(bookSchema),
    }),
    response: json,
  }),
  kit: route({
    method: 'post',
    path: '/api/kit',
    summary: 'What a newcomer should buy first for a budget, out of the offers of the book',
    body: kitWishesSchema,
    response: json,
  }),
  kitPapers: kitRoutes,
  ...repertoireRoutes,
  openapi: route({ method: 'get', path: '/api/openapi.json', summary: 'This description, OpenAPI 3.1', response: json }),
} as const;
