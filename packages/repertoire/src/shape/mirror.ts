import type { Laid } from './lay.ts';
import type { Skeleton } from './skeleton.ts';
import type { Vector } from './vector.ts';

/** Two bubbles count as mirror images when their middles are this near to it, in radii, and an inch more for every ten of their length. */
const nearRadii = 1.2;

/** Larger figures are not looked through for mirror images: every bubble is compared with every other. */
const mostCompared = 500;

/**
 * Which points are mirror images of which in the plane z = 0, if the whole figure is its own mirror image: every bubble has an image of
 * the same form, length and radius in the right place, and joints follow their bubbles. Undefined otherwise.
 */
export function mirrorOf(skeleton: Skeleton, { body, lines }: Laid): Int32Array | undefined {
  const { bubbles } = skeleton;
  if (bubbles.length > mostCompared) return undefined;
  const at = (point: number): Vector => [
    body.points[3 * point] as number,
    body.points[3 * point + 1] as number,
    body.points[3 * point + 2] as number,
  ];
  const image = new Int32Array(body.points.length / 3).fill(-1);
  const pair = (a: number, b: number): boolean => {
    if ((image[a] !== -1 && image[a] !== b) || (image[b] !== -1 && image[b] !== a)) return false;
    image[a] = b;
    image[b] = a;
    return true;
  };
  const taken = new Set<number>();
  for (const [i, bubble] of bubbles.entries()) {
    const line = lines[i] as readonly number[];
    if (line.length === 0 || taken.has(i)) continue;
    let best = -1;
    let bestMiss = nearRadii * bubble.radius + bubble.length / 10;
    let backwards = false;
    for (const [j, other] of bubbles.entries()) {
      const theirs = lines[j] as readonly number[];
      if (taken.has(j) || theirs.length !== line.length || other.form !== bubble.form || other.role !== bubble.role) continue;
      if (Math.abs(other.length - bubble.length) > 1e-6 || Math.abs(other.radius - bubble.radius) > 1e-6) continue;
      for (const turned of [false, true]) {
        const miss = missOf(line.map(at), (turned ? theirs.toReversed() : theirs).map(at));
        if (miss >= bestMiss) continue;
        [best, bestMiss, backwards] = [j, miss, turned];
      }
    }
    if (best < 0) return undefined;
    taken.add(i);
    taken.add(best);
    const theirs = lines[best] as readonly number[];
    const partners = backwards ? theirs.toReversed() : theirs;
    for (const [k, point] of line.entries()) if (!pair(point, partners[k] as number)) return undefined;
  }
  for (const [point, other] of image.entries()) if (other === -1) image[point] = point;
  return image;
}

/** Mean distance of a line's points from the mirror images of another's. */
function missOf(line: readonly Vector[], other: readonly Vector[]): number {
  let sum = 0;
  for (const [k, [x, y, z]] of line.entries()) {
    const [u, v, w] = other[k] as Vector;
    sum += Math.sqrt((x - u) * (x - u) + (y - v) * (y - v) + (z + w) * (z + w));
  }
  return sum / line.length;
}
