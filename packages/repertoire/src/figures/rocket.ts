import type { ShippedFigure } from './shipped-figure.ts';

export const rocket: ShippedFigure = {
  id: 'rocket',
  name: 'Rocket',
  group: 'vehicles',
  recipe: `
balloon body: 260 in body
  leave 4.6
  mark top
  bubble 9 side, down down down down forward
  mark base
  bubble 9 side, down down down down left
  lock
  roll 9 side, down down down down right
  trim

balloon nose: 260 in fins
  inflate 5
  join to top
  bubble 2.4 nose, up
  trim

balloon fins: 160 in fins
  leave 1.5
  join to base
  fold 9 fin, forward forward down, facing left, x 4 around up
  trim

balloon flame: 160 in flame
  leave 6
  join to base
  fold 6 flame, down down down left, facing forward, x 2 mirrored
  trim
`,
  minutes: { median: 1.5, sigma: 0.3 },
  difficulty: 3,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'white', name: 'White and red', fill: { body: 'white', fins: 'red', flame: 'orange' }, share: 0.6 },
    { id: 'blue', name: 'Blue and yellow', fill: { body: 'blue', fins: 'yellow', flame: 'red' }, share: 0.4 },
  ],
};
