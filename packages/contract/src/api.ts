import { z } from 'zod';
import { planAnswerSchema } from './answers/index.ts';
import { balloonTestSchema } from './book/balloon-test-schema.ts';
import { amount, id, localDate } from './book/basic-values.ts';
import { bookSchema } from './book/book-schema.ts';
import { businessSchema, settingsSchema } from './book/business-schema.ts';
import { colourSchema, figureSchema, itemSchema, sizeSchema } from './book/figure-schema.ts';
import { gigSchema } from './book/gig-schema.ts';
import { artistSchema, clientSchema } from './book/people-schema.ts';
import { mostBookBytes } from './book/read-book.ts';
import { savedKitSchema } from './book/saved-kit-schema.ts';
import { needSchema, offerSchema, orderSchema, placeSchema, stockMoveSchema, supplierSchema } from './book/supply-schema.ts';
import { calibrationRoutes } from './calibration-routes.ts';
import { exampleEntries } from './example-entries.ts';
import { collection } from './http/collection.ts';
import { problemSchema } from './http/problem-details.ts';
import { route } from './http/route.ts';
import { kitRoutes } from './kit-routes.ts';
import { priceListSchema } from './prices/price-list-schema.ts';
import { priceMappingSchema } from './prices/price-mapping-schema.ts';
import { questionRoutes, runs, seed } from './question-routes.ts';
import { repertoireRoutes } from './repertoire-routes.ts';

/** The day that counts as today; the server's if missing. */
const today = z.exactOptional(localDate).meta({ description: "Day that counts as today; the server's own if missing" });
const problems = z.strictObject({ problems: z.array(problemSchema).meta({ description: 'Warnings where the answer is yes' }) });
/** Most bytes of a book or a price list that is sent along as JSON; the command line takes more. */
const mostSentBytes = 8_000_000;
/** A list of one business, as everywhere in its book. */
const list = <S extends z.ZodType>(name: keyof typeof exampleEntries, thing: string, entry: S) => {
  const example: { readonly id?: string; readonly code?: string } = exampleEntries[name];
  return collection(name, thing, entry, example.id ?? example.code ?? '', example as z.input<S>);
};

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
    refuses: [409],
    heavy: true,
    book: 'writes',
    example: { body: { from: 'demo' } },
  }),
  book: {
    get: route({
      method: 'get',
      path: '/api/book',
      summary: 'The whole book as JSON',
      response: bookSchema,
      refuses: [404],
      book: 'reads',
    }),
    put: route({
      method: 'put',
      path: '/api/book',
      summary: 'Replace the whole book by the text of a book file, YAML or JSON; all of it or nothing',
      description: `Problems come back with line and column. Limits: ${mostBookBytes.yaml / 1e6} MB of YAML, ${mostBookBytes.json / 1e6} MB of JSON. Send If-Match to replace only what was seen.`,
      query: z.strictObject({
        name: z.exactOptional(z.string().max(255)).meta({ description: 'File name: one that ends in .json is read as JSON' }),
      }),
      takes: 'text',
      body: z.string(),
      response: problems,
      heavy: true,
      book: 'writes',
      mostBytes: mostBookBytes.json,
      example: {
        query: { name: 'book.yaml' },
        body: 'book: 1\nbusiness: { name: A new business, currency: GBP, zone: Europe/London }\n',
      },
    }),
    text: route({
      method: 'get',
      path: '/api/book/file',
      summary: 'The whole book as the text of a book file',
      query: z.strictObject({ form: z.exactOptional(z.enum(['yaml', 'json'])).meta({ description: 'YAML if missing' }) }),
      gives: 'text',
      response: z.string(),
      refuses: [404],
      heavy: true,
      book: 'reads',
      example: { query: { form: 'yaml' } },
    }),
  },
  business: {
    get: route({
      method: 'get',
      path: '/api/business',
      summary: 'Who the book belongs to',
      response: businessSchema,
      refuses: [404],
      book: 'reads',
    }),
    put: route({
      method: 'put',
      path: '/api/business',
      summary: 'Change who the book belongs to',
      body: businessSchema,
      response: businessSchema,
      refuses: [404],
      heavy: true,
      book: 'writes',
      example: { body: { name: 'Pell & Otter, balloon figures', currency: 'GBP', zone: 'Europe/London', town: 'Wrenmouth' } },
    }),
  },
  settings: {
    get: route({
      method: 'get',
      path: '/api/settings',
      summary: 'Habits of the business',
      response: settingsSchema,
      refuses: [404],
      book: 'reads',
    }),
    put: route({
      method: 'put',
      path: '/api/settings',
      summary: 'Change the habits of the business',
      body: settingsSchema,
      response: settingsSchema,
      refuses: [404],
      heavy: true,
      book: 'writes',
      example: {
        body: { planning: { chanceOfRunningOut: 0.05, promise: { waitMinutes: 15, shareWithin: 0.9, shareServed: 0.95 } } },
      },
    }),
  },
  sizes: list('sizes', 'size', sizeSchema),
  colours: list('colours', 'colour', colourSchema),
  items: list('items', 'item', itemSchema),
  figures: list('figures', 'figure', figureSchema),
  artists: list('artists', 'artist', artistSchema),
  places: list('places', 'place', placeSchema),
  suppliers: list('suppliers', 'supplier', supplierSchema),
  offers: list('offers', 'offer', offerSchema),
  clients: list('clients', 'client', clientSchema),
  gigs: list('gigs', 'gig', gigSchema),
  needs: list('needs', 'need', needSchema),
  orders: list('orders', 'order', orderSchema),
  moves: list('moves', 'stock move', stockMoveSchema),
  kits: list('kits', 'kit', savedKitSchema),
  balloonTests: list('balloonTests', 'two-minute test', balloonTestSchema),
  prices: route({
    method: 'post',
    path: '/api/suppliers/:id/prices',
    summary: 'Read a price list (CSV) of a supplier; with `apply` its prices are put into the book',
    description: 'Every line is accounted for: read, left out with its reason, or blank. Nothing is stored without `apply`.',
    params: z.strictObject({ id }),
    body: z.strictObject({
      text: z.string().meta({ description: 'The price list, CSV' }),
      mapping: z.exactOptional(priceMappingSchema),
      apply: z.exactOptional(z.boolean()),
      gone: z
        .exactOptional(z.enum(['keep', 'drop']))
        .meta({ description: 'What becomes of offers that are not on the list; kept if missing' }),
    }),
    response: priceListSchema,
    refuses: [404],
    heavy: true,
    book: 'writes',
    mostBytes: mostSentBytes,
    example: { params: { id: 'ropewalk' }, body: { text: 'what,how many,price,at most\nred 260,100,£8.95,5\n' } },
  }),
  check: route({
    method: 'post',
    path: '/api/check',
    summary: 'Everything that is wrong with a book: the one in the server, or the one sent',
    body: z.strictObject({ today, book: z.exactOptional(bookSchema) }),
    response: problems,
    refuses: [404],
    heavy: true,
    mostBytes: mostSentBytes,
    example: { body: {} },
  }),
  plan: route({
    method: 'post',
    path: '/api/plan',
    summary: 'Plan the coming gigs, or one of them: of the book in the server, or of the one sent',
    description:
      'Same book, day, seed and runs: same plan. Everything is played, then shopped for; shopping stops by itself after 20 s with the best that is known.',
    body: z.strictObject({
      today,
      seed,
      runs,
      gig: z.exactOptional(id).meta({ description: 'Only this gig is planned in full; the others still count as needs' }),
      until: z.exactOptional(localDate).meta({ description: "Last day that is looked at; the last gig's if missing" }),
      risk: z.exactOptional(z.number().min(0).max(0.99)).meta({ description: 'Chance that something asked for runs out, 0 to 0.99' }),
      budget: z.exactOptional(amount).meta({ description: 'Money for shopping, minor units' }),
      spareDays: z.exactOptional(z.int().min(0).max(365)).meta({ description: 'Working days kept between arrival and gig' }),
      book: z.exactOptional(bookSchema),
    }),
    response: planAnswerSchema,
    refuses: [404, 409],
    heavy: true,
    mostBytes: mostSentBytes,
    example: { body: { gig: 'gull-lane', runs: 200 } },
  }),
  ...questionRoutes,
  ...kitRoutes,
  ...repertoireRoutes,
  ...calibrationRoutes,
  openapi: route({
    method: 'get',
    path: '/api/openapi.json',
    summary: 'This description, OpenAPI 3.1',
    response: z.looseObject({
      openapi: z.literal('3.1.0'),
      info: z.looseObject({ title: z.string(), version: z.string() }),
      paths: z.record(z.string(), z.record(z.string(), z.unknown())),
    }),
  }),
} as const;
