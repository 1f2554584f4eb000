// EN 16931 sample invoices, ConnectingEurope/eInvoicing-EN16931, ubl/examples: ubl-tc434-example1, 2, 5, 9; rules BR-CO-10 and 13 to 17.
import { add, type Money, money, scale, subtract } from '@twistwright/units';
import { expect, test } from 'vitest';

interface Sample {
  readonly name: string;
  /** Taxable total of each rate in cents, and the rate in basis points. */
  readonly groups: readonly { readonly lines: readonly number[]; readonly basisPoints: number; readonly tax: number }[];
  readonly net: number;
  readonly tax: number;
  readonly gross: number;
  readonly paid?: number;
  readonly due?: number;
}
const samples: readonly Sample[] = [
  {
    name: 'example 1: twenty lines at two rates; rounding line by line would be wrong',
    groups: [
      {
        lines: [1990, 985, 829, 1446, 3500, 3500, 1065, 155, 1437, 829, 1658, 995, 330, 390, 10_212, -10_998],
        basisPoints: 600,
        tax: 1099,
      },
      { lines: [1080, 760, 934, 1863], basisPoints: 2100, tax: 974 },
    ],
    net: 22_960,
    tax: 2073,
    gross: 25_033,
  },
  {
    name: 'example 2: 365.125 has to become 365.13, so half goes up',
    groups: [
      { lines: [127_300, 18_750, -10_000, 10_000], basisPoints: 2500, tax: 36_513 },
      { lines: [-396, 496], basisPoints: 1500, tax: 15 },
      { lines: [-2500], basisPoints: 0, tax: 0 },
    ],
    net: 143_650,
    tax: 36_528,
    gross: 180_178,
    paid: 100_000,
    due: 80_178,
  },
  {
    name: 'example 5: allowance and charge on one line',
    groups: [
      { lines: [100_000, 50_000, -15_000, 15_000], basisPoints: 2500, tax: 37_500 },
      { lines: [250_000], basisPoints: 1200, tax: 30_000 },
    ],
    net: 400_000,
    tax: 67_500,
    gross: 467_500,
    paid: 233_750,
    due: 233_750,
  },
  { name: 'example 9: one line', groups: [{ lines: [14_700], basisPoints: 2100, tax: 3087 }], net: 14_700, tax: 3087, gross: 17_787 },
];

const sum = (amounts: readonly number[]): Money => add(...amounts.map(money));

test.each(samples)('$name', ({ groups, net, tax, gross, paid = 0, due }) => {
  const bases = groups.map((group) => sum(group.lines));
  const taxes = groups.map((group, index) => scale(bases[index] ?? money(0), group.basisPoints, 10_000));
  expect(taxes).toEqual(groups.map((group) => group.tax));
  expect([add(...bases), add(...taxes), add(...bases, ...taxes)]).toEqual([net, tax, gross]);
  expect(subtract(money(gross), money(paid))).toBe(due ?? gross);
});
test('example 1 rounded line by line, downwards, gives other sums: 10.93 and 9.72', () => {
  const byLine = (index: number) => {
    const group = samples[0]?.groups[index];
    return (group?.lines ?? []).reduce<number>((total, line) => total + Math.trunc((line * (group?.basisPoints ?? 0)) / 10_000), 0);
  };
  expect([byLine(0), byLine(1)]).toEqual([1093, 972]);
});
