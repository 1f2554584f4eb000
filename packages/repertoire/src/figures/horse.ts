import type { ShippedFigure } from './shipped-figure.ts';

export const horse: ShippedFigure = {
  id: 'horse',
  name: 'Horse',
  group: 'animals',
  recipe: `
balloon horse: 260 in body
  leave 3.2
  bubble 4 head, forward down
  bubble 1 ear, up up left, x 2 mirrored
  lock
  bubble 5 neck, down back
  bubble 4 front leg, down down down down left, x 2 mirrored
  lock
  bubble 5 body, back
  bubble 4 hind leg, down down down down left, x 2 mirrored
  lock
  bubble 4 tail, back down, bend 60 down
`,
  minutes: { median: 0.7, sigma: 0.25 },
  difficulty: 2,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'brown', name: 'Brown', fill: { body: 'brown' }, share: 0.5 },
    { id: 'black', name: 'Black', fill: { body: 'black' }, share: 0.3 },
    { id: 'white', name: 'White', fill: { body: 'white' }, share: 0.2 },
  ],
};
