import { type BalloonTest, type Book, emptyBook } from '@twistwright/books';
import { date } from '@twistwright/units';
import { describe, expect, test } from 'vitest';
import { sayFitChange } from '../say/index.ts';
import { airOptionsOf, figureFacts } from './figure-facts.ts';
import { fitChanges } from './fit-changes.ts';
import { makeableFigures } from './makeable-figures.ts';

const short: BalloonTest = {
  id: 't1',
  day: date('2026-06-01'),
  size: '260',
  maker: 'Osprey',
  flatInches: [9.9, 10, 10.1],
  fullInches: [50],
};
const long: BalloonTest = {
  id: 't2',
  day: date('2026-06-01'),
  size: '260',
  maker: 'Larkfield',
  flatInches: [11.8, 12, 12.1],
  fullInches: [67],
};
/** Red balloons are of one maker, blue ones of another, green ones of nobody knows whom. */
const book: Book = {
  ...emptyBook({ name: 'Six Turns', currency: 'GBP', zone: 'Europe/London' }),
  colours: ['red', 'blue', 'green'].map((id) => ({ id, name: id })),
  items: [
    { id: 'a', kind: 'balloon', size: '260', colour: 'red', maker: 'Osprey' },
    { id: 'b', kind: 'balloon', size: '260', colour: 'blue', maker: 'Larkfield' },
    { id: 'c', kind: 'balloon', size: '260', colour: 'green' },
  ],
  figures: [
    {
      id: 'giraffe',
      name: 'Giraffe',
      recipe: 'balloon giraffe: 260 in body\nleave 4\nbubble 13, x 3\n',
      colourways: ['red', 'blue', 'green'].map((id) => ({ id, name: id, share: id === 'red' ? 2 : 1, fill: { body: id } })),
    },
    {
      id: 'ball',
      name: 'Ball',
      recipe: 'balloon ball: round-5 in ball\nbubble 4\n',
      colourways: [{ id: 'red', name: 'red', fill: { ball: 'red' } }],
    },
    {
      id: 'worm',
      name: 'Worm',
      recipe: 'balloon worm: 160 in body\nleave 4\nbubble 20\n',
      colourways: [{ id: 'red', name: 'red', fill: { body: 'red' } }],
    },
  ],
};
const tested = (...balloonTests: readonly BalloonTest[]): Book => ({ ...book, balloonTests });
const giraffe = book.figures[0];
if (giraffe === undefined) throw new Error('no giraffe');
const airIn = (of: Book, colourway: string) => {
  const facts = figureFacts(of, giraffe, { way: giraffe.colourways.find(({ id }) => id === colourway) });
  const piece = facts.ok ? facts.value.air.pieces[0] : undefined;
  if (piece === undefined) throw new Error('no air');
  return piece;
};

describe('air of a figure is that of the balloons it is made of', () => {
  const both = tested(short, long);
  test('each colourway by the maker of its item', () => {
    expect(airIn(both, 'red').inflatedInches).toBeLessThan(airIn(book, 'red').inflatedInches - 3);
    expect(airIn(both, 'blue').inflatedInches).toBeGreaterThan(airIn(book, 'blue').inflatedInches + 3);
    const unknown = airIn(both, 'green').inflatedInches;
    expect(unknown).toBeGreaterThan(airIn(both, 'red').inflatedInches);
    expect(unknown).toBeLessThan(airIn(both, 'blue').inflatedInches);
  });
  test('a figure is looked at in its favourite colours unless others are named, and the shelf does too', () => {
    const facts = figureFacts(both, giraffe);
    expect(facts.ok && facts.value.air.pieces[0]?.inflatedInches).toBe(airIn(both, 'red').inflatedInches);
    expect(makeableFigures(both, new Map())[0]?.facts?.air.verdict).toBe(airIn(both, 'red').verdict);
  });
  test('verdicts differ: long balloons fit, short ones do not', () => {
    expect([airIn(both, 'red').verdict, airIn(both, 'blue').verdict]).toEqual(['does not fit', 'fits']);
    expect(airIn(book, 'red').verdict).toBe('tight');
  });
  test('own tests narrow the band of what is left', () => {
    const width = ({ leftInflatedInches }: ReturnType<typeof airIn>) => leftInflatedInches.high - leftInflatedInches.low;
    expect(width(airIn(tested(short), 'red'))).toBeLessThan(width(airIn(book, 'red')));
    expect(width(airIn(tested(short, { ...short, id: 't3' }), 'red'))).toBeLessThan(width(airIn(tested(short), 'red')));
  });
  test('without tests nothing is worked out for each piece', () => {
    expect(airOptionsOf(book).workingOf).toBeUndefined();
  });
});

describe('what a test changes', () => {
  const said = (before: Book, after: Book) => fitChanges(before, after).map((change) => sayFitChange(change));
  test('only figures that take such balloons, new verdicts first, in the colours that decide', () => {
    expect(said(book, tested(long))).toEqual([
      'The giraffe in blue now fits: 3.5 in are left.',
      'The giraffe in red now fits: 1.1 in are left.',
      'The giraffe in green now fits: 1.1 in are left.',
    ]);
    expect(said(book, tested(short))[0]).toMatch(/^The giraffe in red no longer fits: \d\.\d in are missing\. /u);
  });
  test('a test taken back gives the opposite', () => {
    expect(said(tested(long), book)[0]).toBe(
      'The giraffe in blue is now tight. The bubbles take 1.2 in more than is blown up: twist them a little shorter or softer.',
    );
  });
  test('the same state changes nothing', () => expect(fitChanges(tested(short), tested(short))).toEqual([]));
  test('in centimetres', () => {
    const [change] = fitChanges(book, tested(long));
    expect(change && sayFitChange(change, 'cm')).toBe('The giraffe in blue now fits: 8.8 cm are left.');
  });
  test('a verdict that stays says how far to blow up now', () => {
    const loose = { ...book, figures: [{ ...giraffe, recipe: 'balloon giraffe: 260 in body\nleave 4\nbubble 5\n' }] };
    expect(fitChanges(loose, { ...loose, balloonTests: [long] }).map((change) => sayFitChange(change))[0]).toMatch(
      /^The giraffe in \w+ still fits: blow the 260 up to \d+(\.\d)? in instead of 37\.8 in, leave 4 in flat\.$/u,
    );
  });
});
