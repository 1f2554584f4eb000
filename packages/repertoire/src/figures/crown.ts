import type { ShippedFigure } from './shipped-figure.ts';

export const crown: ShippedFigure = {
  id: 'crown',
  name: 'Crown',
  group: 'hats',
  recipe: `
balloon crown: 260 in band
  leave 3.4
  repeat x 6 around up
    bubble 3.6 band, left
    fold 2.8 point, up, facing forward
  end
  lock to knot
`,
  minutes: { median: 2.2, sigma: 0.3 },
  difficulty: 4,
  tags: ['wearable', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'yellow', name: 'Yellow', fill: { band: 'yellow' }, share: 0.4 },
    { id: 'pink', name: 'Pink', fill: { band: 'pink' }, share: 0.25 },
    { id: 'white', name: 'White', fill: { band: 'white' }, share: 0.2 },
    { id: 'violet', name: 'Violet', fill: { band: 'violet' }, share: 0.15 },
  ],
};
