import type { ShippedFigure } from './shipped-figure.ts';

export const mouse: ShippedFigure = {
  id: 'mouse',
  name: 'Mouse',
  group: 'animals',
  recipe: `
balloon mouse: 260 in body
  leave 8.8
  bubble 2.2 nose, forward
  loop 1.5 ear, up left left, facing forward, x 2 mirrored
  bubble 1 paw, left
  bubble 1 paw, back
  bubble 1 paw, right
  bubble 1 paw, forward
  lock last 4
  flat 5 tail, back
finish with marker: eyes on nose, 0.1 minutes
`,
  minutes: { median: 0.35, sigma: 0.25 },
  difficulty: 1,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'grey', name: 'Grey', fill: { body: 'grey' }, share: 0.5 },
    { id: 'white', name: 'White', fill: { body: 'white' }, share: 0.3 },
    { id: 'pink', name: 'Pink', fill: { body: 'pink' }, share: 0.2 },
  ],
};
