import { expect, test } from 'vitest';
import { commonFlags, readArguments } from './arguments.ts';

test('flags, words and their values', () => {
  const read = readArguments(['book.yaml', '--seed', '7', '--json', '--today', '2026-06-01'], commonFlags);
  expect(
    read.ok && [read.value.words, read.value.number('seed'), read.value.has('json'), read.value.day('today'), read.value.number('runs')],
  ).toEqual([['book.yaml'], 7, true, '2026-06-01', undefined]);
});
test('what makes no sense comes back as a sentence', () => {
  const error = (...args: string[]): string => {
    const read = readArguments(args, commonFlags);
    return read.ok ? '' : read.error;
  };
  expect(error('--seed', 'x')).toBe('--seed takes a number, not "x"');
  expect(error('--today', '2026-02-30')).toBe('--today takes a day as YYYY-MM-DD, not "2026-02-30"');
  expect(error('--colour')).toContain('--colour');
});
