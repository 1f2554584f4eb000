import type { ShippedFigure } from './shipped-figure.ts';

export const dachshund: ShippedFigure = {
  id: 'dachshund',
  name: 'Dachshund',
  group: 'animals',
  recipe: `
balloon dog: 260 in body
  leave 3.5
  bubble 3 nose, forward
  bubble 2 ear, down down left, x 2 mirrored
  lock
  bubble 2.5 neck, down back
  bubble 2 front leg, down down down left, x 2 mirrored
  lock
  bubble 11 body, back
  bubble 2 hind leg, down down down left, x 2 mirrored
  lock
  bubble 3 tail, up back
`,
  minutes: { median: 0.65, sigma: 0.25 },
  difficulty: 1,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'brown', name: 'Brown', fill: { body: 'brown' }, share: 0.5 },
    { id: 'black', name: 'Black', fill: { body: 'black' }, share: 0.3 },
    { id: 'orange', name: 'Orange', fill: { body: 'orange' }, share: 0.2 },
  ],
};
