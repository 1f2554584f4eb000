import { readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { OpenSolver } from '@twistwright/solver/node';
import { openSolver } from '@twistwright/solver/node';
import { date } from '@twistwright/units';
import { afterAll, describe, expect, test } from 'vitest';
import type { Outside } from './outside.ts';
import { commands, runCommand } from './run-command.ts';

const root = resolve(import.meta.dirname, '../../..');
let solver: OpenSolver | undefined;
afterAll(() => solver?.close());

interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  readonly written: ReadonlyMap<string, string | Uint8Array>;
}
async function run(args: readonly string[], files: Readonly<Record<string, string>> = {}): Promise<Ran> {
  const said = { out: '', err: '' };
  const written = new Map<string, string | Uint8Array>();
  const outside: Outside = {
    readFile: async (path) => files[path] ?? readFile(join(root, path), 'utf8'),
    writeFile: async (path, content) => void written.set(path, content),
    out: (text) => {
      said.out += text;
    },
    err: (text) => {
      said.err += text;
    },
    isTerminal: false,
    today: () => date('2026-06-02'),
    now: () => performance.now() / 1000,
    solver: () => {
      solver ??= openSolver();
      return solver;
    },
  };
  const code = await runCommand(args, outside);
  return { code, ...said, written };
}
const demo = 'demo/book.yaml';

describe('the plan of the demo', () => {
  test('reads like a page: every coming gig, what is short, orders with their last day, proven', async () => {
    const { code, out } = await run(['plan', demo, '--runs', '400']);
    expect(code).toBe(0);
    for (const part of [
      'Wrenmouth Harbour Day',
      'will be served; the last wait',
      'would run short',
      'order by',
      'Rounding everything up',
      'Ask for',
    ])
      expect(out).toContain(part);
    expect(out.split('\n').filter((line) => line.length > 160)).toEqual([]);
  });
  test('the same seed and day give the same JSON to the byte, another seed does not', async () => {
    const args = ['plan', demo, '--runs', '200', '--json', '--gig', 'harbour-day'];
    const [one, two, other] = [await run(args), await run(args), await run([...args, '--seed', '2'])];
    expect(one.out).toBe(two.out);
    expect(other.out).not.toBe(one.out);
    const plan = JSON.parse(one.out);
    expect(plan.gigs[0].forecast.served).toMatchObject({
      p10: expect.any(Number),
      p50: expect.any(Number),
      p90: expect.any(Number),
      error: expect.any(Number),
    });
    expect(plan.shopping.proof.kind).toBe('proven');
  });
  test.each(['forecast', 'needs', 'pack', 'charge', 'advise'])('%s alone, as a page and as JSON', async (name) => {
    const page = await run([name, demo, '--runs', '100', '--gig', 'gull-lane']);
    expect([page.code, page.out.length > 200]).toEqual([0, true]);
    const json = await run([name, demo, '--runs', '100', '--gig', 'gull-lane', '--json']);
    expect(JSON.parse(json.out)).toMatchObject({ today: '2026-06-02', runs: 100 });
  });
  test('shop shows the curve of cost against risk, falling risk for rising money', async () => {
    const { out } = await run(['shop', demo, '--runs', '300', '--json']);
    const { curve, shopping } = JSON.parse(out) as { curve: { total: number; chance: number }[]; shopping: { chanceElsewhere: number } };
    expect(curve.length).toBeGreaterThan(3);
    for (const [i, point] of curve.entries()) {
      const before = curve[i - 1];
      if (before !== undefined) expect(point.total > before.total && point.chance > before.chance).toBe(true);
    }
    expect(shopping.chanceElsewhere).toBeGreaterThan(0.7);
  });
  test('a budget that is too small is refused with the nearest plan', async () => {
    const { code, out } = await run(['shop', demo, '--runs', '200', '--budget', '0']);
    expect(code).toBe(1);
    expect(out).toContain('budget');
  });
});

test('a change of mind stands beside the gig as it is; everybody keeps their luck', async () => {
  const { code, out } = await run(['what-if', demo, '--gig', 'harbour-day', '--artists', '2', '--runs', '300', '--json']);
  expect(code).toBe(0);
  const { before, after } = JSON.parse(out) as Record<
    'before' | 'after',
    { forecast: { served: { mean: number }; arrived: { mean: number } }; quote: number }
  >;
  expect(after.forecast.served.mean).toBeGreaterThan(before.forecast.served.mean + 10);
  expect(after.quote).toBeGreaterThan(before.quote);
  expect((await run(['what-if', demo, '--gig', 'harbour-day', '--without', 'moon'])).err).toContain('Not on the menu: moon');
  expect((await run(['what-if', demo, '--gig', 'harbour-day'])).code).toBe(2);
});

describe('what is wrong is said', () => {
  test('unknown command, flag, number: exit 2', async () => {
    expect((await run(['dance'])).code).toBe(2);
    expect((await run(['plan', demo, '--loud'])).code).toBe(2);
    expect((await run(['plan', demo, '--runs', '1.5'])).err).toContain('--runs takes a whole number');
    expect((await run(['plan'])).code).toBe(2);
    expect((await run([])).code).toBe(2);
  });
  test('a file that is not there, a gig that is not there: exit 1 and a sentence', async () => {
    expect(await run(['plan', 'nowhere.yaml'])).toMatchObject({ code: 1, err: expect.stringContaining('cannot be read') });
    expect(await run(['plan', demo, '--gig', 'moon'])).toMatchObject({ code: 1, err: expect.stringContaining('There is no gig "moon"') });
  });
  test('check lists every problem with its line', async () => {
    const text = (await readFile(join(root, demo), 'utf8'))
      .replace('figure: dog', 'figure: dragon-of-nowhere')
      .replace('currency: GBP', 'currency: EUR');
    const { code, out } = await run(['check', 'book.yaml'], { 'book.yaml': text });
    expect(code).toBe(1);
    expect(out).toMatch(/book\.yaml:\d+:\d+: .*dragon-of-nowhere/);
    expect((await run(['check', demo])).code).toBe(0);
  });
});

describe('import-prices', () => {
  test('every line of each demo list is accounted for, and nothing is written without --save', async () => {
    for (const supplier of ['fernhallow', 'brackwater', 'ropewalk']) {
      const { out, written } = await run(['import-prices', demo, supplier, `demo/prices/${supplier}.csv`, '--json']);
      const read = JSON.parse(out) as { offers: unknown[]; unmatched: unknown[]; rows: { all: number; above: number; blank: number } };
      const heading = 1;
      expect(read.offers.length + read.unmatched.length).toBe(read.rows.all - read.rows.above - read.rows.blank - heading);
      expect(read.offers.length).toBeGreaterThan(20);
      expect(written.size).toBe(0);
    }
  });
});

test('every command has help', async () => {
  for (const command of commands) expect((await run([command.name, '--help'])).out).toContain(command.says);
  expect(commands.length).toBeGreaterThan(7);
});
