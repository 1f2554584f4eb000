import type { ShippedFigure } from './shipped-figure.ts';

export const pig: ShippedFigure = {
  id: 'pig',
  name: 'Pig',
  group: 'animals',
  recipe: `
balloon pig: 260 in body
  leave 4
  bubble 2 snout, forward
  pinch 0.6 ear, up up up left, x 2 mirrored
  bubble 0.8 neck, back
  bubble 2.8 front leg, down down down left, x 2 mirrored
  lock
  bubble 3.4 body, back, x 2 mirrored
  lock
  roll 3.4 body, back back back down
  bubble 2.8 hind leg, down down down left, x 2 mirrored
  lock
  pinch 0.5 tail, up back
finish with marker: eyes on snout, 0.1 minutes
`,
  minutes: { median: 0.9, sigma: 0.25 },
  difficulty: 2,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'pink', name: 'Pink', fill: { body: 'pink' }, share: 0.5 },
    { id: 'rose', name: 'Rose', fill: { body: 'rose' }, share: 0.3 },
    { id: 'blush', name: 'Blush', fill: { body: 'blush' }, share: 0.2 },
  ],
};
