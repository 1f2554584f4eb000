import type { ShippedFigure } from './shipped-figure.ts';

export const swan: ShippedFigure = {
  id: 'swan',
  name: 'Swan',
  group: 'birds',
  recipe: `
balloon swan: 260 in body
  leave 3.6
  loop 13 wing, back back up left, facing left left forward, x 2 mirrored
  bubble 9 neck, up up up up forward, bend 130 forward
  bubble 2 head, forward down down
  bubble 0.7 beak, forward down
finish with marker: eyes on head, 0.1 minutes
`,
  minutes: { median: 0.7, sigma: 0.25 },
  difficulty: 2,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'white', name: 'White', fill: { body: 'white' }, share: 0.5 },
    { id: 'pink', name: 'Pink', fill: { body: 'pink' }, share: 0.3 },
    { id: 'black', name: 'Black', fill: { body: 'black' }, share: 0.2 },
  ],
};
