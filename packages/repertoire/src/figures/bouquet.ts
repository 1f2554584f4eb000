import type { ShippedFigure } from './shipped-figure.ts';

export const bouquet: ShippedFigure = {
  id: 'bouquet',
  name: 'Bouquet of five flowers',
  group: 'flowers',
  recipe: `
balloon middle stem: 260 in stem
  leave 4
  bubble 1.5 middle centre, forward
  mark middle head
  bubble 15 stem, down
  mark tie
  bubble 5 stem end, down
  trim

balloon middle bloom: 260 in middle
  leave 3.5
  burp
  join to middle head
  loop 6 middle petal, up up up forward, facing forward, x 6 around forward
  trim

balloon left stem: 260 in stem
  leave 4
  bubble 1.5 left centre, forward
  mark left head
  bubble 15 stem, down right
  join to tie
  bubble 5 stem end, down down down right
  trim

balloon left bloom: 260 in sides
  leave 3.5
  burp
  join to left head
  loop 6 left petal, up up up forward, facing forward, x 6 around forward
  trim

balloon right stem: 260 in stem
  leave 4
  bubble 1.5 right centre, forward
  mark right head
  bubble 15 stem, down left
  join to tie
  bubble 5 stem end, down down down left
  trim

balloon right bloom: 260 in sides
  leave 3.5
  burp
  join to right head
  loop 6 right petal, up up up forward, facing forward, x 6 around forward
  trim

balloon front stem: 260 in stem
  leave 4
  bubble 1.5 front centre, forward
  mark front head
  bubble 15 stem, down down right back
  join to tie
  bubble 5 stem end, down down down back right
  trim

balloon front bloom: 260 in others
  leave 3.5
  burp
  join to front head
  loop 6 front petal, up up up forward, facing forward, x 6 around forward
  trim

balloon back stem: 260 in stem
  leave 4
  bubble 1.5 back centre, forward
  mark back head
  bubble 15 stem, down down left back
  join to tie
  bubble 5 stem end, down down down back left
  trim

balloon back bloom: 260 in others
  leave 3.5
  burp
  join to back head
  loop 6 back petal, up up up forward, facing forward, x 6 around forward
  trim

balloon wrap: 260 in wrap
  leave 3
  join to tie
  loop 9 bow, left left up forward forward, facing forward, x 2 mirrored
  fold 6 ribbon, left down down forward forward, facing forward, x 2 mirrored
  trim
`,
  minutes: { median: 9, sigma: 0.3 },
  difficulty: 5,
  tags: ['show-piece', 'safe outdoors', 'not for under threes'],
  colourways: [
    { id: 'spring', name: 'Spring', fill: { middle: 'yellow', sides: 'pink', others: 'violet', stem: 'green', wrap: 'white' }, share: 0.6 },
    { id: 'warm', name: 'Warm', fill: { middle: 'orange', sides: 'red', others: 'yellow', stem: 'green', wrap: 'white' }, share: 0.4 },
  ],
};
