import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { serveStatic } from '@hono/node-server/serve-static';
import { type Book, bookLists, checkBook, emptyBook, layDates } from '@twistwright/books';
import { api, openApi, readBook, readPrices, withPrices, writeBook } from '@twistwright/contract';
import type { Solver } from '@twistwright/planner';
import type { Collection, Store } from '@twistwright/store';
import type { LocalDate, Problem } from '@twistwright/units';
import { type Context, Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { compress } from 'hono/compress';
import { secureHeaders } from 'hono/secure-headers';
import { answer, problemAnswer, Refusal } from './answers.ts';
import { bookOf, bookWith, bookWithout, entriesOf, entryOf, newProblems, written } from './keep-book.ts';
import { kitRoutes } from './kit-routes.ts';
import { bookInOrder, kitAnswer, planAnswer } from './plan-answers.ts';
import { repertoireRoutes } from './repertoire-routes.ts';
import { sameOrigin } from './same-origin.ts';

/** What the app asks of the outside. */
export interface Ports {
  readonly store: Store;
  readonly storeKind: 'sqlite' | 'postgresql';
  readonly solver: Solver;
  /** Today on the wall calendar of a zone. */
  readonly today: (zone: string) => LocalDate;
  /** Milliseconds, for time limits only. */
  readonly now: () => number;
  /** A line for the log; called with bugs only. */
  readonly log: (message: string) => void;
  readonly allowedHosts: readonly string[];
  readonly webFolder: string;
  readonly demoFolder: string;
  readonly version: string;
}

const mostBytes = 50_000_000;

export function makeApp(ports: Ports): Hono {
  const app = new Hono();
  app.onError((error) => {
    if (error instanceof Refusal) return problemAnswer(error.status, error.message, error.problems);
    ports.log(error.stack ?? error.message);
    return problemAnswer(500, 'This is a mistake of ours; nothing was stored.');
  });
  app.use(compress());
  app.use(
    secureHeaders({
      contentSecurityPolicy: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        workerSrc: ["'self'", 'blob:'],
        connectSrc: ["'self'"],
      },
    }),
  );
  app.use(sameOrigin(ports.allowedHosts));
  app.use('/api/*', bodyLimit({ maxSize: mostBytes, onError: () => problemAnswer(413, `That is more than ${mostBytes / 1e6} MB.`) }));
  bookRoutes(app, ports);
  for (const collection of collections) collectionRoutes(app, ports, collection);
  planRoutes(app, ports);
  kitRoutes(app, ports);
  repertoireRoutes(app, ports);
  answer(app, api.openapi, () => openApi(api, { title: 'Twistwright', version: ports.version }) as Record<string, unknown>);
  app.all('/api/*', (context) => problemAnswer(404, `There is nothing at ${context.req.path}.`));
  app.use('*', async (context, next) => {
    await next();
    context.header('cache-control', context.req.path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache');
  });
  app.use('*', serveStatic({ root: ports.webFolder }));
  app.get('*', serveStatic({ root: ports.webFolder, path: 'index.html' }));
  return app;
}

/** Revision that the caller has seen, from `If-Match: "12"`. */
function seenRevision(context: Context): number | undefined {
  const match = /^"?(\d+)"?$/.exec(context.req.header('if-match') ?? '');
  return match === null ? undefined : Number(match[1]);
}
const tell = (context: Context, revision: number): void => context.header('etag', `"${revision}"`);

function bookRoutes(app: Hono, { store, storeKind, today, demoFolder, version }: Ports): void {
  const take = async (context: Context, book: Book): Promise<{ readonly problems: readonly Problem[] }> => {
    const own = laidOut(book, today(book.business.zone));
    const problems = checkBook(own, { today: today(own.business.zone) });
    if (problems.some((problem) => problem.weight === 'error'))
      throw new Refusal(422, 'The book is not in order; nothing is stored.', problems);
    tell(context, written(await store.replace(own, seenRevision(context))));
    return { problems };
  };
  answer(app, api.health, async () => ({ ok: true as const, version, store: storeKind, hasBook: (await store.read()) !== undefined }));
  answer(app, api.start, async ({ body }, context) => {
    if ((await store.read()) !== undefined) throw new Refusal(409, 'There is a book already: export it before you begin another.');
    if (body.from === 'empty') return take(context, emptyBook(body.business));
    const read = readBook(await readFile(join(demoFolder, 'book.yaml'), 'utf8'), { name: 'demo/book.yaml' });
    if (!read.ok) throw new Error(`the demo cannot be read: ${read.error[0]?.sentence}`);
    return take(context, read.value);
  });
  answer(app, api.book.get, async (_request, context) => {
    const { book, revision } = await bookOf(store);
    tell(context, revision);
    return book;
  });
  answer(app, api.book.put, async ({ body, query }, context) => {
    const read = readBook(body, { name: query.name ?? 'book.yaml' });
    if (!read.ok) throw new Refusal(422, 'The book file cannot be read; nothing is stored.', read.error);
    return take(context, read.value);
  });
  answer(app, api.book.text, async ({ query }, context) => {
    const { book } = await bookOf(store);
    const form = query.form ?? 'yaml';
    context.header('content-disposition', `attachment; filename="book.${form}"`);
    return writeBook(book, form);
  });
  answer(app, api.prices, async ({ params, body }, context) => {
    const { book } = await bookOf(store);
    const read = readPrices(body.text, { book, supplier: params.id, ...(body.mapping === undefined ? {} : { mapping: body.mapping }) });
    if (!read.ok) throw new Refusal(422, 'The price list cannot be read; nothing is stored.', read.error);
    if (body.apply === true) {
      const after = withPrices(book, read.value, { gone: body.gone ?? 'keep' });
      const problems = newProblems(book, after, today(book.business.zone));
      if (problems.length > 0) throw new Refusal(422, 'These prices cannot stand in the book.', problems);
      tell(context, written(await store.replace(after, seenRevision(context))));
    }
    return read.value;
  });
  answer(app, api.business.get, async () => (await bookOf(store)).book.business);
  answer(app, api.business.put, async ({ body }, context) => {
    const { book } = await bookOf(store);
    const problems = newProblems(book, { ...book, business: body }, today(body.zone));
    if (problems.length > 0) throw new Refusal(422, 'That cannot stand in the book.', problems);
    tell(context, written(await store.putBusiness(body, book.settings, seenRevision(context))));
    return body;
  });
  answer(app, api.settings.get, async () => (await bookOf(store)).book.settings ?? {});
  answer(app, api.settings.put, async ({ body }, context) => {
    const { book } = await bookOf(store);
    const problems = newProblems(book, { ...book, settings: body }, today(book.business.zone));
    if (problems.length > 0) throw new Refusal(422, 'That cannot stand in the book.', problems);
    tell(context, written(await store.putBusiness(book.business, body, seenRevision(context))));
    return body;
  });
}

/** An example becomes somebody's own book when it is opened: dates in the present, and no longer an example. */
function laidOut(book: Book, today: LocalDate): Book {
  const { laidOn: _laidOn, ...own } = layDates(book, today);
  return own;
}

const collections: readonly Collection[] = ['sizes', ...bookLists];

function collectionRoutes(app: Hono, { store, today }: Ports, collection: Collection): void {
  const routes = api[collection];
  const missing = (id: string): Refusal => new Refusal(404, `There is no "${id}" among the ${collection}.`);
  // The routes of every collection have the same form; their entries differ, and each was read by its own schema.
  type AnyCollection = (typeof api)['colours'];
  const plain = routes as unknown as AnyCollection;
  answer(app, plain.list, async () => entriesOf((await bookOf(store)).book, collection) as never);
  answer(app, plain.get, async ({ params }) => {
    const found = entryOf((await bookOf(store)).book, collection, params.id);
    if (found === undefined) throw missing(params.id);
    return found as never;
  });
  answer(app, plain.put, async ({ params, body }, context) => {
    const entry = body as unknown as Readonly<Record<string, unknown>>;
    const key = collection === 'sizes' ? entry.code : entry.id;
    if (key !== params.id) throw new Refusal(422, `The path says "${params.id}" and the body "${String(key)}".`);
    const { book } = await bookOf(store);
    const problems = newProblems(book, bookWith(book, collection, entry), today(book.business.zone));
    if (problems.length > 0) throw new Refusal(422, 'That cannot stand in the book.', problems);
    tell(context, written(await store.put(collection, entry, seenRevision(context))));
    return body;
  });
  answer(app, plain.delete, async ({ params }, context) => {
    const { book } = await bookOf(store);
    if (entryOf(book, collection, params.id) === undefined) throw missing(params.id);
    const problems = newProblems(book, bookWithout(book, collection, params.id), today(book.business.zone));
    if (problems.length > 0) throw new Refusal(409, `"${params.id}" is still used elsewhere in the book.`, problems);
    tell(context, written(await store.remove(collection, params.id, seenRevision(context))));
    return { deleted: params.id };
  });
}

function planRoutes(app: Hono, ports: Ports): void {
  const { store, today } = ports;
  answer(app, api.check, async ({ body }) => {
    const book = body.book ?? (await bookOf(store)).book;
    return { problems: checkBook(book, { today: body.today ?? today(book.business.zone) }) };
  });
  answer(app, api.plan, async ({ body }) => {
    const { book: sent } = body;
    const book = sent === undefined ? (await bookOf(store)).book : bookInOrder(sent, body.today ?? today(sent.business.zone));
    return planAnswer(book, body, ports);
  });
  answer(app, api.kit, async ({ body }) => kitAnswer((await bookOf(store)).book, body));
}
