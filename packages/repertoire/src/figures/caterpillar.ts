import type { ShippedFigure } from './shipped-figure.ts';

export const caterpillar: ShippedFigure = {
  id: 'caterpillar',
  name: 'Caterpillar',
  group: 'insects',
  recipe: `
balloon caterpillar: 260 in body
  leave 5
  mark chin
  repeat x 4
    bubble 2 segment, back up
    pinch 1 hump, up
    bubble 2 segment, back down
    pinch 1 foot, down
  end
  trim

balloon face: round-5 in face
  join to chin
  bubble 3.2 face, forward up

balloon feelers: 160 in body
  inflate 9
  join to chin
  fold 4 feeler, up up left, facing left, x 2 mirrored
  trim
finish with marker: eyes and smile on face, 0.2 minutes
`,
  minutes: { median: 1.1, sigma: 0.25 },
  difficulty: 2,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'green', name: 'Green', fill: { body: 'green', face: 'yellow' }, share: 0.6 },
    { id: 'pink', name: 'Pink and violet', fill: { body: 'violet', face: 'pink' }, share: 0.4 },
  ],
};
