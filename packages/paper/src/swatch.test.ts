import { expect, test } from 'vitest';
import { balloonSwatch, mixedSwatch } from './swatch.ts';

test('a print is drawn as what it is: eyes, a face, spots; one picture each, none without a print', () => {
  const inside = (print?: string): string => balloonSwatch('round-5', 'red', print);
  const all = [undefined, 'eyes', 'smile', 'spots'].map(inside);
  expect(new Set(all).size).toBe(4);
  expect(inside('eyes').match(/<ellipse/gu)).toHaveLength(2);
  expect(inside('Smiling face')).toBe(inside('smile'));
  expect(inside('spots').match(/<circle/gu)?.length).toBeGreaterThan(4);
  expect(inside('football')).toBe(inside('spots'));
});
test('what is printed stands on hearts and along long ones too', () => {
  for (const size of ['heart-6', '260']) expect(balloonSwatch(size, 'red', 'eyes')).not.toBe(balloonSwatch(size, 'red'));
});
test('a mixed bag is shown as balloons of several colours', () => {
  const colours = ['red', 'blue', 'green', 'yellow'].map((paint) => ({ size: '260', paint }));
  expect(mixedSwatch(colours).match(/<rect/gu)).toHaveLength(3);
  expect(new Set(mixedSwatch(colours).match(/fill="#[^"]+"/gu)).size).toBe(3);
});
