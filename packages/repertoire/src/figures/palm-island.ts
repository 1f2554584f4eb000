import type { ShippedFigure } from './shipped-figure.ts';

export const palmIsland: ShippedFigure = {
  id: 'palm-island',
  name: 'Palm island with a monkey',
  group: 'toys',
  recipe: `
balloon trunk: 350 in trunk
  leave 2.5
  mark ground
  bubble 6 trunk, up up up up right
  bubble 6 trunk, up
  mark climb
  bubble 5 trunk, up
  bubble 5 trunk, up up up up left
  mark top
  trim

balloon island: round-9 in island, x 4 around up
  join to ground
  bubble 7 island, forward left

balloon front fronds: 260 in fronds
  leave 2
  bubble 16 frond, forward forward up, bend 90 down
  join to top
  bubble 16 frond, back back left up, bend 90 down
  trim

balloon left fronds: 260 in fronds
  leave 2
  bubble 16 frond, left left forward up, bend 90 down
  join to top
  bubble 16 frond, back back right up, bend 90 down
  trim

balloon right fronds: 260 in fronds
  leave 2
  bubble 16 frond, right right forward up, bend 90 down
  join to top
  fold 8 young frond, up, facing left
  trim

balloon coconut: round-5 in coconuts, x 3 around up
  join to top
  bubble 2.5 coconut, forward down

balloon monkey: 260 in monkey
  leave 5
  join to climb
  fold 3 leg, left left forward, facing up, x 2 mirrored
  bubble 3.4 monkey body, up forward
  bubble 3.4 arm, left back, bend 60 right, x 2 mirrored
  lock
  mark monkey chin
  bubble 2 cheek, up left
  pinch 1.2 ear, left
  bubble 2 brow, right
  pinch 1.2 ear, right
  bubble 2 cheek, down left
  lock last 5
  trim

balloon monkey face: round-5 in face
  join to monkey chin
  bubble 2.2 face, forward up
finish with marker: eyes and smile on face, 0.3 minutes
`,
  minutes: { median: 11, sigma: 0.3 },
  difficulty: 5,
  tags: ['show-piece', 'stands', 'not for under threes'],
  colourways: [
    {
      id: 'classic',
      name: 'Brown and green',
      fill: { island: 'yellow', trunk: 'brown', fronds: 'green', coconuts: 'brown', monkey: 'brown', face: 'blush' },
      share: 0.6,
    },
    {
      id: 'pink',
      name: 'Pink monkey',
      fill: { island: 'yellow', trunk: 'brown', fronds: 'green', coconuts: 'orange', monkey: 'pink', face: 'white' },
      share: 0.4,
    },
  ],
};
