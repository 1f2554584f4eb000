import type { ShippedFigure } from './shipped-figure.ts';

export const bugBracelet: ShippedFigure = {
  id: 'bug-bracelet',
  name: 'Bug bracelet',
  group: 'bracelets',
  recipe: `
balloon bug: 260 in body
  inflate 9
  pinch 0.8 foot, left forward, x 2 mirrored
  pinch 0.8 foot, left back, x 2 mirrored
  pinch 1.2 head, forward forward up
  pinch 2 shell, up up back
  flat 7 band, down, facing forward
  lock to knot
finish with marker: eyes on head, 0.1 minutes
finish with marker: spots on shell, 0.1 minutes
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
