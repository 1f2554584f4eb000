import { calibrate, defaultWorking, isTube, shippedSizes, sizeOf, type Tube } from '@twistwright/repertoire';
import { date } from '@twistwright/units';
import { describe, expect, test } from 'vitest';
import type { BalloonTest } from './balloon-test.ts';
import { type Book, emptyBook } from './book.ts';
import { checkBook } from './check-book.ts';
import { layDates } from './lay-dates.ts';
import { makersOfSize, tubesTaken, workingOfPieces, workingsOf } from './workings.ts';

const today = date('2026-06-10');
const osprey: BalloonTest = {
  id: 't1',
  day: date('2026-06-01'),
  size: '260',
  maker: 'Osprey & Daughters',
  item: '260-red',
  flatInches: [9.9, 10, 10.1],
  fullInches: [50],
  twists: [{ bubbles: 10, tailInches: 6, leftInches: 2 }],
};
const book: Book = {
  ...emptyBook({ name: 'Six Turns', currency: 'GBP', zone: 'Europe/London' }),
  colours: [
    { id: 'red', name: 'red' },
    { id: 'blue', name: 'blue' },
  ],
  items: [
    { id: '260-red', kind: 'balloon', size: '260', colour: 'red', maker: 'osprey &  daughters' },
    { id: '260-blue', kind: 'balloon', size: '260', colour: 'blue' },
    { id: 'round-5-red', kind: 'balloon', size: 'round-5', colour: 'red' },
  ],
  figures: [
    {
      id: 'dog',
      name: 'dog',
      recipe: 'balloon dog: 260 in body\nleave 4\nbubble 12, x 3\n',
      colourways: [
        { id: 'red', name: 'red', fill: { body: 'red' } },
        { id: 'blue', name: 'blue', fill: { body: 'blue' } },
      ],
    },
  ],
  balloonTests: [osprey],
};
const tube = (code: string): Tube => {
  const size = sizeOf(code, shippedSizes);
  if (size === undefined || !isTube(size)) throw new Error(code);
  return size;
};
const spoilt = (...tests: readonly Partial<BalloonTest>[]) =>
  checkBook({ ...book, figures: [], balloonTests: tests.map((part, index) => ({ ...osprey, id: `t${index}`, ...part })) }, { today }).map(
    ({ weight, code, path, sentence }) => `${weight} ${code} at ${path.join('.')}: ${sentence}`,
  );

describe('checks', () => {
  test('a test that is right has nothing wrong', () => expect(spoilt({})).toEqual([]));
  test.each<[Partial<BalloonTest>, string]>([
    [
      { size: '999', item: undefined as never },
      'error size.unknown at balloonTests.0.size: Test "t0" names the size code "999", which the book does not have.',
    ],
    [{ item: 'gone' }, 'error item.unknown at balloonTests.0.item: Test "t0" names the item "gone", which the book does not have.'],
    [{ item: 'round-5-red' }, 'error test.other-item at balloonTests.0.item: Test "t0" is of a 260, and item "round-5-red" is not.'],
    [
      { maker: 'Larkfield' },
      'warning test.other-item at balloonTests.0.item: Test "t0" is of balloons of Larkfield, and item "260-red" is made by osprey &  daughters.',
    ],
    [
      { fullInches: [9] },
      'error calibration.measurement at balloonTests.0.fullInches.0: Test "t0": A full length of 9 in is no longer than a flat balloon of the same test, 10.1 in.',
    ],
    [
      { flatInches: [-2] },
      'error calibration.measurement at balloonTests.0.flatInches.0: Test "t0": A flat length of -2 in cannot be right; expected 3.3 to 22 in.',
    ],
    [{ day: date('2026-06-11') }, 'warning test.future at balloonTests.0.day: Test "t0" was made on 2026-06-11, which is yet to come.'],
  ])('%j', (part, sentence) => expect(spoilt(part)).toEqual([sentence]));
  test('only tubes can be tested, and something has to be measured', () => {
    expect(spoilt({ size: 'round-5', item: 'round-5-red' })[0]).toBe(
      'error test.no-tube at balloonTests.0.size: Test "t0" is of a round-5: only tubes have a tail and a stretch.',
    );
    const { flatInches: _flat, fullInches: _full, twists: _twists, ...nothing } = osprey;
    expect(checkBook({ ...book, balloonTests: [nothing] }, { today }).map(({ sentence }) => sentence)).toContain(
      'Test "t1": Nothing was measured.',
    );
  });
  test('two tests do not share an id', () => {
    expect(spoilt({}, { id: 't0' })).toEqual(['error id.twice at balloonTests.1.id: The id "t0" stands twice in "balloonTests".']);
  });
  test('a recipe is held against the balloons of every maker that its colourways use', () => {
    const found = (tested: Book) => checkBook(tested, { today }).filter(({ code }) => code === 'recipe.does-not-fit');
    expect(found({ ...book, balloonTests: [] })).toEqual([]);
    const problems = found(book);
    expect(problems.every(({ path, weight }) => path.join('.') === 'figures.0.recipe' && weight === 'warning')).toBe(true);
    expect(problems.map(({ sentence }) => sentence)).toEqual([
      'Recipe of figure "dog", line 3, column 1: in colourway "red" “dog” runs out of balloon at bubble 3 of 3: 3.6 in are missing.',
      'Recipe of figure "dog", line 1, column 1: in colourway "blue" “dog”: The bubbles take 0.9 in more than is blown up: twist them a little shorter or softer.',
    ]);
  });
  test('the day of a test moves with an example book', () => {
    expect(layDates({ ...book, laidOn: date('2026-06-01') }, date('2026-06-16')).balloonTests?.[0]?.day).toBe('2026-06-15');
  });
});

describe('whose numbers hold', () => {
  test('maker, then size, then default', () => {
    const workings = workingsOf(book);
    const size = tube('260');
    const [own, other, unknown] = [workings(size, 'OSPREY & daughters'), workings(size, 'Larkfield'), workings(size)];
    expect([own.tests, own.otherTests, other.tests, other.otherTests]).toEqual([1, 0, 0, 1]);
    expect(own.working.flat.mean).toBeLessThan(other.working.flat.mean);
    expect(other.working.flat.mean).toBeLessThan(11);
    expect(unknown.working).toEqual(other.working);
    expect(workings(tube('160')).working).toMatchObject(defaultWorking(tube('160')));
  });
  test('a piece takes the numbers of the item in its colourway', () => {
    const [red, blue] = book.figures[0]?.colourways ?? [];
    const piece = { size: '260', role: 'body' };
    const workingOf = workingOfPieces(book);
    const size = tube('260');
    expect(workingOf?.(red)(size, piece)).toEqual(calibrate(size, 'Osprey & Daughters', [osprey]).working);
    expect(workingOf?.(blue)(size, piece)).toEqual(calibrate(size, undefined, [osprey]).working);
    expect(workingOf?.(undefined)(size, piece)).toEqual(calibrate(size, undefined, [osprey]).working);
    expect(workingOfPieces({ ...book, balloonTests: [] })).toBeUndefined();
  });
  test('a test with impossible measurements is left aside', () => {
    const bad = { ...osprey, id: 't2', flatInches: [40] };
    expect(workingsOf({ ...book, balloonTests: [osprey, bad] })(tube('260')).otherTests).toBe(1);
  });
  test('the kinds of tube that a figure takes, each once', () => {
    const recipe = { pieces: ['body', 'body', 'ears'].map((role) => ({ name: role, size: '260', role, count: 1, run: [] })) };
    const way = { id: 'w', name: 'w', fill: { body: 'red', ears: 'blue' } };
    expect(tubesTaken(book, recipe, way).map(({ size, maker }) => [size.code, maker])).toEqual([
      ['260', 'osprey &  daughters'],
      ['260', undefined],
    ]);
    expect(tubesTaken(book, { pieces: [{ name: 'n', size: 'round-5', role: 'body', count: 1, run: [] }] }, way)).toEqual([]);
  });
  test('makers of a size: by tests and items, one spelling each, unknown last', () => {
    expect(makersOfSize(book, '260')).toEqual(['Osprey & Daughters', undefined]);
    expect(makersOfSize(book, '160')).toEqual([]);
  });
});
