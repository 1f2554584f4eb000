import type { ShippedFigure } from './shipped-figure.ts';

export const pumpkin: ShippedFigure = {
  id: 'pumpkin',
  name: 'Pumpkin',
  group: 'toys',
  recipe: `
balloon pumpkin: 260 in pumpkin
  leave 2.4
  mark bottom
  bubble 6 rib, up, bend 120 back
  mark top
  bubble 6 rib, down, bend 120 forward
  lock to bottom
  bubble 6 rib, up, bend 120 right right forward
  lock to top
  bubble 6 rib, down, bend 120 left left back
  lock to bottom
  bubble 6 rib, up, bend 120 right right back
  lock to top
  bubble 6 rib, down, bend 120 left left forward
  lock to bottom
  trim

balloon stem: 160 in stem
  leave 7
  join to top
  bubble 1.5 stem, up
  fold 4 leaf, left up, facing up
  trim
finish with marker: eyes and smile on rib, 0.2 minutes
`,
  minutes: { median: 0.9, sigma: 0.25 },
  difficulty: 3,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [{ id: 'orange', name: 'Orange', fill: { pumpkin: 'orange', stem: 'green' }, share: 1 }],
};
