import type { ShippedFigure } from './shipped-figure.ts';

export const antennaHat: ShippedFigure = {
  id: 'antenna-hat',
  name: 'Hat with feelers',
  group: 'hats',
  recipe: `
balloon band: 260 in band
  leave 3
  mark front
  bubble 11 band, back, bend 180 right
  bubble 11 band, forward, bend 180 left
  lock to front
  fold 4 bow, up left, facing forward, x 2 mirrored
  trim

balloon feelers: 260 in feelers
  leave 4.5
  bubble 1.5 ball, up left
  bubble 11 feeler, down down down right, bend 50 left
  join to front
  bubble 11 feeler, up up up right, bend 50 right
  bubble 1.5 ball, up right
  trim
`,
  minutes: { median: 1.2, sigma: 0.25 },
  difficulty: 2,
  tags: ['wearable', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'green', name: 'Green and yellow', fill: { band: 'green', feelers: 'yellow' }, share: 0.6 },
    { id: 'pink', name: 'Pink and violet', fill: { band: 'pink', feelers: 'violet' }, share: 0.4 },
  ],
};
