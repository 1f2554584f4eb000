import { type Book, bookLists } from '@twistwright/books';
import { api } from '@twistwright/contract';
import type { Collection } from '@twistwright/store';
import type { Hono } from 'hono';
import { answer, Refusal } from './answers.ts';
import type { Ports } from './app.ts';
import { entriesOf, entryOf, listWith, listWithout } from './keep-book.ts';
import { seenRevision, tellRevision, tellState } from './revisions.ts';

const collections: readonly Collection[] = ['sizes', ...bookLists];

/** The lists of the book, entry by entry. */
export function collectionRoutes(app: Hono, ports: Ports): void {
  for (const collection of collections) routesOfList(app, ports, collection);
}

function routesOfList(app: Hono, { store, shelf, jobs, today }: Ports, collection: Collection): void {
  const routes = api[collection];
  const problemsOf = (book: Book, change: Partial<Book>) => jobs.run('newProblems', { book, change, today: today(book.business.zone) });
  const missing = (id: string): Refusal => new Refusal(404, `There is no "${id}" among the ${collection}.`);
  // The routes of every collection have the same form; their entries differ, and each was read by its own schema.
  type AnyCollection = (typeof api)['colours'];
  const plain = routes as unknown as AnyCollection;
  answer(app, plain.list, async (_request, context) => {
    const { book, revision } = await shelf.read();
    tellState(context, revision);
    return entriesOf(book, collection) as never;
  });
  answer(app, plain.get, async ({ params }, context) => {
    const { book, revision } = await shelf.read();
    const found = entryOf(book, collection, params.id);
    if (found === undefined) throw missing(params.id);
    tellState(context, revision);
    return found as never;
  });
  answer(app, plain.put, async ({ params, body }, context) => {
    const entry = body as unknown as Readonly<Record<string, unknown>>;
    const key = collection === 'sizes' ? entry.code : entry.id;
    if (key !== params.id) throw new Refusal(422, `The path says "${params.id}" and the body "${String(key)}".`);
    const revision = await shelf.change(seenRevision(context), async (kept) => {
      const problems = await problemsOf(kept.book, listWith(kept.book, collection, entry));
      if (problems.length > 0) throw new Refusal(422, 'That cannot stand in the book.', problems);
      return store.put(collection, entry, kept.revision);
    });
    tellRevision(context, revision);
    return body;
  });
  answer(app, plain.delete, async ({ params }, context) => {
    const revision = await shelf.change(seenRevision(context), async (kept) => {
      if (entryOf(kept.book, collection, params.id) === undefined) throw missing(params.id);
      const problems = await problemsOf(kept.book, listWithout(kept.book, collection, params.id));
      if (problems.length > 0) throw new Refusal(409, `"${params.id}" is still used elsewhere in the book.`, problems);
      return store.remove(collection, params.id, kept.revision);
    });
    tellRevision(context, revision);
    return { deleted: params.id };
  });
}
