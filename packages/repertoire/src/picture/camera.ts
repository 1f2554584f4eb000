import type { Shape } from '../shape/shape-of.ts';
import { dot, rotated, turned, type Vector } from '../shape/vector.ts';

/** From where a figure is drawn. side and quarter look at its left side, with its front to the left of the picture. */
export type View = 'side' | 'quarter' | 'front' | 'turned' | 'top';
export const views: readonly View[] = ['side', 'quarter', 'front', 'turned', 'top'];

/** Directions of the picture in the figure's frame, all of length 1. `near` points at the viewer. */
export interface Camera {
  readonly right: Vector;
  readonly up: Vector;
  readonly near: Vector;
}

/** Degrees to its left from straight ahead, and above. */
const stands: Readonly<Record<View, readonly [turn: number, above: number]>> = {
  side: [84, 4],
  quarter: [52, 11],
  front: [0, 3],
  turned: [24, 14],
  top: [58, 30],
};

export function cameraOf(view: View): Camera {
  const [turn, above] = stands[view];
  const { sine, cosine } = turned(turn);
  const right: Vector = [-sine, 0, -cosine];
  const level: Vector = [cosine, 0, -sine];
  // Raised about the picture's own horizontal.
  const near = rotated(level, right, -above);
  const up = rotated([0, 1, 0], right, -above);
  return { right, up, near };
}

/** A point as drawn: x to the right, y down, both in inches from the origin, and how near the viewer it is. */
export interface Seen {
  readonly x: number;
  readonly y: number;
  readonly near: number;
}

export const seen = (point: Vector, camera: Camera): Seen => ({
  x: dot(point, camera.right),
  y: -dot(point, camera.up),
  near: dot(point, camera.near),
});

/**
 * The view that shows a figure best when nobody says: flat figures from the front, long ones a little from the front of their left side,
 * low and wide ones from above.
 */
export function bestView(shape: Shape): View {
  const [long, high, wide] = [0, 1, 2].map((axis) => extent(shape, axis)) as [number, number, number];
  const thick = 2 * Math.max(...shape.bubbles.map((bubble) => bubble.radius), 0.1);
  const ahead = headsForward(shape);
  if (long < 1.4 * thick && !ahead) return 'front';
  const low = high < 0.45 * Math.max(long, wide) && wide > 0.5 * long && !ahead;
  const spread = high < 0.5 * wide && wide > 0.4 * long;
  const winding = high < 1.8 * thick && wide > 1.25 * thick && long > 2 * high;
  if (low || spread || winding) return wide > 1.3 * long ? 'turned' : 'top';
  if (long > (ahead ? 0.75 : 1.15) * wide) return 'quarter';
  return long < 0.8 * wide ? 'front' : 'turned';
}

/** A head, nose, beak or trunk that reaches out to the front: the figure is known by its outline from the side. */
function headsForward(shape: Shape): boolean {
  return shape.bubbles.some(({ label, line, length, radius, form }) => {
    if (label === undefined || !/head|nose|beak|bill|trunk|snout/iu.test(label) || form === 'ball' || line.length < 3) return false;
    const [from, to] = [line[0] as Vector, line.at(-1) as Vector];
    return Math.abs(to[0] - from[0]) > 0.5 * length && length > 1.5 * radius;
  });
}

function extent(shape: Shape, axis: number): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { line, radius } of shape.bubbles)
    for (const point of line) {
      low = Math.min(low, (point[axis] as number) - radius);
      high = Math.max(high, (point[axis] as number) + radius);
    }
  return Math.max(0, high - low);
}
