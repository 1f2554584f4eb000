import type { ShippedFigure } from './shipped-figure.ts';

export const dog: ShippedFigure = {
  id: 'dog',
  name: 'Dog',
  group: 'animals',
  recipe: `
# The first figure everybody learns.
balloon dog: 260 in body
  leave 3.5
  bubble 2.8 nose, forward
  bubble 2.4 ear, up up up left back, x 2 mirrored
  lock
  bubble 3 neck, down down down back
  bubble 3.4 front leg, down down down left, x 2 mirrored
  lock
  bubble 5 body, back
  bubble 3.4 hind leg, down down down left, x 2 mirrored
  lock
  bubble 3.2 tail, up up up back
`,
  minutes: { median: 0.6, sigma: 0.25 },
  difficulty: 1,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'blue', name: 'Blue', fill: { body: 'blue' }, share: 0.4 },
    { id: 'pink', name: 'Pink', fill: { body: 'pink' }, share: 0.25 },
    { id: 'red', name: 'Red', fill: { body: 'red' }, share: 0.2 },
    { id: 'brown', name: 'Brown', fill: { body: 'brown' }, share: 0.15 },
  ],
};
