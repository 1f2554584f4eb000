import { Kysely, PostgresDialect } from 'kysely';
import { Migrator } from 'kysely/migration';
import pg from 'pg';
import { migrations } from './migrations.ts';
import { nodeSqliteDialect } from './node-sqlite.ts';

/** Rows as the database gives them; `tables.ts` says what is in them. */
export type Database = Record<string, Record<string, unknown>>;
export type Db = Kysely<Database>;

const safeInteger = (text: string): number => {
  const value = Number(text);
  if (!Number.isSafeInteger(value)) throw new RangeError(`integer out of range: ${text}`);
  return value;
};
/** Per pool, not global: int8 and numeric come back as numbers, as SQLite gives them. */
const types = {
  getTypeParser: (oid: number, format?: 'text' | 'binary') =>
    oid === 20 ? safeInteger : oid === 1700 ? Number : pg.types.getTypeParser(oid, format as 'text'),
};

export const isPostgres = (url: string): boolean => /^postgres(ql)?:\/\//.test(url);

/** Opens a database (a PostgreSQL address, a file name, or `:memory:`) and brings its tables up to date. */
export async function connect(url: string): Promise<Db> {
  const db = new Kysely<Database>({
    dialect: isPostgres(url)
      ? new PostgresDialect({ pool: new pg.Pool({ connectionString: url, max: 10, types: types as never }) })
      : nodeSqliteDialect(url),
  });
  const { error } = await new Migrator({ db, provider: { getMigrations: async () => ({ ...migrations }) } }).migrateToLatest();
  if (error !== undefined) {
    await db.destroy();
    throw error;
  }
  return db;
}
