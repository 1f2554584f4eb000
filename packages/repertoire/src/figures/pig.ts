import type { ShippedFigure } from './shipped-figure.ts';

export const pig: ShippedFigure = {
  id: 'pig',
  name: 'Pig',
  group: 'animals',
  recipe: `
balloon body: 321 in body
  leave 1.6
  bubble 1.3 snout, forward
  bubble 2.4 head, back
  mark shoulder
  bubble 4 body, back
  mark hip
  trim

balloon legs: 160 in body
  leave 2
  join to shoulder
  fold 4.4 ear, up up up left forward, facing forward left, x 2 mirrored
  bubble 2.6 front leg, down down left, x 2 mirrored
  lock
  bubble 5 belly, back, bend 40 up
  join to hip
  bubble 2.6 hind leg, down down left, x 2 mirrored
  lock
  flat 1 tail, up up back
finish with marker: eyes on head, 0.1 minutes
finish with marker: nostrils on snout, 0.1 minutes
`,
  minutes: { median: 1.2, sigma: 0.25 },
  difficulty: 3,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'pink', name: 'Pink', fill: { body: 'pink' }, share: 0.6 },
    { id: 'blush', name: 'Blush', fill: { body: 'blush' }, share: 0.25 },
    { id: 'black', name: 'Black', fill: { body: 'black' }, share: 0.15 },
  ],
};
