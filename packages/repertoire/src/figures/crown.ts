import type { ShippedFigure } from './shipped-figure.ts';

export const crown: ShippedFigure = {
  id: 'crown',
  name: 'Crown',
  group: 'hats',
  recipe: `
balloon crown: 260 in band
  leave 3
  repeat x 5 around up
    bubble 4 band, left
    fold 4.6 point, up, facing forward
  end
  lock to knot
`,
  minutes: { median: 1.5, sigma: 0.3 },
  difficulty: 3,
  tags: ['wearable', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'yellow', name: 'Yellow', fill: { band: 'yellow' }, share: 0.4 },
    { id: 'pink', name: 'Pink', fill: { band: 'pink' }, share: 0.25 },
    { id: 'white', name: 'White', fill: { band: 'white' }, share: 0.2 },
    { id: 'violet', name: 'Violet', fill: { band: 'violet' }, share: 0.15 },
  ],
};
