/**
 * Seeded chance: the same seed gives the same draws on every machine and in every browser. `Math.log` and `Math.exp` may differ in
 * the last bit between engines, so the ones here are our own and use only operations that IEEE 754 fixes.
 */

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
  /** Strictly between 0 and 1. */
  uniform(): number {
    return (this.next() + 0.5) * 2.3283064365386963e-10;
  }
  /** Exponential with mean 1. */
  exponential(): number {
    return -log(this.uniform());
  }
  /** Standard normal; one uniform a draw, by inversion, so that streams stay in step. */
  normal(): number {
    return normalQuantile(this.uniform());
  }
}

const buffer = new DataView(new ArrayBuffer(8));
const ln2Hi = 6.9314718036912381649e-1;
const ln2Lo = 1.90821492927058770002e-10;

/** Natural logarithm after FreeBSD's e_log.c (Sun Microsystems 1993), error below 1 ulp, the same bits everywhere. */
export function log(x: number): number {
  if (!(x > 0)) return x === 0 ? Number.NEGATIVE_INFINITY : Number.NaN;
  if (x === Number.POSITIVE_INFINITY) return x;
  let k = 0;
  let scaled = x;
  if (x < 2.2250738585072014e-308) {
    k = -54;
    scaled = x * 18014398509481984;
  }
  buffer.setFloat64(0, scaled);
  let high = buffer.getUint32(0);
  k += (high >>> 20) - 1023;
  high &= 0xfffff;
  const i = (high + 0x95f64) & 0x100000;
  buffer.setUint32(0, high | (i ^ 0x3ff00000));
  k += i >>> 20;
  const f = buffer.getFloat64(0) - 1;
  const s = f / (2 + f);
  const z = s * s;
  const w = z * z;
  const t1 = w * (3.999999999940941908e-1 + w * (2.222219843214978396e-1 + w * 1.531383769920937332e-1));
  const t2 = z * (6.66666666666673513e-1 + w * (2.857142874366239149e-1 + w * (1.818357216161805012e-1 + w * 1.479819860511658591e-1)));
  const half = 0.5 * f * f;
  return k * ln2Hi - (half - (s * (half + t1 + t2) + k * ln2Lo) - f);
}

/** Exponential function after FreeBSD's e_exp.c (Sun Microsystems 1993), error below 1 ulp, the same bits everywhere. */
export function exp(x: number): number {
  if (x > 709.782712893384) return Number.POSITIVE_INFINITY;
  if (x < -745.1332191019411) return 0;
  if (Number.isNaN(x)) return x;
  const k = x < 0 ? Math.ceil(x * 1.442695040888963387 - 0.5) : Math.floor(x * 1.442695040888963387 + 0.5);
  const hi = x - k * ln2Hi;
  const lo = k * ln2Lo;
  const r = hi - lo;
  const t = r * r;
  const c =
    r -
    t *
      (1.66666666666666019037e-1 +
        t *
          (-2.77777777770155933842e-3 + t * (6.61375632143793436117e-5 + t * (-1.6533902205465251539e-6 + t * 4.13813679705723846039e-8))));
  const y = 1 - (lo - (r * c) / (2 - c) - hi);
  return scaleByPowerOfTwo(y, k);
}
function scaleByPowerOfTwo(y: number, k: number): number {
  if (k >= -1021) {
    buffer.setUint32(0, ((k > 1023 ? 1023 : k) + 1023) << 20);
    buffer.setUint32(4, 0);
    return k > 1023 ? y * buffer.getFloat64(0) * 2 : y * buffer.getFloat64(0);
  }
  buffer.setUint32(0, (k + 1000 + 1023) << 20);
  buffer.setUint32(4, 0);
  return y * buffer.getFloat64(0) * 9.3326361850321887899e-302;
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
