import type { Body, Rods } from './body.ts';
import { closest } from './closest.ts';
import { NeighbourSearch, type Neighbours } from './neighbours.ts';

/** How a body is relaxed. Every share is of the whole run, so that more sweeps mean finer steps of the same story. */
export interface Relaxation {
  readonly sweeps: number;
  /** Strength, 0 to 1, with which points move away from the middle at the start; spreads what no direction holds. */
  readonly spreading?: number;
  /** Share of the run after which steering (leanings, soft rods, spreading) has faded to nothing and only hard rules act. */
  readonly steeredShare?: number;
}

/** Slack of the neighbour list in multiples of the thickest radius: at first, while all is moving, and at least. */
const slackRadii = 2.4;
const leastSlackRadii = 0.4;
/** Two capsules may each use half of the slack; a tenth is kept for motion inside the sweep, which the next one sees. */
const usedSlack = 0.45;
/** A list of more pairs than capsules that lasts this many sweeps was longer than it need be: the next has slack for as much motion as there was. */
const lastsLong = 30;

/**
 * Position-based dynamics, Gauss-Seidel (M. Mueller, B. Heidelberger, M. Hennix, J. Ratcliff, "Position based dynamics", Journal of
 * Visual Communication and Image Representation 18 (2007) 109-118): every sweep moves points just enough to keep each rule in turn.
 * Only + - * / and the square root act, in a fixed order, so every machine gives the same bits.
 */
export function relax(body: Body, { sweeps, spreading = 0, steeredShare = 0.7 }: Relaxation): void {
  const { points, capsules } = body;
  let thickest = 0;
  for (const radius of capsules.radius) thickest = Math.max(thickest, radius);
  const radius = Math.max(thickest, 1e-6);
  let slack = slackRadii * radius;
  let made = 0;
  let neighbours: Neighbours | undefined;
  const search = new NeighbourSearch(body);
  const then = new Float64Array(points.length);
  const [hard, soft] = partedRods(body.rods);
  const steered = sweeps * steeredShare;
  for (let sweep = 0; sweep < sweeps; sweep++) {
    const left = steered > 0 ? 1 - sweep / steered : 0;
    const steering = left <= 0 ? 0 : left >= 0.5 ? 1 : 2 * left;
    if (steering > 0) {
      lean(body, steering);
      if (spreading > 0) spread(points, spreading * steering);
      keepLengths(points, soft, steering);
    }
    if (body.mirror !== undefined) reflect(points, body.mirror);
    const moved = neighbours === undefined ? 0 : furthestMove(points, then);
    const tooLong = sweep - made === lastsLong && slack > leastSlackRadii * radius && isLong(neighbours, capsules.a.length);
    if (capsules.apart !== false && (neighbours === undefined || tooLong || moved > usedSlack * slack)) {
      if (tooLong) slack = Math.max(leastSlackRadii * radius, Math.min(slack * 0.5, moved / usedSlack));
      made = sweep;
      neighbours = search.find(slack);
      then.set(points);
    }
    if (neighbours !== undefined) {
      partFree(body, neighbours);
      partMeeting(body, neighbours);
    }
    if (body.floor !== undefined) keepAbove(points, body.floor);
    keepLengths(points, hard, 1);
  }
}

function partedRods(rods: Rods): readonly [Rods, Rods] {
  const pick = (wanted: (stiffness: number) => boolean): Rods => {
    const chosen: number[] = [];
    for (let i = 0; i < rods.a.length; i++) if (wanted(rods.stiffness[i] as number)) chosen.push(i);
    const whole = (from: Int32Array): Int32Array => Int32Array.from(chosen, (i) => from[i] as number);
    const real = (from: Float64Array): Float64Array => Float64Array.from(chosen, (i) => from[i] as number);
    return { a: whole(rods.a), b: whole(rods.b), length: real(rods.length), stiffness: real(rods.stiffness) };
  };
  return [pick((stiffness) => stiffness >= 1), pick((stiffness) => stiffness < 1)];
}

function furthestMove(points: Float64Array, then: Float64Array): number {
  let furthest = 0;
  for (let p = 0; p < points.length; p += 3) {
    const dx = (points[p] as number) - (then[p] as number);
    const dy = (points[p + 1] as number) - (then[p + 1] as number);
    const dz = (points[p + 2] as number) - (then[p + 2] as number);
    const squared = dx * dx + dy * dy + dz * dz;
    if (squared > furthest) furthest = squared;
  }
  return Math.sqrt(furthest);
}

const isLong = (neighbours: Neighbours | undefined, capsules: number): boolean =>
  neighbours !== undefined && neighbours.freeCount + neighbours.meetingCount > capsules;

function keepLengths(points: Float64Array, rods: Rods, share: number): void {
  const { a, b, length, stiffness } = rods;
  for (let i = 0; i < a.length; i++) {
    const p = 3 * (a[i] as number);
    const q = 3 * (b[i] as number);
    const px = points[p] as number;
    const py = points[p + 1] as number;
    const pz = points[p + 2] as number;
    const qx = points[q] as number;
    const qy = points[q + 1] as number;
    const qz = points[q + 2] as number;
    const dx = qx - px;
    const dy = qy - py;
    const dz = qz - pz;
    const distance = Math.sqrt(dx * dx + dy * dy + dz * dz);
    if (distance < 1e-12) continue;
    const k = ((distance - (length[i] as number)) / distance) * 0.5 * share * (stiffness[i] as number);
    points[p] = px + dx * k;
    points[p + 1] = py + dy * k;
    points[p + 2] = pz + dz * k;
    points[q] = qx - dx * k;
    points[q + 1] = qy - dy * k;
    points[q + 2] = qz - dz * k;
  }
}

function lean(body: Body, share: number): void {
  const { points } = body;
  const { a, b, vector, strength } = body.leanings;
  for (let i = 0; i < a.length; i++) {
    const p = 3 * (a[i] as number);
    const q = 3 * (b[i] as number);
    const k = 0.5 * share * (strength[i] as number);
    for (let axis = 0; axis < 3; axis++) {
      const off = ((points[q + axis] as number) - (points[p + axis] as number) - (vector[3 * i + axis] as number)) * k;
      points[p + axis] = (points[p + axis] as number) + off;
      points[q + axis] = (points[q + axis] as number) - off;
    }
  }
}

/**
 * Moves every point away from the middle in proportion to its distance. With the lengths kept, the rest state is the embedding of largest
 * variance; for a Platonic skeleton that is the solid itself (its Laplacian's second eigenspace has dimension three).
 */
function spread(points: Float64Array, strength: number): void {
  const count = points.length / 3;
  for (let axis = 0; axis < 3; axis++) {
    let sum = 0;
    for (let i = axis; i < points.length; i += 3) sum += points[i] as number;
    const middle = sum / count;
    for (let i = axis; i < points.length; i += 3) points[i] = (points[i] as number) + strength * ((points[i] as number) - middle);
  }
}

function reflect(points: Float64Array, mirror: Int32Array): void {
  for (let i = 0; i < mirror.length; i++) {
    const j = mirror[i] as number;
    if (j < i) continue;
    const p = 3 * i;
    const q = 3 * j;
    const x = ((points[p] as number) + (points[q] as number)) / 2;
    const y = ((points[p + 1] as number) + (points[q + 1] as number)) / 2;
    const z = ((points[p + 2] as number) - (points[q + 2] as number)) / 2;
    points[p] = x;
    points[q] = x;
    points[p + 1] = y;
    points[q + 1] = y;
    points[p + 2] = i === j ? 0 : z;
    points[q + 2] = i === j ? 0 : -z;
  }
}

function keepAbove(points: Float64Array, floor: NonNullable<Body['floor']>): void {
  for (let i = 0; i < floor.points.length; i++) {
    const y = 3 * (floor.points[i] as number) + 1;
    const lowest = floor.height + (floor.radius[i] as number);
    if ((points[y] as number) < lowest) points[y] = lowest;
  }
}

/** Pushes apart the pairs that share no joint. The closest points of two segments: C. Ericson, "Real-Time Collision Detection" (2005), 5.1.9. */
function partFree(body: Body, { free, freeCount }: Neighbours): void {
  const { points } = body;
  const { a: starts, b: ends, radius } = body.capsules;
  for (let pair = 0; pair < freeCount; pair++) {
    const i = free[2 * pair] as number;
    const j = free[2 * pair + 1] as number;
    const a = 3 * (starts[i] as number);
    const b = 3 * (ends[i] as number);
    const c = 3 * (starts[j] as number);
    const d = 3 * (ends[j] as number);
    const ax = points[a] as number;
    const ay = points[a + 1] as number;
    const az = points[a + 2] as number;
    const cx = points[c] as number;
    const cy = points[c + 1] as number;
    const cz = points[c + 2] as number;
    const ux = (points[b] as number) - ax;
    const uy = (points[b + 1] as number) - ay;
    const uz = (points[b + 2] as number) - az;
    const vx = (points[d] as number) - cx;
    const vy = (points[d + 1] as number) - cy;
    const vz = (points[d + 2] as number) - cz;
    const rx = ax - cx;
    const ry = ay - cy;
    const rz = az - cz;
    const touching = (radius[i] as number) + (radius[j] as number);
    const uu = ux * ux + uy * uy + uz * uz;
    const vv = vx * vx + vy * vy + vz * vz;
    const mx = rx + (ux - vx) * 0.5;
    const my = ry + (uy - vy) * 0.5;
    const mz = rz + (uz - vz) * 0.5;
    // (|u| + |v|)^2 <= 2 (|u|^2 + |v|^2): a bound on the reach that needs no square root; (p + q)^2 <= 1.5 p^2 + 3 q^2.
    if (mx * mx + my * my + mz * mz > 0.75 * (uu + vv) + 3 * touching * touching) continue;
    const uv = ux * vx + uy * vy + uz * vz;
    const ur = ux * rx + uy * ry + uz * rz;
    const vr = vx * rx + vy * ry + vz * rz;
    let s = 0;
    let t = 0;
    if (vv > 1e-12) {
      const spread = uu * vv - uv * uv;
      if (spread > 1e-9 * uu * vv && spread > 0) {
        s = (uv * vr - ur * vv) / spread;
        s = s < 0 ? 0 : Math.min(s, 1);
      } else if (uu > 1e-12) s = 0.5;
      t = (uv * s + vr) / vv;
      if (t < 0) {
        t = 0;
        s = uu > 1e-12 ? -ur / uu : 0;
        s = s < 0 ? 0 : Math.min(s, 1);
      } else if (t > 1) {
        t = 1;
        s = uu > 1e-12 ? (uv - ur) / uu : 0;
        s = s < 0 ? 0 : Math.min(s, 1);
      }
    } else if (uu > 1e-12) {
      s = -ur / uu;
      s = s < 0 ? 0 : Math.min(s, 1);
    }
    const px = rx + ux * s - vx * t;
    const py = ry + uy * s - vy * t;
    const pz = rz + uz * s - vz * t;
    const squared = px * px + py * py + pz * pz;
    if (squared >= touching * touching) continue;
    push(points, a, b, c, d, s, t, px, py, pz, squared, touching);
  }
}

/** Pushes apart the pairs that meet at a joint, each axis cut short there. */
function partMeeting(body: Body, { meeting, meetingCount, trims }: Neighbours): void {
  const { points, capsules } = body;
  const close = new Float64Array(6);
  for (let pair = 0; pair < meetingCount; pair++) {
    const i = meeting[2 * pair] as number;
    const j = meeting[2 * pair + 1] as number;
    const touching = (capsules.radius[i] as number) + (capsules.radius[j] as number);
    const squared = closest(body, i, j, trims, 4 * pair, close);
    if (squared >= touching * touching) continue;
    push(
      points,
      3 * (capsules.a[i] as number),
      3 * (capsules.b[i] as number),
      3 * (capsules.a[j] as number),
      3 * (capsules.b[j] as number),
      close[0] as number,
      close[1] as number,
      close[2] as number,
      close[3] as number,
      close[4] as number,
      squared,
      touching,
    );
  }
}

function push(
  points: Float64Array,
  a: number,
  b: number,
  c: number,
  d: number,
  s: number,
  t: number,
  px: number,
  py: number,
  pz: number,
  squared: number,
  touching: number,
): void {
  let distance = Math.sqrt(squared);
  let [nx, ny, nz] = [px, py, pz];
  if (distance < 1e-9) {
    // Axes that cross exactly: any side will do, but always the same one.
    [nx, ny, nz] = [0, 0, 1];
    distance = 1;
    squared = 0;
  }
  const wa = 1 - s;
  const wc = 1 - t;
  const gap = squared === 0 ? touching : touching - distance;
  // A ball is an axis of one point (a = b): its two shares act on that point together.
  const w1 = a === b ? 1 : wa * wa + s * s;
  const w2 = c === d ? 1 : wc * wc + t * t;
  const l = gap / (w1 + w2) / distance;
  nx *= l;
  ny *= l;
  nz *= l;
  points[a] = (points[a] as number) + wa * nx;
  points[a + 1] = (points[a + 1] as number) + wa * ny;
  points[a + 2] = (points[a + 2] as number) + wa * nz;
  points[b] = (points[b] as number) + s * nx;
  points[b + 1] = (points[b + 1] as number) + s * ny;
  points[b + 2] = (points[b + 2] as number) + s * nz;
  points[c] = (points[c] as number) - wc * nx;
  points[c + 1] = (points[c + 1] as number) - wc * ny;
  points[c + 2] = (points[c + 2] as number) - wc * nz;
  points[d] = (points[d] as number) - t * nx;
  points[d + 1] = (points[d + 1] as number) - t * ny;
  points[d + 2] = (points[d + 2] as number) - t * nz;
}
