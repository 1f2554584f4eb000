import type { ShippedFigure } from './shipped-figure.ts';

export const heartWand: ShippedFigure = {
  id: 'heart-wand',
  name: 'Heart wand',
  group: 'swords and wands',
  recipe: `
balloon wand: 260 in wand
  leave 4
  mark top
  fold 4 bow, left, facing forward, x 2 mirrored
  bubble 18 handle, down
  trim

balloon heart: heart-6 in heart
  join to top
  bubble 5 heart, up
`,
  minutes: { median: 0.8, sigma: 0.25 },
  difficulty: 2,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'pink', name: 'Pink and red', fill: { wand: 'pink', heart: 'red' }, share: 0.6 },
    { id: 'white', name: 'White and rose', fill: { wand: 'white', heart: 'rose' }, share: 0.4 },
  ],
};
