import type { ShippedFigure } from './shipped-figure.ts';

export const star: ShippedFigure = {
  id: 'star',
  name: 'Star',
  group: 'toys',
  recipe: `
balloon star: 260 in star
  leave 3.2
  repeat x 5 around forward
    bubble 3.8 edge, down down down right
    bubble 3.8 edge, right
  end
  lock to knot
  trim
`,
  minutes: { median: 1.2, sigma: 0.3 },
  difficulty: 3,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'yellow', name: 'Yellow', fill: { star: 'yellow' }, share: 0.5 },
    { id: 'white', name: 'White', fill: { star: 'white' }, share: 0.3 },
    { id: 'blue', name: 'Blue', fill: { star: 'blue' }, share: 0.2 },
  ],
};
