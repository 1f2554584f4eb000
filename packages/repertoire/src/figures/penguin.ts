import type { ShippedFigure } from './shipped-figure.ts';

export const penguin: ShippedFigure = {
  id: 'penguin',
  name: 'Penguin',
  group: 'birds',
  recipe: `
balloon penguin: 260 in body
  leave 3.5
  bubble 2 head, up up left, x 2 mirrored
  lock
  mark neck
  bubble 6 side, down down down left, bend 50 right
  mark seat
  bubble 6 side, down down down right, bend 50 left
  lock
  trim

balloon belly: 260 in belly
  leave 5
  join to neck
  bubble 6.2 belly, down down forward, bend 40 back
  join to seat
  trim

balloon flippers: 160 in body
  leave 6
  join to neck
  fold 7 flipper, down left, facing forward, x 2 mirrored
  trim

balloon feet: 260 in beak
  leave 6
  join to seat
  fold 4.2 foot, forward left, facing up, x 2 mirrored
  fold 2.5 tail, back, facing up
  trim

balloon beak: 160 in beak
  inflate 3
  join to neck
  bubble 1.4 beak, forward forward forward up
  trim
finish with marker: eyes on head, 0.15 minutes
`,
  minutes: { median: 2, sigma: 0.3 },
  difficulty: 3,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'classic', name: 'Black and white', fill: { body: 'black', belly: 'white', beak: 'orange' }, share: 0.6 },
    { id: 'blue', name: 'Blue and white', fill: { body: 'blue', belly: 'white', beak: 'yellow' }, share: 0.4 },
  ],
};
