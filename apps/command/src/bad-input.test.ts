import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type OpenSolver, openSolver } from '@twistwright/solver/node';
import { date } from '@twistwright/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Outside } from './outside.ts';
import { runCommand } from './run-command.ts';

const good = `book: 1
business: { name: A business, currency: GBP, zone: Europe/London }
settings:
  planning: { runs: 200 }
colours:
  - { id: red, name: red }
items:
  - { id: 260-red, kind: balloon, size: 260, colour: red }
figures:
  - id: dog
    name: dog
    recipe: |
      balloon dog: 260 in body
        bubble 3 nose
        bubble 4 body
    minutes: { law: fixed, minutes: 2 }
    colourways: [{ id: red, name: red, fill: { body: red } }]
artists:
  - { id: ada, name: Ada, pace: 1 }
places:
  - { id: home, name: home, kind: home }
suppliers:
  - { id: post, name: Balloon Post, leadWorkingDays: 3, carriage: 395 }
offers:
  - { id: post-red, supplier: post, item: 260-red, count: 100, price: 845 }
gigs:
  - id: fair
    name: a fair
    kind: line
    day: 2027-06-12
    starts: 10:00
    ends: 12:00
    artists: [ada]
    guests: 40
    menu: [{ figure: dog, share: 1 }]
`;

let folder = '';
let solver: OpenSolver | undefined;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'twistwright-'));
});
afterAll(async () => {
  await rm(folder, { recursive: true });
  await solver?.close();
});
interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}
/** Runs the command line on real files; what is written lands on the disk too. */
async function run(...args: readonly string[]): Promise<Ran> {
  const said = { out: '', err: '' };
  const outside: Outside = {
    readFile: (path) => readFile(path, 'utf8'),
    writeFile: (path, content) => writeFile(path, content),
    out: (text) => {
      said.out += text;
    },
    err: (text) => {
      said.err += text;
    },
    isTerminal: false,
    today: () => date('2027-06-01'),
    now: () => performance.now() / 1000,
    solver: () => {
      solver ??= openSolver();
      return solver;
    },
  };
  return { code: await runCommand(args, outside), ...said };
}
async function written(name: string, text: string): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, text);
  return path;
}
const flat = (text: string): string => text.replace(/\s+/g, ' ');
const lineOf = (text: string, part: string): number => text.slice(0, text.lastIndexOf(part)).split('\n').length;
/** The good book with one thing changed; throws if there is nothing to change. */
function bookWith(from: string | RegExp, to: string): string {
  const text = good.replace(from, to);
  if (text === good) throw new Error(`nothing like ${String(from)} in the book`);
  return text;
}

test('the book that all of this begins with is in order and is planned', async () => {
  const path = await written('good.yaml', good);
  expect(await run('check', path)).toEqual({ code: 0, out: 'The book is in order.\n', err: '' });
  expect((await run('plan', path)).code).toBe(0);
});

/** What is wrong, the book, the text at whose line it is said to be, what has to be said, and what to do. */
const books: readonly (readonly [what: string, text: () => string, where: string, says: string, todo: string])[] = [
  [
    'an item nobody knows',
    () => bookWith('item: 260-red', 'item: 260-blue'),
    'item: 260-blue',
    'names the item "260-blue"',
    'Add it to "items"',
  ],
  ['a figure nobody knows', () => bookWith('figure: dog', 'figure: cat'), 'figure: cat', 'names the figure "cat"', 'Add it to "figures"'],
  ['a size code nobody knows', () => bookWith('size: 260', 'size: 261'), 'size: 261', '"261"', 'sizes'],
  ['an artist nobody knows', () => bookWith('[ada]', '[bo]'), '[bo]', '"bo"', 'Add it to "artists"'],
  [
    'a recipe that cannot be read',
    () => bookWith('bubble 4 body', 'bubbel 4 body'),
    'recipe:',
    'line 3, column',
    'Perhaps “bubble” is meant',
  ],
  ['guests below nought', () => bookWith('guests: 40', 'guests: -40'), 'guests: -40', '"guests" of gig "fair" is -40', 'at least 0'],
  ['a bag of less than nothing', () => bookWith('count: 100', 'count: -100'), 'count: -100', 'is -100', 'at least 1'],
  ['a price below nought', () => bookWith('price: 845', 'price: -845'), 'price: -845', 'is -845', 'at least 0'],
  ['gigs in the past only', () => bookWith('2027-06-12', '2027-05-12'), '2027-05-12', 'There is no gig from 2027-06-01 on.', 'Add a gig'],
  ['a day that does not exist', () => bookWith('2027-06-12', '2027-02-30'), '2027-02-30', '"2027-02-30"', 'YYYY-MM-DD'],
  ['a time that does not exist', () => bookWith('starts: 10:00', 'starts: 25:00'), '25:00', '"25:00"', 'HH:MM'],
  ['an end before the start', () => bookWith('ends: 12:00', 'ends: 09:00'), 'ends: 09:00', 'ends at 09:00', 'two gigs'],
  [
    'an hour that clocks jump over',
    () => bookWith('2027-06-12', '2028-03-26').replace('starts: 10:00', 'starts: 01:30'),
    'starts: 01:30',
    'clocks in Europe/London jump over it',
    'Agree on another time',
  ],
  ['a zone nobody knows', () => bookWith('Europe/London', 'Europe/Nowhere'), 'Europe/Nowhere', 'Europe/Nowhere', 'Write it like'],
  ['two currencies', () => bookWith('carriage: 395', 'carriage: 395, currency: USD'), 'currency: USD', 'prices in USD', 'in GBP'],
  ['NaN', () => bookWith('guests: 40', 'guests: .nan'), '.nan', 'is NaN', 'finite number'],
  ['Infinity', () => bookWith('minutes: 2 ', 'minutes: .inf '), '.inf', 'is Infinity', 'finite number'],
  ['a number beyond all numbers', () => bookWith('pace: 1 ', 'pace: 1e999 '), '1e999', 'is Infinity', 'finite number'],
  ['a part that contains itself', () => bookWith('artists:\n', 'kits: &k [*k]\nartists:\n'), '*k', 'would have no end', 'Write out'],
  ['a key nobody knows', () => bookWith('guests: 40', 'gusts: 40'), 'gusts', 'no key "gusts"', '"guests" was meant?'],
  ['two gigs of one id', () => good + good.slice(good.indexOf('  - id: fair')), '', '"fair"', 'id'],
  [
    'a menu nobody can make from what can be bought',
    () => bookWith(/offers:\n.*\n/, ''),
    'menu:',
    'Nothing on the menu of gig "fair" can be made',
    'Add offers',
  ],
  [
    'no offer, some in store, not enough',
    () => `${bookWith(/offers:\n.*\n/, '')}moves: [{ id: m, day: 2027-05-01, item: 260-red, kind: found, place: home, count: 9 }]\n`,
    '',
    'no supplier in the book sells it',
    'Enter an offer',
  ],
  [
    'lead times that miss every gig',
    () => bookWith('leadWorkingDays: 3', 'leadWorkingDays: 60'),
    'day: 2027-06-12',
    'no order placed now can arrive in time',
    'fetch it from a counter',
  ],
  [
    'a budget of zero',
    () => bookWith('runs: 200', 'runs: 200, budget: 0'),
    'budget: 0',
    'A budget of £0.00 does not buy what is short',
    'Raise the budget',
  ],
  ['nothing at all', () => '', '', 'is empty', 'A book begins with'],
  ['no book', () => 'a letter, not a book', 'a letter', 'This is no book', 'Begin with'],
  ['a book of another version', () => bookWith('book: 1', 'book: 2'), 'book: 2', 'is of version 2', 'version 1 can be read'],
  ['50 MB', () => `book: 1\nnotes: ${'x'.repeat(50_000_000)}\n`, '', 'has 50000016 bytes', 'the right file'],
];
describe('bad books: where, what, what to do; exit code 1; nothing hangs', () => {
  test.each(books)('%s', { timeout: 30_000 }, async (what, text, where, says, todo) => {
    const path = await written(`${what.replaceAll(' ', '-')}.yaml`, text());
    const { code, out, err } = await run('plan', path);
    const said = flat(err + out);
    expect(code).toBe(1);
    if (where !== '') expect(said).toMatch(new RegExp(`:${lineOf(text(), where)}:\\d+:`));
    expect(said).toContain(says);
    expect(said).toContain(todo);
    expect(said).not.toMatch(/undefined|\[object|Error:| at \S+\.ts/);
  });
  test('a piece that does not fit is noted with what would put it right, and the rest is planned', async () => {
    const path = await written('long.yaml', bookWith('bubble 4 body', 'bubble 90 body'));
    const { code, out, err } = await run('plan', path);
    const line = lineOf(good, 'recipe:');
    expect(flat(err)).toMatch(
      new RegExp(
        `:${line}:\\d+: note: Recipe of figure "dog", line 3.* runs out of balloon at bubble 2 of 2 .* in are missing. .*Split it after bubble 1`,
      ),
    );
    expect([code, out.includes('will be served')]).toEqual([0, true]);
  });
  test('JSON has NaN no more than YAML, and says where', async () => {
    const path = await written('nan.json', '{"book": 1,\n "gigs": [{"guests": NaN}]}');
    expect(await run('plan', path)).toMatchObject({ code: 1, err: expect.stringMatching(/nan\.json:2:\d+: This is not JSON.*"NaN/) });
  });
  test('a file that is not there, and a folder', async () => {
    expect(await run('plan', join(folder, 'nowhere.yaml'))).toMatchObject({
      code: 1,
      err: expect.stringContaining('there is none of that name'),
    });
    expect(await run('check', folder)).toMatchObject({ code: 1, out: expect.stringContaining('it is a folder') });
  });
  test('the same problems stand in JSON', async () => {
    const path = await written('json.yaml', bookWith('guests: 40', 'guests: -40'));
    const { code, out } = await run('plan', path, '--json');
    expect([code, JSON.parse(out)]).toMatchObject([
      1,
      { problems: [{ code: 'value.range', line: lineOf(good, 'guests: 40'), path: ['gigs', 0, 'guests'] }] },
    ]);
  });
});

/** Words behind a command that make no sense: exit code 2 and a sentence that names the flag. */
const flags: readonly (readonly [args: readonly string[], says: string])[] = [
  [['plan', 'BOOK', '--budget', 'NaN'], '--budget takes an amount of GBP such as 12.50, not "NaN".'],
  [['plan', 'BOOK', '--budget', '-5'], '--budget takes an amount of GBP such as 12.50, not "-5".'],
  [['plan', 'BOOK', '--runs', '0'], '--runs takes a whole number from 1 to 1000000, not 0'],
  [['plan', 'BOOK', '--runs', '-3'], '--runs takes a whole number'],
  [['plan', 'BOOK', '--seed', '1.5'], '--seed takes a whole number'],
  [['plan', 'BOOK', '--risk', '1'], '--risk takes a number from 0 to 0.99, not 1'],
  [['plan', 'BOOK', '--today', '2027-02-30'], '--today takes a day as YYYY-MM-DD, not "2027-02-30"'],
  [['shop', 'BOOK', '--spare-days', '-3'], '--spare-days takes a whole number from 0 to 365, not -3'],
  [['forecast', 'BOOK', '--warm-up', 'Infinity'], '--warm-up takes a number, not "Infinity"'],
  [['what-if', 'BOOK', '--gig', 'fair', '--guests', '3.5'], '--guests takes a whole number'],
  [['what-if', 'BOOK', '--gig', 'fair', '--more-guests', '-50'], 'There cannot be -10 guests: 40 are expected now.'],
  [['what-if', 'BOOK', '--gig', 'fair', '--runs', '0'], '--runs takes a whole number'],
  [['what-if', 'BOOK', '--gig', 'fair', '--hours', '-1'], '--hours takes more than 0'],
  [['plan', 'BOOK', '--loud'], "Unknown option '--loud'"],
];
test.each(flags)('%j is not understood', async (args, says) => {
  const path = await written('flags.yaml', good);
  const { code, err } = await run(...args.map((word) => (word === 'BOOK' ? path : word)));
  expect(code).toBe(2);
  expect(err).toContain(says);
});
test('fewer guests are asked for with a minus', async () => {
  const path = await written('fewer.yaml', good);
  const { code, out } = await run('what-if', path, '--gig', 'fair', '--more-guests', '-30', '--json');
  expect([code, JSON.parse(out).change]).toEqual([0, { guests: 10 }]);
});

describe('a price list of 200,000 lines', () => {
  const rows = Array.from(
    { length: 200_000 },
    (_, i) => `${i % 2 ? 260 : 350},${i % 3 ? 'red' : 'no such colour'},100,${8 + (i % 5)}.45,R${i}`,
  );
  const list = `Size,Colour,Bag,Price,Ref\n${rows.join('\n')}\n`;
  test('is read to the end, every line accounted for, nothing written without being asked', { timeout: 60_000 }, async () => {
    const book = await written('prices.yaml', good);
    const { code, out } = await run('import-prices', book, 'post', await written('prices.csv', list), '--json');
    const read = JSON.parse(out) as { readonly offers: readonly unknown[]; readonly unmatched: readonly unknown[] };
    expect(code).toBe(0);
    expect(read.offers.length).toBeGreaterThan(0);
    expect(read.offers.length + read.unmatched.length).toBe(200_000);
    expect(await readFile(book, 'utf8')).toBe(good);
  });
  test('a supplier nobody knows, and a list without a heading, are refused', async () => {
    const book = await written('prices.yaml', good);
    expect(await run('import-prices', book, 'nobody', await written('some.csv', list.slice(0, 200)))).toMatchObject({
      code: 1,
      err: expect.stringContaining('It has: post.'),
    });
    const { code, err } = await run('import-prices', book, 'post', await written('none.csv', 'one,two\nthree,four\n'));
    expect([code, err.length > 40]).toEqual([1, true]);
    expect(await readFile(book, 'utf8')).toBe(good);
  });
});
