import { date } from '@twistwright/units';
import { expect, test } from 'vitest';
import { countsByItem, type StockMove, stockOf } from './stock.ts';

const day = date('2026-03-02');
const arrived = (id: string, bags: number, perBag: number, when = day): StockMove => ({
  id,
  day: when,
  item: '260-red',
  kind: 'arrived',
  place: 'home',
  bags,
  perBag,
});

test('bags arrive, one is opened, some are used: oldest and loose first', () => {
  const stock = stockOf([
    arrived('a', 2, 100),
    { id: 'b', day, item: '260-red', kind: 'opened', place: 'home', perBag: 100 },
    { id: 'c', day, item: '260-red', kind: 'used', place: 'home', count: 30 },
  ]);
  expect(stock.lines).toMatchObject([{ count: 170, loose: 70, sealed: [{ perBag: 100, bags: 1 }] }]);
});
test('using more than the loose ones breaks a sealed bag', () => {
  const stock = stockOf([arrived('a', 2, 50), { id: 'c', day, item: '260-red', kind: 'used', place: 'home', count: 60 }]);
  expect(stock.lines).toMatchObject([{ count: 40, loose: 40, sealed: [] }]);
});
test('moving keeps age and seal of whole bags', () => {
  const stock = stockOf([arrived('a', 2, 100), { id: 'b', day, item: '260-red', kind: 'moved', from: 'home', to: 'case', count: 100 }]);
  expect(stock.lines.map((l) => [l.place, l.count, l.sealed])).toEqual([
    ['home', 100, [{ perBag: 100, bags: 1 }]],
    ['case', 100, [{ perBag: 100, bags: 1 }]],
  ]);
});
test('a stocktake asserts a count and shows the difference', () => {
  const stock = stockOf([arrived('a', 1, 100), { id: 'b', day, item: '260-red', kind: 'counted', place: 'home', count: 93 }]);
  expect(countsByItem(stock).get('260-red')).toBe(93);
  expect(stock.differences).toEqual([{ move: 'b', item: '260-red', place: 'home', expected: 100, counted: 93 }]);
});
test('more used than there was leaves nothing and is seen', () => {
  const stock = stockOf([arrived('a', 1, 10), { id: 'b', day, item: '260-red', kind: 'used', place: 'home', count: 12 }]);
  expect(stock.lines).toEqual([]);
  expect(stock.differences).toEqual([{ move: 'b', item: '260-red', place: 'home', expected: 10, counted: 12 }]);
});
test('only moves up to the day count', () => {
  expect(countsByItem(stockOf([arrived('a', 1, 10), arrived('b', 1, 10, date('2026-04-01'))], day)).get('260-red')).toBe(10);
});
