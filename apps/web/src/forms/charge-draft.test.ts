import type { ChargeSettings } from '@twistwright/books';
import { money } from '@twistwright/units';
import { expect, test } from 'vitest';
import { chargeDraftOf, readChargeDraft } from './charge-draft.ts';
import { FieldReader } from './field-reader.ts';

const there: ChargeSettings = {
  hourly: money(9500),
  byKind: { class: { perHead: money(1200) }, parade: { hourly: money(1) } },
  travel: { freeMiles: 10, perMile: 72.5 },
  tax: { basisPoints: 2000, name: 'VAT', source: 'own books' },
  mileCost: { perMile: 45, source: 'own books', year: 2026 },
};
const everything: Required<ChargeSettings> = {
  hourly: money(9500),
  minimum: money(14000),
  byKind: { tables: { hourly: money(7000), minimum: money(14000) }, 'made to order': { perPiece: money(1650) } },
  travel: { freeMiles: 10, perMile: 90 },
  early: { freeMinutes: 15, perQuarter: money(1500) },
  overtime: { perQuarter: money(3200) },
  tax: { basisPoints: 2000, name: 'VAT' },
  deposit: { basisPoints: 2500, least: money(5000) },
  balanceDaysBefore: 7,
  mileCost: { perMile: 45, source: 'own books', year: 2026 },
  fixedCosts: { perYear: money(118000), gigsPerYear: 95 },
  taxReserve: { basisPoints: 2000, source: 'own habit' },
  preparationMinutes: 50,
  setUpMinutes: 15,
  strikeMinutes: 12.5,
  wantedHourly: money(2600),
};
const back = (now: ChargeSettings, part: Partial<ReturnType<typeof chargeDraftOf>> = {}, currency = 'GBP') => {
  const read = new FieldReader();
  return { charge: readChargeDraft({ ...chargeDraftOf(now, currency), ...part }, now, currency, read), problems: read.problems };
};

test('rates that are opened and saved are the same rates, to the part of a penny, in every currency', () => {
  for (const currency of ['GBP', 'JPY', 'KWD'])
    for (const rates of [there, {}, everything]) expect(back(rates, {}, currency)).toEqual({ charge: rates, problems: {} });
});
test('a rate for a mile is written as money, with parts of a penny where it has them', () => {
  const written = (perMile: number, currency: string): string => chargeDraftOf({ travel: { freeMiles: 0, perMile } }, currency).perMile;
  expect([written(90, 'GBP'), written(72.5, 'USD'), written(45, 'JPY'), written(0.5, 'JPY'), written(1250, 'KWD')]).toEqual([
    '0.90',
    '0.725',
    '45',
    '0.5',
    '1.250',
  ]);
});
test('an emptied field takes its setting away, and the last rate of a kind its kind', () => {
  expect(back(there, { hourly: '', taxShare: ' ', perMile: '', 'class, perHead': '' }).charge).toEqual({
    byKind: { parade: { hourly: money(1) } },
    mileCost: there.mileCost,
  });
});
test('an amount that needs another says which one is missing', () => {
  expect(back({}, { mileCost: '0.45', fixedPerYear: '900' }).problems).toEqual({
    mileSource: 'Write where the figure comes from, such as your own books.',
    mileYear: 'A number is missing. Write it as 2026.',
    gigsPerYear: 'A number is missing. Write it as 95.',
  });
});
test('what cannot be read says how to write it', () => {
  expect(back(there, { hourly: 'a lot', taxShare: '120' }).problems).toEqual({
    hourly: '“a lot” is not an amount in GBP. Write it as 12.50.',
    taxShare: '120 is too much; the most is 100.',
  });
});
