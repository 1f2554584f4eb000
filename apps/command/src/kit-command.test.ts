import { readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { date } from '@twistwright/units';
import { expect, test } from 'vitest';
import { runCommand } from './run-command.ts';

const root = resolve(import.meta.dirname, '../../..');
async function run(args: readonly string[]) {
  const said = { out: '', err: '' };
  const written = new Map<string, string | Uint8Array>();
  const code = await runCommand(args, {
    readFile: (path) => readFile(join(root, path), 'utf8'),
    writeFile: async (path, content) => void written.set(path, content),
    out: (text) => {
      said.out += text;
    },
    err: (text) => {
      said.err += text;
    },
    isTerminal: false,
    today: () => date('2026-06-02'),
    now: () => 0,
    solver: () => {
      throw new Error('a kit needs no solver of its own');
    },
  });
  return { code, ...said, written };
}
const kit = ['kit', 'demo/book.yaml', '--budget', '70', '--hours', '8', '--most-colours', '6'];

test('papers, page and CSV of one plan; the list is on the page and in the files', async () => {
  const { code, out, err, written } = await run([
    ...kit,
    '--pdf',
    'a.pdf',
    '--learn',
    'b.pdf',
    '--html',
    'c.html',
    '--csv',
    'd.csv',
    '--paper',
    'letter',
    '--name',
    'For Bea',
  ]);
  expect([code, err]).toEqual([0, 'Wrote a.pdf.\nWrote b.pdf.\nWrote c.html.\nWrote d.csv.\n']);
  for (const file of ['a.pdf', 'b.pdf'])
    expect(
      Buffer.from(written.get(file) ?? '')
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-');
  const [page, csv] = [String(written.get('c.html')), String(written.get('d.csv'))];
  expect(page).toContain('<title>For Bea: ');
  const bought = [...csv.matchAll(/^,[^,]*,([^,]+),\d+,\d+,/gmu)].map((match) => match[1] ?? '');
  expect(bought.length).toBeGreaterThan(5);
  for (const name of bought) {
    expect(page).toContain(`<b>${name}</b>`);
    expect(out.toLowerCase()).toContain(name.toLowerCase());
  }
  // What a newcomer needs from the first gig, and what can wait.
  expect(bought).toEqual(expect.arrayContaining(['Pump', 'Black marker', 'Scissors']));
  for (const later of ['Business card', 'Apron', 'First aid kit']) expect(bought).not.toContain(later);
});
test('growth: when the kit pays for itself, the second pump first, a better bag last, all with their spread', async () => {
  const { code, out } = await run([...kit, '--fee', '25', '--tip', '0.50', '--gigs-per-week', '1', '--gig-cost', '4']);
  expect(code).toBe(0);
  expect(out).toMatch(/The kit has paid for itself after \d+ gigs?( \(\d+ to \d+\))?\./);
  expect(out).toMatch(/spare pump for £8\.95: in week \d+ \(\d+ to \d+\), after \d+ gigs?/);
  expect(out).toMatch(/apron for £24\.50: in week/);
  expect(out.indexOf('spare pump for')).toBeLessThan(out.indexOf('apron for'));
  const json = JSON.parse((await run([...kit, '--fee', '0', '--json'])).out);
  expect(json.growth.paidBack).toEqual({ chance: 0 });
  expect(json.kit.spent).toBeLessThanOrEqual(7000);
});
test('what makes no sense is a sentence', async () => {
  expect(await run([...kit, '--paper', 'A5'])).toMatchObject({ code: 2, err: '--paper is A4 or Letter, not "A5".\n' });
  expect(await run([...kit, '--fee', '1.2345'])).toMatchObject({ code: 2, err: '--fee takes an amount of GBP, not "1.2345".\n' });
  expect(await run([...kit, '--gigs-per-week', '99'])).toMatchObject({ code: 1, err: expect.stringContaining('Gigs per week is 99.') });
  const poor = await run(['kit', 'demo/book.yaml', '--budget', '5', '--hours', '8']);
  expect([poor.code, poor.err]).toEqual([1, expect.stringContaining('A kit works from £')]);
});
