import { execFile } from 'node:child_process';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '..');
interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}
/** The command line in a process of its own, under a system time zone. */
const run = (zone: string, ...args: readonly string[]): Promise<Ran> =>
  new Promise((settle) => {
    const command = [join(root, 'apps/command/src/main.ts'), ...args];
    execFile(process.execPath, command, { cwd: root, env: { ...process.env, TZ: zone }, maxBuffer: 1e8 }, (error, out, err) =>
      settle({ code: error === null ? 0 : Number(error.code), out, err }),
    );
  });
const plan = ['plan', 'demo/book.yaml', '--today', '2026-06-02', '--gig', 'gull-lane', '--runs', '150'];

test('same seed and day, same JSON to the byte, in two processes and two system time zones', { timeout: 60_000 }, async () => {
  const east = await run('Asia/Tokyo', ...plan, '--json');
  const west = await run('America/New_York', ...plan, '--json');
  expect([east.code, east.out.length > 10_000]).toEqual([0, true]);
  expect(west.out).toBe(east.out);
});
test('through a pipe there is no colour, and the exit code says how it went', { timeout: 60_000 }, async () => {
  const page = await run('UTC', ...plan);
  expect(page.code).toBe(0);
  expect(page.out).not.toContain('\u001b');
  expect(page.out.split('\n').filter((line) => line.length > 160)).toEqual([]);
  expect((await run('UTC', 'plan', 'nowhere.yaml')).code).toBe(1);
  expect((await run('UTC', 'plan', '--loud')).code).toBe(2);
});
