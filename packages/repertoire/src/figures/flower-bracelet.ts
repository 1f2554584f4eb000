import type { ShippedFigure } from './shipped-figure.ts';

export const flowerBracelet: ShippedFigure = {
  id: 'flower-bracelet',
  name: 'Flower bracelet',
  group: 'bracelets',
  recipe: `
balloon band: 160 in band
  leave 6
  mark wrist
  loop 10 band, down, facing forward
  trim

balloon flower: 160 in flower
  leave 4.5
  join to wrist
  fold 3.4 petal, up up up forward, facing forward, x 6 around forward
  pinch 1 centre, forward
  trim
`,
  minutes: { median: 0.8, sigma: 0.25 },
  difficulty: 2,
  tags: ['wearable', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'pink', name: 'Pink and green', fill: { flower: 'pink', band: 'green' }, share: 0.5 },
    { id: 'yellow', name: 'Yellow and green', fill: { flower: 'yellow', band: 'green' }, share: 0.3 },
    { id: 'white', name: 'White and violet', fill: { flower: 'white', band: 'violet' }, share: 0.2 },
  ],
};
