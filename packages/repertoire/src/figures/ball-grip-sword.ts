import type { ShippedFigure } from './shipped-figure.ts';

export const ballGripSword: ShippedFigure = {
  id: 'ball-grip-sword',
  name: 'Sword with a ball grip',
  group: 'swords and wands',
  recipe: `
balloon sword: 260 in blade
  leave 2.2
  bubble 1.5 grip, down
  bubble 1.5 grip, up, x 3
  loop 11 guard, left, facing forward, x 2 mirrored
  bubble rest blade, up
`,
  minutes: { median: 0.5, sigma: 0.2 },
  difficulty: 2,
  tags: ['sword-like', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'violet', name: 'Violet', fill: { blade: 'violet' }, share: 0.5 },
    { id: 'orange', name: 'Orange', fill: { blade: 'orange' }, share: 0.3 },
    { id: 'sky', name: 'Sky', fill: { blade: 'sky' }, share: 0.2 },
  ],
};
