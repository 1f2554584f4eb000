import type { ShippedFigure } from './shipped-figure.ts';

export const candyCane: ShippedFigure = {
  id: 'candy-cane',
  name: 'Candy cane',
  group: 'toys',
  recipe: `
balloon cane: 260 in cane
  leave 3.5
  bubble 22 stick, down
  bubble 10 hook, forward, bend 170 down
finish with marker: stripes on stick, 0.2 minutes
`,
  minutes: { median: 0.4, sigma: 0.2 },
  difficulty: 1,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'red', name: 'Red', fill: { cane: 'red' }, share: 0.5 },
    { id: 'white', name: 'White', fill: { cane: 'white' }, share: 0.3 },
    { id: 'green', name: 'Green', fill: { cane: 'green' }, share: 0.2 },
  ],
};
