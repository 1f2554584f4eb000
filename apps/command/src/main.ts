#!/usr/bin/env node
import { readFile, writeFile } from 'node:fs/promises';
import { enableCompileCache } from 'node:module';
import { createInterface } from 'node:readline/promises';
import type { OpenSolver } from '@twistwright/solver/node';

// What is compiled now is kept for the next start; so everything of ours is imported after this.
enableCompileCache();
const { openSolver } = await import('@twistwright/solver/node');
const { date } = await import('@twistwright/units');
const { NotWritten } = await import('./outside.ts');
const { runCommand } = await import('./run-command.ts');

let solver: OpenSolver | undefined;
const code = await runCommand(process.argv.slice(2), {
  readFile: (path) => readFile(path, 'utf8'),
  writeFile: (path, content) =>
    writeFile(path, content).catch((cause: unknown) => {
      throw new NotWritten(path, cause);
    }),
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  isTerminal: process.stdout.isTTY === true && (process.env.NO_COLOR ?? '') === '',
  today: (zone) => date(Temporal.Now.plainDateISO(zone).toString()),
  now: () => performance.now() / 1000,
  solver: () => {
    solver ??= openSolver({ atOnce: true });
    return solver;
  },
  ...(process.stdin.isTTY === true && process.stderr.isTTY === true
    ? {
        ask: async (question: string) => {
          const asking = createInterface({ input: process.stdin, output: process.stderr });
          try {
            return await asking.question(question);
          } finally {
            asking.close();
          }
        },
      }
    : {}),
});
await solver?.close();
process.exitCode = code;
