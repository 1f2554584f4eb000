import { type ChargeSettings, chargeSettingsOf } from '@twistwright/books';
import { money } from '@twistwright/units';
import { expect, test } from 'vitest';
import { demoBook } from '../../../../demo/book.ts';
import { chargeDraftOf, readChargeDraft } from './charge-draft.ts';
import { FieldReader } from './field-reader.ts';

const there: ChargeSettings = {
  hourly: money(9500),
  byKind: { class: { perHead: money(1200) }, parade: { hourly: money(1) } },
  travel: { freeMiles: 10, perMile: 72.5 },
  tax: { basisPoints: 2000, name: 'VAT', source: 'own books' },
  mileCost: { perMile: 45, source: 'own books', year: 2026 },
};
const back = (now: ChargeSettings, part: Partial<ReturnType<typeof chargeDraftOf>> = {}, currency = 'GBP') => {
  const read = new FieldReader();
  return { charge: readChargeDraft({ ...chargeDraftOf(now, currency), ...part }, now, currency, read), problems: read.problems };
};

test('rates that are opened and saved are the same rates, to the part of a penny, in every currency', () => {
  for (const currency of ['GBP', 'JPY', 'KWD'])
    for (const rates of [there, {}, chargeSettingsOf(demoBook)]) expect(back(rates, {}, currency)).toEqual({ charge: rates, problems: {} });
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
