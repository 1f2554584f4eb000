import type { ShippedFigure } from './shipped-figure.ts';

export const fish: ShippedFigure = {
  id: 'fish',
  name: 'Fish',
  group: 'sea',
  recipe: `
balloon fish: 260 in body
  leave 2.2
  bubble 8.5 back, forward up, bend 60 down
  bubble 3.6 brow, forward forward down, bend 30 down
  pinch 1 lip, forward up
  pinch 1 lip, forward down
  bubble 11.5 belly, back, bend 100 up
  lock to knot
  fold 6 tail, back up, facing left
  fold 6 tail, back down, facing left
  trim
finish with marker: eyes on brow, 0.1 minutes
`,
  minutes: { median: 0.6, sigma: 0.25 },
  difficulty: 1,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'orange', name: 'Orange', fill: { body: 'orange' }, share: 0.5 },
    { id: 'blue', name: 'Blue', fill: { body: 'blue' }, share: 0.3 },
    { id: 'yellow', name: 'Yellow', fill: { body: 'yellow' }, share: 0.2 },
  ],
};
