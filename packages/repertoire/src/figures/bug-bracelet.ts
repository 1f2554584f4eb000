import type { ShippedFigure } from './shipped-figure.ts';

export const bugBracelet: ShippedFigure = {
  id: 'bug-bracelet',
  name: 'Bug bracelet',
  group: 'bracelets',
  recipe: `
balloon bug: 260 in body
  inflate 8
  bubble 1 foot, forward left
  bubble 1 foot, back left
  bubble 1 foot, back right
  bubble 1 foot, right forward
  bubble 1 foot, forward left
  lock last 5
  pinch 2 shell, up
  flat 7 band, down, facing forward
  lock to knot
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
