import type { ShippedFigure } from './shipped-figure.ts';

export const elephant: ShippedFigure = {
  id: 'elephant',
  name: 'Elephant',
  group: 'animals',
  recipe: `
balloon elephant: 260 in body
  leave 3.5
  bubble 7 trunk, forward forward up, bend 130 up
  loop 7 ear, left left back up, facing forward forward left, x 2 mirrored
  bubble 1.2 neck, back down
  bubble 3 front leg, down down down left, x 2 mirrored
  lock
  bubble 4 body, back
  bubble 3 hind leg, down down down left, x 2 mirrored
  lock
  bubble 1.4 tail, back down
`,
  minutes: { median: 0.9, sigma: 0.25 },
  difficulty: 2,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'grey', name: 'Grey', fill: { body: 'grey' }, share: 0.5 },
    { id: 'blue', name: 'Blue', fill: { body: 'blue' }, share: 0.3 },
    { id: 'pink', name: 'Pink', fill: { body: 'pink' }, share: 0.2 },
  ],
};
