import type { Book, Business, Settings } from '@twistwright/books';
import { sql, type Transaction } from 'kysely';
import { connect, type Database, type Db } from './connect.ts';
import { type Collection, entryOf, rowOf, type Table, tables } from './tables.ts';

/** Checks a whole book that comes out of the database; throws if it is not one. The book file's schema, handed in by the server. */
export type BookReader = (value: unknown) => Book;
/** What a write came to. `stale`: somebody else has written since the revision that the caller had seen; nothing was written. */
export type Written = { readonly outcome: 'written'; readonly revision: number } | { readonly outcome: 'stale'; readonly revision: number };

/** The facts of one business in a database: one table a collection, one transaction a write, a revision that grows by one with each. */
export interface Store {
  /** The book as it is, with its revision; undefined before the first one was put in. */
  read(): Promise<{ readonly book: Book; readonly revision: number } | undefined>;
  /** The revision alone; undefined before the first book was put in. */
  revision(): Promise<number | undefined>;
  /** Replaces everything. With `seen` 0: only where there is no book yet. */
  replace(book: Book, seen?: number): Promise<Written>;
  /** Adds an entry or replaces the one with its key, in its place. */
  put(collection: Collection, entry: object, seen?: number): Promise<Written>;
  /** Takes an entry out; nothing happens if there is none. */
  remove(collection: Collection, key: string, seen?: number): Promise<Written>;
  putBusiness(business: Business, settings: Settings | undefined, seen?: number): Promise<Written>;
  close(): Promise<void>;
}

const only = 'this';
/** Lists that a book may lack: to the store, none and an empty one are one and the same. */
const withoutEmpty: ReadonlySet<Collection> = new Set(['kits', 'balloonTests']);

export async function openStore(url: string, readBook: BookReader): Promise<Store> {
  const db = await connect(url);
  return {
    read: () => db.transaction().execute((trx) => readAll(trx, readBook)),
    revision: async () => {
      const head = await db.selectFrom('business').select('revision').where('id', '=', only).executeTakeFirst();
      return head === undefined ? undefined : Number(head.revision);
    },
    replace: (book, seen) => write(db, seen, (trx) => replaceAll(trx, book)),
    put: (collection, entry, seen) => write(db, seen, (trx) => putEntry(trx, tableOf(collection), entry as Record<string, unknown>)),
    remove: (collection, key, seen) =>
      write(db, seen, async (trx) => {
        const table = tableOf(collection);
        await trx.deleteFrom(table.table).where(table.key, '=', key).execute();
      }),
    putBusiness: (business, settings, seen) =>
      write(db, seen, async (trx) => {
        await trx
          .updateTable('business')
          .set({ business: JSON.stringify(business), settings: settings === undefined ? null : JSON.stringify(settings) })
          .execute();
      }),
    close: () => db.destroy(),
  };
}

function tableOf(collection: Collection): Table {
  const table = tables.find((candidate) => candidate.collection === collection);
  if (table === undefined) throw new Error(`no table for ${collection}`);
  return table;
}

type Trx = Transaction<Database>;

async function readAll(trx: Trx, readBook: BookReader): Promise<{ readonly book: Book; readonly revision: number } | undefined> {
  const head = await trx.selectFrom('business').selectAll().where('id', '=', only).executeTakeFirst();
  if (head === undefined) return undefined;
  const collections: Record<string, unknown> = {};
  for (const table of tables) {
    const rows = await trx.selectFrom(table.table).selectAll().orderBy('position').execute();
    if (table.collection === 'sizes' && rows.length === 0 && head.has_sizes !== 1) continue;
    if (withoutEmpty.has(table.collection) && rows.length === 0) continue;
    collections[table.collection] = rows.map((row) => entryOf(table, row));
  }
  const book = readBook({
    book: 1,
    ...(head.laid_on === null ? {} : { laidOn: head.laid_on }),
    business: JSON.parse(String(head.business)),
    ...(head.settings === null ? {} : { settings: JSON.parse(String(head.settings)) }),
    ...collections,
  });
  return { book, revision: Number(head.revision) };
}

/** Runs one write and moves the revision on, unless the caller's view is stale. */
async function write(db: Db, seen: number | undefined, work: (trx: Trx) => Promise<void>): Promise<Written> {
  return db.transaction().execute(async (trx) => {
    // Takes the row's lock first, so that two writers on PostgreSQL stand in line instead of both reading the old revision.
    const moved = await trx
      .updateTable('business')
      .set({ revision: sql`revision + 1` })
      .where('id', '=', only)
      .returning('revision')
      .executeTakeFirst();
    const now = moved === undefined ? 0 : Number(moved.revision);
    const before = Math.max(0, now - 1);
    if (seen !== undefined && seen !== before) {
      if (moved !== undefined) await trx.updateTable('business').set({ revision: before }).where('id', '=', only).execute();
      return { outcome: 'stale', revision: before };
    }
    await work(trx);
    const after = await trx.selectFrom('business').select('revision').where('id', '=', only).executeTakeFirst();
    return { outcome: 'written', revision: Number(after?.revision ?? 0) };
  });
}

async function replaceAll(trx: Trx, book: Book): Promise<void> {
  const head = {
    laid_on: book.laidOn ?? null,
    business: JSON.stringify(book.business),
    settings: book.settings === undefined ? null : JSON.stringify(book.settings),
    has_sizes: book.sizes === undefined ? 0 : 1,
  };
  await trx
    .insertInto('business')
    .values({ id: only, ...head, revision: 1 })
    .onConflict((conflict) => conflict.column('id').doUpdateSet(head))
    .execute();
  for (const table of tables) {
    await trx.deleteFrom(table.table).execute();
    const rows = (book[table.collection] ?? []).map((entry, position) => ({ ...rowOf(table, entry as never), position }));
    for (let from = 0; from < rows.length; from += chunk)
      await trx
        .insertInto(table.table)
        .values(rows.slice(from, from + chunk))
        .execute();
  }
}
/** Rows an insert: SQLite takes at most 32,766 parameters, the widest table has 27 columns. */
const chunk = 500;

async function putEntry(trx: Trx, table: Table, entry: Record<string, unknown>): Promise<void> {
  const row = rowOf(table, entry);
  const last = await trx
    .selectFrom(table.table)
    .select((e) => e.fn.max('position').as('last'))
    .executeTakeFirst();
  await trx
    .insertInto(table.table)
    .values({ ...row, position: Number(last?.last ?? -1) + 1 })
    .onConflict((conflict) => conflict.column(table.key).doUpdateSet(row))
    .execute();
  if (table.collection === 'sizes') await trx.updateTable('business').set({ has_sizes: 1 }).execute();
}
