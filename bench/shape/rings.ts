import { type Body, noLeanings } from '@twistwright/repertoire';

/** Radius of every bubble of the rings, in the reference too. */
export const ringRadius = 0.35;

/** sfc32 with 12 rounds run off, as in the reference. */
function stream(seed: number): () => number {
  let [a, b, c, d] = [seed | 0, 1, 2, 1];
  const next = (): number => {
    const t = (a + b + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + t) | 0;
    return ((t >>> 0) + 0.5) / 4294967296;
  };
  for (let i = 0; i < 12; i++) next();
  return next;
}

/** The same rings laid out near where they belong, one above the other, as a recipe's directions lay a figure out; squeezed at their joints as a figure is. */
export function laidRings(rings: number, around: number, seed: number): Body {
  const body = ringsOf(rings, around, seed);
  body.capsules.squeeze.fill(4 * ringRadius);
  const next = stream(seed);
  const radius = 0.9 / Math.sin(Math.PI / around);
  for (let i = 0; i < rings * around; i++) {
    const turn = (2 * Math.PI * (i % around)) / around;
    body.points[3 * i] = radius * Math.cos(turn) + 0.4 * (next() - 0.5);
    body.points[3 * i + 1] = radius * Math.sin(turn) + 0.4 * (next() - 0.5);
    body.points[3 * i + 2] = 2.2 * Math.floor(i / around) + 0.4 * (next() - 0.5);
  }
  return body;
}

/**
 * `rings` rings of `around` joints, each joined to the next, in the disorder the reference starts from: 3 of 12 are 60 capsules. As in the
 * reference, bubbles that meet at a joint are not kept apart.
 */
export function ringsOf(rings: number, around: number, seed: number): Body {
  const a: number[] = [];
  const b: number[] = [];
  const length: number[] = [];
  for (let k = 0; k < rings; k++)
    for (let j = 0; j < around; j++) {
      a.push(k * around + j);
      b.push(k * around + ((j + 1) % around));
      length.push(k % 2 ? 2 : 1.6);
    }
  for (let k = 0; k + 1 < rings; k++)
    for (let j = 0; j < around; j++) {
      a.push(k * around + j);
      b.push((k + 1) * around + j);
      length.push(2.2);
    }
  const next = stream(seed);
  const points = new Float64Array(3 * rings * around);
  for (let i = 0; i < rings * around; i++) {
    const j = i % around;
    points[3 * i] = ((around * 0.3 * ((j % around) - around / 2)) / around) * 2 + next();
    points[3 * i + 1] = (((j * 7) % around) - around / 2) * 0.4 + next();
    points[3 * i + 2] = Math.floor(i / around) + next();
  }
  const count = a.length;
  return {
    points,
    rods: { a: Int32Array.from(a), b: Int32Array.from(b), length: Float64Array.from(length), stiffness: new Float64Array(count).fill(1) },
    capsules: {
      a: Int32Array.from(a),
      b: Int32Array.from(b),
      radius: new Float64Array(count).fill(ringRadius),
      length: Float64Array.from(length),
      bubble: Int32Array.from(a, (_, i) => i),
      startJoint: Int32Array.from(a),
      endJoint: Int32Array.from(b),
      toStart: new Float64Array(count),
      toEnd: new Float64Array(count),
      squeeze: new Float64Array(count).fill(Number.POSITIVE_INFINITY),
      bundle: new Int32Array(count).fill(-1),
    },
    leanings: noLeanings,
  };
}
