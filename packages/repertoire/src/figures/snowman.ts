import type { ShippedFigure } from './shipped-figure.ts';

export const snowman: ShippedFigure = {
  id: 'snowman',
  name: 'Snowman',
  group: 'toys',
  recipe: `
balloon base: link-12 in snow
  bubble 7.5 base, down
  mark waist

balloon chest: link-6 in snow
  join to waist
  bubble 5.6 chest, up
  mark neck

balloon head: link-6 in snow
  join to neck
  bubble 4.4 head, up
  mark crown

balloon arms: 160 in arms
  leave 7
  bubble 6 arm, left left up
  join to neck
  bubble 6 arm, right right up
  trim

balloon scarf: 160 in scarf
  leave 5
  join to neck
  loop 12 scarf, forward, facing up
  bubble 3 scarf end, down forward
  trim

balloon hat: 260 in hat
  leave 5
  join to crown
  loop 9 brim, forward, facing up
  fold 5 hat, up, facing forward
  trim
finish with marker: eyes and smile on head, 0.2 minutes
`,
  minutes: { median: 1.8, sigma: 0.3 },
  difficulty: 3,
  tags: ['stands', 'not for under threes'],
  colourways: [{ id: 'white', name: 'White', fill: { snow: 'white', hat: 'black', arms: 'brown', scarf: 'red' }, share: 1 }],
};
