import { expect, test } from 'vitest';
import { chanceInWords, counted, inWords, listed, occasionOf, ordinal, sentence } from './counted.ts';

test('counts in words up to twelve', () => {
  expect([0, 3, 12, 13].map(inWords)).toEqual(['no', 'three', 'twelve', '13']);
  expect(counted(1, 'gig')).toBe('one gig');
  expect(counted(13, 'gig')).toBe('13 gigs');
});
test('names in a row', () => {
  expect(listed(['green'])).toBe('green');
  expect(listed(['green', 'white', 'black'])).toBe('green, white and black');
  expect(sentence('three gigs')).toBe('Three gigs');
});
test('chances as people say them', () => {
  expect([0.1, 0.5, 0.3, 0.02, 0.0123, 0.37, 0, 1].map(chanceInWords)).toEqual([
    '1 in 10',
    '1 in 2',
    '3 in 10',
    '1 in 50',
    '1 in 81',
    '3 in 8',
    'less than 1 in 1,000',
    'certain',
  ]);
});
test('days and times of day', () => {
  expect([1, 2, 3, 4, 11, 12, 13, 21, 22, 31].map(ordinal)).toEqual([
    '1st',
    '2nd',
    '3rd',
    '4th',
    '11th',
    '12th',
    '13th',
    '21st',
    '22nd',
    '31st',
  ]);
  expect([occasionOf(540, 690), occasionOf(780, 960), occasionOf(1050, 1200)]).toEqual(['morning', 'afternoon', 'evening']);
});
