import type { Flat } from './surface.ts';

/** Outlines in a box of 100, its middle at 0, upwards; the same as in the flat pictures. */
type Curve = readonly [Flat, Flat, Flat, Flat];

function curved(curves: readonly Curve[], steps: number): readonly Flat[] {
  return curves.flatMap(([a, b, c, d]) =>
    Array.from({ length: steps }, (_, k): Flat => {
      const t = k / steps;
      const u = 1 - t;
      const at = (axis: 0 | 1): number => u * u * u * a[axis] + 3 * u * u * t * b[axis] + 3 * u * t * t * c[axis] + t * t * t * d[axis];
      return [at(0), at(1)];
    }),
  );
}

/** A heart, clockwise from its tip. */
export const heartOutline: readonly Flat[] = curved(
  [
    [
      [0, -50],
      [-78, 4],
      [-52, 50],
      [-26, 50],
    ],
    [
      [-26, 50],
      [-10, 50],
      [-3, 40],
      [0, 31],
    ],
    [
      [0, 31],
      [3, 40],
      [10, 50],
      [26, 50],
    ],
    [
      [26, 50],
      [52, 50],
      [78, 4],
      [0, -50],
    ],
  ],
  14,
);
/** What the heart is seen from whole. */
export const heartMiddle: Flat = [0, 6];

/** Half a tulip from its foot to the dimple where the knot went in. */
export const tulipOutline: readonly Flat[] = [
  ...curved(
    [
      [
        [0, -50],
        [42, -46],
        [54, -14],
        [49, 14],
      ],
      [
        [49, 14],
        [46, 38],
        [30, 52],
        [17, 47],
      ],
      [
        [17, 47],
        [9, 44],
        [6, 36],
        [0, 36],
      ],
    ],
    8,
  ),
  [0, 36],
];

/** Half the rolled end of a balloon, inches, from the knot outwards. */
export const nozzleOutline: readonly Flat[] = [
  [0, -0.14],
  [0.06, -0.12],
  [0.09, 0],
  [0.14, 0.18],
  [0.24, 0.34],
  [0.29, 0.4],
  [0.31, 0.44],
  [0.29, 0.48],
  [0.24, 0.47],
  [0.13, 0.4],
  [0, 0.38],
];

/** A star, clockwise from its upper point. */
export const starOutline: readonly Flat[] = Array.from({ length: 10 }, (_, k): Flat => {
  const [turn, out] = [(Math.PI * k) / 5, k % 2 === 0 ? 100 : 42];
  return [out * Math.sin(turn), out * Math.cos(turn)];
});
