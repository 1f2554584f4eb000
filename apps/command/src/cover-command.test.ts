import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runCommand } from './run-command.ts';

const bags = `budget: 900
bags:
  - { name: white 260, price: 500 }
  - { name: black 260, price: 400 }
  - { name: red 260, price: 600 }
figures:
  - { name: swan, value: 5, anyOf: [[white 260]] }
  - { name: penguin, value: 4, anyOf: [[white 260, black 260]] }
  - { name: tulip, value: 7, anyOf: [[red 260]] }
`;
async function cover(text: string | Error, ...flags: readonly string[]) {
  const said = { out: '', err: '' };
  const code = await runCommand(['cover', 'bags.yaml', ...flags], {
    readFile: () => (typeof text === 'string' ? Promise.resolve(text) : Promise.reject(text)),
    writeFile: () => Promise.reject(new Error('nothing is written')),
    out: (more) => {
      said.out += more;
    },
    err: (more) => {
      said.err += more;
    },
    isTerminal: false,
    today: () => {
      throw new Error('no day matters');
    },
    now: () => 0,
    solver: () => {
      throw new Error('coverage needs no solver of its own');
    },
  });
  return { code, ...said };
}

test('what to buy, what it makes and what it is worth; amounts as in the file, or as money', async () => {
  expect(await cover(bags)).toEqual({
    code: 0,
    err: '',
    out: `2 of 3 bags for 900 of 900: 2 of 3 figures can be made, worth 9.
Proven: no other purchase for this budget is worth more.
Buy white 260, black 260.
Make swan, penguin.
`,
  });
  expect((await cover(bags, '--currency', 'GBP')).out).toContain('2 of 3 bags for £9.00 of £9.00: ');
  expect(JSON.parse((await cover(bags, '--json')).out)).toMatchObject({ buy: ['white 260', 'black 260'], value: 9, proven: true });
  expect((await cover(bags.replace('budget: 900', 'budget: 0'))).out).toContain('0 of 3 bags for 0 of 0: 0 of 3 figures can be made');
});

test('the example of the documentation says what stands there', async () => {
  const page = readFileSync(new URL('../../../docs/first-kit.md', import.meta.url), 'utf8');
  const block = (language: string): string => new RegExp(`^\`\`\`${language}\\n(.*?)^\`\`\``, 'msu').exec(page)?.[1] ?? '';
  expect((await cover(block('yaml'), '--currency', 'GBP')).out).toBe(block('text'));
});

test.each<[string, string | Error, readonly string[], number, string]>([
  ['a folder', Object.assign(new Error('EISDIR'), { code: 'EISDIR' }), [], 1, 'bags.yaml: The file cannot be read: it is a folder.'],
  ['an empty file', '', [], 1, 'bags.yaml: bags.yaml is empty.'],
  ['a wrong price', bags.replace('price: 400', 'price: -4'), [], 1, 'bags.yaml:4:31: The price of bag 2 is -4.'],
  ['no currency', bags, ['--currency', 'pounds'], 2, '--currency takes a code of three letters such as GBP, not "pounds".'],
])('%s is said', async (_, text, flags, code, says) => {
  const said = await cover(text, ...flags);
  expect([said.code, said.out]).toEqual([code, '']);
  expect(said.err).toContain(says);
});
