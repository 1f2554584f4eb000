import type { Colour } from '@twistwright/books';

/** The shades of the demo's store; the fourteen plain names have shipped shades, the others say theirs. */
export const colours: readonly Colour[] = [
  { id: 'white', name: 'white' },
  { id: 'black', name: 'black' },
  { id: 'red', name: 'red' },
  { id: 'orange', name: 'orange' },
  { id: 'yellow', name: 'yellow' },
  { id: 'green', name: 'green' },
  { id: 'sky', name: 'sky' },
  { id: 'blue', name: 'blue' },
  { id: 'violet', name: 'violet' },
  { id: 'pink', name: 'pink' },
  { id: 'rose', name: 'rose' },
  { id: 'brown', name: 'brown' },
  { id: 'blush', name: 'blush' },
  { id: 'grey', name: 'grey' },
  { id: 'gold', name: 'gold', body: '#b8923a' },
  { id: 'silver', name: 'silver', body: '#b6babf' },
];
