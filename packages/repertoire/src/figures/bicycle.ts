import type { ShippedFigure } from './shipped-figure.ts';

export const bicycle: ShippedFigure = {
  id: 'bicycle',
  name: 'Bicycle',
  group: 'vehicles',
  recipe: `
balloon frame: 160 in frame
  leave 5.4
  mark rear hub
  bubble 5 stay, up forward
  mark saddle post
  bubble 5 top tube, forward
  mark head
  bubble 5.5 down tube, down back
  bubble 3.5 chain stay, back
  lock to rear hub
  trim

balloon fork: 160 in frame
  leave 7
  join to head
  fold 4 handlebar, up left left, facing up, x 2 mirrored
  bubble 4 fork, down forward
  mark front hub
  trim

balloon saddle: 160 in wheels
  inflate 6
  join to saddle post
  fold 3.6 saddle, up back back, facing up
  trim

balloon rear wheel: 160 in wheels
  leave 6
  loop 17 rear wheel, down, facing left
  join to rear hub
  trim

balloon front wheel: 160 in wheels
  leave 6
  loop 17 front wheel, down, facing left
  join to front hub
  trim
`,
  minutes: { median: 1.8, sigma: 0.3 },
  difficulty: 4,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'red', name: 'Red', fill: { frame: 'red', wheels: 'black' }, share: 0.6 },
    { id: 'sky', name: 'Sky', fill: { frame: 'sky', wheels: 'black' }, share: 0.4 },
  ],
};
