import { type Book, emptyBook } from '@twistwright/books';
import { money } from '@twistwright/units';
import { expect, test } from 'vitest';
import { type BookKitWishes, kitProblemOf } from './kit-of-book.ts';
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
  expect(problem.value.tools).toEqual([{ id: 'pump', name: 'hand pump', need: 'must-have' }]);
  const kit = firstKit(problem.value);
  expect(kit.ok && kit.value.lines.map((line) => line.offer).sort()).toEqual(['bag 260 blue', 'bag 260 red', 'bag round-5 white']);
  expect(kit.ok && kit.value.spent).toBe(1500 + 900 + 950 + 500);
});

test('shops with their least orders, offers with their breaks, tools with every offer and as many as are needed', () => {
  const [shop] = book.suppliers;
  if (shop === undefined) throw new Error('no shop');
  const rich: Book = {
    ...book,
    settings: { tools: [{ item: 'pump', count: 2, when: 'always', place: 'case' }] },
    suppliers: [
      { ...shop, leastOrder: money(1500) },
      { ...shop, id: 'other', name: 'Other', carriage: money(300) },
    ],
    offers: [
      { ...offer('260 red', 900), breaks: [{ bags: 3, price: money(700) }] },
      offer('round-5 white', 500),
      { ...offer('pump', 1500), count: 1 },
      { ...offer('pump', 2500), id: 'pair', supplier: 'other', count: 2 },
    ],
  };
  const problem = kitProblemOf(rich, wishes);
  if (!problem.ok) throw new Error('refused');
  expect(problem.value.suppliers[0]).toMatchObject({ leastOrder: 1500 });
  expect(problem.value.offers[0]).toMatchObject({ breaks: [{ bags: 3, price: 700 }] });
  expect(problem.value.tools).toEqual([{ id: 'pump', name: 'hand pump', need: 'must-have', count: 2 }]);
  const pumps = (extra: Partial<BookKitWishes>) => {
    const made = kitProblemOf(rich, { ...wishes, figures: ['sticker'], shares: { sticker: 1 }, ...extra });
    const kit = made.ok ? firstKit(made.value) : made;
    if (!kit.ok) throw new Error(kit.error[0]?.sentence);
    return kit.value.tools.map(({ offer: id, bags, pieces, price }) => [id, bags, pieces, price]);
  };
  // Two at 15.00 would be sent free of carriage at 30.00; a pair is 25.00 with 3.00 of carriage.
  expect(pumps({})).toEqual([['pair', 1, 2, 2500]]);
  expect(pumps({ takenOut: ['pair'] })).toEqual([['bag pump', 2, 2, 3000]]);
  expect(pumps({ takenOut: ['pair'], tools: [{ item: 'pump', need: 'must-have', count: 30 }], budget: money(50_000) })).toEqual([
    ['bag pump', 30, 30, 45_000],
  ]);
  expect(pumps({ have: [{ item: 'pump', count: 1 }] })).toEqual([['bag pump', 1, 1, 1500]]);
});

test('what guests ask for comes from menus they choose from, not from what was ordered or is taught', () => {
  const gig = { client: '', name: 'gig', day: '2026-06-01', starts: 600, ends: 720, artists: [], place: { name: 'hall' } };
  const asked = (gigs: readonly object[]) => {
    const made = kitProblemOf({ ...book, gigs: gigs as Book['gigs'], figures: [...book.figures, tower] }, wishes);
    if (!made.ok) throw new Error(made.error[0]?.sentence);
    return made.value.figures.map((figure) => figure.share);
  };
  const [sword] = book.figures;
  if (sword === undefined) throw new Error('no figure');
  const tower = { ...sword, id: 'tower', name: 'tower' };
  const line = { ...gig, id: 'line', kind: 'line', menu: [{ figure: 'sword', share: 1 }] };
  const ordered = { ...gig, id: 'ordered', kind: 'made to order', menu: [{ figure: 'tower', share: 1 }] };
  expect(asked([line, ordered, { ...ordered, id: 'class', kind: 'class' }])).toEqual(asked([line]));
  expect(asked([line])).toEqual([1, 0.5]);
});

test('where shares are given, nobody asks for a figure that is not among them', () => {
  const [sword] = book.figures;
  if (sword === undefined) throw new Error('no figure');
  const two = { ...book, figures: [sword, { ...sword, id: 'tower', name: 'tower' }] };
  const asked = kitProblemOf(two, { ...wishes, shares: { tower: 0.4 } });
  expect(asked.ok && asked.value.figures.map(({ id, share }) => [id, share])).toEqual([
    ['sword', 0],
    ['tower', 0.4],
  ]);
  const none = kitProblemOf(two, { ...wishes, shares: { tower: 0 } });
  expect(none.ok ? [] : none.error.map((one) => one.sentence)).toEqual(['The asking shares of the figures sum to nought.']);
});

test('a figure that is named twice is asked for once', () => {
  const twice = kitProblemOf(book, { ...wishes, figures: ['sword', 'sword'] });
  expect(twice.ok && twice.value.figures.map(({ id }) => id)).toEqual(['sword']);
});

test('what is wrong comes back as sentences', () => {
  const answer = kitProblemOf(book, { ...wishes, figures: ['dragon'], tools: [{ item: 'pump 2', need: 'spare' }] });
  expect(answer.ok ? [] : answer.error.map((one) => one.sentence)).toEqual([
    'dragon is no figure of the book.',
    'pump 2 has no offer, so it has no price.',
    'No figure is to be considered.',
  ]);
});
