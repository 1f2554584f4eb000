import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const source = new URL('../', import.meta.url);
const files = [
  'recipe.ts',
  ...['notation', 'air', 'sizes', 'learning', 'steps'].flatMap((folder) =>
    readdirSync(new URL(folder, source)).map((name) => `${folder}/${name}`),
  ),
].filter((name) => !name.endsWith('.test.ts'));
const examples = files.flatMap((file) =>
  [...readFileSync(new URL(file, source), 'utf8').matchAll(/@example (.*?) \/\/ -> (.*?)(?: \*\/)?$/gmu)].map((match) => ({
    file,
    call: match[1] ?? '',
    answer: match[2] ?? '',
  })),
);

test('there are examples', () => expect(examples.length).toBeGreaterThan(20));
test.each(examples)('$file: $call', async ({ file, call, answer }) => {
  const scope: Record<string, unknown> = { ...(await import('../sizes/shipped-sizes.ts')), ...(await import(new URL(file, source).href)) };
  const value = (text: string): unknown => new Function(...Object.keys(scope), `return (${text});`)(...Object.values(scope));
  const [given, wanted] = [value(call), value(answer)];
  if (typeof wanted === 'number') expect(given).toBeCloseTo(wanted, 6);
  else expect(given).toEqual(wanted);
});
