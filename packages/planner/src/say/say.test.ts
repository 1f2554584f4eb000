import { expect, test } from 'vitest';
import { chanceInWords, counted, listed, minutes, partInWords, range } from './numbers.ts';

test('numbers in words', () => {
  expect([0, 0.0004, 0.03, 0.1, 0.5, 0.9, 0.97, 1].map(chanceInWords)).toEqual([
    'never',
    'less than 1 in 1000',
    '1 in 33',
    '1 in 10',
    '5 in 10',
    '9 in 10',
    '97 in 100',
    'always',
  ]);
  expect([0, 0.0004, 0.03, 0.1, 0.5, 0.9, 0.97, 0.997, 0.9996, 1].map(partInWords)).toEqual([
    'no',
    'fewer than 1 of 1000',
    '1 of 33',
    '1 of 10',
    '5 of 10',
    '9 of 10',
    '97 of 100',
    '997 of 1000',
    'more than 999 of 1000',
    'all',
  ]);
  expect([listed([]), listed(['a']), listed(['a', 'b']), listed(['a', 'b', 'c'])]).toEqual(['', 'a', 'a and b', 'a, b and c']);
  expect([range({ p10: 56.2, p90: 68.4 }), range({ p10: 3, p90: 3 })]).toEqual(['56 to 68', '3']);
  expect([counted(0, 'guest'), counted(1, 'guest'), counted(7.4, 'guest'), minutes(0.2), minutes(25)]).toEqual([
    'no guest',
    '1 guest',
    '7 guests',
    'less than a minute',
    '25 minutes',
  ]);
});
