import type { ShippedFigure } from './shipped-figure.ts';

export const giraffe: ShippedFigure = {
  id: 'giraffe',
  name: 'Giraffe',
  group: 'animals',
  recipe: `
balloon giraffe: 260 in body
  leave 2.8
  bubble 2.2 nose, forward down
  pinch 1 ear, up left, x 2 mirrored
  bubble 11 neck, down down down down back
  bubble 4 front leg, down down down down left, x 2 mirrored
  lock
  bubble 4 body, back
  bubble 4 hind leg, down down down down left, x 2 mirrored
  lock
  bubble 1.5 tail, back down
finish with marker: spots on neck, 0.2 minutes
`,
  minutes: { median: 0.9, sigma: 0.25 },
  difficulty: 2,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'yellow', name: 'Yellow', fill: { body: 'yellow' }, share: 0.6 },
    { id: 'orange', name: 'Orange', fill: { body: 'orange' }, share: 0.4 },
  ],
};
