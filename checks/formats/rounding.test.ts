// Rounding modes after IEEE 754 and ISO 80000-1, annex B; M. Fowler, Patterns of Enterprise Application Architecture, 2002, Money (from memory): 5 cents
// split 3:7 are 2 and 3. Tax: Australia, GST Act 1999, s 9-90; New Zealand, GST Act, s 19O; United States, Streamlined Sales and Use Tax Agreement,
// s 324; United Kingdom, Notice 700, para 17.5, and VATREC12010. Amounts here are thousandths where a rule needs them.
import { money, type Rounding, scale, split } from '@twistwright/units';
import { describe, expect, test } from 'vitest';

const tenths = (values: readonly number[], rounding: Rounding) => values.map((value) => scale(money(value * 10), 1, 10, rounding));

test.each<[Rounding, readonly number[]]>([
  ['half-even', [2, 4, -2]],
  ['half-up', [3, 4, -3]],
  ['half-down', [2, 3, -2]],
  ['up', [3, 4, -3]],
  ['down', [2, 3, -2]],
])('2.5, 3.5 and -2.5, %s', (rounding, expected) => {
  expect(tenths([2.5, 3.5, -2.5], rounding)).toEqual(expected);
});
test('2.675 is 2.68 half up, which binary fractions do not give', () => {
  expect(scale(money(2675), 1, 10)).toBe(268);
  expect(Math.round(2.675 * 100)).toBe(268);
  expect((2.675).toFixed(2)).toBe('2.67');
});

describe('tax on one supply, in thousandths', () => {
  const tax = (thousandths: number, rounding: Rounding) => scale(money(thousandths), 1, 10, rounding);
  test('0.105: Australia and the Streamlined agreement round up to 0.11, New Zealand drops the half', () => {
    expect([tax(105, 'half-up'), tax(105, 'half-down')]).toEqual([11, 10]);
    expect([tax(106, 'half-down'), tax(104, 'half-up')]).toEqual([11, 10]);
  });
  test('the United Kingdom lets an invoice trader round the total down to a whole penny', () => {
    expect(tax(109, 'down')).toBe(10);
  });
  test('Australia: rounding once and rounding each line may differ, and both are allowed', () => {
    const lines = [105, 105, 105];
    const once = scale(money(lines.reduce((sum, line) => sum + line, 0)), 1, 10);
    const each = lines.reduce<number>((sum, line) => sum + scale(money(line), 1, 10), 0);
    expect([once, each]).toEqual([32, 33]);
  });
});

test.each<[string, number, readonly number[], readonly number[]]>([
  ['Fowler', 5, [3, 7], [2, 3]],
  ['a third each', 100, [1, 1, 1], [34, 33, 33]],
  ['halves of an odd sum', 1003, [50, 50], [502, 501]],
  ['a sum that is owed', -100, [1, 1, 1], [-34, -33, -33]],
])('splitting: %s', (_, total, weights, parts) => {
  expect(split(money(total), weights)).toEqual(parts);
});
