import { readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { date } from '@twistwright/units';
import { describe, expect, test } from 'vitest';
import { runCommand } from './run-command.ts';

const root = resolve(import.meta.dirname, '../../..');
async function run(args: readonly string[], files: Readonly<Record<string, string>> = {}) {
  const said = { out: '', err: '' };
  const written = new Map<string, string | Uint8Array>();
  const code = await runCommand(args, {
    readFile: async (path) => files[path] ?? (await readFile(join(root, path), 'utf8')),
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
  // The same money on the page, shop by shop, as on the list; a comma is a decimal sign too.
  const paid = [...csv.matchAll(/^,([^,]+),(?:"[^"]*"|[^,]+),\d*,\d*,(\d+\.\d\d),/gmu)];
  for (const shop of new Set(paid.map(([, name]) => name))) {
    const pence = paid.reduce((sum, [, name, price]) => sum + (name === shop ? Math.round(100 * Number(price)) : 0), 0);
    expect(out.slice(out.indexOf(`${shop}:`))).toMatch(new RegExp(`^[^:]+:\n(?:.+\n)+? +in all +${(pence / 100).toFixed(2)}\n`, 'u'));
  }
  expect((await run(kit.map((word) => (word === '70' ? '70,00' : word)))).out).toBe(out);
  // What a newcomer needs from the first gig, and what can wait.
  expect(bought).toEqual(expect.arrayContaining(['Pump', 'Black marker', 'Scissors']));
  for (const later of ['Business card', 'Apron', 'First aid kit']) expect(bought).not.toContain(later);
});
test('growth: when the kit pays for itself, the second pump first, a better bag last, all with their spread', async () => {
  const { code, out } = await run([...kit, '--fee', '25', '--tip', '0.50', '--gigs-per-week', '1', '--gig-cost', '4']);
  expect(code).toBe(0);
  expect(out).toMatch(/The kit has paid for itself after \d+ gigs?( \(\d+ to \d+\))?\./);
  expect(out).toMatch(/spare pump +8\.95 +in week \d+ \(\d+ to \d+\), after \d+ gigs?/);
  expect(out).toMatch(/apron +24\.50 +in week/);
  expect(out.indexOf('spare pump')).toBeLessThan(out.indexOf('apron '));
  const json = JSON.parse((await run([...kit, '--fee', '0', '--json'])).out);
  expect(json.growth.paidBack).toEqual({ chance: 0 });
  expect(json.kit.spent).toBeLessThanOrEqual(7000);
});
describe('what cannot be is a sentence, with the nearest that is possible', () => {
  const spoil = async (change: (book: string) => string) => {
    const book = change(await readFile(join(root, 'demo/book.yaml'), 'utf8'));
    const plain = ['kit', 'demo/book.yaml', '--budget', '45', '--hours', '8'];
    const json = JSON.parse((await run([...plain, '--json'], { 'demo/book.yaml': book })).out);
    return { ...(await run(plain, { 'demo/book.yaml': book })), json };
  };
  const without = (key: string) => (book: string) => {
    const at = book.indexOf('colourways:', book.indexOf(`- id: ${key}\n`));
    return `${book.slice(0, at)}colourways: []\n${book.slice(book.indexOf('    minutes:', at))}`;
  };
  test.each([
    ['a role without a colour', without('dachshund'), 'Figure "dachshund" takes balloons and has no colourway.', 'Without Dachshund.'],
    [
      'an offer with a count of nought',
      (book: string) => book.replace('item: 260-red, count: 100', 'item: 260-red, count: 0'),
      '"count" of offer "fernhallow-260-red-100" is 0; it has to be at least 1.',
      'The nearest that is possible without that:',
    ],
    [
      'two currencies',
      (book: string) => book.replace('name: Brackwater Wholesale', 'name: Brackwater Wholesale\n    currency: EUR'),
      'Supplier "brackwater" has prices in EUR; all money of this book is in GBP.',
      'Without Brackwater Wholesale.',
    ],
  ])('%s', async (_, change, sentence, nearest) => {
    const { code, err, out, json } = await spoil(change);
    expect([code, err]).toEqual([1, expect.stringContaining(sentence)]);
    expect(out).toContain(nearest);
    expect(out).toMatch(/buys \d+ bags: \d+ figures, and \d+ % of the requests are met/);
    expect(json.problems.some((problem: { readonly sentence: string }) => sentence.includes(problem.sentence))).toBe(true);
    expect(json.nearest.plan.kit.met).toBeGreaterThan(0.3);
  });
  test('a budget below the must-haves: the least that is enough, and what it buys', async () => {
    const { code, err, out } = await run(['kit', 'demo/book.yaml', '--budget', '5', '--hours', '8']);
    expect([code, err]).toEqual([1, expect.stringContaining('Fernhallow Balloon Post takes orders from £15.00')]);
    expect(out).toMatch(/^The nearest that is possible: With £\d+\.\d\d instead of £5\.00\./);
  });
  test('a figure that nobody can make is left out, and said so; the rest is planned; so is a shop that takes no order as small', async () => {
    const plain = await readFile(join(root, 'demo/book.yaml'), 'utf8');
    const book = plain.replaceAll('item: round-5-red-spots, count', 'item: round-5-red, count');
    const { code, out } = await run(['kit', 'demo/book.yaml', '--budget', '45', '--hours', '8'], { 'demo/book.yaml': book });
    const said = out.replaceAll('\n', ' ');
    expect(code).toBe(0);
    expect(said).toMatch(/cannot be made from any offer: no offer has round-5 with spots in red\. Add an offer/);
    expect(said).toMatch(/Brackwater Wholesale takes orders from £30\.00; .* nothing is bought there\. It can be from £\d+\.\d\d\./);
  });
  test('what is assumed of guests whose colour is missing can be set, and is said', async () => {
    const { out } = await run([...kit, '--other-colour', '0']);
    expect(out.replaceAll('\n', ' ')).toContain('assumed that 0 of 100 guests whose colours are missing take others');
    expect(await run([...kit, '--other-colour', '120'])).toMatchObject({ code: 2, err: '--other-colour is from 0 to 100, not 120.\n' });
  });
});
test('what makes no sense is a sentence', async () => {
  expect(await run([...kit, '--paper', 'A5'])).toMatchObject({ code: 2, err: '--paper is A4 or Letter, not "A5".\n' });
  expect(await run([...kit, '--fee', '1.2345'])).toMatchObject({
    code: 2,
    err: '--fee takes an amount of GBP such as 12.50, not "1.2345".\n',
  });
  expect(await run([...kit, '--fee', '-3'])).toMatchObject({ code: 2, err: '--fee takes an amount of GBP such as 12.50, not "-3".\n' });
  expect(await run([...kit, '--seed', '-1'])).toMatchObject({
    code: 2,
    err: '--seed takes a whole number from 0 to 4294967295, not -1.\n',
  });
  expect(await run([...kit, '--set-aside', '150'])).toMatchObject({ code: 2, err: '--set-aside is from 0 to 100, not 150.\n' });
  expect(await run([...kit, '--without', '260-red,mauve'])).toMatchObject({
    code: 2,
    err: '--without names "mauve", which is no offer, item or tool of the book.\n',
  });
  expect(await run([...kit, '--gigs-per-week', '99'])).toMatchObject({ code: 1, err: expect.stringContaining('Gigs per week is 99.') });
  const poor = await run(['kit', 'demo/book.yaml', '--budget', '5', '--hours', '8']);
  expect([poor.code, poor.err]).toEqual([1, expect.stringContaining('A kit works from £')]);
});
