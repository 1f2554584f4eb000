import type { ShippedFigure } from './shipped-figure.ts';

export const car: ShippedFigure = {
  id: 'car',
  name: 'Car',
  group: 'vehicles',
  recipe: `
balloon body: 260 in body
  leave 3
  mark front
  bubble 7 side, back back back left
  mark rear
  bubble 7 side, back back back right
  lock
  roll 7 floor, back
  bubble 3 boot, up up forward
  bubble 4 roof, forward
  bubble 3.5 bonnet, down forward
  lock to front
  trim

balloon wheels: 260 in wheels
  leave 5
  join to front
  loop 5 front wheel, left down down, facing left, x 2 mirrored
  bubble 7 axle, back
  join to rear
  loop 5 rear wheel, left down down, facing left, x 2 mirrored
  trim
`,
  minutes: { median: 1.6, sigma: 0.3 },
  difficulty: 3,
  tags: ['stands', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'red', name: 'Red', fill: { body: 'red', wheels: 'black' }, share: 0.5 },
    { id: 'blue', name: 'Blue', fill: { body: 'blue', wheels: 'black' }, share: 0.3 },
    { id: 'yellow', name: 'Yellow', fill: { body: 'yellow', wheels: 'black' }, share: 0.2 },
  ],
};
