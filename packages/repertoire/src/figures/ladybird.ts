import type { ShippedFigure } from './shipped-figure.ts';

export const ladybird: ShippedFigure = {
  id: 'ladybird',
  name: 'Ladybird',
  group: 'insects',
  recipe: `
balloon body: 260 in body
  inflate 18
  bubble 2 head, forward
  mark middle
  pinch 1.2 front leg, forward left down, x 2 mirrored
  pinch 1.2 middle leg, left down, x 2 mirrored
  pinch 1.2 hind leg, back left down, x 2 mirrored
  trim

balloon shell: round-5 in shell
  join to middle
  bubble 4 shell, back back up
finish with marker: spots on shell, 0.2 minutes
finish with marker: eyes on head, 0.1 minutes
`,
  minutes: { median: 1, sigma: 0.25 },
  difficulty: 2,
  tags: ['safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'red', name: 'Red and black', fill: { shell: 'red', body: 'black' }, share: 0.6 },
    { id: 'orange', name: 'Orange and black', fill: { shell: 'orange', body: 'black' }, share: 0.4 },
  ],
};
