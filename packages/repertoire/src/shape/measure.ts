import type { Body } from './body.ts';
import { closest } from './closest.ts';
import { NeighbourSearch } from './neighbours.ts';

/** How well a body keeps its rules. */
export interface Fit {
  /** Largest share by which a hard rod is too long or too short, shorter ones measured as if they were an inch. */
  readonly lengthError: number;
  /** Largest gap of a rod in inches, and the two points it is between. */
  readonly gap: { readonly inches: number; readonly a: number; readonly b: number };
  /** Deepest that two bubbles enter one another, as a share of the smaller radius; missing where they are not kept apart. */
  readonly penetration?: number;
}

/** Measures lengths, joints and penetration; the part of two bubbles next to a joint they share is squeezed rubber and does not count. */
export function fitOf(body: Body): Fit {
  const { points, rods, capsules } = body;
  let lengthError = 0;
  let gap = { inches: 0, a: 0, b: 0 };
  for (let i = 0; i < rods.a.length; i++) {
    if ((rods.stiffness[i] as number) < 1) continue;
    const [a, b, length] = [rods.a[i] as number, rods.b[i] as number, rods.length[i] as number];
    let squared = 0;
    for (let axis = 0; axis < 3; axis++) {
      const off = (points[3 * a + axis] as number) - (points[3 * b + axis] as number);
      squared += off * off;
    }
    const miss = Math.abs(Math.sqrt(squared) - length);
    if (miss > gap.inches) gap = { inches: miss, a, b };
    lengthError = Math.max(lengthError, miss / Math.max(length, 1));
  }
  if (capsules.apart === false) return { lengthError, gap };
  let penetration = 0;
  const near = new NeighbourSearch(body).find(0.01);
  const whole = Float64Array.of(0, 1, 0, 1);
  const into = new Float64Array(5);
  const look = (i: number, j: number, trims: Float64Array, at: number): void => {
    const [one, other] = [capsules.radius[i] as number, capsules.radius[j] as number];
    const depth = one + other - Math.sqrt(closest(body, i, j, trims, at, into));
    penetration = Math.max(penetration, depth / Math.min(one, other));
  };
  for (let k = 0; k < near.freeCount; k++) look(near.free[2 * k] as number, near.free[2 * k + 1] as number, whole, 0);
  for (let k = 0; k < near.meetingCount; k++) look(near.meeting[2 * k] as number, near.meeting[2 * k + 1] as number, near.trims, 4 * k);
  return { lengthError, gap, penetration };
}
