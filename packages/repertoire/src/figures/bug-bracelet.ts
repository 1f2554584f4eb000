import type { ShippedFigure } from './shipped-figure.ts';

export const bugBracelet: ShippedFigure = {
  id: 'bug-bracelet',
  name: 'Bug bracelet',
  group: 'bracelets',
  recipe: `
balloon bug: 260 in body
  inflate 9
  pinch 0.8 foot, left left forward, x 2 mirrored
  pinch 0.8 foot, left left back, x 2 mirrored
  pinch 1.4 head, forward forward up
  pinch 1.8 shell, back up
  flat 7 band, down, facing left
  lock to knot
finish with marker: eyes on head, 0.1 minutes
finish with marker: black spots on shell, 0.1 minutes
`,
  minutes: { median: 0.45, sigma: 0.2 },
  difficulty: 1,
  tags: ['wearable', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'green', name: 'Green', fill: { body: 'green' }, share: 0.5 },
    { id: 'red', name: 'Red', fill: { body: 'red' }, share: 0.3 },
    { id: 'yellow', name: 'Yellow', fill: { body: 'yellow' }, share: 0.2 },
  ],
};
