import type { ShippedFigure } from './shipped-figure.ts';

export const heart: ShippedFigure = {
  id: 'heart',
  name: 'Heart',
  group: 'hearts',
  recipe: `
balloon heart: 260 in heart
  leave 1.2
  burp
  bubble 12.5 side, up up left
  bubble 12.5 lobe, right right up, bend 184 down
  bubble 12.5 lobe, right right down, bend 184 down
  bubble 12.5 side, down down left
  lock to knot
  trim
`,
  minutes: { median: 0.45, sigma: 0.2 },
  difficulty: 1,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'red', name: 'Red', fill: { heart: 'red' }, share: 0.4 },
    { id: 'pink', name: 'Pink', fill: { heart: 'pink' }, share: 0.25 },
    { id: 'rose', name: 'Rose', fill: { heart: 'rose' }, share: 0.2 },
    { id: 'white', name: 'White', fill: { heart: 'white' }, share: 0.15 },
  ],
};
