import type { ShippedFigure } from './shipped-figure.ts';

export const fish: ShippedFigure = {
  id: 'fish',
  name: 'Fish',
  group: 'sea',
  recipe: `
balloon fish: 260 in body
  leave 2.5
  bubble 11 back, forward, bend 100 down
  pinch 1.2 lip, forward up
  pinch 1.2 lip, forward down
  bubble 11 belly, back, bend 100 up
  lock to knot
  fold 5 tail, back up, facing left
  fold 5 tail, back down, facing left
  trim
finish with marker: eyes on back, 0.1 minutes
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
