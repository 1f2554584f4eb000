import { execFileSync } from 'node:child_process';
import { join, resolve } from 'node:path';
import type { TestProject } from 'vitest/node';
import { startServer } from './server.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the app is, without a slash at the end. */
    url: string;
  }
}

/** Builds the browser app if need be and starts the real server, once for all files. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  execFileSync(process.execPath, [join(resolve(import.meta.dirname, '..'), 'scripts/ensure-web.ts')], { stdio: 'inherit' });
  const server = await startServer();
  project.provide('url', server.url);
  return server.stop;
}
