import type { ShippedFigure } from './shipped-figure.ts';

export const butterfly: ShippedFigure = {
  id: 'butterfly',
  name: 'Butterfly',
  group: 'insects',
  recipe: `
balloon wings: 260 in wings
  leave 1
  burp
  mark middle
  loop 14 upper wing, up left, facing forward, x 2 mirrored
  loop 9 lower wing, down down left, facing forward, x 2 mirrored
  trim

balloon body: 160 in body
  leave 6
  bubble 4 abdomen, down
  join to middle
  bubble 2.5 thorax, up
  pinch 1 head, forward
  fold 5 feeler, up up left, facing left, x 2 mirrored
  trim
`,
  minutes: { median: 0.9, sigma: 0.25 },
  difficulty: 2,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'pink', name: 'Pink', fill: { wings: 'pink', body: 'black' }, share: 0.5 },
    { id: 'violet', name: 'Violet', fill: { wings: 'violet', body: 'black' }, share: 0.3 },
    { id: 'orange', name: 'Orange', fill: { wings: 'orange', body: 'black' }, share: 0.2 },
  ],
};
