import type { ShippedFigure } from './shipped-figure.ts';

export const sword: ShippedFigure = {
  id: 'sword',
  name: 'Sword',
  group: 'swords and wands',
  recipe: `
balloon sword: 260 in blade
  leave 1.2
  bubble 5 handle, down
  fold 11 guard, left, facing forward, x 2 mirrored
  bubble rest blade, up
`,
  minutes: { median: 0.4, sigma: 0.2 },
  difficulty: 1,
  tags: ['sword-like', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'blue', name: 'Blue', fill: { blade: 'blue' }, share: 0.4 },
    { id: 'red', name: 'Red', fill: { blade: 'red' }, share: 0.25 },
    { id: 'green', name: 'Green', fill: { blade: 'green' }, share: 0.2 },
    { id: 'black', name: 'Black', fill: { blade: 'black' }, share: 0.15 },
  ],
};
