/**
 * Volumes of tubes and balls, computed from the closed forms: spherocylinder V = pi r^2 (4r/3 + l) with l the straight part, ball pi d^3 / 6;
 * 1 in = 2.54 cm exactly (international yard and pound agreement, 1959).
 */
import { bubbleCubicInches, bubbleLitres } from '@twistwright/repertoire';
import { toLitres } from '@twistwright/units';
import { describe, expect, test } from 'vitest';

describe('litres', () => {
  test('a tube of 60 in over all and 2 in across', () => expect(bubbleLitres(60, 1)).toBeCloseTo(3.05456780599, 10));
  test('the same with its straight part 60 in', () => expect(bubbleLitres(62, 1)).toBeCloseTo(3.15753076575, 10));
  test('one more inch of a 2 in tube', () => expect(bubbleLitres(31, 1) - bubbleLitres(30, 1)).toBeCloseTo(0.0514814798763, 12));
  test('the plain cylinders, by taking the round ends away', () => {
    expect(bubbleLitres(60, 1) + toLitres((2 * Math.PI) / 3)).toBeCloseTo(3.08888879258, 10);
    expect(bubbleLitres(60, 0.5) + toLitres(Math.PI / 12)).toBeCloseTo(0.7722221981, 10);
  });
  test('balls of 5 and 11 in', () => {
    expect(bubbleLitres(5, 2.5)).toBeCloseTo(1.072530831, 9);
    expect(bubbleLitres(11, 5.5)).toBeCloseTo(11.42030829, 8);
  });
  test('spherocylinder formula at many lengths', () => {
    for (const r of [0.5, 1, 1.5, 3])
      for (const l of [0, 0.1, 1, 7, 40]) expect(bubbleCubicInches(l + 2 * r, r)).toBeCloseTo(Math.PI * r * r * ((4 * r) / 3 + l), 9);
  });
  test('strokes: a bore of 38 mm and a stroke of 250 mm move 0.28352874 l; a plain 2 x 60 in cylinder takes 5.447 full cycles of both ways', () => {
    const stroke = Math.PI * 1.9 * 1.9 * 25 * 0.001;
    expect(stroke).toBeCloseTo(0.28352874, 8);
    expect(3.08888879258 / (2 * stroke)).toBeCloseTo(5.447, 3);
  });
});
