import { globSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import * as repertoire from './index.ts';

/** Examples in the comments of the whole package: `@example call // -> answer`. */
const folder = import.meta.dirname;
const files = globSync('**/*.ts', { cwd: folder }).filter((name) => !name.endsWith('.test.ts'));
const lines = files.flatMap((file) =>
  [...readFileSync(`${folder}/${file}`, 'utf8').matchAll(/@example (.*?)(?: \*\/)?$/gmu)].map((match) => {
    const [call = '', answer] = (match[1] ?? '').split(' // -> ');
    return { file, call, answer };
  }),
);

test('there are examples in every part', () => {
  const parts = new Set(lines.map(({ file }) => file.split('/')[0]));
  for (const part of ['notation', 'air', 'sizes', 'learning', 'steps', 'frames']) expect(parts).toContain(part);
});
test.each(lines)('$file: $call', async ({ file, call, answer }) => {
  expect(answer).toBeTypeOf('string');
  const scope: Record<string, unknown> = { ...repertoire, ...(await import(`${folder}/${file}`)) };
  const value = (text: string): unknown => new Function(...Object.keys(scope), `return (${text});`)(...Object.values(scope));
  const [given, wanted] = [value(call), value(answer ?? '')];
  if (typeof wanted === 'number') expect(given).toBeCloseTo(wanted, 6);
  else expect(given).toEqual(wanted);
});
