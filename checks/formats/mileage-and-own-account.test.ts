// Mileage: IRS standard rates 2017-2026 (Notice 2026-10 and those before it; Announcement 2022-13 for the second half of 2022); GOV.UK, "Simplified
// expenses if you're self-employed: Vehicles" (45p for the first 10,000 miles, 25p after). Self-employment tax: IRS Publication 517, sample Schedule SE for 2007; wage base 2026.
// Arithmetic on amounts that a business sets itself; nothing here is a rate that the product asserts.
import { add, money, scale } from '@twistwright/units';
import { describe, expect, test } from 'vitest';

describe('miles', () => {
  /** Rates are in tenths of a cent, since some have halves. */
  const atRate = (miles: number, tenthsOfACent: number) => scale(money(tenthsOfACent), miles, 10);
  test.each([
    [2026, 725, 72_500],
    [2025, 700, 70_000],
    [2024, 670, 67_000],
    [2023, 655, 65_500],
    [2021, 560, 56_000],
    [2020, 575, 57_500],
    [2019, 580, 58_000],
    [2018, 545, 54_500],
    [2017, 535, 53_500],
  ])('a thousand business miles in %i', (_, rate, cents) => {
    expect(atRate(1000, rate)).toBe(cents);
  });
  test('two rates in one year: 2022 changed on the first of July', () => {
    expect(add(atRate(400, 585), atRate(600, 625))).toBe(23_400 + 37_500);
  });
  test('one mile at 72.5 cents is 73 cents, rounded once; a thousand are not a thousand times that', () => {
    expect(atRate(1, 725)).toBe(73);
    expect(atRate(1000, 725)).toBe(72_500);
  });
  test('United Kingdom: 11,000 miles are 4,500 and 250 pounds', () => {
    const first = scale(money(45), 10_000, 1);
    const after = scale(money(25), 1000, 1);
    expect([first, after, add(first, after)]).toEqual([450_000, 25_000, 475_000]);
  });
});

describe('tax on own-account earnings', () => {
  test('sample Schedule SE: net 44,044 dollars, whole dollars', () => {
    const base = scale(money(44_044), 9235, 10_000);
    const tax = scale(base, 153, 1000);
    expect([base, tax, scale(tax, 1, 2)]).toEqual([40_675, 6223, 3112]);
  });
  test('2026: most of the social security part, and the tax on 30,000', () => {
    expect(scale(money(18_450_000), 124, 1000)).toBe(2_287_800);
    const base = scale(money(3_000_000), 9235, 10_000);
    expect(base).toBe(2_770_500);
    expect(scale(money(27_705_000), 153, 1000)).toBe(4_238_865); // in tenths of a cent: 4,238.865
    expect(scale(base, 153, 1000)).toBe(423_887);
  });
});
