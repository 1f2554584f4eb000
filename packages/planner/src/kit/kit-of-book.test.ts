import { type Book, emptyBook } from '@twistwright/books';
import { money } from '@twistwright/units';
import { expect, test } from 'vitest';
import { kitProblemOf } from './kit-of-book.ts';
import { firstKit } from './solve-kit.ts';

const balloon = (size: string, colour: string): Book['items'][number] => ({ id: `${size} ${colour}`, kind: 'balloon', size, colour });
const offer = (item: string, price: number): Book['offers'][number] => ({
  id: `bag ${item}`,
  supplier: 'shop',
  item,
  count: 100,
  price: money(price),
});
const book: Book = {
  ...emptyBook({ name: 'A coach', currency: 'EUR', zone: 'Europe/Berlin' }),
  settings: {
    tools: [
      { item: 'pump', count: 1, when: 'always', place: 'case' },
      { item: 'pump 2', count: 1, when: 'spare', place: 'case' },
    ],
  },
  colours: ['red', 'blue', 'white'].map((id) => ({ id, name: id })),
  items: [
    balloon('260', 'red'),
    balloon('260', 'blue'),
    balloon('round-5', 'white'),
    { id: 'pump', kind: 'tool', name: 'hand pump' },
    { id: 'pump 2', kind: 'tool', name: 'spare pump' },
  ],
  figures: [
    {
      id: 'sword',
      name: 'sword',
      recipe: 'balloon sword: 260 in blade\nballoon ball: round-5 in ball',
      colourways: [
        { id: 'red', name: 'red', share: 3, fill: { blade: 'red', ball: 'white' } },
        { id: 'blue', name: 'blue', share: 1, fill: { blade: 'blue', ball: 'white' } },
      ],
    },
    { id: 'sticker', name: 'sticker', colourways: [] },
  ],
  suppliers: [{ id: 'shop', name: 'Shop', leadWorkingDays: 2, carriage: money(400), freeFrom: money(3000) }],
  offers: [offer('260 red', 900), offer('260 blue', 950), offer('round-5 white', 500), { ...offer('pump', 1500), count: 1 }],
};
const wishes = { budget: money(5000), hours: 5, kind: 'small fairs' as const };

test('figures, colours with preference, offers and tools of a book', () => {
  const problem = kitProblemOf(book, wishes);
  if (!problem.ok) throw new Error(problem.error.map((one) => one.sentence).join(' '));
  expect(problem.value.figures).toEqual([
    {
      id: 'sword',
      name: 'sword',
      share: 0.5,
      roles: [
        {
          name: 'blade',
          size: '260',
          pieces: 1,
          colours: [
            { colour: 'red', preference: 3 },
            { colour: 'blue', preference: 1 },
          ],
        },
        { name: 'ball', size: 'round-5', pieces: 1, colours: [{ colour: 'white', preference: 4 }] },
      ],
    },
  ]);
  expect(problem.value.tools).toEqual([{ id: 'pump', name: 'hand pump', need: 'must-have', price: 1500, supplier: 'shop' }]);
  const kit = firstKit(problem.value);
  expect(kit.ok && kit.value.lines.map((line) => line.offer).sort()).toEqual(['bag 260 blue', 'bag 260 red', 'bag round-5 white']);
  expect(kit.ok && kit.value.spent).toBe(1500 + 900 + 950 + 500);
});

test('what is wrong comes back as sentences', () => {
  const answer = kitProblemOf(book, { ...wishes, figures: ['dragon'], tools: [{ item: 'pump 2', need: 'spare' }] });
  expect(answer.ok ? [] : answer.error.map((one) => one.sentence)).toEqual([
    'dragon is no figure of the book.',
    'pump 2 has no offer, so it has no price.',
    'The asking shares of the 0 figures sum to 0.',
    'Not one of the figures can be made from the offers.',
  ]);
});
