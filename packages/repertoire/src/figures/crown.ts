import type { ShippedFigure } from './shipped-figure.ts';

export const crown: ShippedFigure = {
  id: 'crown',
  name: 'Crown',
  group: 'hats',
  recipe: `
balloon band: 260 in band
  leave 4
  mark one
  bubble 4 band, right back back back
  mark two
  bubble 4 band, right right right forward
  mark three
  bubble 4 band, forward
  mark four
  bubble 4 band, left left left forward
  mark five
  bubble 4 band, left back back back
  lock to one
  trim

balloon points: 260 in band
  leave 2.4
  join to one
  bubble 3.4 point, up right back
  pinch 0.9 ball, up
  bubble 3.4 point, down right back
  join to two
  bubble 3.4 point, up right
  pinch 0.9 ball, up
  bubble 3.4 point, down right
  join to three
  bubble 3.4 point, up forward
  pinch 0.9 ball, up
  bubble 3.4 point, down forward
  join to four
  bubble 3.4 point, up left
  pinch 0.9 ball, up
  bubble 3.4 point, down left
  join to five
  bubble 3.4 point, up left back
  pinch 0.9 ball, up
  bubble 3.4 point, down left back
  join to one
  trim
`,
  minutes: { median: 2.2, sigma: 0.3 },
  difficulty: 3,
  tags: ['wearable', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'yellow', name: 'Yellow', fill: { band: 'yellow' }, share: 0.4 },
    { id: 'pink', name: 'Pink', fill: { band: 'pink' }, share: 0.25 },
    { id: 'white', name: 'White', fill: { band: 'white' }, share: 0.2 },
    { id: 'violet', name: 'Violet', fill: { band: 'violet' }, share: 0.15 },
  ],
};
