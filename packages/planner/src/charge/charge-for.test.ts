import { type Book, type ChargeSettings, emptyBook, type Gig } from '@twistwright/books';
import { date, money, time } from '@twistwright/units';
import { expect, test } from 'vitest';
import { chargeFor } from './charge-for.ts';

const settings: ChargeSettings = {
  hourly: money(12_000),
  minimum: money(15_000),
  travel: { freeMiles: 10, perMile: money(120) },
  early: { freeMinutes: 15, perQuarter: money(2000) },
  tax: { basisPoints: 2000, name: 'VAT' },
  deposit: { basisPoints: 5000, least: money(5000) },
  balanceDaysBefore: 7,
  mileCost: { perMile: money(45), source: 'a tax office', year: 2026 },
  fixedCosts: { perYear: money(120_000), gigsPerYear: 60 },
  taxReserve: { basisPoints: 2500 },
  preparationMinutes: 60,
  setUpMinutes: 15,
  strikeMinutes: 15,
  wantedHourly: money(3000),
};
const book: Book = { ...emptyBook({ name: 'A business', currency: 'GBP', zone: 'Europe/London' }), settings: { charge: settings } };
const gig: Gig = {
  id: 'fair',
  name: 'Fair',
  kind: 'line',
  day: date('2026-06-13'),
  starts: time('13:00'),
  ends: time('16:00'),
  artists: ['one'],
  guests: 70,
  menu: [],
  where: { name: 'On the green', miles: 25, driveMinutes: 40 },
};

test('hours at the rate, travel beyond the radius there and back, tax once on the sum', () => {
  const charge = chargeFor(book, gig, [800, 1000, 1200]);
  expect(charge.lines.map((line) => [line.what, line.how, line.amount])).toEqual([
    ['On the green', '3 h at £120.00', 36_000],
    ['Travel', '15 miles beyond the free 10, there and back, at £1.20', 3600],
  ]);
  expect([charge.net, charge.tax?.amount, charge.quote]).toEqual([39_600, 7920, 47_520]);
  expect(charge.deposit?.amount).toBe(23_760);
  expect(charge.balance).toEqual({ amount: 23_760, dueOn: '2026-06-06' });
});
test('a short gig costs the minimum, each artist', () => {
  const charge = chargeFor(book, { ...gig, ends: time('14:00'), artists: ['one', 'two'], where: { name: 'here' } }, [0]);
  expect(charge.lines).toEqual([{ what: 'here', how: 'minimum of £150.00, as 1 h at £120.00 is less, 2 artists', amount: 30_000 }]);
});
test('what a true hour earns: net fee less materials, miles and fixed share, less the reserve, over all hours', () => {
  const charge = chargeFor(book, gig, [1000]);
  expect(charge.floor.minutes).toEqual({ atGig: 180, settingUp: 30, driving: 80, preparing: 60, total: 350 });
  expect([charge.floor.miles, charge.floor.fixedShare]).toEqual([2250, 2000]);
  expect(charge.hourly.p50).toBeCloseTo(((39_600 - 5250) * 0.75) / (350 / 60), 6);
});
test('the price for a wanted hour earns that hour, and the break-even earns nothing', () => {
  const wanted = chargeFor(book, gig, [1000]).quoteForWanted ?? money(0);
  const at = chargeFor(book, { ...gig, agreement: { state: 'quoted', fee: wanted } }, [1000]);
  expect(at.hourly.mean).toBeGreaterThanOrEqual(2999);
  expect(at.hourly.mean).toBeLessThan(3001);
  const floor = chargeFor(book, { ...gig, agreement: { state: 'quoted', fee: at.floor.breakEven } }, [1000]);
  expect(Math.abs(floor.hourly.mean)).toBeLessThan(1);
});
test('pieces made to order are charged by the piece', () => {
  const pieces: Book = { ...book, settings: { charge: { byKind: { 'made to order': { perPiece: money(900) } } } } };
  const order = [{ figure: 'rose', colourway: 'red', count: 12 }];
  const charge = chargeFor(pieces, { ...gig, kind: 'made to order', order }, [0]);
  expect(charge.lines.map((line) => [line.how, line.amount])).toEqual([['12 at £9.00', 10_800]]);
});

test('rates of a mile are exact to the ten-thousandth of a minor unit, rounded once, half up', () => {
  const at = (perMile: number, miles: number, currency = 'USD') => {
    const charge: ChargeSettings = { mileCost: { perMile, source: 'a tax office', year: 2026 }, travel: { freeMiles: 0, perMile } };
    const there: Book = { ...emptyBook({ name: 'A business', currency, zone: 'America/Chicago' }), settings: { charge } };
    const made = chargeFor(there, { ...gig, where: { name: 'there', miles } }, [0]);
    return [made.floor.miles, made.lines[1]?.amount, made.lines[1]?.how.split(' at ')[1]];
  };
  // 100 miles there and back at 72.5 cents are 145 dollars; 2.1 miles are 304.5 cents, which binary fractions would put below the half.
  expect(at(72.5, 100)).toEqual([14_500, 14_500, '$0.725']);
  expect(at(72.5, 2.1)).toEqual([305, 305, '$0.725']);
  expect(at(0.0001, 5000)).toEqual([1, 1, '$0.000001']);
  expect(at(80.5, 10, 'JPY')).toEqual([1610, 1610, '¥80.5']);
  expect(at(45, 12.5, 'GBP')).toEqual([1125, 1125, '£0.45']);
});
