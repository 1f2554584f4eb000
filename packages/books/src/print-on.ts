/** What is printed on a balloon, as far as a picture of a few millimetres can tell it. */
export type PrintOn = 'eyes' | 'face' | 'dots';

/**
 * Eyes are shown as eyes, a smile or a face as a face, and everything else (spots, a football, stars, a heart) as dots.
 * @example printOn('spots') // -> 'dots'
 * @example printOn('Smile') // -> 'face'
 */
export function printOn(print: string): PrintOn {
  const words = print.toLowerCase();
  if (/smile|smiling|face/u.test(words)) return 'face';
  return /\beyes?\b/u.test(words) ? 'eyes' : 'dots';
}
