import { type Book, emptyBook, type Gig, type StockMove, stockOf } from '@twistwright/books';
import { date, money, time } from '@twistwright/units';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { packFor, type Take } from './pack-for.ts';

const day = date('2026-06-01');
const found = (item: string, place: string, count: number): StockMove => ({
  id: `${item}-${place}`,
  day,
  item,
  kind: 'found',
  place,
  count,
});
const book: Book = {
  ...emptyBook({ name: 'A business', currency: 'GBP', zone: 'Europe/London' }),
  items: [
    { id: 'red', kind: 'balloon', size: '260', colour: 'red' },
    { id: 'blue', kind: 'balloon', size: '260', colour: 'blue' },
    { id: 'pump', kind: 'tool', name: 'pump' },
  ],
  places: [
    { id: 'home', name: 'Home', kind: 'home' },
    { id: 'case', name: 'Case', kind: 'case' },
    { id: 'apron', name: 'Apron', kind: 'apron', pockets: ['blue', 'red'], room: 100 },
  ],
  settings: { tools: [{ item: 'pump', count: 1, when: 'always', place: 'case' }] },
  orders: [
    {
      id: 'o',
      supplier: 's',
      orderedOn: day,
      expectedOn: date('2026-06-10'),
      carriage: money(0),
      lines: [{ item: 'red', bags: 1, count: 10, price: money(1) }],
    },
  ],
};
const gig: Gig = {
  id: 'g',
  name: 'G',
  kind: 'line',
  day: date('2026-06-13'),
  starts: time('13:00'),
  ends: time('16:00'),
  artists: [],
  guests: 10,
  menu: [],
};

test('usual use in pocket order in the apron, the reserve in the case, what is nowhere is missing', () => {
  const stock = stockOf([found('red', 'home', 30), found('blue', 'apron', 12), found('blue', 'home', 50)]);
  const plan = packFor(
    book,
    gig,
    stock,
    new Map<string, Take>([
      ['red', { usual: 20, enough: 45 }],
      ['blue', { usual: 10, enough: 15 }],
    ]),
  );
  expect(plan.places.map((p) => [p.place, p.lines.map((l) => [l.item, l.count, l.missing, l.onOrder])])).toEqual([
    [
      'apron',
      [
        ['blue', 10, 0, 0],
        ['red', 20, 0, 0],
      ],
    ],
    [
      'case',
      [
        ['blue', 5, 0, 0],
        ['red', 25, 15, 10],
        ['pump', 1, 1, 0],
      ],
    ],
  ]);
  expect(plan.places[0]?.lines[0]?.from).toEqual([{ place: 'apron', count: 10, already: true }]);
  expect(plan.missing.map((line) => line.item)).toEqual(['red', 'pump']);
});
test('what lies in apron or case and is not wanted stays at home', () => {
  const plan = packFor(
    book,
    gig,
    stockOf([found('blue', 'apron', 12), found('red', 'home', 5)]),
    new Map([['red', { usual: 2, enough: 5 }]]),
  );
  expect(plan.leaveAtHome).toEqual([{ item: 'blue', name: '260 blue', place: 'apron', count: 12 }]);
});
test('no piece is packed twice and nothing is invented', () => {
  const piece = fc.nat({ max: 60 });
  fc.assert(
    fc.property(piece, piece, piece, piece, piece, (home, inCase, inApron, usual, more) => {
      const stock = stockOf([found('red', 'home', home), found('red', 'case', inCase), found('red', 'apron', inApron)]);
      const plan = packFor(book, gig, stock, new Map([['red', { usual, enough: usual + more }]]));
      const lines = plan.places.flatMap((p) => p.lines).filter((l) => l.item === 'red');
      const taken = lines.flatMap((l) => l.from).reduce((sum, part) => sum + part.count, 0);
      expect(lines.reduce((sum, l) => sum + l.count, 0)).toBe(usual + more);
      expect(taken).toBe(Math.min(usual + more, home + inCase + inApron));
      expect(lines.reduce((sum, l) => sum + l.missing, 0)).toBe(usual + more - taken);
    }),
    { seed: 5 },
  );
});
test('what gigs before this one use is gone, from the hands outwards and then from what is on order', () => {
  const stock = stockOf([found('red', 'home', 30), found('red', 'apron', 10)]);
  const linesAfter = (before: number) =>
    packFor(book, gig, stock, new Map([['red', { usual: 0, enough: 20 }]]), new Map([['red', before]]))
      .places.flatMap((place) => place.lines)
      .filter((line) => line.item === 'red');
  expect(linesAfter(15).map(({ from, missing }) => [from, missing])).toEqual([[[{ place: 'home', count: 20, already: false }], 0]]);
  expect(linesAfter(30).map(({ missing, onOrder, why }) => [missing, onOrder, why])).toEqual([
    [10, 10, 'usual use and reserve; gigs before this one take about 30'],
  ]);
  expect(linesAfter(45).map(({ missing, onOrder }) => [missing, onOrder])).toEqual([[20, 5]]);
});
