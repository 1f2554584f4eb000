import type { ShippedFigure } from './shipped-figure.ts';

export const carnation: ShippedFigure = {
  id: 'carnation',
  name: 'Carnation',
  group: 'flowers',
  recipe: `
balloon carnation: 260 in flower
  leave 7.4
  repeat x 6 around up
    bubble 1 petal, forward up
    bubble 1 petal, left up
    bubble 1 petal, back right down
    lock last 3
  end
  flat 1.5 stem, down
`,
  minutes: { median: 1.1, sigma: 0.25 },
  difficulty: 2,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'rose', name: 'Rose', fill: { flower: 'rose' }, share: 0.5 },
    { id: 'white', name: 'White', fill: { flower: 'white' }, share: 0.3 },
    { id: 'red', name: 'Red', fill: { flower: 'red' }, share: 0.2 },
  ],
};
