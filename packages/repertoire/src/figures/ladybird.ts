import type { ShippedFigure } from './shipped-figure.ts';

export const ladybird: ShippedFigure = {
  id: 'ladybird',
  name: 'Ladybird',
  group: 'insects',
  recipe: `
balloon body: 260 in body
  inflate 18
  bubble 2 head, forward
  pinch 0.9 front leg, left left forward down, x 2 mirrored
  bubble 1.4 belly, back
  mark middle
  pinch 0.9 middle leg, left left down, x 2 mirrored
  bubble 1.4 belly, back
  pinch 0.9 hind leg, left left back down, x 2 mirrored
  trim

balloon shell: round-5 in shell
  join to middle
  bubble 3.6 shell, up
finish with marker: black spots on shell, 0.2 minutes
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
