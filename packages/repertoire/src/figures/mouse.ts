import type { ShippedFigure } from './shipped-figure.ts';

export const mouse: ShippedFigure = {
  id: 'mouse',
  name: 'Mouse',
  group: 'animals',
  recipe: `
balloon mouse: 260 in body
  leave 7.8
  bubble 2 nose, forward
  pinch 1.3 ear, up up left, x 2 mirrored
  bubble 1.2 front paw, down left forward, x 2 mirrored
  lock
  bubble 2.4 body, back
  bubble 1.2 hind paw, down left, x 2 mirrored
  lock
  flat 5 tail, back, bend 70 up
finish with marker: eyes and nose on nose, 0.1 minutes
`,
  minutes: { median: 0.6, sigma: 0.25 },
  difficulty: 2,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'grey', name: 'Grey', fill: { body: 'grey' }, share: 0.5 },
    { id: 'white', name: 'White', fill: { body: 'white' }, share: 0.3 },
    { id: 'pink', name: 'Pink', fill: { body: 'pink' }, share: 0.2 },
  ],
};
