import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkBook, countsByItem, gigKinds, layDates, stockOf } from '@twistwright/books';
import { readBook, readPrices } from '@twistwright/contract';
import { addDays } from '@twistwright/units';
import { expect, test } from 'vitest';
import { demoBook } from './book.ts';
import { laidOn } from './days.ts';
import { demoFiles } from './files.ts';
import { priceLists } from './price-lists.ts';

const files = Object.entries(demoFiles());

test.each(files)('the committed %s is what make.ts writes', (name, text) => {
  expect(readFileSync(join(import.meta.dirname, name), 'utf8')).toBe(text);
});
test('the file reads back as the book it was made from', () => {
  const read = readBook(files.find(([name]) => name === 'book.yaml')?.[1] ?? '', { name: 'book.yaml' });
  expect(read).toEqual({ ok: true, value: demoBook });
});
test('it is as large as a real business: figures, items, sizes, suppliers, gigs of every kind, two artists', () => {
  const balloons = demoBook.items.filter((item) => item.kind === 'balloon');
  expect(demoBook.figures.length).toBeGreaterThanOrEqual(30);
  expect(balloons.length).toBeGreaterThanOrEqual(80);
  expect(new Set(balloons.map((item) => item.size).filter((size) => /^\d+$/.test(size))).size).toBeGreaterThanOrEqual(5);
  expect(balloons.some((item) => item.size.startsWith('round-'))).toBe(true);
  expect(balloons.some((item) => item.size.startsWith('heart-'))).toBe(true);
  expect(balloons.filter((item) => item.print !== undefined).length).toBeGreaterThanOrEqual(3);
  expect(demoBook.suppliers).toHaveLength(3);
  expect(demoBook.gigs).toHaveLength(8);
  expect(new Set(demoBook.gigs.map((gig) => gig.kind))).toEqual(new Set(gigKinds));
  expect(demoBook.artists).toHaveLength(2);
  const places = new Set(stockOf(demoBook.moves).lines.map((line) => line.place));
  expect(places).toEqual(new Set(['home', 'car', 'case', 'apron']));
});
test.each([0, 1, 2, 3, 4, 5, 6])(
  'opened %i days after the Monday on which it is laid nothing is wrong with it but the one clash',
  (days) => {
    const problems = checkBook(demoBook, { today: addDays(laidOn, days) });
    expect(problems.map(({ code, path, weight }) => [code, path, weight])).toEqual([['gig.clash', ['gigs', 3], 'warning']]);
  },
);
test('opened in any week of the year it has no gig in the past, and no time that clocks jump over', () => {
  for (let week = 1; week <= 53; week++) {
    const today = addDays(laidOn, 7 * week + (week % 7));
    const problems = checkBook(layDates(demoBook, today), { today });
    expect(problems.filter((problem) => problem.code !== 'gig.clash')).toEqual([]);
  }
});
test('no count of the ledger is below nought, and a stocktake has found two black ones missing', () => {
  const stock = stockOf(demoBook.moves);
  expect([...countsByItem(stock).values()].every((count) => count > 0)).toBe(true);
  expect(stock.differences).toEqual([{ move: 'count-black', item: '260-black', place: 'case', expected: 22, counted: 20 }]);
});
test.each(['fernhallow', 'brackwater', 'ropewalk'])(
  'the price list of %s reads as what the book has, but for one colour nobody has',
  (supplier) => {
    const list = readPrices(priceLists[`${supplier}.csv`] ?? '', { book: demoBook, supplier });
    if (!list.ok) throw new Error(JSON.stringify(list.error));
    const balloons = new Set(demoBook.items.filter((item) => item.kind === 'balloon').map((item) => item.id));
    expect(list.value.offers).toEqual(demoBook.offers.filter((offer) => offer.supplier === supplier && balloons.has(offer.item)));
    expect([list.value.added, list.value.changed]).toEqual([[], []]);
    expect(list.value.unmatched.map((line) => line.problem.sentence)).toEqual(
      supplier === 'brackwater' ? ['"260 teal" has no colour of the book.'] : [],
    );
  },
);
