import { litresPerCubicInch } from '@twistwright/units';

/**
 * Cubic inches of air in a bubble of overall length L twisted from a tube of radius r: a cylinder with two round ends,
 * V = pi r^2 (L - 2r/3), for L >= 2r; shorter than it is wide it is a ball of diameter L, V = pi L^3 / 6. Both agree at L = 2r.
 * @example bubbleCubicInches(60, 1) // -> 186.4011641
 */
export function bubbleCubicInches(lengthInches: number, radiusInches: number): number {
  if (lengthInches <= 0) return 0;
  if (lengthInches < 2 * radiusInches) return (Math.PI * lengthInches * lengthInches * lengthInches) / 6;
  return Math.PI * radiusInches * radiusInches * (lengthInches - (2 * radiusInches) / 3);
}

/**
 * The same in litres.
 * @example bubbleLitres(60, 1) // -> 3.054567806
 */
export const bubbleLitres = (lengthInches: number, radiusInches: number): number =>
  bubbleCubicInches(lengthInches, radiusInches) * litresPerCubicInch;

/**
 * Inches of tube that a bubble uses up. Long bubbles are measured by length, as on the balloon. A bubble shorter than the tube is wide is a
 * ball and is measured by its volume, L^3 / (6 r^2), and by a share (L / 2r)^2 of the 2r/3 by which a long bubble exceeds its volume, so that
 * nothing jumps at L = 2r. The square is a choice: with it, thirty bubbles of an inch use up the 8 to 10 in they are made from in practice.
 * @example tubeInches(3, 1) // -> 3
 * @example tubeInches(1, 1) // -> 0.3333333333333333
 */
export function tubeInches(lengthInches: number, radiusInches: number): number {
  if (lengthInches >= 2 * radiusInches) return lengthInches;
  return (lengthInches * lengthInches * (lengthInches / radiusInches + 1)) / (6 * radiusInches);
}

/** Inverse of `tubeInches` by bisection; exact to 1e-12 of the radius. */
export function bubbleOfTubeInches(tube: number, radiusInches: number): number {
  if (tube >= 2 * radiusInches) return tube;
  let low = 0;
  let high = 2 * radiusInches;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (tubeInches(middle, radiusInches) < tube) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
