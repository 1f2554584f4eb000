import type { ShippedFigure } from './shipped-figure.ts';

export const parrot: ShippedFigure = {
  id: 'parrot',
  name: 'Parrot on a swing',
  group: 'birds',
  recipe: `
balloon parrot: 260 in body
  leave 2.1
  bubble 1 beak, forward down
  bubble 2.8 head, down down down back
  bubble 4.2 wing, down down left back, x 2 mirrored
  lock
  roll 4.2 breast, down down down forward
  loop 25 swing, up up up right, facing left forward
  bubble 5.8 tail, down down back
finish with marker: eyes on head, 0.1 minutes
`,
  minutes: { median: 0.6, sigma: 0.25 },
  difficulty: 2,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'red', name: 'Red', fill: { body: 'red' }, share: 0.4 },
    { id: 'green', name: 'Green', fill: { body: 'green' }, share: 0.25 },
    { id: 'blue', name: 'Blue', fill: { body: 'blue' }, share: 0.2 },
    { id: 'yellow', name: 'Yellow', fill: { body: 'yellow' }, share: 0.15 },
  ],
};
