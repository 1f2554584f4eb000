import type { ShippedFigure } from './shipped-figure.ts';

export const starWand: ShippedFigure = {
  id: 'star-wand',
  name: 'Star wand',
  group: 'swords and wands',
  recipe: `
balloon star: 160 in star
  leave 5
  repeat x 5 around back
    bubble 2.6 edge, right right right down down
    bubble 2.6 edge, up up up left
  end
  lock to knot
  mark foot
  trim

balloon wand: 260 in wand
  leave 5
  join to foot
  pinch 1.2 bow, left, x 2 mirrored
  bubble 15 handle, down
  trim
`,
  minutes: { median: 1.6, sigma: 0.3 },
  difficulty: 3,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'yellow', name: 'Yellow and blue', fill: { star: 'yellow', wand: 'blue' }, share: 0.6 },
    { id: 'white', name: 'White and pink', fill: { star: 'white', wand: 'pink' }, share: 0.4 },
  ],
};
