import {
  axisOf,
  bestView,
  type Camera,
  cameraOf,
  type Mark,
  type PictureFrame,
  pictureFrame,
  type Shape,
  type ShapeBubble,
  type Vector,
} from '@twistwright/repertoire';
import { cushionDeep, drawMark, type Ink } from './decals.ts';
import { heartMiddle, heartOutline, nozzleOutline, tulipOutline } from './outlines.ts';
import { type Flat, type Pressed, type Stand, type Surface, SurfaceBuilder } from './surface.ts';
import { across, aside, cross, minus, plus, rounded, scaled, sizeOf, unit } from './vectors.ts';

/** All rubber of one colour role and finish, everything drawn on it in one ink, or the shadow on the floor, as one surface. */
export interface Body {
  readonly key: string;
  readonly role?: string;
  readonly finish?: string;
  readonly ink?: Ink;
  readonly surface: Surface;
}

/** A figure as surfaces, and how its flat picture shows it, so that both stand in the same place. */
export interface FigureBody {
  readonly bodies: readonly Body[];
  readonly camera: Camera;
  readonly frame: PictureFrame;
  /** Top of the figure above the floor, and how far it reaches from the upright through its middle, inches. */
  readonly high: number;
  readonly wide: number;
}

/** A tulip's rim: how many lobes, and how far it rises to them and falls between, of a bloom that is 100 high. */
const petals = 4;
const rimRise = 9;

/** A figure as surfaces. */
export function bodyOf(shape: Shape, marks: readonly Mark[]): FigureBody {
  const camera = cameraOf(bestView(shape));
  const rubber = new Map<string, { readonly role: string; readonly finish: string | undefined; readonly surface: SurfaceBuilder }>();
  const shadow = new SurfaceBuilder();
  const builderFor = ({ role, finish }: ShapeBubble): SurfaceBuilder => {
    const key = `rubber ${role} ${finish ?? ''}`;
    const held = rubber.get(key) ?? { role, finish, surface: new SurfaceBuilder() };
    rubber.set(key, held);
    return held.surface;
  };
  const made = shape.bubbles.map((bubble, index) => ({ bubble, index })).filter(({ bubble }) => bubble.line.length > 0);
  made.sort((one, other) => one.bubble.deed - other.bubble.deed);
  const crowds = crowdsOf(shape);
  for (const { bubble, index } of made) {
    const surface = builderFor(bubble);
    addBubble(surface, bubble, pressedAt(shape, bubble, crowds));
    addNozzle(surface, shape, index, crowds);
    surface.stage(bubble.deed);
    addShadow(shadow, bubble);
    shadow.stage(bubble.deed);
  }
  return {
    bodies: [
      { key: 'shadow', surface: shadow.surface() },
      ...[...rubber].map(([key, { role, finish, surface }]) => ({
        key,
        role,
        ...(finish === undefined ? {} : { finish }),
        surface: surface.surface(),
      })),
      ...inkedBodies(shape, marks),
    ],
    camera,
    frame: pictureFrame(shape, camera),
    ...reachOf(shape),
  };
}

/** Everything in these surfaces that may be handed from a worker to the page without a copy. */
export const buffersOf = ({ bodies }: FigureBody): ArrayBuffer[] =>
  bodies.flatMap(({ surface: { places, normals, runs, light, corners } }) =>
    [places, normals, runs, light, corners].map((part) => part.buffer as ArrayBuffer),
  );

function inkedBodies(shape: Shape, marks: readonly Mark[]): readonly Body[] {
  const inks = new Map<string, { readonly role: string; readonly ink: Ink; readonly surface: SurfaceBuilder }>();
  for (const mark of marks) {
    const bubble = shape.bubbles[mark.bubble];
    if (bubble === undefined || bubble.line.length === 0) continue;
    const inked = (ink: Ink): SurfaceBuilder => {
      const key = `ink ${ink} ${bubble.role}`;
      const held = inks.get(key) ?? { role: bubble.role, ink, surface: new SurfaceBuilder() };
      inks.set(key, held);
      return held.surface;
    };
    drawMark(inked, mark, { line: rounded(axisOf(bubble)), bubble });
  }
  return [...inks].map(([key, { role, ink, surface }]) => {
    surface.stage(shape.deeds);
    return { key, role, ink, surface: surface.surface() };
  });
}

/** How many ends of bubbles meet at each joint. */
function crowdsOf(shape: Shape): ReadonlyMap<number, number> {
  const crowds = new Map<number, number>();
  for (const { line, from, to, form } of shape.bubbles)
    if (line.length > 0 && form !== 'tail') for (const joint of [from, to]) crowds.set(joint, (crowds.get(joint) ?? 0) + 1);
  return crowds;
}

/** It is dark where a bubble's end meets others. */
function pressedAt(shape: Shape, { from, to, radius }: ShapeBubble, crowds: ReadonlyMap<number, number>): Pressed {
  const joints = [...new Set([from, to])].filter((joint) => (crowds.get(joint) ?? 0) > (from === to ? 2 : 1));
  return { joints: joints.map((joint) => shape.joints[joint]?.at ?? [0, 0, 0]), radius };
}

function addBubble(surface: SurfaceBuilder, bubble: ShapeBubble, pressed: Pressed): void {
  const { form, radius, line } = bubble;
  switch (form) {
    case 'heart':
      surface.cushion(
        standOf(bubble),
        sized(heartOutline, radius / 50),
        sized([heartMiddle], radius / 50)[0] ?? [0, 0],
        cushionDeep * radius,
      );
      return;
    case 'flower':
      for (const petal of petalsOf(standOf(bubble), radius)) surface.lump(petal, [0.38 * radius, 0.5 * radius, 0.36 * radius]);
      return;
    case 'donut':
      surface.ring(standOf(bubble), 0.67 * radius, 0.33 * radius);
      return;
    case 'tulip': {
      const up = unit(minus(line[0] as Vector, line.at(-1) as Vector), [0, 1, 0]);
      const front = aside(up);
      const scale = (1.12 * radius) / 50;
      surface.bloom({ at: middleOf(line), right: cross(up, front), up, front }, sized(tulipOutline, scale), petals, rimRise * scale);
      return;
    }
    default:
      surface.tube(rounded(axisOf(bubble)), radius, pressed);
  }
}

const sized = (outline: readonly Flat[], by: number): readonly Flat[] => outline.map(([x, y]): Flat => [x * by, y * by]);
const middleOf = (line: readonly Vector[]): Vector => scaled(plus(line[0] as Vector, line.at(-1) as Vector), 0.5);

/** How a balloon that is no tube stands: its foot where its line begins, its front where the recipe shows it, or ahead. */
function standOf({ line, radius, facing, form }: ShapeBubble): Stand {
  const span = minus(line.at(-1) as Vector, line[0] as Vector);
  const isUpright = form !== 'heart' || sizeOf(span) < radius;
  const ahead = facing ?? [1, 0, 0];
  const up = isUpright ? across([0, 1, 0], ahead, [0, 0, -1]) : unit(span, [0, 1, 0]);
  const front = across(ahead, up, aside(up));
  return { at: line.length === 3 ? (line[1] as Vector) : middleOf(line), right: cross(up, front), up, front };
}

const petalCount = 5;
/** Petals lie round the middle, each with its length away from it. */
const petalsOf = ({ at, right, up, front }: Stand, radius: number): readonly Stand[] =>
  Array.from({ length: petalCount }, (_, k) => {
    const angle = (2 * Math.PI * k) / petalCount;
    const out = plus(scaled(up, Math.cos(angle)), scaled(right, Math.sin(angle)));
    return { at: plus(at, scaled(out, 0.5 * radius)), right: cross(out, front), up: out, front };
  });

/** The rolled end of a balloon whose knot hangs free. */
function addNozzle(surface: SurfaceBuilder, shape: Shape, index: number, crowds: ReadonlyMap<number, number>): void {
  const bubble = shape.bubbles[index] as ShapeBubble;
  const { line, from, to, form, radius } = bubble;
  if (from === to || form === 'tulip' || form === 'flat' || (crowds.get(from) ?? 0) > 1) return;
  const knot = shape.knots.find((one) => one.bubble === index);
  const inner = line[1];
  if (knot === undefined || inner === undefined) return;
  const outwards = minus(knot.at, inner);
  if (sizeOf(outwards) < 0.35 * radius && form !== 'round') return;
  const up = unit(outwards, [0, -1, 0]);
  const front = aside(up);
  surface.turned({ at: knot.at, right: cross(up, front), up, front }, sized(nozzleOutline, form === 'round' ? 0.8 : 1));
}

/** What comes as near to the floor as this, inches, stands on it. */
const touchesFloor = 0.3;
/** The shadow lies so far above the floor, and is so wide as a share of the bubble. */
const aboveFloor = 0.004;
const shadowWide = 0.8;

/** On the floor, under a bubble that touches it. */
function addShadow(shadow: SurfaceBuilder, bubble: ShapeBubble): void {
  const { radius } = bubble;
  const feet = rounded(axisOf(bubble)).filter(([, y]) => y - radius < touchesFloor);
  const across = shadowWide * radius;
  const up: Vector = [0, 1, 0];
  const disc = ([x, , z]: Vector): void => {
    const rim = (share: number) =>
      Array.from({ length: 19 }, (_, k) => {
        const turn = (Math.PI * k) / 9;
        const at: Vector = [x + share * across * Math.cos(turn), aboveFloor, z + share * across * Math.sin(turn)];
        return { at, normal: up };
      });
    shadow.sheet([rim(0), rim(1)]);
  };
  feet.forEach((foot, k) => {
    disc(foot);
    const next = feet[k + 1];
    if (next === undefined) return;
    const way = unit([next[0] - foot[0], 0, next[2] - foot[2]], [1, 0, 0]);
    const aside: Vector = [-way[2] * across, 0, way[0] * across];
    const edge = (by: number) =>
      [foot, next].map(([x, , z]): { at: Vector; normal: Vector } => ({
        at: [x + by * aside[0], aboveFloor, z + by * aside[2]],
        normal: up,
      }));
    shadow.sheet([edge(1), edge(-1)]);
  });
}

function reachOf(shape: Shape): { readonly high: number; readonly wide: number } {
  let [high, wide] = [1, 1];
  for (const { line, radius } of shape.bubbles)
    for (const [x, y, z] of line) {
      high = Math.max(high, y + radius);
      wide = Math.max(wide, Math.sqrt(x * x + z * z) + radius);
    }
  return { high, wide };
}
