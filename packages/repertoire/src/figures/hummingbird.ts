import type { ShippedFigure } from './shipped-figure.ts';

export const hummingbird: ShippedFigure = {
  id: 'hummingbird',
  name: 'Hummingbird',
  group: 'birds',
  recipe: `
balloon hummingbird: 160 in body
  leave 4
  bubble 4 tail, back back down
  fold 9 wing, up up up left back, facing left, x 2 mirrored
  bubble 1.6 neck, forward forward up
  pinch 2.4 head, up forward
  flat 2 beak, forward
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
