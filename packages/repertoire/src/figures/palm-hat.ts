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

balloon trunk: 260 in band
  inflate 7
  join to top
  bubble 5 trunk, up
  mark crown
  trim

balloon fronds: 160 in fronds, x 3 around up
  inflate 20
  bubble 7 frond, left left up, bend 100 down
  join to crown
  bubble 7 frond, right right up, bend 100 down
  trim
`,
  minutes: { median: 1.3, sigma: 0.25 },
  difficulty: 3,
  tags: ['wearable', 'safe outdoors', 'not for under threes'],
  colourways: [{ id: 'classic', name: 'Brown and green', fill: { band: 'brown', fronds: 'green' }, share: 1 }],
};
