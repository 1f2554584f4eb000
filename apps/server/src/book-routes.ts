import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Book, emptyBook } from '@twistwright/books';
import { api, withPrices } from '@twistwright/contract';
import type { Problem } from '@twistwright/units';
import type { Context, Hono } from 'hono';
import { answer, Refusal } from './answers.ts';
import type { Ports } from './app.ts';
import { stale } from './keep-book.ts';
import { seenRevision, tellRevision, tellState } from './revisions.ts';

const cannotStand = (problems: readonly Problem[]): Refusal => new Refusal(422, 'That cannot stand in the book.', problems);

/** The book as a whole: begun, read, replaced, checked, and who it belongs to. */
export function bookRoutes(app: Hono, ports: Ports): void {
  const { store, shelf, jobs, storeKind, today, demoFolder, version } = ports;
  /** Puts a whole book in the place of the one there is; `seen` 0: only where there is none. */
  const replace = async (context: Context, book: Book, seen: number | undefined): Promise<{ readonly problems: readonly Problem[] }> => {
    const own = await jobs.run('ownBook', { book, today: today(book.business.zone) }, context.req.raw.signal);
    const outcome = await store.replace(own.book, seen);
    if (outcome.outcome === 'stale') throw seen === 0 ? alreadyBegun() : stale(outcome.revision);
    tellRevision(context, outcome.revision);
    return { problems: own.problems };
  };
  answer(app, api.health, async () => ({ ok: true as const, version, store: storeKind, hasBook: (await store.revision()) !== undefined }));
  answer(app, api.start, async ({ body }, context) => {
    if ((await store.revision()) !== undefined) throw alreadyBegun();
    if (body.from === 'empty') return replace(context, emptyBook(body.business), 0);
    const text = await readFile(join(demoFolder, 'book.yaml'), 'utf8');
    return replace(context, await jobs.run('readBookFile', { text, name: 'demo/book.yaml' }, context.req.raw.signal), 0);
  });
  answer(app, api.book.get, async (_request, context) => {
    const { book, revision } = await shelf.read();
    tellState(context, revision);
    return book;
  });
  answer(app, api.book.put, async ({ body, query }, context) => {
    const seen = seenRevision(context);
    const book = await jobs.run('readBookFile', { text: body, name: query.name ?? 'book.yaml' }, context.req.raw.signal);
    return replace(context, book, seen);
  });
  answer(app, api.book.text, async ({ query }, context) => {
    const { book, revision } = await shelf.read();
    const form = query.form ?? 'yaml';
    tellState(context, revision, form);
    context.header('content-disposition', `attachment; filename="book.${form}"`);
    return jobs.run('writeBookFile', { book, form }, context.req.raw.signal);
  });
  answer(app, api.check, async ({ body }, context) => {
    const book = body.book ?? (await shelf.read()).book;
    return jobs.run('checkWholeBook', { book, today: body.today ?? today(book.business.zone) }, context.req.raw.signal);
  });
  pricesRoute(app, ports);
  ownerRoutes(app, ports);
}

const alreadyBegun = (): Refusal => new Refusal(409, 'There is a book already: export it before you begin another.');

function pricesRoute(app: Hono, { store, shelf, jobs, today }: Ports): void {
  answer(app, api.prices, async ({ params, body }, context) => {
    const read = async (book: Book) =>
      jobs.run(
        'readPriceList',
        { text: body.text, book, supplier: params.id, ...(body.mapping === undefined ? {} : { mapping: body.mapping }) },
        context.req.raw.signal,
      );
    if (body.apply !== true) return read((await shelf.read()).book);
    const latest: { list?: Awaited<ReturnType<typeof read>> } = {};
    const revision = await shelf.change(seenRevision(context), async (kept) => {
      latest.list = await read(kept.book);
      const after = withPrices(kept.book, latest.list, { gone: body.gone ?? 'keep' });
      const problems = await jobs.run('newProblems', {
        book: kept.book,
        change: { offers: after.offers },
        today: today(kept.book.business.zone),
      });
      if (problems.length > 0) throw new Refusal(422, 'These prices cannot stand in the book.', problems);
      return store.replace(after, kept.revision);
    });
    tellRevision(context, revision);
    if (latest.list === undefined) throw new Error('prices were put into the book without having been read');
    return latest.list;
  });
}

/** Who the book belongs to, and their habits. */
function ownerRoutes(app: Hono, { store, shelf, jobs, today }: Ports): void {
  answer(app, api.business.get, async (_request, context) => {
    const { book, revision } = await shelf.read();
    tellState(context, revision);
    return book.business;
  });
  answer(app, api.business.put, async ({ body }, context) => {
    const revision = await shelf.change(seenRevision(context), async (kept) => {
      const problems = await jobs.run('newProblems', { book: kept.book, change: { business: body }, today: today(body.zone) });
      if (problems.length > 0) throw cannotStand(problems);
      return store.putBusiness(body, kept.book.settings, kept.revision);
    });
    tellRevision(context, revision);
    return body;
  });
  answer(app, api.settings.get, async (_request, context) => {
    const { book, revision } = await shelf.read();
    tellState(context, revision);
    return book.settings ?? {};
  });
  answer(app, api.settings.put, async ({ body }, context) => {
    const revision = await shelf.change(seenRevision(context), async (kept) => {
      const day = today(kept.book.business.zone);
      const problems = await jobs.run('newProblems', { book: kept.book, change: { settings: body }, today: day });
      if (problems.length > 0) throw cannotStand(problems);
      return store.putBusiness(kept.book.business, body, kept.revision);
    });
    tellRevision(context, revision);
    return body;
  });
}
