import type { ShippedFigure } from './shipped-figure.ts';

export const numberOne: ShippedFigure = {
  id: 'number-one',
  name: 'Number 1',
  group: 'letters and numbers',
  recipe: `
balloon number: 260 in number
  leave 3
  bubble 6 flag, down down right
  bubble 18 stem, down
  fold 7 foot, left, facing forward, x 2 mirrored
  trim
`,
  minutes: { median: 0.5, sigma: 0.2 },
  difficulty: 1,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'red', name: 'Red', fill: { number: 'red' }, share: 0.5 },
    { id: 'blue', name: 'Blue', fill: { number: 'blue' }, share: 0.3 },
    { id: 'yellow', name: 'Yellow', fill: { number: 'yellow' }, share: 0.2 },
  ],
};
