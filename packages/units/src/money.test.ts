import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decimalOf, money, parseMoney, scale, showMoney, split } from './money.ts';

test('a split never loses a minor unit', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -1e9, max: 1e9 }),
      fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 1, maxLength: 30 }),
      (total, weights) => {
        expect(split(money(total), weights).reduce<number>((a, b) => a + b, 0)).toBe(total);
      },
    ),
    { seed: 1 },
  );
});
test('text to money and back', () => {
  fc.assert(
    fc.property(fc.integer({ min: -1e12, max: 1e12 }), fc.constantFrom('GBP', 'JPY', 'KWD'), (amount, currency) => {
      expect(parseMoney(decimalOf(money(amount), currency), currency)).toBe(money(amount));
    }),
    { seed: 2 },
  );
  expect(parseMoney('1,234.50', 'GBP')).toBe(123450);
  expect(parseMoney('8,20', 'EUR')).toBe(820);
  expect(['8.2055', '1,23,456.00', '.', ''].map((text) => parseMoney(text, 'EUR'))).toEqual([undefined, undefined, undefined, undefined]);
  expect(parseMoney('eight', 'EUR')).toBeUndefined();
  expect([showMoney(money(123456), 'GBP'), showMoney(money(-5), 'CHF'), showMoney(money(1200), 'JPY')]).toEqual([
    '£1,234.56',
    '-0.05 CHF',
    '¥1,200',
  ]);
});
test('scaling rounds once, half away from zero', () => {
  expect(scale(money(146050), 2500, 10_000)).toBe(36513);
  expect([
    scale(money(25), 1, 10),
    scale(money(-25), 1, 10),
    scale(money(25), 1, 10, 'half-even'),
    scale(money(25), 1, 10, 'half-down'),
  ]).toEqual([3, -3, 2, 2]);
});
