import pg from 'pg';

/** A new, empty PostgreSQL database beside the one at `url`, so that test files that run at the same time do not meet. Its role must be allowed to make databases. */
export async function freshDatabase(url: string, name: string): Promise<string> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(`drop database if exists ${name} with (force)`);
    await client.query(`create database ${name} template template0 lc_collate 'C' lc_ctype 'C.UTF-8'`);
  } finally {
    await client.end();
  }
  const fresh = new URL(url);
  fresh.pathname = `/${name}`;
  return fresh.href;
}
