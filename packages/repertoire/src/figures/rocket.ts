import type { ShippedFigure } from './shipped-figure.ts';

export const rocket: ShippedFigure = {
  id: 'rocket',
  name: 'Rocket',
  group: 'vehicles',
  recipe: `
balloon body: 260 in body
  leave 3
  bubble 2.6 tip, up
  bubble 9 side, down down down down forward
  mark base
  bubble 9 side, down down down down left
  lock
  roll 9 side, down down down down right
  trim

balloon fins: 260 in fins
  leave 3.5
  join to base
  fold 8 fin, forward down down, facing left, x 4 around up
  trim

balloon flame: 260 in flame
  leave 6
  join to base
  fold 5 flame, down down forward, facing left, x 3 around up
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
