import type { ShippedFigure } from './shipped-figure.ts';

export const spider: ShippedFigure = {
  id: 'spider',
  name: 'Spider',
  group: 'insects',
  recipe: `
balloon body: 260 in body
  inflate 14
  bubble 2 head, forward
  mark waist
  bubble 4 body, back back up
  trim

balloon first legs: 160 in legs
  leave 6
  bubble 7 leg, left forward, bend 110 down
  join to waist
  bubble 7 leg, right forward, bend 110 down
  trim

balloon second legs: 160 in legs
  leave 6
  bubble 7 leg, left left left forward, bend 110 down
  join to waist
  bubble 7 leg, right right right forward, bend 110 down
  trim

balloon third legs: 160 in legs
  leave 6
  bubble 7 leg, left left left back, bend 110 down
  join to waist
  bubble 7 leg, right right right back, bend 110 down
  trim

balloon fourth legs: 160 in legs
  leave 6
  bubble 7 leg, left back, bend 110 down
  join to waist
  bubble 7 leg, right back, bend 110 down
  trim
finish with sticker: eyes on head, 0.1 minutes
`,
  minutes: { median: 1.6, sigma: 0.3 },
  difficulty: 3,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'black', name: 'Black', fill: { body: 'black', legs: 'black' }, share: 0.6 },
    { id: 'violet', name: 'Violet and black', fill: { body: 'violet', legs: 'black' }, share: 0.4 },
  ],
};
