import type { ShippedFigure } from './shipped-figure.ts';

export const hummingbird: ShippedFigure = {
  id: 'hummingbird',
  name: 'Hummingbird',
  group: 'birds',
  recipe: `
balloon hummingbird: 260 in body
  leave 2.6
  bubble 5 tail, back back down
  loop 12 wing, up back left, facing left up, x 2 mirrored
  bubble 3 head, forward up
  flat 1.6 beak, forward
finish with marker: eyes on head, 0.1 minutes
`,
  minutes: { median: 0.6, sigma: 0.25 },
  difficulty: 2,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'green', name: 'Green', fill: { body: 'green' }, share: 0.5 },
    { id: 'violet', name: 'Violet', fill: { body: 'violet' }, share: 0.3 },
    { id: 'sky', name: 'Sky', fill: { body: 'sky' }, share: 0.2 },
  ],
};
