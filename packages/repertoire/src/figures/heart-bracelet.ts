import type { ShippedFigure } from './shipped-figure.ts';

export const heartBracelet: ShippedFigure = {
  id: 'heart-bracelet',
  name: 'Heart bracelet',
  group: 'bracelets',
  recipe: `
balloon band: 160 in band
  leave 6
  mark wrist
  loop 9 band, down, facing forward
  pinch 1 bead, left, x 2 mirrored
  trim

balloon heart: heart-5 in heart
  join to wrist
  bubble 3.5 heart, up
`,
  minutes: { median: 0.6, sigma: 0.25 },
  difficulty: 1,
  tags: ['wearable', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'red', name: 'Red and white', fill: { band: 'white', heart: 'red' }, share: 0.6 },
    { id: 'pink', name: 'Pink and rose', fill: { band: 'pink', heart: 'rose' }, share: 0.4 },
  ],
};
