import type { ShippedFigure } from './shipped-figure.ts';

export const rabbit: ShippedFigure = {
  id: 'rabbit',
  name: 'Rabbit',
  group: 'animals',
  recipe: `
balloon rabbit: 260 in body
  leave 4.2
  bubble 2 nose, forward forward down
  bubble 4.2 ear, up up up left back, x 2 mirrored
  lock
  bubble 1.4 neck, down down back
  bubble 2.6 front leg, down down down left forward, x 2 mirrored
  lock
  bubble 2.8 body, back down down
  bubble 3 hind leg, forward forward left, x 2 mirrored
  lock
  bubble 1.2 tail, back up
finish with marker: eyes on nose, 0.1 minutes
`,
  minutes: { median: 0.7, sigma: 0.25 },
  difficulty: 2,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'white', name: 'White', fill: { body: 'white' }, share: 0.4 },
    { id: 'pink', name: 'Pink', fill: { body: 'pink' }, share: 0.25 },
    { id: 'grey', name: 'Grey', fill: { body: 'grey' }, share: 0.2 },
    { id: 'brown', name: 'Brown', fill: { body: 'brown' }, share: 0.15 },
  ],
};
