import type { ShippedFigure } from './shipped-figure.ts';

export const carnation: ShippedFigure = {
  id: 'carnation',
  name: 'Carnation',
  group: 'flowers',
  recipe: `
balloon carnation: 260 in flower
  leave 2
  mark middle
  loop 5 outer petal, up up forward, facing forward, x 6 around forward
  loop 3.4 inner petal, forward up, facing right, x 4 around forward

balloon stem: 160 in stem
  leave 4
  join to middle
  bubble 6 stem, down
  fold 5 leaf, up left left, facing forward, x 2 mirrored
  bubble 4 stem, down
  trim
`,
  minutes: { median: 1.5, sigma: 0.25 },
  difficulty: 2,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'rose', name: 'Rose', fill: { flower: 'rose', stem: 'green' }, share: 0.5 },
    { id: 'white', name: 'White', fill: { flower: 'white', stem: 'green' }, share: 0.3 },
    { id: 'red', name: 'Red', fill: { flower: 'red', stem: 'green' }, share: 0.2 },
  ],
};
