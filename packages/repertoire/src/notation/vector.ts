import type { Direction } from '../recipe.ts';

/** Forward, left, up: a right-handed frame in which the figure looks along the first axis. */
export type Vector = readonly [forward: number, left: number, up: number];

const axes: Readonly<Record<Direction, Vector>> = {
  forward: [1, 0, 0],
  back: [-1, 0, 0],
  left: [0, 1, 0],
  right: [0, -1, 0],
  up: [0, 0, 1],
  down: [0, 0, -1],
};

/**
 * The sum of the words as a unit vector.
 * @example vectorOf(['up']) // -> [0, 0, 1]
 */
export function vectorOf(words: readonly Direction[]): Vector {
  let x = 0;
  let y = 0;
  let z = 0;
  for (const word of words) {
    x += axes[word][0];
    y += axes[word][1];
    z += axes[word][2];
  }
  const size = Math.sqrt(x * x + y * y + z * z);
  return size === 0 ? [0, 0, 0] : [x / size, y / size, z / size];
}

/** Left and right exchanged. */
export const mirrored = ([forward, left, up]: Vector): Vector => [forward, left === 0 ? 0 : -left, up];

/**
 * Cosine and sine of a share of a full turn, from operations that IEEE 754 fixes, so the same bits on every machine. Quarter turns are exact.
 * Kernels: FreeBSD's k_sin.c and k_cos.c (Sun Microsystems 1993), polynomials of degree 13 and 14 on [-pi/4, pi/4].
 * @example turnOf(0.25) // -> { cosine: 0, sine: 1 }
 */
export function turnOf(turns: number): { readonly cosine: number; readonly sine: number } {
  const quarters = Math.round(turns * 4);
  const x = (turns * 4 - quarters) * 1.5707963267948966;
  const z = x * x;
  const s =
    x +
    x *
      z *
      (-1.66666666666666324348e-1 +
        z *
          (8.33333333332248946124e-3 +
            z *
              (-1.98412698298579493134e-4 +
                z * (2.75573137070700676789e-6 + z * (-2.50507602534068634195e-8 + z * 1.58969099521155010221e-10)))));
  const c =
    1 -
    0.5 * z +
    z *
      z *
      (4.16666666666666019037e-2 +
        z *
          (-1.38888888888741095749e-3 +
            z *
              (2.48015872894767294178e-5 +
                z * (-2.75573143513906633035e-7 + z * (2.0875723212981748279e-9 + z * -1.13596475577881948265e-11)))));
  switch (((quarters % 4) + 4) % 4) {
    case 0:
      return { cosine: c, sine: s };
    case 1:
      return { cosine: 0 - s, sine: c };
    case 2:
      return { cosine: -c, sine: 0 - s };
    default:
      return { cosine: s, sine: -c };
  }
}

/** `vector` turned by a share of a full turn about a direction, right-handed (Rodrigues' formula). */
export function turned(vector: Vector, about: Direction, turns: number): Vector {
  const { cosine, sine } = turnOf(turns);
  const [ax, ay, az] = axes[about];
  const [x, y, z] = vector;
  const along = (ax * x + ay * y + az * z) * (1 - cosine);
  return [
    x * cosine + (ay * z - az * y) * sine + ax * along,
    y * cosine + (az * x - ax * z) * sine + ay * along,
    z * cosine + (ax * y - ay * x) * sine + az * along,
  ];
}
