import type { ShippedFigure } from './shipped-figure.ts';

export const monkey: ShippedFigure = {
  id: 'monkey',
  name: 'Monkey',
  group: 'animals',
  recipe: `
balloon monkey: 260 in body
  leave 3.2
  mark chin
  bubble 2.5 cheek, up left
  pinch 1.5 ear, left
  bubble 2.2 brow, right
  pinch 1.5 ear, right
  bubble 2.5 cheek, down left
  lock last 5
  bubble 1 neck, down
  bubble 4.5 arm, down left forward, bend 60 up, x 2 mirrored
  lock
  bubble 3.5 body, down
  bubble 3.8 leg, forward left down, x 2 mirrored
  lock
  bubble 6 tail, back up, bend 150 up
  trim

balloon face: round-5 in face
  join to chin
  bubble 2.6 face, up forward
finish with marker: eyes and smile on face, 0.25 minutes
`,
  minutes: { median: 2, sigma: 0.3 },
  difficulty: 3,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'brown', name: 'Brown', fill: { body: 'brown', face: 'blush' }, share: 0.5 },
    { id: 'black', name: 'Black', fill: { body: 'black', face: 'blush' }, share: 0.3 },
    { id: 'pink', name: 'Pink', fill: { body: 'pink', face: 'white' }, share: 0.2 },
  ],
};
