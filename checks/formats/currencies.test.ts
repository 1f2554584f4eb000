// ISO 4217, minor units: table A.1 of the ISO 4217 maintenance agency as in datasets/currency-codes of 2026-02-01.
import { decimalOf, exponentOf, money, parseMoney, showMoney } from '@twistwright/units';
import { expect, test } from 'vitest';

const digits: Readonly<Record<number, readonly string[]>> = {
  0: ['JPY', 'KRW', 'VND', 'CLP'],
  2: ['USD', 'EUR', 'GBP', 'CHF', 'CNY'],
  3: ['KWD', 'BHD', 'OMR', 'JOD', 'TND'],
};
const rows = Object.entries(digits).flatMap(([exponent, codes]) => codes.map((code) => [code, Number(exponent)] as const));

test.each(rows)('%s has %i digits after the decimal sign', (code, exponent) => {
  expect(exponentOf(code)).toBe(exponent);
});
test('one amount in three currencies', () => {
  expect(['JPY', 'GBP', 'KWD'].map((code) => decimalOf(money(12_345), code))).toEqual(['12345', '123.45', '12.345']);
  expect(['JPY', 'GBP', 'KWD'].map((code) => parseMoney('1,250', code))).toEqual([1250, 125_000, 1250]);
  expect(showMoney(money(1250), 'KWD')).toBe('1.250 KWD');
});
