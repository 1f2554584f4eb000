import type { ShippedFigure } from './shipped-figure.ts';

export const palmHat: ShippedFigure = {
  id: 'palm-hat',
  name: 'Palm-tree hat',
  group: 'hats',
  recipe: `
balloon band: 260 in band
  leave 2.6
  mark front
  bubble 11 band, back, bend 180 right
  mark nape
  bubble 11 band, forward, bend 180 left
  lock to front
  bubble 6.5 arch, up back, bend 80 down
  mark top
  bubble 6.5 arch, down back, bend 80 down
  lock to nape
  trim

balloon palm: 260 in fronds
  leave 2.4
  join to top
  bubble 6 trunk, up
  fold 9 frond, forward forward up, facing up, x 4 around up
  pinch 1 coconut, up
  trim
`,
  minutes: { median: 1.3, sigma: 0.25 },
  difficulty: 3,
  tags: ['wearable', 'safe outdoors', 'not for under threes'],
  colourways: [{ id: 'classic', name: 'Brown and green', fill: { band: 'brown', fronds: 'green' }, share: 1 }],
};
