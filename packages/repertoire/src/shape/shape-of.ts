import type { Problem } from '@twistwright/units';
import type { Recipe } from '../recipe.ts';
import { shippedSizes } from '../sizes/shipped-sizes.ts';
import type { Size } from '../sizes/size.ts';
import type { Body } from './body.ts';
import { type Laid, lay } from './lay.ts';
import { type Fit, fitOf } from './measure.ts';
import { mirrorOf } from './mirror.ts';
import { relax } from './relax.ts';
import type { Form, Skeleton, SkeletonBubble } from './skeleton.ts';
import { skeletonOf } from './skeleton-of.ts';
import type { Vector } from './vector.ts';

/** A straight stretch of a bubble with round ends. Inches; x forward, y up from the floor, z to the figure's right. */
export interface ShapeCapsule {
  readonly a: Vector;
  readonly b: Vector;
  readonly radius: number;
  readonly role: string;
  /** Index in `Shape.bubbles`. */
  readonly bubble: number;
}

/** One bubble as it lies: the line through its middle, from its first joint to its last. */
export interface ShapeBubble {
  readonly line: readonly Vector[];
  /** Index in `Shape.joints` of each end. */
  readonly from: number;
  readonly to: number;
  readonly form: Form;
  readonly radius: number;
  readonly length: number;
  readonly role: string;
  readonly size: string;
  readonly finish?: string;
  readonly print?: string;
  readonly label?: string;
  readonly piece: number;
  /** Where the recipe shows it, if it says so. */
  readonly facing?: Vector;
  /** After how many deeds (moves with repeats written out) it is there. */
  readonly deed: number;
}

/** A figure as a body in space. */
export interface Shape {
  readonly bubbles: readonly ShapeBubble[];
  readonly capsules: readonly ShapeCapsule[];
  /** Bubbles that are one round ball, each with its middle. */
  readonly balls: readonly { readonly at: Vector; readonly radius: number; readonly role: string; readonly bubble: number }[];
  readonly joints: readonly { readonly at: Vector; readonly names: readonly string[] }[];
  /** Knots: where, and which way their nozzle points. */
  readonly knots: readonly { readonly at: Vector; readonly bubble: number }[];
  /** The figure is its own mirror image, left and right exchanged. */
  readonly symmetric: boolean;
  readonly fit: Fit;
  readonly deeds: number;
  /** What could not be closed, as sentences. Problems of the recipe itself are the reader's. */
  readonly problems: readonly Problem[];
}

/** Beyond this many stretches of balloon bubbles are laid out and keep their lengths, but are not kept apart. */
const mostColliding = 1200;
/** Sweeps are for figures up to this many capsules; larger ones get proportionally fewer, so that any recipe ends. */
const fullCapsules = 300;
const firstSweeps = 260;
const laterSweeps = 160;
const mostRounds = 12;
/** What counts as closed: a share of a radius for joints, of the length for bubbles. */
const openRadii = 0.02;
const openLength = 0.005;
const deepest = 0.05;

/**
 * The shape of a figure: laid out after the directions in its recipe, then relaxed until bubbles keep their lengths, stay out of one another and
 * joints are closed. The same recipe gives the same bits on every machine. A figure whose lengths cannot meet gets a problem for
 * each joint that stays open.
 * @example shapeOf({ pieces: [{ name: 'dog', size: '260', role: 'body', count: 1, run: [{ kind: 'bubble', length: 3, aim: ['up'] }] }], finishing: [] }).bubbles.length // -> 1
 */
export function shapeOf(recipe: Recipe, sizes: readonly Size[] = shippedSizes): Shape {
  return solvedShape(skeletonOf(recipe, sizes));
}

/** `shapeOf` for a skeleton that did not come out of a recipe. */
export function solvedShape(skeleton: Skeleton): Shape {
  const even = settle(skeleton, true);
  const { laid, fit, symmetric } = !even.symmetric || closes(even.fit, skeleton) ? even : better(even, settle(skeleton, false), skeleton);
  const { body } = laid;
  stand(body);
  return described(skeleton, laid, fit, symmetric);
}

interface Settled {
  readonly laid: Laid;
  readonly fit: Fit;
  readonly symmetric: boolean;
}

/** Lays a skeleton and relaxes it; with `even`, left and right are kept mirror images where the layout, or what becomes of it, is one. */
function settle(skeleton: Skeleton, even: boolean): Settled {
  const laid = withinReason(lay(skeleton));
  const { body } = laid;
  centre(body, 2);
  let mirror = even && !laid.frame ? mirrorOf(skeleton, laid) : undefined;
  const share = Math.min(1, fullCapsules / Math.max(1, body.capsules.a.length));
  const sweeps = (full: number): number => Math.max(12, Math.round(full * share * share));
  const first = mirror === undefined ? body : { ...body, mirror };
  relax(first, { sweeps: sweeps(laid.frame ? 2 * firstSweeps : firstSweeps), spreading: laid.frame ? 0.02 : 0 });
  if (mirror === undefined) {
    centre(body, 2);
    mirror = even && !laid.frame ? mirrorOf(skeleton, laid) : undefined;
  }
  const settled = mirror === undefined ? body : { ...body, mirror };
  let fit = fitOf(body);
  for (let round = 0; round < mostRounds * share && (round === 0 || !closes(fit, skeleton)); round++) {
    relax(settled, { sweeps: sweeps(laterSweeps), steeredShare: 0 });
    fit = fitOf(settled);
  }
  return { laid, fit, symmetric: mirror !== undefined };
}

/** The same without collisions where there are too many stretches to keep apart. */
function withinReason(laid: Laid): Laid {
  return laid.body.capsules.a.length <= mostColliding
    ? laid
    : { ...laid, body: { ...laid.body, capsules: { ...laid.body.capsules, apart: false } } };
}

/** The even one, unless only the uneven one closes. */
const better = (even: Settled, uneven: Settled, skeleton: Skeleton): Settled => (closes(uneven.fit, skeleton) ? uneven : even);

const thinnest = (skeleton: Skeleton): number => Math.min(...skeleton.bubbles.map((bubble) => bubble.radius), 10);
const closes = (fit: Fit, skeleton: Skeleton): boolean =>
  fit.lengthError <= openLength * 0.8 && fit.gap.inches <= openRadii * 0.8 * thinnest(skeleton) && (fit.penetration ?? 0) <= deepest * 0.8;

/** Moves the middle of the body to zero along one axis. */
function centre({ points }: Body, axis: number): void {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = axis; i < points.length; i += 3) {
    low = Math.min(low, points[i] as number);
    high = Math.max(high, points[i] as number);
  }
  if (low > high) return;
  for (let i = axis; i < points.length; i += 3) points[i] = (points[i] as number) - (low + high) / 2;
}

/** Puts the lowest bubble on the floor, y = 0, and the middle above the origin. */
function stand(body: Body): void {
  centre(body, 0);
  const { points, capsules } = body;
  let lowest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < capsules.a.length; i++)
    for (const end of [capsules.a[i] as number, capsules.b[i] as number])
      lowest = Math.min(lowest, (points[3 * end + 1] as number) - (capsules.radius[i] as number));
  if (!Number.isFinite(lowest)) return;
  for (let i = 1; i < points.length; i += 3) points[i] = (points[i] as number) - lowest;
}

function described(skeleton: Skeleton, { body, lines }: Laid, fit: Fit, symmetric: boolean): Shape {
  const at = (point: number): Vector => [
    body.points[3 * point] as number,
    body.points[3 * point + 1] as number,
    body.points[3 * point + 2] as number,
  ];
  const { capsules } = body;
  const shown: ShapeCapsule[] = [];
  const balls: { at: Vector; radius: number; role: string; bubble: number }[] = [];
  for (let i = 0; i < capsules.a.length; i++) {
    const bubble = capsules.bubble[i] as number;
    const { role } = skeleton.bubbles[bubble] as SkeletonBubble;
    const [a, b] = [capsules.a[i] as number, capsules.b[i] as number];
    const radius = capsules.radius[i] as number;
    if (a === b) balls.push({ at: at(a), radius, role, bubble });
    else shown.push({ a: at(a), b: at(b), radius, role, bubble });
  }
  return {
    bubbles: skeleton.bubbles.map((bubble, i) => ({
      line: (lines[i] as readonly number[]).map(at),
      from: bubble.from,
      to: bubble.to,
      form: bubble.form,
      radius: bubble.radius,
      length: bubble.length,
      role: bubble.role,
      size: bubble.size,
      piece: bubble.piece,
      deed: bubble.deed,
      ...(bubble.finish === undefined ? {} : { finish: bubble.finish }),
      ...(bubble.print === undefined ? {} : { print: bubble.print }),
      ...(bubble.label === undefined ? {} : { label: bubble.label }),
      ...(bubble.facing === undefined ? {} : { facing: bubble.facing }),
    })),
    capsules: shown,
    balls,
    joints: skeleton.joints.map(({ names }, joint) => ({ at: at(joint), names })),
    knots: skeleton.knots.map(({ joint, bubble }) => ({ at: at(joint), bubble })),
    symmetric,
    fit,
    deeds: skeleton.deeds,
    problems: [...(capsules.apart === false ? [tooLarge(capsules.a.length)] : []), ...openJoints(skeleton, body, lines)],
  };
}

/** One problem for every joint whose bubbles do not reach it, worst first, at most ten. */
function openJoints(skeleton: Skeleton, body: Body, lines: readonly (readonly number[])[]): readonly Problem[] {
  const worst = new Map<number, { inches: number; bubble: number }>();
  const owner = new Map<number, number>();
  lines.forEach((line, bubble) => {
    for (const point of line) if (!owner.has(point)) owner.set(point, bubble);
  });
  const { rods, points } = body;
  for (let i = 0; i < rods.a.length; i++) {
    if ((rods.stiffness[i] as number) < 1) continue;
    const [a, b, length] = [rods.a[i] as number, rods.b[i] as number, rods.length[i] as number];
    const [u, v, w] = [0, 1, 2].map((axis) => (points[3 * a + axis] as number) - (points[3 * b + axis] as number)) as [
      number,
      number,
      number,
    ];
    const off = Math.abs(Math.sqrt(u * u + v * v + w * w) - length);
    const inner = Math.max(a, b) < skeleton.joints.length ? undefined : Math.max(a, b);
    const bubble = inner === undefined ? skeleton.bubbles.findIndex((one) => one.from === a && one.to === b) : (owner.get(inner) as number);
    const { radius, length: whole, from, to } = skeleton.bubbles[bubble] as SkeletonBubble;
    if (off <= Math.max(openRadii * radius, openLength * whole)) continue;
    const joint = a < skeleton.joints.length ? a : b < skeleton.joints.length ? b : Math.max(from, to);
    if ((worst.get(joint)?.inches ?? 0) < off) worst.set(joint, { inches: off, bubble });
  }
  return [...worst]
    .toSorted((one, other) => other[1].inches - one[1].inches)
    .slice(0, 10)
    .map(([joint, { inches, bubble }]) => openJoint(skeleton, joint, inches, bubble));
}

const tooLarge = (stretches: number): Problem => ({
  code: 'shape.too-large',
  path: ['pieces'],
  sentence: `The figure has ${stretches} stretches of balloon; beyond ${mostColliding} they are drawn where they were laid and may lie in one another.`,
  todo: 'Take the figure apart into several recipes to see each as it is.',
  weight: 'warning',
});

function openJoint(skeleton: Skeleton, joint: number, inches: number, bubble: number): Problem {
  const name = skeleton.joints[joint]?.names[0];
  const { label, length, piece } = skeleton.bubbles[bubble] as SkeletonBubble;
  const which = label === undefined ? `bubble ${bubble + 1}` : `the ${label} (bubble ${bubble + 1})`;
  return {
    code: 'shape.open',
    path: ['pieces', piece],
    sentence: `The joint ${name === undefined ? `at the end of ${which}` : `“${name}”`} cannot close: ${which}, ${Number(length.toFixed(2))} in long, misses it by ${inches.toFixed(2)} in.`,
    todo: 'Make this bubble longer, or the ones it has to meet shorter.',
    weight: 'warning',
  };
}
