import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { z } from 'zod';

const root = resolve(import.meta.dirname, '../../..');

const environment = z.object({
  HOST: z.string().default('127.0.0.1'),
  PORT: z.coerce.number().int().min(0).max(65_535).default(4360),
  DATA_DIR: z.string().default(join(root, 'data')),
  DATABASE_URL: z.string().optional(),
  /** Further names under which the server may be called, comma between them; a reverse proxy's public name for instance. */
  ALLOWED_HOSTS: z.string().default(''),
});

/** What the environment says about this server. Throws with the name of the variable that makes no sense. */
export interface ServerSettings {
  readonly host: string;
  readonly port: number;
  readonly dataFolder: string;
  /** PostgreSQL address or SQLite file. */
  readonly database: string;
  readonly allowedHosts: readonly string[];
  readonly webFolder: string;
  readonly demoFolder: string;
  readonly version: string;
}

export function settingsFrom(variables: Readonly<Record<string, string | undefined>>): ServerSettings {
  const read = environment.safeParse(variables);
  if (!read.success) throw new Error(read.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`).join('; '));
  const dataFolder = resolve(read.data.DATA_DIR);
  return {
    host: read.data.HOST,
    port: read.data.PORT,
    dataFolder,
    database: read.data.DATABASE_URL ?? join(dataFolder, 'book.sqlite'),
    allowedHosts: read.data.ALLOWED_HOSTS.split(',')
      .map((name) => name.trim())
      .filter((name) => name !== ''),
    webFolder: join(root, 'apps/web/dist'),
    demoFolder: join(root, 'demo'),
    version: (JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string }).version,
  };
}
