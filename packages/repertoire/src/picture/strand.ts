import { axisOf } from '../shape/axis.ts';
import type { ShapeBubble } from '../shape/shape-of.ts';
import { along, minus, sizeOfVector, type Vector } from '../shape/vector.ts';
import { type Camera, type Seen, seen } from './camera.ts';
import type { Spot } from './path.ts';

/** The middle line of a bubble in the picture, ready to be stroked. */
export interface Strand {
  /** In picture units. */
  readonly line: readonly Seen[];
  readonly radius: number;
  /** One straight stroke. */
  readonly straight: boolean;
}

/** Where the light comes from in the picture: the upper left. */
export const lightFrom: Spot = { x: -0.62, y: -0.78 };
/** Longest stretch that is put in order as one, in radii. */
const stretch = 1.6;

/** The strand of a bubble; `place` turns a seen point into picture units. */
export function strandOf(bubble: ShapeBubble, camera: Camera, place: (point: Seen) => Seen, unitsPerInch: number): Strand {
  const radius = bubble.radius * unitsPerInch;
  const points = axisOf(bubble);
  const straight = points.length <= 2;
  const line = (straight ? divided(points, bubble.radius * stretch) : points).map((point) => place(seen(point, camera)));
  return { line, radius, straight };
}

function divided(points: readonly Vector[], step: number): readonly Vector[] {
  const [from, to] = points;
  if (from === undefined || to === undefined) return points;
  const count = Math.min(12, Math.max(1, Math.ceil(sizeOfVector(minus(to, from)) / step)));
  return Array.from({ length: count + 1 }, (_, k) => along(from, to, k / count));
}

/**
 * The middle line moved so many radii towards the light. Ends move as a whole, which lights the round ends; between them only the part
 * across the line moves, so that stretches meet.
 */
export function movedToLight({ line, radius }: Strand, radii: number): readonly Spot[] {
  const [right, down] = [lightFrom.x * radii, lightFrom.y * radii];
  const last = line.length - 1;
  return line.map((point, i) => {
    const [before, after] = [line[Math.max(0, i - 1)] as Seen, line[Math.min(last, i + 1)] as Seen];
    const [tx, ty] = [after.x - before.x, after.y - before.y];
    const size = Math.sqrt(tx * tx + ty * ty);
    let [dx, dy] = [right, down];
    if (size > 1e-6 && i > 0 && i < last) {
      const forth = (dx * tx + dy * ty) / (size * size);
      dx -= forth * tx;
      dy -= forth * ty;
    }
    return { x: point.x + dx * radius, y: point.y + dy * radius };
  });
}

/** Cosine of the turn from one step to the next beyond which a streak of gloss ends. */
const sharpTurn = 0.4;

/**
 * Where the gloss streak goes, as first and last place on the line: on a straight bubble the half nearest the light, on a curve the longest
 * stretch that runs across the light.
 */
export function glossRange({ line, straight }: Strand): readonly [number, number] | undefined {
  const last = line.length - 1;
  if (last < 1 || straight) return undefined;
  const towardsDark = line.map(({ x, y }) => x * 0.62 + y * 0.78);
  const [nearest, farthest] = [Math.min(...towardsDark), Math.max(...towardsDark)];
  // A long stretch is good, one on the side of the light is better.
  const worth = (first: number, end: number): number => {
    const middle = ((towardsDark[first] as number) + (towardsDark[end] as number)) / 2;
    return (end - first) * (1.3 - (middle - nearest) / Math.max(farthest - nearest, 1e-6));
  };
  let best: readonly [number, number] | undefined;
  let from = -1;
  let [beforeX, beforeY] = [0, 0];
  for (let i = 0; i <= last; i++) {
    const [a, b] = [line[i] as Seen, line[Math.min(last, i + 1)] as Seen];
    const [tx, ty] = [b.x - a.x, b.y - a.y];
    const size = Math.max(1e-6, Math.sqrt(tx * tx + ty * ty));
    // The light's direction is about (-0.62, -0.78); its part across the line says how bright the upper left side is.
    const lit = i < last && Math.abs((0.78 * tx - 0.62 * ty) / size) > 0.62;
    const goesOn = (tx * beforeX + ty * beforeY) / size > sharpTurn;
    [beforeX, beforeY] = [tx / size, ty / size];
    if (lit && from < 0) from = i;
    if ((lit && (goesOn || from === i)) || from < 0) continue;
    if (best === undefined || worth(from, i) > worth(best[0], best[1])) best = [from, i];
    from = lit ? i : -1;
  }
  return best;
}
