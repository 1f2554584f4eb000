import type { Figure } from '@twistwright/books';

/** Figures that the business of the demo has worked out for itself, beside the shipped ones. */
export const ownFigures: readonly Figure[] = [
  {
    id: 'knights-sword',
    name: 'Shining sword',
    recipe: `
balloon blade: 260 in blade, finish mirror
  leave 1.5
  mark pommel
  bubble 4 handle, down
  mark hilt
  bubble rest blade, up

balloon guard: 260 in guard
  inflate 22
  join to hilt
  fold 8 guard, left, facing forward, x 2 mirrored
  trim
`,
    colourways: [
      { id: 'silver', name: 'Silver', share: 2, fill: { blade: 'silver', guard: 'black' } },
      { id: 'gold', name: 'Gold', share: 1, fill: { blade: 'gold', guard: 'red' } },
    ],
    minutes: { law: 'log-normal', median: 0.9, sigma: 0.25 },
    difficulty: 2,
    tags: ['sword-like', 'safe outdoors', 'not for under threes'],
  },
  {
    id: 'big-elephant',
    name: 'Big elephant',
    recipe: `
balloon elephant: 350 in body
  leave 2.4
  bubble 7 trunk, forward forward up, bend 110 up
  mark brow
  fold 5 ear, left left up up back back, facing forward, x 2 mirrored
  bubble 1.2 neck, back down
  bubble 3.5 front leg, down down down left, x 2 mirrored
  lock
  bubble 4 body, back
  bubble 3.5 hind leg, down down down left, x 2 mirrored
  lock

balloon eyes: round-5 in eyes, printed eyes
  join to brow
  bubble 2.4 eyes, up up up forward
`,
    colourways: [
      { id: 'grey', name: 'Grey', share: 3, fill: { body: 'grey', eyes: 'white' } },
      { id: 'pink', name: 'Pink', share: 1, fill: { body: 'pink', eyes: 'white' } },
    ],
    minutes: { law: 'log-normal', median: 1.3, sigma: 0.3 },
    difficulty: 3,
    tags: ['stands', 'safe outdoors', 'not for under threes'],
  },
  {
    id: 'spotted-bracelet',
    name: 'Ladybird bracelet',
    recipe: `
balloon band: 260 in band
  inflate 14
  bubble 2 head, forward
  mark back of the head
  loop 11 band, down, facing forward
  trim

balloon shell: round-5 in shell, printed spots
  join to back of the head
  bubble 2.8 shell, up
finish with marker: eyes on head, 0.1 minutes
`,
    colourways: [{ id: 'red', name: 'Red', fill: { band: 'black', shell: 'red' } }],
    minutes: { law: 'log-normal', median: 0.7, sigma: 0.25 },
    extras: [{ item: 'marker-black', count: 0, minutes: 0.1 }],
    difficulty: 1,
    tags: ['wearable', 'safe outdoors', 'not for under threes'],
  },
  {
    id: 'smiling-flower',
    name: 'Smiling flower on a stick',
    recipe: `
balloon petals: 260 in petals
  leave 2.5
  mark middle
  loop 7 petal, up, facing forward, x 6 around forward
  trim

balloon face: round-5 in face, printed smile
  join to middle
  bubble 3 face, forward
finish with stick: handle
`,
    colourways: [
      { id: 'white', name: 'White', share: 2, fill: { petals: 'white', face: 'yellow' } },
      { id: 'pink', name: 'Pink', share: 2, fill: { petals: 'pink', face: 'yellow' } },
      { id: 'orange', name: 'Orange', share: 1, fill: { petals: 'orange', face: 'yellow' } },
    ],
    minutes: { law: 'log-normal', median: 0.9, sigma: 0.25 },
    extras: [{ item: 'stick', count: 1, minutes: 0.1 }],
    difficulty: 2,
    tags: ['safe outdoors', 'not for under threes'],
  },
  {
    id: 'big-rocket',
    name: 'Big rocket',
    recipe: `
balloon body: 646 in body
  inflate 24
  bubble 24 hull, up
  mark tail
  trim

balloon fins: 260 in fins
  leave 3.5
  join to tail
  loop 10 fin, forward forward down, facing left, x 4 around up
  trim
`,
    colourways: [
      { id: 'red', name: 'Red', fill: { body: 'red', fins: 'white' } },
      { id: 'blue', name: 'Blue', fill: { body: 'blue', fins: 'orange' } },
    ],
    minutes: { law: 'log-normal', median: 1.8, sigma: 0.3 },
    difficulty: 2,
    tags: ['show-piece', 'stands', 'not for under threes'],
  },
  {
    id: 'table-flower',
    name: 'Flowers for a table',
    recipe: `
balloon foot: round-11 in foot
  mark top
  bubble 6 foot, down

balloon left stem: 260 in stems
  leave 5
  join to top
  bubble 13 left stem, up up up left
  mark left head
  bubble 1.5 left heart, up
  trim

balloon left petals: 260 in petals
  leave 3.5
  burp
  join to left head
  loop 5 left petal, left up, facing up, x 6 around up
  trim

balloon right stem: 260 in stems
  leave 5
  join to top
  bubble 13 right stem, up up up right
  mark right head
  bubble 1.5 right heart, up
  trim

balloon right petals: 260 in petals
  leave 3.5
  burp
  join to right head
  loop 5 right petal, right up, facing up, x 6 around up
  trim

balloon front stem: 260 in stems
  leave 5
  join to top
  bubble 13 front stem, up up up forward
  mark front head
  bubble 1.5 front heart, up
  trim

balloon front petals: 260 in petals
  leave 3.5
  burp
  join to front head
  loop 5 front petal, forward up, facing up, x 6 around up
  trim
`,
    colourways: [
      { id: 'rose-and-white', name: 'Rose and white', fill: { foot: 'white', stems: 'green', petals: 'rose' } },
      { id: 'violet-and-white', name: 'Violet and white', fill: { foot: 'white', stems: 'green', petals: 'violet' } },
    ],
    minutes: { law: 'log-normal', median: 6, sigma: 0.25 },
    difficulty: 4,
    tags: ['show-piece', 'stands', 'not for under threes'],
  },
].map((figure) => ({ ...figure, recipe: figure.recipe.trimStart() }) as Figure);
