import type { Problem } from '@twistwright/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readBook, readPlacedBook } from './read-book.ts';

const small = `book: 1
business: { name: Six Turns, currency: GBP, zone: Europe/London }
items:
  - { id: 260-red, kind: balloon, size: 260, colour: red }
`;
const problemsIn = (text: string, name = 'book.yaml', maxBytes?: number): readonly Problem[] => {
  const read = readBook(text, { name, ...(maxBytes === undefined ? {} : { maxBytes }) });
  return read.ok ? [] : read.error;
};
const brief = (problems: readonly Problem[]) => problems.map(({ code, line, column, sentence }) => `${line}:${column} ${code} ${sentence}`);

describe('what is taken', () => {
  test('lists that are left out are empty, a key with nothing after it is not there, a number stands for the text that is meant', () => {
    const read = readBook(`${small}figures:\n`, { name: 'book.yaml' });
    expect(read).toMatchObject({ ok: true, value: { items: [{ id: '260-red', size: '260' }], figures: [], gigs: [] } });
  });
  test('JSON is told by its name or by its first brace, and a mark at the start of the file is no matter', () => {
    const json = '{"book": 1, "business": {"name": "Six Turns", "currency": "GBP", "zone": "UTC"}}';
    expect(readBook(json, { name: 'book.json' }).ok).toBe(true);
    expect(readBook(`\uFEFF  ${json}`, { name: 'book' }).ok).toBe(true);
  });
  test('what is written once can be named and used again', () => {
    const text = `${small}  - &blue { id: 260-blue, kind: balloon, size: "260", colour: &c blue }\ncolours:\n  - { id: *c, name: *c }\n`;
    expect(readBook(text, { name: 'a.yaml' })).toMatchObject({ ok: true, value: { colours: [{ id: 'blue', name: 'blue' }] } });
  });
});

describe('each problem has its place, a sentence and what to do, and all are said at once', () => {
  test('keys, kinds, numbers, days, choices', () => {
    const text = `book: 1
business: { name: Six Turns, currency: pounds, zone: Europe/London }
gigs:
  - id: fair
    name: Summer fair
    kind: lime
    day: 2026-02-30
    starts: 25:00
    ends: 16:00
    artists: tansy
    guest: 70
    menu: [{ figure: dog, share: .inf }]
    agreement: { state: agreed, fee: 12.5 }
`;
    expect(
      problemsIn(text).map(({ code, path, line, column, sentence, todo }) => [code, path.join('.'), line, column, sentence, todo]),
    ).toEqual([
      ['value.form', 'business.currency', 2, 40, '"currency" of "business" cannot be "pounds".', 'It takes: ISO 4217 code.'],
      [
        'value.choice',
        'gigs.0.kind',
        6,
        11,
        '"kind" of gig "fair" cannot be "lime".',
        '"line" was meant? Possible: line, party, tables, strolling, made to order, class.',
      ],
      ['value.form', 'gigs.0.day', 7, 10, '"day" of gig "fair" cannot be "2026-02-30".', 'It takes: Day, YYYY-MM-DD.'],
      [
        'value.form',
        'gigs.0.starts',
        8,
        13,
        '"starts" of gig "fair" cannot be "25:00".',
        'It takes: Wall-clock time, HH:MM from 00:00 to 24:00.',
      ],
      ['value.kind', 'gigs.0.artists', 10, 14, '"artists" of gig "fair" has to be a list, not "tansy".', undefined],
      ['key.unknown', 'gigs.0.guest', 11, 5, 'Gig "fair" has no key "guest".', '"guests" was meant?'],
      [
        'value.number',
        'gigs.0.menu.0.share',
        12,
        34,
        '"share" of entry 1 of "menu" of gig "fair" is Infinity; it has to be a finite number.',
        undefined,
      ],
      [
        'value.kind',
        'gigs.0.agreement.fee',
        13,
        38,
        '"fee" of "agreement" of gig "fair" has to be a whole number, not 12.5.',
        'It takes: Money, whole minor units (pence, cents, yen).',
      ],
    ]);
  });
  test.each([
    ['count: 0', '6:46 value.range "count" of need "n" is 0; it has to be at least 1.'],
    ['count: -3', '6:46 value.range "count" of need "n" is -3; it has to be at least 1.'],
    ['count: .nan', '6:46 value.number "count" of need "n" is NaN; it has to be a finite number.'],
    ['count: 1e400', '6:46 value.number "count" of need "n" is Infinity; it has to be a finite number.'],
    ['count: many', '6:46 value.kind "count" of need "n" has to be a number, not "many".'],
    ['why: none', '6:5 value.missing Need "n" has no "count".'],
  ])('a need with %s', (part, expected) => {
    expect(brief(problemsIn(`${small}needs:\n  - { id: n, item: a, by: 2026-06-01, ${part} }`))).toEqual([expected]);
  });
  test('a colour that YAML takes for a comment is not lost without a word', () => {
    expect(brief(problemsIn(`${small}colours:\n  - id: gold\n    name: gold\n    body: #b8923a\n`))).toEqual([
      '8:5 value.missing Nothing is read after "body": in YAML #b8923a is a comment.',
    ]);
  });
  test('a book of another version, and no book', () => {
    expect(brief(problemsIn('{"book": 2, "business": {"name": "a", "currency": "GBP", "zone": "UTC"}}'))).toEqual([
      '1:10 file.version This book is of version 2; version 1 can be read.',
    ]);
    expect(problemsIn('just words').map((problem) => problem.code)).toEqual(['file.version']);
    expect(problemsIn('  \n').map((problem) => problem.code)).toEqual(['file.empty']);
  });
});

test('problems that are found in the book later get their places in its text', () => {
  const read = readPlacedBook(`${small}figures:\n  - { id: dog, name: dog, colourways: [] }\ngigs: []\n`, { name: 'a.yaml' });
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  const at = (...path: (string | number)[]) => {
    const { line, column } = read.value.placed({ code: 'item.unknown', path, sentence: '', weight: 'error' });
    return `${line}:${column}`;
  };
  expect([at('items', 0, 'size'), at('items', 0), at('figures', 0, 'colourways'), at('figures', 0, 'minutes'), at()]).toEqual([
    '4:41',
    '4:5',
    '6:39',
    '6:5',
    '1:1',
  ]);
});

describe('files that are meant to harm, or came to harm', () => {
  test.each<[string, string, string]>([
    ['a cycle through an anchor', `${small}figures: &f\n  - *f\n`, 'file.cycle'],
    ['a cycle that goes deeper', `${small}settings: &s\n  line:\n    joining: *s\n`, 'file.cycle'],
    ['an alias of nothing', `${small}figures: *f\n`, 'file.syntax'],
    ['a merge key', `${small}settings:\n  <<: { line: {} }\n`, 'file.merge-key'],
    ['a tag', `${small}settings: !secret {}\n`, 'file.tag'],
    ['a key twice, in YAML', `${small}items: []\n`, 'file.duplicate-key'],
    ['a key twice, in JSON', '{"book": 1, "book": 1}', 'file.duplicate-key'],
    ['the key of a prototype', `${small}__proto__: { a: 1 }\n`, 'key.form'],
    ['a key that is a list', `${small}? [a, b]\n: 1\n`, 'key.form'],
    ['a key twice where keys are free', `${small}settings: { charge: { byKind: { line: {}, line: {} } } }`, 'file.duplicate-key'],
    ['unclosed YAML', `${small}settings: { line: `, 'file.syntax'],
    ['unclosed JSON', '{"book": 1, "items": [', 'file.syntax'],
    ['a comma too many', '{"book": 1,}', 'file.syntax'],
    ['a line end in a text', '{"book": "1\n"}', 'file.syntax'],
    ['deep lists', '['.repeat(1_000_000), 'file.too-deep'],
    ['deep lists that close', `a: ${'['.repeat(150)}${']'.repeat(150)}`, 'file.too-deep'],
    ['deep JSON', '{"a":'.repeat(100_000), 'file.too-deep'],
    ['deep entries on one line', '- '.repeat(1_000_000), 'file.too-deep'],
    ['deep keys by indent', Array.from({ length: 1500 }, (_, depth) => `${' '.repeat(depth)}a:`).join('\n'), 'file.too-deep'],
    ['many aliases', `a: &a [1]\nb: [${'*a,'.repeat(2000)}]`, 'file.alias'],
    [
      'a billion laughs',
      [
        'a: &a [x,x,x,x,x,x,x,x,x]',
        ...'bcdefghi'.split('').map((key, index) => `${key}: &${key} [${`*${'abcdefgh'[index]},`.repeat(9)}]`),
      ].join('\n'),
      'file.alias',
    ],
    ['50 MB', 'x'.repeat(50_000_000), 'file.too-big'],
    ['50 MB of JSON', `{"book": "${'x'.repeat(50_000_000)}"}`, 'file.too-big'],
  ])('%s is refused', (_, text, code) => {
    const problems = problemsIn(text, text.startsWith('{') ? 'a.json' : 'a.yaml');
    expect(problems.map((problem) => problem.code)).toContain(code);
  });
  test('a hundred thousand bad entries give a list that ends', () => {
    const problems = problemsIn(`{"book":1,"moves":[${'{"id":3},'.repeat(100_000)}{}]}`, 'a.json');
    expect(problems).toHaveLength(201);
    expect(problems.at(-1)).toMatchObject({ code: 'file.more', sentence: 'There are more problems than these.' });
  });
  test('twenty thousand unknown keys in one place are answered', () => {
    const keys = Array.from({ length: 20_000 }, (_, index) => `  key${index}: 1`).join('\n');
    expect(problemsIn(`${small}settings:\n${keys}\n`).length).toBeGreaterThan(0);
  });
  test('law: whatever the text, there is an answer, and every problem is a sentence', () => {
    const bits = fc.constantFrom(
      'book: 1\n',
      'items:\n',
      '  - ',
      '{',
      '}',
      '[',
      ']',
      ': ',
      ', ',
      '"',
      "'",
      '&a ',
      '*a',
      '|\n',
      '\n',
      '  ',
      '#',
      '? ',
      '!',
      'id',
      '1',
      '-',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(bits, { maxLength: 30 }).map((parts) => parts.join('')),
        ),
        (text) => {
          for (const name of ['a.yaml', 'a.json'])
            for (const problem of problemsIn(text, name)) expect(problem.sentence).toMatch(/^\S[\s\S]*[.?]$/);
        },
      ),
      { numRuns: 2000, seed: 7 },
    );
  });
});
