import type { ShippedFigure } from './shipped-figure.ts';

export const rabbitEarsHat: ShippedFigure = {
  id: 'rabbit-ears-hat',
  name: 'Rabbit-ears hat',
  group: 'hats',
  recipe: `
balloon band: 260 in band
  leave 3
  mark front
  bubble 11 band, back, bend 180 right
  bubble 11 band, forward, bend 180 left
  lock to front
  trim

balloon ears: 260 in ears
  leave 2.5
  join to front
  fold 18 ear, up up up up left, facing forward, x 2 mirrored
  trim
`,
  minutes: { median: 1, sigma: 0.25 },
  difficulty: 2,
  tags: ['wearable', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'white', name: 'White and pink', fill: { band: 'white', ears: 'pink' }, share: 0.5 },
    { id: 'pink', name: 'Pink and white', fill: { band: 'pink', ears: 'white' }, share: 0.3 },
    { id: 'grey', name: 'Grey and pink', fill: { band: 'grey', ears: 'pink' }, share: 0.2 },
  ],
};
