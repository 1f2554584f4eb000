import type { Body } from './body.ts';

/**
 * Squared distance of two trimmed axes; `into` gets the two shares along the axes and the vector between the closest points. `trims` holds
 * low and high share of the first and of the second axis from `at` on.
 */
export function closest(body: Body, i: number, j: number, trims: Float64Array, at: number, into: Float64Array): number {
  const { points, capsules } = body;
  const a = 3 * (capsules.a[i] as number);
  const b = 3 * (capsules.b[i] as number);
  const c = 3 * (capsules.a[j] as number);
  const d = 3 * (capsules.b[j] as number);
  const ux = (points[b] as number) - (points[a] as number);
  const uy = (points[b + 1] as number) - (points[a + 1] as number);
  const uz = (points[b + 2] as number) - (points[a + 2] as number);
  const vx = (points[d] as number) - (points[c] as number);
  const vy = (points[d + 1] as number) - (points[c + 1] as number);
  const vz = (points[d + 2] as number) - (points[c + 2] as number);
  const rx = (points[a] as number) - (points[c] as number);
  const ry = (points[a + 1] as number) - (points[c + 1] as number);
  const rz = (points[a + 2] as number) - (points[c + 2] as number);
  const lowS = trims[at] as number;
  const highS = trims[at + 1] as number;
  const lowT = trims[at + 2] as number;
  const highT = trims[at + 3] as number;
  const uu = ux * ux + uy * uy + uz * uz;
  const vv = vx * vx + vy * vy + vz * vz;
  const uv = ux * vx + uy * vy + uz * vz;
  const ur = ux * rx + uy * ry + uz * rz;
  const vr = vx * rx + vy * ry + vz * rz;
  const spread = uu * vv - uv * uv;
  let s = spread > 1e-9 * uu * vv && spread > 0 ? (uv * vr - ur * vv) / spread : (lowS + highS) / 2;
  s = s < lowS ? lowS : Math.min(s, highS);
  let t = vv > 1e-12 ? (uv * s + vr) / vv : lowT;
  if (t < lowT || t > highT) {
    t = t < lowT ? lowT : highT;
    s = uu > 1e-12 ? (uv * t - ur) / uu : lowS;
    s = s < lowS ? lowS : Math.min(s, highS);
  }
  const px = rx + ux * s - vx * t;
  const py = ry + uy * s - vy * t;
  const pz = rz + uz * s - vz * t;
  into[0] = s;
  into[1] = t;
  into[2] = px;
  into[3] = py;
  into[4] = pz;
  return px * px + py * py + pz * pz;
}
