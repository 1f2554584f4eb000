import { expect, test } from 'vitest';
import { headingsOf } from './headings-of.ts';

test('the separator that makes most cells counts, quotes hold a cell together, and blank lines above are passed over', () => {
  expect(headingsOf('\n\r\nArt;Ware;"Preis, netto"\n1;260 rot;7,90')).toEqual(['Art', 'Ware', 'Preis, netto']);
  expect(headingsOf('what\thow many\tprice\n')).toEqual(['what', 'how many', 'price']);
  expect(headingsOf('only one')).toEqual(['only one']);
  expect(headingsOf(' \n ')).toEqual([]);
});
