import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the app is, without a slash at the end. */
    url: string;
  }
}

const root = resolve(import.meta.dirname, '..');

/** Builds the browser app if need be and starts the real server on a free port with an empty data folder. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  execFileSync(process.execPath, [join(root, 'scripts/ensure-web.ts')], { stdio: 'inherit' });
  const folder = mkdtempSync(join(tmpdir(), 'twistwright-browser-'));
  const { DATABASE_URL: _other, ...environment } = process.env;
  const server = spawn(process.execPath, [join(root, 'apps/server/src/main.ts')], {
    env: { ...environment, PORT: '0', DATA_DIR: folder },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise<number | null>((resolveEnd) => server.once('exit', resolveEnd));
  const url = await new Promise<string>((found, failed) => {
    let said = '';
    server.stdout.on('data', (part: Buffer) => {
      said += part.toString('utf8');
      const address = /http:\/\/(?:localhost|127\.0\.0\.1):\d+/.exec(said);
      if (address !== null) found(address[0]);
    });
    void ended.then((code) => failed(new Error(`the server ended with ${code} and had said: ${said}`)));
  });
  project.provide('url', url);
  return async () => {
    server.kill('SIGTERM');
    await ended;
    rmSync(folder, { recursive: true, force: true });
  };
}
