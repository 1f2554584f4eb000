import type { ShippedFigure } from './shipped-figure.ts';

export const car: ShippedFigure = {
  id: 'car',
  name: 'Car',
  group: 'vehicles',
  recipe: `
balloon body: 260 in body
  leave 2.6
  mark front
  bubble 8 side, back back back left
  mark rear
  bubble 8 side, back back back right
  lock
  roll 8 floor, back back back up
  bubble 2.8 rear window, up up forward
  bubble 4 roof, forward
  bubble 3.6 windscreen, down forward
  lock to front
  trim

balloon front wheel: round-5 in wheels, x 2 mirrored
  join to front
  bubble 2.8 wheel, left left down

balloon rear wheel: round-5 in wheels, x 2 mirrored
  join to rear
  bubble 2.8 wheel, left left down
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
