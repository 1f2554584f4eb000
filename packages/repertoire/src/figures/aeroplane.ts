import type { ShippedFigure } from './shipped-figure.ts';

export const aeroplane: ShippedFigure = {
  id: 'aeroplane',
  name: 'Aeroplane',
  group: 'vehicles',
  recipe: `
balloon aeroplane: 260 in body
  leave 2.1
  bubble 3.6 nose, forward
  fold 12 wing, left left left back, facing up, x 2 mirrored
  bubble 5.6 fuselage, back
  fold 4.8 tailplane, left left back, facing up, x 2 mirrored
  fold 4 fin, up up back, facing left
`,
  minutes: { median: 0.9, sigma: 0.25 },
  difficulty: 2,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'red', name: 'Red', fill: { body: 'red' }, share: 0.5 },
    { id: 'sky', name: 'Sky', fill: { body: 'sky' }, share: 0.3 },
    { id: 'white', name: 'White', fill: { body: 'white' }, share: 0.2 },
  ],
};
