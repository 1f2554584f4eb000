import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '..');

export interface RunningServer {
  /** Where the app is, without a slash at the end. */
  readonly url: string;
  readonly pid: number | undefined;
  readonly stop: () => Promise<void>;
}

/** The real server on a free port, with an empty data folder of its own. */
export async function startServer(): Promise<RunningServer> {
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
  return {
    url,
    pid: server.pid,
    stop: async () => {
      server.kill('SIGTERM');
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
