import type { ShippedFigure } from './shipped-figure.ts';

export const aeroplane: ShippedFigure = {
  id: 'aeroplane',
  name: 'Aeroplane',
  group: 'vehicles',
  recipe: `
balloon aeroplane: 260 in body
  leave 1.9
  bubble 3.4 nose, forward
  fold 13 wing, left left left left back, facing up, x 2 mirrored
  bubble 6.4 fuselage, back
  fold 4.6 tailplane, left left left back, facing up, x 2 mirrored
  bubble 2.2 fin, up up back
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
