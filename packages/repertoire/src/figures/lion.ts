import type { ShippedFigure } from './shipped-figure.ts';

export const lion: ShippedFigure = {
  id: 'lion',
  name: 'Lion',
  group: 'animals',
  recipe: `
balloon lion: 260 in body
  leave 3.8
  bubble 2.4 nose, forward
  mark face
  pinch 1 ear, up up left back, x 2 mirrored
  bubble 2 neck, down back
  bubble 3 front leg, down down down left, x 2 mirrored
  lock
  bubble 5 body, back
  bubble 3 hind leg, down down down left, x 2 mirrored
  lock
  bubble 4 tail, up up back, bend 70 back

balloon mane: 260 in mane
  leave 5
  join to face
  pinch 2 mane, up, x 9 around forward
  trim
finish with marker: eyes on nose, 0.15 minutes
`,
  minutes: { median: 1.3, sigma: 0.3 },
  difficulty: 3,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'classic', name: 'Yellow and orange', fill: { body: 'yellow', mane: 'orange' }, share: 0.6 },
    { id: 'brown', name: 'Orange and brown', fill: { body: 'orange', mane: 'brown' }, share: 0.4 },
  ],
};
