import type { ShippedFigure } from './shipped-figure.ts';

export const bear: ShippedFigure = {
  id: 'bear',
  name: 'Bear',
  group: 'animals',
  recipe: `
balloon bear: 260 in body
  leave 4.4
  bubble 2 cheek, up left left
  pinch 0.8 ear, up up left
  bubble 2 brow, right
  pinch 0.8 ear, up up right
  bubble 2 cheek, down left left
  lock last 5
  pinch 1.2 muzzle, forward up
  bubble 2.6 arm, down down left forward, x 2 mirrored
  lock
  bubble 3.4 body, down, x 2
  lock
  roll 3.4 body, down down down back
  bubble 2.8 leg, forward forward left, x 2 mirrored
  lock
  bubble 1 tail, back
finish with marker: eyes on brow, 0.1 minutes
finish with marker: nose and smile on muzzle, 0.1 minutes
`,
  minutes: { median: 1.3, sigma: 0.3 },
  difficulty: 3,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'brown', name: 'Brown', fill: { body: 'brown' }, share: 0.5 },
    { id: 'white', name: 'White', fill: { body: 'white' }, share: 0.3 },
    { id: 'pink', name: 'Pink', fill: { body: 'pink' }, share: 0.2 },
  ],
};
