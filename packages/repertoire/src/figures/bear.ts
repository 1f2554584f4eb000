import type { ShippedFigure } from './shipped-figure.ts';

export const bear: ShippedFigure = {
  id: 'bear',
  name: 'Bear',
  group: 'animals',
  recipe: `
balloon bear: 260 in body
  leave 4.2
  bubble 2 muzzle, forward, soft
  bubble 3 cheek, up left
  pinch 1.2 ear, up left
  bubble 2.4 brow, right
  pinch 1.2 ear, up right
  bubble 3 cheek, down left
  lock last 5
  tuck muzzle into cheek
  bubble 1.2 neck, down
  bubble 3.2 arm, forward forward down left, x 2 mirrored
  lock
  bubble 4 body, down
  bubble 3.8 leg, forward forward down left, x 2 mirrored
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
