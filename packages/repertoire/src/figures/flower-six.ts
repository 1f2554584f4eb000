import type { ShippedFigure } from './shipped-figure.ts';

export const flowerSix: ShippedFigure = {
  id: 'flower-six',
  name: 'Flower with six petals',
  group: 'flowers',
  recipe: `
balloon petals: 260 in petals
  leave 1.6
  burp
  mark middle
  loop 8.2 petal, up, facing forward, x 6 around forward

balloon stem: 260 in stem
  leave 3
  bubble 1.5 centre, forward
  join to middle
  bubble 12 upper stem, down down down down back
  loop 6 leaf, left up, facing forward, x 2 mirrored
  bubble 8 lower stem, down
  trim
`,
  minutes: { median: 1, sigma: 0.25 },
  difficulty: 2,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'pink', name: 'Pink', fill: { petals: 'pink', stem: 'green' }, share: 0.4 },
    { id: 'yellow', name: 'Yellow', fill: { petals: 'yellow', stem: 'green' }, share: 0.25 },
    { id: 'violet', name: 'Violet', fill: { petals: 'violet', stem: 'green' }, share: 0.2 },
    { id: 'red', name: 'Red', fill: { petals: 'red', stem: 'green' }, share: 0.15 },
  ],
};
