import { readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
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
  /** Threads that work out plans, papers and pictures; as many as there are cores, 2 to 4, if missing. */
  THREADS: z.coerce.number().int().min(1).max(64).optional(),
  /** Requests that may wait for such a thread; one more is answered with 503. */
  QUEUE: z.coerce.number().int().min(0).max(10_000).default(32),
  /** Seconds that one of them may take, and may wait; a longer one is answered with 504, or 503. */
  JOB_SECONDS: z.coerce.number().min(1).max(3600).default(60),
});

/** What the environment says about this server. Throws with the name of the variable that makes no sense. */
export interface ServerSettings {
  readonly host: string;
  readonly port: number;
  readonly dataFolder: string;
  /** PostgreSQL address or SQLite file. */
  readonly database: string;
  readonly allowedHosts: readonly string[];
  readonly threads: number;
  readonly queue: number;
  readonly jobSeconds: number;
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
    threads: read.data.THREADS ?? Math.min(4, Math.max(2, availableParallelism())),
    queue: read.data.QUEUE,
    jobSeconds: read.data.JOB_SECONDS,
    webFolder: join(root, 'apps/web/dist'),
    demoFolder: join(root, 'demo'),
    version: (JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string }).version,
  };
}
