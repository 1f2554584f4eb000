import type { ShippedFigure } from './shipped-figure.ts';

export const letterA: ShippedFigure = {
  id: 'letter-a',
  name: 'Letter A',
  group: 'letters and numbers',
  recipe: `
balloon letter: 260 in letter
  leave 2.6
  bubble 6 left foot, down down down left
  mark left knee
  bubble 7 left side, up up up right
  bubble 7 right side, down down down right
  mark right knee
  bubble 5 bar, left
  lock to left knee
  trim

balloon foot: 260 in letter
  leave 6
  join to right knee
  bubble 6 right foot, down down down right
  trim
`,
  minutes: { median: 0.7, sigma: 0.25 },
  difficulty: 2,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'red', name: 'Red', fill: { letter: 'red' }, share: 0.5 },
    { id: 'blue', name: 'Blue', fill: { letter: 'blue' }, share: 0.3 },
    { id: 'green', name: 'Green', fill: { letter: 'green' }, share: 0.2 },
  ],
};
