import type { ShippedFigure } from './shipped-figure.ts';

export const numberEight: ShippedFigure = {
  id: 'number-eight',
  name: 'Number 8',
  group: 'letters and numbers',
  recipe: `
balloon number: 260 in number
  leave 2
  burp
  loop 20 upper ring, up, facing forward
  loop 25 lower ring, down, facing forward
  trim
`,
  minutes: { median: 0.5, sigma: 0.2 },
  difficulty: 1,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'red', name: 'Red', fill: { number: 'red' }, share: 0.5 },
    { id: 'blue', name: 'Blue', fill: { number: 'blue' }, share: 0.3 },
    { id: 'violet', name: 'Violet', fill: { number: 'violet' }, share: 0.2 },
  ],
};
