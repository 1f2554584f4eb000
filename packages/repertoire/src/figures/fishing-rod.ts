import type { ShippedFigure } from './shipped-figure.ts';

export const fishingRod: ShippedFigure = {
  id: 'fishing-rod',
  name: 'Fishing rod with a fish',
  group: 'toys',
  recipe: `
balloon rod: 260 in rod
  leave 2
  bubble 4 handle, back down
  pinch 1.5 reel, down
  bubble 22 rod, forward forward up, bend 40 down
  mark rod end
  trim

balloon line: 160 in line
  inflate 1
  join to rod end
  bubble 0.8 bead, down
  flat 8 line, down
  mark hook

balloon fish: 160 in fish
  leave 6
  join to hook
  bubble 4 side, down, bend 70 back
  mark fish tail
  bubble 4 side, down, bend 70 forward
  lock
  trim

balloon fin: 160 in fish
  inflate 8
  join to fish tail
  fold 2.4 fin, down forward, facing left
  fold 2.4 fin, down back, facing left
  trim
`,
  minutes: { median: 1.4, sigma: 0.3 },
  difficulty: 2,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'brown', name: 'Brown and orange', fill: { rod: 'brown', line: 'white', fish: 'orange' }, share: 0.6 },
    { id: 'green', name: 'Green and blue', fill: { rod: 'green', line: 'white', fish: 'blue' }, share: 0.4 },
  ],
};
