import type { ShippedFigure } from './shipped-figure.ts';

export const snake: ShippedFigure = {
  id: 'snake',
  name: 'Snake',
  group: 'animals',
  recipe: `
balloon snake: 260 in body
  leave 1.5
  bubble 3 head, forward
  bubble 9 body, back, bend 230 left
  bubble 9 body, back, bend 230 right
  bubble 9 body, back, bend 230 left
  bubble 9 body, back, bend 200 right
  bubble 6 tail, back, bend 120 left
finish with marker: eyes and smile on head, 0.1 minutes
`,
  minutes: { median: 0.5, sigma: 0.25 },
  difficulty: 1,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'green', name: 'Green', fill: { body: 'green' }, share: 0.5 },
    { id: 'red', name: 'Red', fill: { body: 'red' }, share: 0.3 },
    { id: 'yellow', name: 'Yellow', fill: { body: 'yellow' }, share: 0.2 },
  ],
};
