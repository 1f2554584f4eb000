import type { ShippedFigure } from './shipped-figure.ts';

export const helmet: ShippedFigure = {
  id: 'helmet',
  name: 'Helmet',
  group: 'hats',
  recipe: `
balloon helmet: 260 in band
  leave 2
  bubble 1.5 ball, forward
  mark front
  bubble 10 band, back, bend 180 right
  mark nape
  bubble 10 band, forward, bend 180 left
  lock to front
  bubble 12 arch, back, bend 180 down down down right
  lock to nape
  bubble 12 arch, forward, bend 180 down down down left
  lock to front
  trim
`,
  minutes: { median: 0.6, sigma: 0.25 },
  difficulty: 1,
  tags: ['wearable', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'red', name: 'Red', fill: { band: 'red' }, share: 0.4 },
    { id: 'blue', name: 'Blue', fill: { band: 'blue' }, share: 0.25 },
    { id: 'green', name: 'Green', fill: { band: 'green' }, share: 0.2 },
    { id: 'pink', name: 'Pink', fill: { band: 'pink' }, share: 0.15 },
  ],
};
