import type { ShippedFigure } from './shipped-figure.ts';

export const foil: ShippedFigure = {
  id: 'foil',
  name: 'Foil',
  group: 'swords and wands',
  recipe: `
balloon foil: 260 in blade
  leave 1.5
  burp
  bubble 4.5 handle, down
  loop 10 guard, forward down down, facing forward, x 3 around up
  bubble rest blade, up
`,
  minutes: { median: 0.5, sigma: 0.2 },
  difficulty: 2,
  tags: ['sword-like', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'grey', name: 'Grey', fill: { blade: 'grey' }, share: 0.5 },
    { id: 'black', name: 'Black', fill: { blade: 'black' }, share: 0.3 },
    { id: 'white', name: 'White', fill: { blade: 'white' }, share: 0.2 },
  ],
};
