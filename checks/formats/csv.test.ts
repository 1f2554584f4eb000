// Y. Shafranovich, "Common Format and MIME Type for Comma-Separated Values (CSV) Files", RFC 4180, October 2005, section 2 (its samples and rules).
// A cell that a spreadsheet would take for a formula is not in the RFC: that guard is our own rule.
import { readCsv, writeCsv } from '@twistwright/contract';
import fc from 'fast-check';
import { expect, test } from 'vitest';

const cells = (text: string) => {
  const read = readCsv(text, ',');
  return read.ok ? read.value.rows.map((row) => row.cells) : read.error;
};

test('rule 1 and 2: records end with a line break, the last one may or may not', () => {
  expect(cells('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')).toEqual([
    ['aaa', 'bbb', 'ccc'],
    ['zzz', 'yyy', 'xxx'],
  ]);
  expect(cells('aaa,bbb,ccc\r\nzzz,yyy,xxx')).toEqual(cells('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n'));
});
test('rule 4: spaces are part of a field', () => {
  expect(cells(' a , b\r\n')).toEqual([[' a ', ' b']]);
});
test('rule 5: fields may stand in double quotes', () => {
  expect(cells('"aaa","bbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
    ['aaa', 'bbb', 'ccc'],
    ['zzz', 'yyy', 'xxx'],
  ]);
});
test('rule 6: line breaks, quotes and commas in quoted fields; one record of three fields', () => {
  expect(cells('"aaa","b \r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
    ['aaa', 'b \r\nbb', 'ccc'],
    ['zzz', 'yyy', 'xxx'],
  ]);
});
test('rule 7: a quote within is doubled', () => {
  expect(cells('"aaa","b""bb","ccc"')).toEqual([['aaa', 'b"bb', 'ccc']]);
});
test('what is written has CRLF between records and quotes only where they are needed', () => {
  expect(
    writeCsv([
      ['aaa', 'b"bb', 'c,c'],
      ['d\r\nd', ' e ', ''],
    ]),
  ).toBe('aaa,"b""bb","c,c"\r\n"d\r\nd", e ,\r\n');
});
test('law: what is written reads back, but for the guard against formulas', () => {
  const cell = fc.oneof(fc.string(), fc.constantFrom('a,b', 'a"b', 'a\r\nb', ';', '-3', '+4.50'));
  fc.assert(
    fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 6 }), (rows) => {
      const guarded = rows.map((row) =>
        row.map((text) => (/^[=+\-@\t\r]/.test(text) && !/^[+-]?\d+(?:[.,]\d+)?$/.test(text) ? `'${text}` : text)),
      );
      expect(cells(writeCsv(rows))).toEqual(guarded);
    }),
    { numRuns: 500, seed: 4180 },
  );
});
test('own rule: no cell is a formula for a spreadsheet, and numbers stay numbers', () => {
  expect(writeCsv([['=HYPERLINK("x")', '+1', '-2,50', '@a', '-a', '\tb']])).toBe('"\'=HYPERLINK(""x"")",+1,"-2,50",\'@a,\'-a,\'\tb\r\n');
});
