import type { ShippedFigure } from './shipped-figure.ts';

export const octopus: ShippedFigure = {
  id: 'octopus',
  name: 'Octopus',
  group: 'sea',
  recipe: `
balloon head: round-9 in body
  mark neck
  bubble 5.5 head, up

balloon leg: 260 in legs, x 4 around up
  leave 5.5
  bubble 8 leg, forward forward down, bend 90 up
  join to neck
  bubble 8 leg, back left back left down down, bend 90 up
  trim
finish with marker: eyes and smile on head, 0.2 minutes
`,
  minutes: { median: 1.6, sigma: 0.3 },
  difficulty: 3,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'violet', name: 'Violet', fill: { body: 'violet', legs: 'violet' }, share: 0.5 },
    { id: 'orange', name: 'Orange and red', fill: { body: 'orange', legs: 'red' }, share: 0.3 },
    { id: 'sky', name: 'Sky and blue', fill: { body: 'sky', legs: 'blue' }, share: 0.2 },
  ],
};
