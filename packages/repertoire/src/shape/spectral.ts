import { Chance } from '@twistwright/units';
import type { Skeleton } from './skeleton.ts';
import type { Vector } from './vector.ts';

/** Rounds of the power iteration; the Platonic and Archimedean skeletons need fewer than a hundred. */
const rounds = 400;

/**
 * A first place for the joints of a wire frame: the three smoothest non-constant eigenvectors of the graph's Laplacian (K. M. Hall, "An
 * r-dimensional quadratic placement algorithm", Management Science 17 (1970) 219-229), scaled to the mean bubble length. For the skeleton of a Platonic
 * solid they are the solid itself.
 */
export function spectralPlaces({ joints, bubbles }: Skeleton): Vector[] {
  const count = joints.length;
  const edges = bubbles.filter((bubble) => bubble.from !== bubble.to && bubble.popped === undefined);
  const degree = new Float64Array(count);
  for (const { from, to } of edges) {
    degree[from] = (degree[from] as number) + 1;
    degree[to] = (degree[to] as number) + 1;
  }
  const shift = 2 * Math.max(1, ...degree);
  const chance = new Chance(1);
  const axes = [0, 1, 2].map(() => Float64Array.from({ length: count }, () => chance.uniform() - 0.5));
  for (let round = 0; round < rounds; round++) {
    for (const axis of axes) {
      const before = axis.slice();
      for (let i = 0; i < count; i++) axis[i] = (shift - (degree[i] as number)) * (before[i] as number);
      for (const { from, to } of edges) {
        axis[from] = (axis[from] as number) + (before[to] as number);
        axis[to] = (axis[to] as number) + (before[from] as number);
      }
    }
    orthonormal(axes, count);
  }
  let stretched = 0;
  let wanted = 0;
  for (const { from, to, length } of edges) {
    let squared = 0;
    for (const axis of axes) {
      const gap = (axis[from] as number) - (axis[to] as number);
      squared += gap * gap;
    }
    stretched += Math.sqrt(squared);
    wanted += length;
  }
  const scale = stretched > 1e-9 ? wanted / stretched : 1;
  return joints.map((_, i) => axes.map((axis) => (axis[i] as number) * scale) as unknown as Vector);
}

/** Takes out the constant vector and makes the axes orthonormal (modified Gram-Schmidt). */
function orthonormal(axes: readonly Float64Array[], count: number): void {
  axes.forEach((axis, k) => {
    let sum = 0;
    for (const value of axis) sum += value;
    for (let i = 0; i < count; i++) axis[i] = (axis[i] as number) - sum / count;
    for (const other of axes.slice(0, k)) {
      let product = 0;
      for (let i = 0; i < count; i++) product += (axis[i] as number) * (other[i] as number);
      for (let i = 0; i < count; i++) axis[i] = (axis[i] as number) - product * (other[i] as number);
    }
    let squared = 0;
    for (const value of axis) squared += value * value;
    const size = Math.sqrt(squared);
    if (size > 1e-12) for (let i = 0; i < count; i++) axis[i] = (axis[i] as number) / size;
  });
}
