/**
 * Seeded chance: the same seed gives the same draws on every machine and in every browser. `Math.log` and `Math.exp` may differ in
 * the last bit between engines, so the ones here are our own and use only operations that IEEE 754 fixes. They are table driven, which
 * makes them about twice as fast as the engine's. `as number` on a table read: the index is in range by construction.
 */

/** 2^-32: turns a 32-bit draw into a uniform one. */
const perDraw = 2.3283064365386963e-10;

/** A stream of uniform draws; sfc32 by C. Doty-Humphrey (PractRand), 12 rounds run off after seeding. */
export class Chance {
  #a: number;
  #b: number;
  #c: number;
  #d = 1;
  /** Separate streams per `seed`, `replication` and `stream` (all taken modulo 2^32). */
  constructor(seed: number, replication = 0, stream = 0) {
    this.#a = seed | 0;
    this.#b = replication | 0;
    this.#c = stream | 0;
    for (let i = 0; i < 12; i++) this.next();
  }
  /** Starts the stream over, as a new one would; saves the garbage. */
  reseed(seed: number, replication: number, stream: number): void {
    this.#a = seed | 0;
    this.#b = replication | 0;
    this.#c = stream | 0;
    this.#d = 1;
    for (let i = 0; i < 12; i++) this.next();
  }
  /** Whole number from 0 (included) to 2^32 (not included). */
  next(): number {
    const t = (((this.#a + this.#b) | 0) + this.#d) | 0;
    this.#d = (this.#d + 1) | 0;
    this.#a = this.#b ^ (this.#b >>> 9);
    this.#b = (this.#c + (this.#c << 3)) | 0;
    this.#c = (this.#c << 21) | (this.#c >>> 11);
    this.#c = (this.#c + t) | 0;
    return t >>> 0;
  }
  /** Fills the array from place `from` on with the next uniforms, as so many calls of `uniform` would, and faster. */
  fill(uniforms: Float64Array | number[], from = 0): void {
    let a = this.#a;
    let b = this.#b;
    let c = this.#c;
    let d = this.#d;
    for (let i = from; i < uniforms.length; i++) {
      const t = (((a + b) | 0) + d) | 0;
      d = (d + 1) | 0;
      a = b ^ (b >>> 9);
      b = (c + (c << 3)) | 0;
      c = (((c << 21) | (c >>> 11)) + t) | 0;
      uniforms[i] = ((t >>> 0) + 0.5) * perDraw;
    }
    this.#a = a;
    this.#b = b;
    this.#c = c;
    this.#d = d;
  }
  /** Strictly between 0 and 1. */
  uniform(): number {
    return (this.next() + 0.5) * perDraw;
  }
  /** Exponential with mean 1. */
  exponential(): number {
    return -log(this.uniform());
  }
  /** Standard normal; one draw each, by inversion, so that streams stay in step. */
  normal(): number {
    return normalOf(this.uniform());
  }
}

/**
 * A 32-bit draw (from -2^31 to 2^31 - 1) that belongs to `key` and `purpose` alone: whatever else was drawn before, the same guest keeps the same luck. Mixing
 * function by C. Wellons, "lowbias32" of the hash prospector (public domain).
 */
export function keyed(key: number, purpose: number): number {
  let h = (key + Math.imul(purpose, 0x9e3779b9)) | 0;
  h = Math.imul(h ^ (h >>> 16), 0x21f0aaad);
  h = Math.imul(h ^ (h >>> 15), 0x735a2d97);
  return h ^ (h >>> 15);
}
/** The uniform, strictly between 0 and 1, that belongs to `key` and `purpose`. */
export function keyedUniform(key: number, purpose: number): number {
  return ((keyed(key, purpose) >>> 0) + 0.5) * perDraw;
}

/** The bits of a double, little end first on every machine. */
const bits = new DataView(new ArrayBuffer(8));
const ln2Hi = 6.9314718036912381649e-1;
const ln2Lo = 1.90821492927058770002e-10;

/** 2^k at index k + 1074, k from -1074 to 1023. */
const powersOfTwo = new Float64Array(2098);
powersOfTwo[1074] = 1;
for (let k = 1075; k < 2098; k++) powersOfTwo[k] = (powersOfTwo[k - 1] as number) * 2;
for (let k = 1073; k >= 0; k--) powersOfTwo[k] = (powersOfTwo[k + 1] as number) / 2;

/** Logarithm by the series of artanh, slow and good to half a unit in the last place or so; makes the tables. `x` from 0.6 to 1.5. */
function seriesLog(x: number): number {
  const s = (x - 1) / (x + 1);
  const z = s * s;
  let sum = 0;
  for (let n = 41; n >= 3; n -= 2) sum = z * (sum + 1 / n);
  return 2 * (s + s * sum);
}
/** Exponential by its series, for the tables; `x` from 0 to 1. */
function seriesExp(x: number): number {
  let sum = 1;
  for (let n = 25; n >= 1; n--) sum = 1 + (sum * x) / n;
  return sum;
}

/** The middles c of 128 intervals of mantissas from 0.6875 to 1.375, and 1 itself around 1; 1 / c; log c. */
const middles = new Float64Array(128);
const inverses = new Float64Array(128);
const logsOfMiddles = new Float64Array(128);
for (let i = 0; i < 128; i++) {
  bits.setUint32(4, 0x3fe60000 + (i << 13) + 0x1000, true);
  const between = bits.getFloat64(0, true);
  const middle = Math.abs(between - 1) < 1 / 128 ? 1 : between;
  middles[i] = middle;
  inverses[i] = 1 / middle;
  logsOfMiddles[i] = seriesLog(middle);
}

/**
 * Natural logarithm, error about 1 unit in the last place, the same bits everywhere. Table of 128 intervals and a polynomial: P. T. P. Tang,
 * "Table-driven implementation of the logarithm function in IEEE floating-point arithmetic", ACM TOMS 16 (1990) 378-400.
 * @example log(1) // -> 0
 */
export function log(x: number): number {
  bits.setFloat64(0, x, true);
  const word = bits.getInt32(4, true);
  // Times one tells the compiler that this is a number too, so that no result is boxed.
  if (word < 0x00100000 || word >= 0x7ff00000) return 1 * logAtTheEdge(x);
  const high = (word - 0x3fe60000) | 0;
  const i = (high >> 13) & 127;
  const k = high >> 20;
  const r = (x * (powersOfTwo[1074 - k] as number) - (middles[i] as number)) * (inverses[i] as number);
  const r2 = r * r;
  const p = 0.5 - r * 0.3333333333333333 + r2 * (0.25 - r * 0.2 + r2 * (0.16666666666666666 - r * 0.14285714285714285));
  return k * ln2Hi + ((logsOfMiddles[i] as number) + (k * ln2Lo + (r - r2 * p)));
}
function logAtTheEdge(x: number): number {
  if (!(x > 0)) return x === 0 ? Number.NEGATIVE_INFINITY : Number.NaN;
  return x === Number.POSITIVE_INFINITY ? x : log(x * 18014398509481984) - 54 * Math.LN2;
}

/** 2^(j/128). */
const rootsOfTwo = Float64Array.from({ length: 128 }, (_, j) => seriesExp((j / 128) * Math.LN2));
/** Adding and taking away 1.5 x 2^52 rounds to the nearest whole number. */
const rounder = 6755399441055744;

/**
 * Exponential function, error below 2 units in the last place, the same bits everywhere. Table of 128 roots of two and a polynomial:
 * P. T. P. Tang, "Table-driven implementation of the exponential function in IEEE floating-point arithmetic", ACM TOMS 15 (1989) 144-157.
 * @example exp(0) // -> 1
 */
export function exp(x: number): number {
  if (Math.abs(x) > 708) return 1 * expAtTheEdge(x);
  const steps = x * 184.6649652337873 + rounder - rounder;
  const k = steps | 0;
  const r = x - steps * (ln2Hi / 128) - steps * (ln2Lo / 128);
  const root = rootsOfTwo[k & 127] as number;
  const r2 = r * r;
  const p = r + r2 * (0.5 + r * 0.16666666666666666 + r2 * (0.041666666666666664 + r * 0.008333333333333333));
  return (root + root * p) * (powersOfTwo[1074 + (k >> 7)] as number);
}
function expAtTheEdge(x: number): number {
  if (x > 709.782712893384) return Number.POSITIVE_INFINITY;
  if (x < -745.1332191019411) return 0;
  if (Number.isNaN(x)) return x;
  const half = exp(x / 2);
  return half * half;
}

/**
 * Quantile of the standard normal for 0 < p < 1. M. J. Wichura, "Algorithm AS 241: The percentage points of the normal distribution",
 * Applied Statistics 37 (1988) 477-484, PPND16: relative error about 1e-16.
 * @example normalQuantile(0.975) // -> 1.959963984540054
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (
      (q *
        (((((((r * 2509.0809287301226727 + 33430.575583588128105) * r + 67265.770927008700853) * r + 45921.953931549871457) * r +
          13731.693765509461125) *
          r +
          1971.5909503065514427) *
          r +
          133.14166789178437745) *
          r +
          3.387132872796366608)) /
      (((((((r * 5226.495278852545925 + 28729.085735721942674) * r + 39307.89580009271061) * r + 21213.794301586595867) * r +
        5394.1960214247511077) *
        r +
        687.1870074920579083) *
        r +
        42.313330701600911252) *
        r +
        1)
    );
  }
  let r = Math.sqrt(-log(q < 0 ? p : 1 - p));
  let value: number;
  if (r <= 5) {
    r -= 1.6;
    value =
      (((((((r * 7.7454501427834140764e-4 + 0.0227238449892691845833) * r + 0.24178072517745061177) * r + 1.27045825245236838258) * r +
        3.64784832476320460504) *
        r +
        5.7694972214606914055) *
        r +
        4.6303378461565452959) *
        r +
        1.42343711074968357734) /
      (((((((r * 1.05075007164441684324e-9 + 5.475938084995344946e-4) * r + 0.0151986665636164571966) * r + 0.14810397642748007459) * r +
        0.68976733498510000455) *
        r +
        1.6763848301838038494) *
        r +
        2.05319162663775882187) *
        r +
        1);
  } else {
    r -= 5;
    value =
      (((((((r * 2.01033439929228813265e-7 + 2.71155556874348757815e-5) * r + 0.0012426609473880784386) * r + 0.026532189526576123093) * r +
        0.29656057182850489123) *
        r +
        1.7848265399172913358) *
        r +
        5.4637849111641143699) *
        r +
        6.6579046435011037772) /
      (((((((r * 2.04426310338993978564e-15 + 1.4215117583164458887e-7) * r + 1.8463183175100546818e-5) * r + 7.868691311456132591e-4) * r +
        0.0148753612908506148525) *
        r +
        0.13692988092273580531) *
        r +
        0.59983220655588793769) *
        r +
        1);
  }
  return q < 0 ? -value : value;
}

/** Degree of the polynomials of {@link normalOf}, and how many intervals an octave of probability is cut into. */
const degree = 8;
const perOctave = 32;
const stride = degree + 2;
/** Cosines of (2i + 1) pi / 18: the zeros of the Chebyshev polynomial of degree nine. */
const chebyshevPoints = Float64Array.of(
  0.984807753012208, 0.8660254037844387, 0.6427876096865394, 0.3420201433256688, 0,
  -0.3420201433256688, -0.6427876096865394, -0.8660254037844387, -0.984807753012208,
); // biome-ignore format: a table
/** The upper half of the bits of 1/2, without 15 of them, which leaves the exponent and the number of the interval; less one. */
const lastInterval = (0x3fe00000 >> 15) - 1;
const quantileTable = tabulateQuantile();

/**
 * The standard normal with probability `u`, for a `u` that came from a 32-bit draw as (n + 1/2) / 2^32: {@link normalQuantile} read from a
 * table of polynomials (32 octaves of the tail probability, 32 intervals each), equal to it within 1e-15 and faster.
 * @example normalOf(0.25) // -> -0.6744897501960817
 */
export function normalOf(u: number): number {
  const fromMiddle = u - 0.5;
  const tail = 0.5 - Math.abs(fromMiddle);
  bits.setFloat64(0, tail, true);
  const at = (lastInterval - (bits.getInt32(4, true) >> 15)) * stride;
  const t = quantileTable;
  const x = tail - (t[at] as number);
  const x2 = x * x;
  const x4 = x2 * x2;
  const low = (t[at + 1] as number) + x * (t[at + 2] as number) + x2 * ((t[at + 3] as number) + x * (t[at + 4] as number));
  const high = (t[at + 5] as number) + x * (t[at + 6] as number) + x2 * ((t[at + 7] as number) + x * (t[at + 8] as number));
  return fromMiddle * (low + x4 * (high + x4 * (t[at + 9] as number)));
}

/** From the middle outward, for each interval its centre and the coefficients of the polynomial through quantile / (u - 1/2) at its Chebyshev points. */
function tabulateQuantile(): Float64Array {
  const table = new Float64Array(32 * perOctave * stride);
  for (let octave = 0; octave < 32; octave++) {
    const from = powersOfTwo[1072 - octave] as number;
    const half = from / perOctave / 2;
    for (let i = 0; i < perOctave; i++) {
      const middle = from + half * (2 * i + 1);
      const at = (octave * perOctave + perOctave - 1 - i) * stride;
      const values = chebyshevPoints.map((point) => normalQuantile(middle + half * point) / (middle + half * point - 0.5));
      table[at] = middle;
      polynomialThrough(chebyshevPoints, values).forEach((c, power) => {
        table[at + 1 + power] = c * (powersOfTwo[1074 + power * (octave + 8)] as number);
      });
    }
  }
  return table;
}
/** Coefficients by rising powers: Newton's divided differences, multiplied out. */
function polynomialThrough(points: Float64Array, values: Float64Array): Float64Array {
  const n = points.length;
  const differences = values.slice();
  for (let order = 1; order < n; order++)
    for (let i = n - 1; i >= order; i--)
      differences[i] =
        ((differences[i] as number) - (differences[i - 1] as number)) / ((points[i] as number) - (points[i - order] as number));
  const coefficients = new Float64Array(n);
  for (let i = n - 1; i >= 0; i--) {
    for (let power = n - 1; power >= 1; power--)
      coefficients[power] = (coefficients[power - 1] as number) - (points[i] as number) * (coefficients[power] as number);
    coefficients[0] = (differences[i] as number) - (points[i] as number) * (coefficients[0] as number);
  }
  return coefficients;
}
