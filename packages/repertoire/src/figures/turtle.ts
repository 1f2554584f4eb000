import type { ShippedFigure } from './shipped-figure.ts';

export const turtle: ShippedFigure = {
  id: 'turtle',
  name: 'Turtle',
  group: 'animals',
  recipe: `
balloon turtle: 260 in body
  inflate 20
  bubble 2.4 head, forward forward up
  pinch 1.2 front leg, left left forward down, x 2 mirrored
  bubble 1.2 belly, back
  mark middle
  bubble 1.2 belly, back
  pinch 1.2 hind leg, left left back down, x 2 mirrored
  bubble 0.8 tail, back
  trim

balloon shell: round-5 in shell
  join to middle
  bubble 3.8 shell, up
finish with marker: eyes on head, 0.1 minutes
finish with marker: spots on shell, 0.15 minutes
`,
  minutes: { median: 0.8, sigma: 0.25 },
  difficulty: 2,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'green', name: 'Green and brown', fill: { body: 'green', shell: 'brown' }, share: 0.6 },
    { id: 'blue', name: 'Sky and blue', fill: { body: 'sky', shell: 'blue' }, share: 0.4 },
  ],
};
