import { globSync, readFileSync } from 'node:fs';
import * as books from '@twistwright/books';
import * as units from '@twistwright/units';
import { expect, test } from 'vitest';
import * as contract from './index.ts';

/** Examples in the comments of this package and of the books: `@example call // -> answer`. */
const folder = import.meta.dirname;
const files = globSync(['**/*.ts', '../../books/src/**/*.ts'], { cwd: folder }).filter((name) => !name.endsWith('.test.ts'));
const examples = files.flatMap((file) =>
  [...readFileSync(`${folder}/${file}`, 'utf8').matchAll(/@example (.*?) \/\/ -> (.*?)(?: \*\/)?$/gmu)].map((match) => ({
    file,
    call: match[1] ?? '',
    answer: match[2] ?? '',
  })),
);
const scope: Readonly<Record<string, unknown>> = { ...units, ...books, ...contract };
const answerTo = (text: string): unknown => new Function(...Object.keys(scope), `return (${text});`)(...Object.values(scope));

test('there are examples', () => expect(examples.length).toBeGreaterThanOrEqual(4));
test.each(examples)('$file: $call', ({ call, answer }) => {
  expect(answerTo(call)).toEqual(answerTo(answer));
});
