import type { ShippedFigure } from './shipped-figure.ts';

export const turtle: ShippedFigure = {
  id: 'turtle',
  name: 'Turtle',
  group: 'animals',
  recipe: `
balloon turtle: 260 in body
  inflate 16
  bubble 2.2 head, forward forward up
  mark middle
  pinch 1.6 front leg, forward left, x 2 mirrored
  pinch 1.6 hind leg, back left, x 2 mirrored
  bubble 1 tail, back
  trim

balloon shell: round-5 in shell
  join to middle
  bubble 3.6 shell, up back
finish with marker: eyes on head, 0.1 minutes
`,
  minutes: { median: 0.8, sigma: 0.25 },
  difficulty: 2,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'green', name: 'Green and brown', fill: { body: 'green', shell: 'brown' }, share: 0.6 },
    { id: 'blue', name: 'Sky and blue', fill: { body: 'sky', shell: 'blue' }, share: 0.4 },
  ],
};
