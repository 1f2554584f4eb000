import { expect, test } from 'vitest';
import { pageFor } from './page.ts';

test('numbers stand right, words left, and there is no colour unless it is wanted', () => {
  const page = pageFor(false);
  page.say('Two bags.');
  page.table(
    ['Bags', 'What', '£'],
    [
      [1, '260 red', '8.20'],
      [12, '5 in round', '104.00'],
    ],
    { foot: ['', 'Order', '112.20'] },
  );
  expect(page.text()).toBe(`Two bags.
  Bags  What             £
     1  260 red       8.20
    12  5 in round  104.00
        Order       112.20
`);
  const coloured = pageFor(true);
  coloured.say('Bold.');
  expect(coloured.text()).toBe('\u001b[1mBold.\u001b[22m\n');
});
test('long text is folded between words', () => {
  const page = pageFor(false);
  page.tell('word '.repeat(60).trim());
  expect(
    page
      .text()
      .split('\n')
      .every((line) => line.length <= 100),
  ).toBe(true);
});
