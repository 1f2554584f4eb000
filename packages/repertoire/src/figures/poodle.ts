import type { ShippedFigure } from './shipped-figure.ts';

export const poodle: ShippedFigure = {
  id: 'poodle',
  name: 'Poodle',
  group: 'animals',
  recipe: `
balloon poodle: 260 in body
  leave 4.7
  bubble 2 nose, forward
  bubble 1.5 ear, down down left, x 2 mirrored
  lock
  pinch 1.5 topknot, up
  bubble 1 neck, down
  bubble 1.5 front leg, down down down left
  bubble 0.8 front foot, down right
  bubble 0.8 front foot, up right
  bubble 1.5 front leg, up up up left
  lock last 4
  bubble 2.5 body, back
  bubble 1.5 hind leg, down down down left
  bubble 0.8 hind foot, down right
  bubble 0.8 hind foot, up right
  bubble 1.5 hind leg, up up up left
  lock last 4
  flat 0.8 tail, up up back
  bubble 1 tail ball, up up back
`,
  minutes: { median: 1.0, sigma: 0.25 },
  difficulty: 2,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'pink', name: 'Pink', fill: { body: 'pink' }, share: 0.5 },
    { id: 'white', name: 'White', fill: { body: 'white' }, share: 0.3 },
    { id: 'black', name: 'Black', fill: { body: 'black' }, share: 0.2 },
  ],
};
