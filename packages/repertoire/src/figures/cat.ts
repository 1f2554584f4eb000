import type { ShippedFigure } from './shipped-figure.ts';

export const cat: ShippedFigure = {
  id: 'cat',
  name: 'Cat',
  group: 'animals',
  recipe: `
balloon cat: 260 in body
  leave 4
  bubble 2 nose, forward
  bubble 1.8 ear, up up up left, x 2 mirrored
  lock
  bubble 2.2 neck, down down back
  bubble 3.2 front leg, down down down left, x 2 mirrored
  lock
  bubble 4.6 body, back
  bubble 3.2 hind leg, down down down left, x 2 mirrored
  lock
  bubble 7 tail, up, bend 100 back
finish with marker: eyes and whiskers on nose, 0.2 minutes
`,
  minutes: { median: 0.9, sigma: 0.25 },
  difficulty: 2,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'black', name: 'Black', fill: { body: 'black' }, share: 0.4 },
    { id: 'orange', name: 'Orange', fill: { body: 'orange' }, share: 0.25 },
    { id: 'grey', name: 'Grey', fill: { body: 'grey' }, share: 0.2 },
    { id: 'white', name: 'White', fill: { body: 'white' }, share: 0.15 },
  ],
};
