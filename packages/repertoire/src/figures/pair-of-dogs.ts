import type { ShippedFigure } from './shipped-figure.ts';

export const pairOfDogs: ShippedFigure = {
  id: 'pair-of-dogs',
  name: 'Two kissing dogs',
  group: 'animals',
  recipe: `
# Thirty small bubbles out of one balloon. The two dogs look at one another across the middle twist.
balloon dogs: 260 in body
  leave 8.9
  bubble 1 tail, right up
  bubble 1 hind leg, down down down back
  bubble 1 hind foot, down forward
  bubble 1 hind foot, up forward
  bubble 1 hind leg, up up up back
  lock last 4
  bubble 1.6 body, left
  bubble 1 front leg, down down down back
  bubble 1 front foot, down forward
  bubble 1 front foot, up forward
  bubble 1 front leg, up up up back
  lock last 4
  bubble 1 neck, up left
  bubble 1 ear, up back
  bubble 1 brow, forward
  bubble 1 ear, down back
  lock last 3
  bubble 1 nose, left
  bubble 1 nose, left
  bubble 1 ear, up back
  bubble 1 brow, forward
  bubble 1 ear, down back
  lock last 3
  bubble 1 neck, down left
  bubble 1 front leg, down down down back
  bubble 1 front foot, down forward
  bubble 1 front foot, up forward
  bubble 1 front leg, up up up back
  lock last 4
  bubble 1.6 body, left
  bubble 1 hind leg, down down down back
  bubble 1 hind foot, down forward
  bubble 1 hind foot, up forward
  bubble 1 hind leg, up up up back
  lock last 4
  bubble 1 tail, left up
`,
  minutes: { median: 3.4, sigma: 0.3 },
  difficulty: 4,
  tags: ['stands', 'not for under threes'],
  colourways: [
    { id: 'brown', name: 'Brown', fill: { body: 'brown' }, share: 0.5 },
    { id: 'pink', name: 'Pink', fill: { body: 'pink' }, share: 0.3 },
    { id: 'white', name: 'White', fill: { body: 'white' }, share: 0.2 },
  ],
};
