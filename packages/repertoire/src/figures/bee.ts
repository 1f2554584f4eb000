import type { ShippedFigure } from './shipped-figure.ts';

export const bee: ShippedFigure = {
  id: 'bee',
  name: 'Bee',
  group: 'insects',
  recipe: `
balloon body: 321 in body
  leave 1.6
  bubble 2.4 head, forward
  mark shoulder
  bubble 6 body, back
  trim

balloon wings: 160 in wings
  leave 6
  join to shoulder
  loop 9 wing, up left back, facing up right, x 2 mirrored
  trim

balloon feelers: 160 in feelers
  inflate 9
  bubble 2.6 feeler, up up up left forward
  join to shoulder
  bubble 2.6 feeler, up up up right forward
  trim
finish with marker: stripes on body, 0.2 minutes
finish with marker: eyes and smile on head, 0.15 minutes
`,
  minutes: { median: 1.1, sigma: 0.3 },
  difficulty: 2,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [{ id: 'yellow', name: 'Yellow and white', fill: { body: 'yellow', wings: 'white', feelers: 'black' }, share: 1 }],
};
