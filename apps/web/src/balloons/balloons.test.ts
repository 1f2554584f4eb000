import { calibrate, isTube, shippedSizes, sizeOf, type Tube } from '@twistwright/repertoire';
import { date } from '@twistwright/units';
import { describe, expect, test } from 'vitest';
import { balloonSentence, measuredWords, weightSentence, whoseWords } from './balloon-words.ts';
import { knownMakers } from './known-makers.ts';
import { emptyTestDraft, readTestDraft, type TestDraft, testOfDraft } from './test-draft.ts';

const tube = (code: string): Tube => {
  const size = sizeOf(code, shippedSizes);
  if (size === undefined || !isTube(size)) throw new Error(code);
  return size;
};
const size = tube('260');
const written = (part: Partial<TestDraft>, ruler: 'in' | 'cm' = 'in') => readTestDraft({ ...emptyTestDraft(ruler), ...part }, size);

describe('the form of a test', () => {
  test('every field that is filled is measured, empty ones are not', () => {
    expect(written({ flats: ['10.8', '', '11', '', ''], full: '58', left: '3' })).toEqual({
      test: { flatInches: [10.8, 11], fullInches: [58], twists: [{ bubbles: 10, tailInches: 6, leftInches: 3 }] },
      problems: {},
    });
    expect(written({ full: '58' }).test).toEqual({ fullInches: [58] });
  });
  test('centimetres become inches, to a thousandth', () => {
    expect(written({ flats: ['27,5'], full: '150', left: '7.6' }, 'cm').test).toEqual({
      flatInches: [10.827],
      fullInches: [59.055],
      twists: [{ bubbles: 10, tailInches: 5.906, leftInches: 2.992 }],
    });
  });
  test('nothing written is no test', () => {
    expect(written({})).toEqual({ test: undefined, problems: { nothing: 'Write at least one measurement.' } });
  });
  test('what cannot be is said at its field on the ruler in use, and the rest still counts', () => {
    const { test: measured, problems } = written({ flats: ['40', '10.8', 'long'], full: '9', bubbles: '10', tail: '6', left: '7' });
    expect(measured).toEqual({ flatInches: [10.8] });
    expect(problems).toEqual({
      flat0: 'A flat length of 40 in cannot be right; expected 3.3 to 22 in.',
      flat2: '“long” is not a number. Write it as 10.8.',
      full: 'A full length of 9 in is no longer than a flat balloon of the same test, 10.8 in.',
      left: 'More tail is left, 7 in, than there was, 6 in.',
    });
    expect(written({ flats: ['-3'] }).problems.flat0).toBe('-3 is too little; the least is 0.');
    expect(written({ flats: ['90'] }, 'cm').problems.flat0).toBe('A flat length of 90 cm cannot be right; expected 8.38 to 55.88 cm.');
    expect(written({ bubbles: '0', left: '3' })).toEqual({ test: undefined, problems: { bubbles: '0 is too little; the least is 1.' } });
    expect(written({ tail: '', left: '3' }).problems.tail).toBe('A length is missing: how much was flat before the first bubble?');
  });
  test('the entry of the book has an id of its own and no empty keys', () => {
    const today = date('2026-06-01');
    const entry = testOfDraft({ fullInches: [58] }, { size: '260', maker: undefined, item: '', today, book: {} });
    expect(entry).toEqual({ id: '260-2026-06-01', day: today, size: '260', fullInches: [58] });
    const second = { size: '260', maker: undefined, item: '260-red', today, book: { balloonTests: [entry] } };
    expect(testOfDraft({ fullInches: [58] }, second)).toMatchObject({ id: '260-2026-06-01-2', item: '260-red' });
  });
});

describe('sentences', () => {
  const one = { maker: 'Osprey', flatInches: [10.2, 10.3, 10.4], fullInches: [54] };
  test('what a balloon is like', () => {
    expect(balloonSentence(calibrate(size, 'Osprey', [one]), 'in').replaceAll('\u00a0', ' ')).toBe(
      'A 260 of Osprey is 10.5 in flat and 55.7 in blown up.',
    );
    expect(balloonSentence(calibrate(size, undefined, []), 'cm').replaceAll('\u00a0', ' ')).toBe(
      'A 260 of a maker that is not named is 27.9 cm flat and 150.9 cm blown up.',
    );
  });
  test('whose data it is', () => {
    expect(weightSentence(calibrate(size, 'Osprey', [one]))).toBe('Your one test of them weighs 60 to 72 %; the rest are usual numbers.');
    expect(weightSentence(calibrate(size, 'Osprey', [one, one, { ...one, maker: 'Larkfield' }]))).toMatch(
      /^Your 2 tests of them weigh \d\d to \d\d %, one test of other makers’ balloons \d+ to \d+ %; the rest are usual numbers\.$/u,
    );
    expect(weightSentence(calibrate(size, 'Larkfield', [one]))).toMatch(
      /^None of them was measured: one test of other makers’ balloons weighs \d\d to \d\d %; the rest are usual numbers\.$/u,
    );
    expect(weightSentence(calibrate(size, 'Larkfield', []))).toMatch(/^These are usual numbers/u);
    expect(whoseWords(undefined)).toBe('of a maker that is not named');
  });
  test('what was measured, in a line', () => {
    const entry = { id: 'a', day: date('2026-06-01'), size: '260', ...one, twists: [{ bubbles: 10, tailInches: 6, leftInches: 3 }] };
    expect(measuredWords(entry, 'in')).toBe('Flat 10.3 in (three balloons), blown up 54 in, 0.30 in of tail a bubble');
    expect(measuredWords(entry, 'cm')).toBe('Flat 26.2 cm (three balloons), blown up 137.2 cm, 0.76 cm of tail a bubble');
  });
  test('makers of the book, one spelling each', () => {
    const items = [
      { id: 'a', kind: 'balloon' as const, size: '260', colour: 'red', maker: 'osprey ' },
      { id: 'b', kind: 'balloon' as const, size: '160', colour: 'red', maker: 'Larkfield' },
      { id: 'c', kind: 'balloon' as const, size: '160', colour: 'blue' },
    ];
    expect(knownMakers({ items, balloonTests: [{ id: 'a', day: date('2026-06-01'), size: '260', ...one }] })).toEqual([
      'Larkfield',
      'Osprey',
    ]);
  });
});
