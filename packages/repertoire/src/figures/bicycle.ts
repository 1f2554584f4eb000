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
  mark pedal
  bubble 3.5 chain stay, back
  lock to rear hub
  trim

balloon fork: 160 in frame
  leave 8
  bubble 1.2 grip, left up
  bubble 1.2 grip, right
  join to head
  bubble 4 fork, down forward
  mark front hub
  trim

balloon saddle: 160 in wheels
  inflate 5
  join to saddle post
  fold 2.5 saddle, up back, facing up
  trim

balloon rear wheel: 160 in wheels
  leave 6.5
  loop 15 rear wheel, down, facing left
  join to rear hub
  trim

balloon front wheel: 160 in wheels
  leave 6.5
  loop 15 front wheel, down, facing left
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
