import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { connect } from './connect.ts';
import { columnName, tables } from './tables.ts';
import { freshDatabase, storeContract } from './testing/index.ts';

const folder = mkdtempSync(join(tmpdir(), 'twistwright-store-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

storeContract('SQLite', () => join(folder, 'book.sqlite'));
const postgres = process.env.TEST_POSTGRES;
if (postgres !== undefined) {
  const fresh = await freshDatabase(postgres, 'twistwright_store_test');
  storeContract('PostgreSQL', () => fresh);
}

test('every column that the tables name is in the schema, and the other way round', async () => {
  const db = await connect(':memory:');
  const found = await db.introspection.getTables();
  for (const table of tables) {
    const columns = found
      .find((t) => t.name === table.table)
      ?.columns.map((c) => c.name)
      .filter((c) => c !== 'position');
    expect([table.table, columns?.sort()]).toEqual([table.table, Object.keys(table.columns).map(columnName).sort()]);
  }
  expect(tables.length).toBe(15);
  await db.destroy();
});
test('a Date is refused, not silently bound as nothing', async () => {
  const db = await connect(':memory:');
  await expect(db.insertInto('colour').values({ position: new Date(), id: 'x', name: 'x' }).execute()).rejects.toThrow('cannot bind');
  await db.destroy();
});
