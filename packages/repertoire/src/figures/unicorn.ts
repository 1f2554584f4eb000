import type { ShippedFigure } from './shipped-figure.ts';

export const unicorn: ShippedFigure = {
  id: 'unicorn',
  name: 'Unicorn',
  group: 'animals',
  recipe: `
balloon unicorn: 260 in body
  leave 3.2
  bubble 4 head, forward down
  mark brow
  bubble 1 ear, up up left, x 2 mirrored
  lock
  bubble 4.5 neck, down back
  mark withers
  bubble 4 front leg, down down down down left, x 2 mirrored
  lock
  bubble 5 body, back
  mark rump
  bubble 4 hind leg, down down down down left, x 2 mirrored
  lock

balloon horn: 160 in horn
  inflate 5
  join to brow
  bubble 4 horn, up up forward
  trim

balloon mane: 160 in mane
  leave 3
  join to brow
  fold 4 mane, back up left, facing left, x 2 mirrored
  bubble 6 mane, down back, bend 60 forward
  join to withers
  trim

balloon tail: 160 in mane
  leave 6
  join to rump
  fold 8 tail, back back down left, facing left, x 2 mirrored
  trim
finish with marker: eyes on head, 0.1 minutes
`,
  minutes: { median: 1.7, sigma: 0.3 },
  difficulty: 3,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'white', name: 'White and pink', fill: { body: 'white', horn: 'yellow', mane: 'pink' }, share: 0.5 },
    { id: 'pink', name: 'Pink and violet', fill: { body: 'pink', horn: 'yellow', mane: 'violet' }, share: 0.3 },
    { id: 'sky', name: 'Sky and white', fill: { body: 'sky', horn: 'yellow', mane: 'white' }, share: 0.2 },
  ],
};
