import type { ShippedFigure } from './shipped-figure.ts';

export const flowerEight: ShippedFigure = {
  id: 'flower-eight',
  name: 'Flower with eight petals',
  group: 'flowers',
  recipe: `
balloon outer ring: 260 in outer
  leave 0.8
  burp
  mark middle
  loop 12 outer petal, up, facing forward, x 4 around forward

balloon inner ring: 260 in inner
  leave 0.8
  burp
  join to middle
  loop 12 inner petal, up left, facing forward, x 4 around forward

balloon stem: 260 in stem
  leave 3
  bubble 1.5 centre, forward
  join to middle
  bubble 13 upper stem, down down down down back
  fold 7 leaf, left left up, facing forward, x 2 mirrored
  bubble 8 lower stem, down
  trim
`,
  minutes: { median: 1.6, sigma: 0.25 },
  difficulty: 3,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'two-tone', name: 'Pink and white', fill: { outer: 'pink', inner: 'white', stem: 'green' }, share: 0.6 },
    { id: 'sun', name: 'Yellow and orange', fill: { outer: 'yellow', inner: 'orange', stem: 'green' }, share: 0.4 },
  ],
};
