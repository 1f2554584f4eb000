import { globSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { basename, join, resolve } from 'node:path';
import { date } from '@twistwright/units';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import type { Outside } from './outside.ts';
import { runCommand } from './run-command.ts';

/** The worked books whose values are those of textbooks, through the command line alone: book in, JSON out. */
const folder = resolve(import.meta.dirname, '../../../cases/books');
const books = globSync('*.expects.yaml', { cwd: folder })
  .map((name) => basename(name, '.expects.yaml'))
  .sort();

interface Spread {
  readonly mean: number;
  readonly error: number;
}
async function forecast(book: string, ...flags: readonly string[]): Promise<Readonly<Record<string, Readonly<Record<string, Spread>>>>> {
  let out = '';
  const outside: Outside = {
    readFile: (path) => readFile(path, 'utf8'),
    writeFile: async () => undefined,
    out: (text) => {
      out += text;
    },
    err: () => undefined,
    isTerminal: false,
    today: () => date('2026-12-01'),
    now: () => 0,
    solver: () => {
      throw new Error('a forecast asks no solver');
    },
  };
  expect(await runCommand(['forecast', join(folder, `${book}.yaml`), '--runs', '150', '--json', ...flags], outside)).toBe(0);
  const { gigs } = JSON.parse(out) as {
    readonly gigs: readonly { readonly gig: string; readonly forecast: Readonly<Record<string, Spread>> }[];
  };
  return Object.fromEntries(gigs.map(({ gig, forecast: found }) => [gig, found]));
}
/** What a worked book expects by the name that the forecast has for it. */
const nameInForecast: Readonly<Record<string, string>> = {
  arrived: 'arrived',
  served: 'served',
  finish: 'finish',
  waited: 'shareWaited',
  waitOfAll: 'meanWaitOfAll',
  waitOfServed: 'meanWait',
};

test.each(books)('%s', async (book) => {
  const { gigs } = parse(await readFile(join(folder, `${book}.expects.yaml`), 'utf8')) as {
    readonly gigs: Readonly<Record<string, Readonly<Record<string, number>>>>;
  };
  const found = await forecast(book);
  let compared = 0;
  for (const [gig, expected] of Object.entries(gigs))
    for (const [what, name] of Object.entries(nameInForecast)) {
      const value = expected[what];
      const spread = found[gig]?.[name];
      if (value === undefined || spread === undefined) continue;
      compared++;
      // A mean of ratios leans a little against a ratio of means; half a per cent covers it in stretches of this length.
      const slack = Math.max(3.5 * spread.error, 0.005 * value, 1e-9);
      expect(Math.abs(spread.mean - value), `${gig} ${what}: ${spread.mean} for ${value}`).toBeLessThanOrEqual(slack);
    }
  expect(compared).toBeGreaterThan(0);
});
test('the start-up stretch can be left out from the command line', async () => {
  const all = await forecast('two-pairs-of-hands', '--gig', 'two', '--warm-up', '0');
  const late = await forecast('two-pairs-of-hands', '--gig', 'two', '--warm-up', '1380');
  expect(all.two?.arrived?.mean).toBeGreaterThan(1400);
  expect(late.two?.arrived?.mean).toBeLessThan(70);
});
