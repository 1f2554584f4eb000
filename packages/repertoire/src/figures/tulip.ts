import type { ShippedFigure } from './shipped-figure.ts';

export const tulip: ShippedFigure = {
  id: 'tulip',
  name: 'Tulip',
  group: 'flowers',
  recipe: `
balloon tulip: 260 in flower
  inflate 2.8
  tulip 2.8 bloom, up
  flat 9 stem, down
`,
  minutes: { median: 0.25, sigma: 0.2 },
  difficulty: 1,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'red', name: 'Red', fill: { flower: 'red' }, share: 0.4 },
    { id: 'yellow', name: 'Yellow', fill: { flower: 'yellow' }, share: 0.25 },
    { id: 'pink', name: 'Pink', fill: { flower: 'pink' }, share: 0.2 },
    { id: 'violet', name: 'Violet', fill: { flower: 'violet' }, share: 0.15 },
  ],
};
