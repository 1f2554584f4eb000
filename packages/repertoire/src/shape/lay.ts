import { type Body, pairKey } from './body.ts';
import { bend, drop, hairpin, ring } from './curves.ts';
import { squeezedRadii } from './neighbours.ts';
import type { Skeleton, SkeletonBubble } from './skeleton.ts';
import { spectralPlaces } from './spectral.ts';
import { across, along, cross, dot, minus, plus, rotated, times, turned, unit, type Vector } from './vector.ts';

/** A body ready to be relaxed, and which of its points each bubble runs through. */
export interface Laid {
  readonly body: Body;
  /** Points of each bubble in order, joints included: `line[0]` is its first joint. Empty for a bubble that was popped. */
  readonly lines: readonly (readonly number[])[];
  /** Nothing in the recipe says where anything points: a frame, which the solver spreads evenly. */
  readonly frame: boolean;
}

const up: Vector = [0, 1, 0];
const forward: Vector = [1, 0, 0];
const right: Vector = [0, 0, 1];

/** Strengths of steering per sweep. What the recipe says is stronger than what the layout guesses. */
const said = 0.22;
const guessed = 0.04;
const template = 0.3;

/** A bubble as it is laid: the recipe's steering, or a guess where it says nothing. */
interface Plan {
  readonly bubble: SkeletonBubble;
  readonly aim: Vector;
  readonly strength: number;
  /** Template of a curved bubble from its first joint, in place; undefined for a straight one. */
  readonly curve?: readonly Vector[];
  /** Number of the bundle, or -1; place in it and how many it has. */
  readonly bundle: number;
  readonly place: number;
  readonly of: number;
  /** Direction in which this member of a bundle lies beside its middle line. */
  readonly aside?: Vector;
  /** How far beyond touching the outer end of this member of a pair stands aside, in radii: negative where that is its first joint. */
  readonly spread?: number;
}

const isSteered = (bubble: SkeletonBubble): boolean =>
  bubble.aim !== undefined || bubble.facing !== undefined || bubble.bendDegrees !== undefined;

/** True where nothing is steered and at least two cycles hold the joints together: a wire frame. */
export function isFrame({ bubbles, joints }: Skeleton): boolean {
  const edges = bubbles.filter((bubble) => bubble.from !== bubble.to && bubble.popped === undefined);
  return !bubbles.some(isSteered) && edges.length >= joints.length + 1 && joints.length >= 4;
}

/** Points, rods, capsules and leanings of a skeleton, with a first place for every point. */
export function lay(skeleton: Skeleton): Laid {
  const frame = isFrame(skeleton);
  const plans = planned(skeleton);
  const places = frame ? spectralPlaces(skeleton) : walkedPlaces(skeleton, plans);
  const build = new Build(places, crowdsOf(skeleton.bubbles));
  const lines = plans.map((plan, index) => (plan.bubble.popped === undefined ? build.bubble(plan, index, frame) : []));
  for (const { bubbles, into } of skeleton.tucks) build.tuck(bubbles, into, lines);
  const body = build.body();
  return { body: frame ? body : { ...body, floor: floorOf(body) }, lines, frame };
}

/** The floor under the figure as it is laid: nothing is pushed through it, so feet that were laid level stay level. */
function floorOf({ points, capsules }: Body): NonNullable<Body['floor']> {
  const radii = new Map<number, number>();
  for (let i = 0; i < capsules.a.length; i++)
    for (const end of [capsules.a[i] as number, capsules.b[i] as number])
      radii.set(end, Math.max(radii.get(end) ?? 0, capsules.radius[i] as number));
  const height = Math.min(...[...radii].map(([point, radius]) => (points[3 * point + 1] as number) - radius), 0);
  return { height, points: Int32Array.from(radii.keys()), radius: Float64Array.from(radii.values()) };
}

/** Straight bubbles between the same two joints lie side by side, unless one is so much longer that it has to bow. */
function bundlesOf(bubbles: readonly SkeletonBubble[]): ReadonlyMap<number, readonly number[]> {
  const found = new Map<number, number[]>();
  bubbles.forEach((bubble, index) => {
    if (bubble.from === bubble.to || bubble.popped === true) return;
    if (bubble.form === 'bent' || bubble.form === 'flat' || bubble.form === 'tail') return;
    const key = pairKey(bubble.from, bubble.to);
    found.set(key, [...(found.get(key) ?? []), index]);
  });
  for (const [key, members] of found) {
    const shortest = Math.min(...members.map((i) => (bubbles[i] as SkeletonBubble).length));
    found.set(
      key,
      members.filter((i) => (bubbles[i] as SkeletonBubble).length <= 1.5 * shortest + 1),
    );
  }
  return new Map([...found].filter(([, members]) => members.length >= 2));
}

/** Bubbles that have to bow because a much shorter one joins the same two joints. */
function bowed(bubbles: readonly SkeletonBubble[], index: number): boolean {
  const bubble = bubbles[index] as SkeletonBubble;
  if (bubble.form !== 'straight' || bubble.from === bubble.to) return false;
  return bubbles.some(
    (other, i) =>
      i !== index &&
      other.popped === undefined &&
      other.form !== 'flat' &&
      pairKey(other.from, other.to) === pairKey(bubble.from, bubble.to) &&
      bubble.length > 1.5 * other.length + 1,
  );
}

function planned({ bubbles }: Skeleton): readonly Plan[] {
  const bundles = bundlesOf(bubbles);
  const guesses = polygonAims(bubbles);
  const crowds = crowdsOf(bubbles);
  const plans: Plan[] = [];
  let before: Vector = up;
  bubbles.forEach((bubble, index) => {
    const aim = bubble.aim ?? guesses.get(index) ?? guessedAim(bubble, before);
    const strength = bubble.aim === undefined ? guessed : said;
    const key = bubble.from === bubble.to ? -1 : pairKey(bubble.from, bubble.to);
    const members = bundles.get(key);
    const place = members?.indexOf(index) ?? -1;
    const plain: Plan = { bubble, aim, strength, bundle: -1, place: 0, of: 1 };
    if (members !== undefined && place >= 0) plans.push(bundled(bubbles, members, place, key, plain));
    else {
      const curve = curveOf(bubble, aim, bowed(bubbles, index), crowds.get(bubble.from) ?? 1);
      plans.push(curve === undefined ? plain : { ...plain, curve });
    }
    if (bubble.from !== bubble.to) before = aim;
  });
  return plans;
}

/** A pinch or loop without a direction stands across the run; anything else goes on as before. */
function guessedAim(bubble: SkeletonBubble, before: Vector): Vector {
  if (bubble.from !== bubble.to) return before;
  return across(up, before) ?? across(forward, before) ?? up;
}

/**
 * The middle line of a bundle, and on which side of it a member lies: first left, second right, third behind. A bubble made on the way back
 * aims from its own first twist to its last, so its aim is turned round before it counts for the line.
 */
function bundled(bubbles: readonly SkeletonBubble[], members: readonly number[], place: number, bundle: number, plain: Plan): Plan {
  const first = bubbles[members[0] as number] as SkeletonBubble;
  const outward = ({ from }: SkeletonBubble, aim: Vector): Vector => (from === first.from ? aim : times(aim, -1));
  const aims = members.flatMap((i) => {
    const member = bubbles[i] as SkeletonBubble;
    return member.aim === undefined ? [] : [outward(member, member.aim)];
  });
  const guess = outward(plain.bubble, plain.aim);
  const line = unit(aims.reduce(plus, [0, 0, 0])) ?? aims[0] ?? guess;
  const apart = first.facing === undefined ? undefined : unit(cross(first.facing, line));
  const side = apart ?? across(times(right, -1), line) ?? forward;
  const aside =
    members.length === 3
      ? triangleSide(side, line, place, aims.length === 3 ? aims[2] : undefined)
      : rotated(side, line, (360 * place) / members.length);
  return {
    ...plain,
    aim: outward(plain.bubble, line),
    strength: aims.length === 0 ? guessed : said,
    bundle,
    place,
    of: members.length,
    aside,
    ...(members.length === 2 ? { spread: spreadOf(aims) * (plain.bubble.from === first.from ? 1 : -1) } : {}),
  };
}

/** Feet and tips of ears give way this much at the twist between them, in radii. */
const mostSpread = 0.45;

/** Legs and ears that the recipe points apart stand a little apart at their outer ends, as far as the twist between them gives. */
function spreadOf(aims: readonly Vector[]): number {
  const [one, other] = aims;
  if (one === undefined || other === undefined) return 0;
  return Math.min(mostSpread, 0.9 * Math.sqrt(Math.max(0, (1 - dot(one, other)) / 2)));
}

/** Three side by side: two to either side, the third where its own direction leads, or else behind them. */
function triangleSide(side: Vector, line: Vector, place: number, third: Vector | undefined): Vector {
  const led = third === undefined || Math.abs(dot(third, line)) > 0.999 ? undefined : across(times(third, -1), line);
  const toFront = led ?? across(forward, line) ?? across(up, line) ?? side;
  const lateral = across(side, toFront) ?? side;
  if (place === 2) return times(toFront, -1);
  return unit(plus(times(lateral, place === 0 ? 0.866 : -0.866), times(toFront, 0.5))) ?? side;
}

/** A closed run of three or more bubbles without directions is laid as an even polygon that leaves the run before it. */
function polygonAims(bubbles: readonly SkeletonBubble[]): ReadonlyMap<number, Vector> {
  const found = new Map<number, Vector>();
  for (let i = 0; i < bubbles.length; i++) {
    const first = bubbles[i] as SkeletonBubble;
    if (found.has(i) || first.from === first.to || first.aim !== undefined || first.form === 'bent') continue;
    const run = [i];
    for (let j = i + 1; j < bubbles.length && j < i + 60; j++) {
      const next = bubbles[j] as SkeletonBubble;
      if (next.piece !== first.piece || next.aim !== undefined || next.form === 'bent') break;
      if (next.from === next.to) continue;
      run.push(j);
      if (next.to !== first.from) continue;
      if (run.length >= 3) layPolygon(bubbles, run, found);
      break;
    }
  }
  return found;
}

function layPolygon(bubbles: readonly SkeletonBubble[], run: readonly number[], found: Map<number, Vector>): void {
  const first = run[0] as number;
  const outward = bubbles.slice(0, first).findLast((bubble) => bubble.aim !== undefined && bubble.from !== bubble.to)?.aim ?? up;
  const facing = bubbles[first]?.facing ?? across(forward, outward) ?? right;
  const sideways = unit(cross(facing, outward)) ?? right;
  run.forEach((index, k) => {
    const { sine, cosine } = turned((360 * (k + 0.5)) / run.length);
    found.set(index, unit(plus(times(outward, sine), times(sideways, cosine))) ?? outward);
  });
}

/** How many loops and folds start at each joint where there are any. */
function crowdsOf(bubbles: readonly SkeletonBubble[]): ReadonlyMap<number, number> {
  const found = new Map<number, number>();
  for (const { from, form } of bubbles) if (form === 'loop' || form === 'fold') found.set(from, (found.get(from) ?? 0) + 1);
  return found;
}

/** Loops that fan out of one twist touch one another up to this distance from it: side by side they are each two bubbles thick. */
function crowdedRadii(crowds: ReadonlyMap<number, number>, { from, form }: SkeletonBubble): number {
  const crowd = form === 'loop' || form === 'fold' ? (crowds.get(from) ?? 1) : 1;
  return crowd < 3 ? 0 : 2 / turned(180 / crowd).sine + 1;
}

/** A loop longer than this, in radii, opens into a ring; a shorter one is held to a drop by its twist. */
const roundRadii = 24;

/** Width of a loop's drop, so that a crowd of them has room in a fan; alone it opens as its own bend wants. */
function dropWidth(length: number, radius: number, crowd: number): number {
  if (crowd < 3) return 0.78;
  const long = 0.45 * length;
  const { sine, cosine } = turned(180 / crowd);
  const room = (0.68 * long * sine) / Math.max(cosine, 0.05) - radius;
  return Math.min(0.78, Math.max(radius * 1.02, room) / (0.77 * long));
}

/** Points of a curved bubble from its first joint at the origin. */
function curveOf(bubble: SkeletonBubble, aim: Vector, bow: boolean, crowd: number): readonly Vector[] | undefined {
  const { form, length, radius } = bubble;
  const steps = (least: number, most: number): number =>
    Math.min(most, Math.max(least, Math.round(length / (1.5 * Math.max(radius, 0.25)))));
  const inSpace = (line: readonly (readonly [number, number])[], second: Vector): readonly Vector[] =>
    line.map(([x, y]) => plus(times(aim, x), times(second, y)));
  const normal = across(bubble.facing ?? forward, aim) ?? across(up, aim) ?? right;
  const sideways = cross(normal, aim);
  if (form === 'loop' && crowd < 3 && length > roundRadii * radius) return inSpace(ring(length, steps(10, 24)), sideways);
  if (form === 'loop') return inSpace(drop(length, dropWidth(length, radius, crowd), steps(8, 12)), sideways);
  if (form === 'fold') return inSpace(hairpin(length, radius, steps(8, 12)), sideways);
  if (form === 'ring') return inSpace(ring(length, steps(10, 24)), sideways);
  const degrees = bubble.bendDegrees ?? (bow ? 150 : 0);
  if ((form === 'bent' || bow) && degrees > 0) {
    const toward = across(bubble.bendToward ?? times(sideways, -1), aim) ?? sideways;
    return inSpace(bend(length, degrees, steps(Math.max(3, Math.ceil(degrees / 32)), 24)), toward);
  }
  return undefined;
}

/** Joints one after the other as the recipe goes; what is not joined to anything yet waits for a later bubble. */
function walkedPlaces({ joints, bubbles }: Skeleton, plans: readonly Plan[]): Vector[] {
  const places: (Vector | undefined)[] = joints.map(() => undefined);
  const reach = (plan: Plan): Vector => plan.curve?.at(-1) ?? times(plan.aim, chordOf(plan));
  for (;;) {
    let more = true;
    while (more) {
      more = false;
      for (const plan of plans) {
        const { from, to } = plan.bubble;
        const [start, end] = [places[from], places[to]];
        if (start !== undefined && end === undefined) places[to] = plus(start, reach(plan));
        else if (start === undefined && end !== undefined) places[from] = minus(end, reach(plan));
        else continue;
        more = true;
      }
    }
    const next = bubbles.find((bubble) => places[bubble.from] === undefined);
    if (next === undefined) break;
    places[next.from] = [0, 0, 0];
  }
  return places.map((place) => place ?? [0, 0, 0]);
}

/** Distance of the two joints of a straight bubble. */
const chordOf = ({ bubble, of }: Plan): number =>
  of > 1 ? Math.max(0.2 * bubble.length, bubble.length - 1.4 * bubble.radius) : bubble.length;

class Build {
  readonly #points: Vector[];
  readonly #rods: [number, number, number, number][] = [];
  readonly #leanings: [number, number, Vector, number][] = [];
  readonly #capsules: {
    a: number;
    b: number;
    radius: number;
    length: number;
    bubble: number;
    from: number;
    to: number;
    toStart: number;
    toEnd: number;
    bundle: number;
    squeeze: number;
  }[] = [];
  readonly #through = new Set<number>();

  readonly #near = new Map<number, number>();
  readonly #crowds: ReadonlyMap<number, number>;

  constructor(joints: readonly Vector[], crowds: ReadonlyMap<number, number>) {
    this.#points = [...joints];
    this.#crowds = crowds;
  }

  bubble(plan: Plan, index: number, frame: boolean): readonly number[] {
    const { bubble } = plan;
    if (!frame && bubble.from !== bubble.to && bubble.length < shortRadii * bubble.radius && bubble.radius < 1.5)
      this.#near.set(pairKey(bubble.from, bubble.to), bubble.length);
    if (bubble.form === 'ball') return this.#ball(plan, index);
    if (plan.curve !== undefined) return this.#curved(plan, plan.curve, index);
    if (plan.bundle >= 0) return this.#member(plan, index);
    if (frame || bubble.form === 'flat' || bubble.form === 'tail') return this.#edge(plan, index, frame);
    return this.#straight(plan, index);
  }

  /** From joint to joint, nothing between: exact lengths for frames. */
  #edge({ bubble, aim, strength }: Plan, index: number, frame: boolean): readonly number[] {
    this.#rod(bubble.from, bubble.to, bubble.length, 1);
    this.#capsule(bubble, index, bubble.from, bubble.to, 0, 0, bubble.length, -1);
    if (!frame) this.#leanings.push([bubble.from, bubble.to, times(aim, bubble.length), strength]);
    return [bubble.from, bubble.to];
  }

  #straight({ bubble, aim, strength }: Plan, index: number): readonly number[] {
    const { from, to, length, radius } = bubble;
    const [start, end] = [this.#points[from] as Vector, this.#points[to] as Vector];
    const inset = Math.min(radius, length / 2);
    this.#rod(from, to, length, 1);
    this.#leanings.push([from, to, times(aim, length), strength]);
    if (length <= 2 * radius * 1.02) {
      const middle = this.#point(along(start, end, 0.5));
      this.#rod(from, middle, length / 2, 1);
      this.#rod(middle, to, length / 2, 1);
      this.#capsule(bubble, index, middle, middle, length / 2, length / 2, 0, -1);
      return [from, middle, to];
    }
    const one = this.#point(along(start, end, inset / length));
    const two = this.#point(along(start, end, 1 - inset / length));
    this.#rod(from, one, inset, 1);
    this.#rod(one, two, length - 2 * inset, 1);
    this.#rod(two, to, inset, 1);
    this.#capsule(bubble, index, one, two, inset, inset, length - 2 * inset, -1);
    return [from, one, two, to];
  }

  /** A member of a bundle: its axis lies beside the line of the joints, held by a short neck at each end. */
  #member({ bubble, aim, strength, bundle, of, aside, spread = 0 }: Plan, index: number): readonly number[] {
    const { from, to, length, radius } = bubble;
    const [start, end] = [this.#points[from] as Vector, this.#points[to] as Vector];
    const neck = radius * (neckShares[of] ?? 1.5);
    const [outer, inner] = [neck + radius * Math.abs(spread), neck];
    const [first, last] = spread < 0 ? [outer, inner] : [inner, outer];
    const axis = Math.max(0, length - 2 * radius);
    const shift = times(aside ?? right, neck);
    const middle = plus(along(start, end, 0.5), shift);
    if (axis < 0.05 * radius) {
      const ball = this.#point(middle);
      this.#rod(from, ball, Math.max(neck, length / 2), 1);
      this.#rod(ball, to, Math.max(neck, length / 2), 1);
      this.#capsule(bubble, index, ball, ball, length / 2, length / 2, 0, bundle);
      return [from, ball, to];
    }
    const slant = unit(plus(times(aim, axis), times(aside ?? right, last - first))) ?? aim;
    const centre = plus(middle, times(aside ?? right, (outer - inner) / 2));
    const one = this.#point(minus(centre, times(slant, axis / 2)));
    const two = this.#point(plus(centre, times(slant, axis / 2)));
    this.#rod(from, one, first, 1);
    this.#rod(one, two, axis, 1);
    this.#rod(two, to, last, 1);
    this.#capsule(bubble, index, one, two, radius, radius, axis, bundle);
    this.#leanings.push([one, two, times(slant, axis), strength]);
    this.#leanings.push([from, one, times(aside ?? right, first), guessed]);
    this.#leanings.push([to, two, times(aside ?? right, last), guessed]);
    return [from, one, two, to];
  }

  #ball({ bubble, aim, strength }: Plan, index: number): readonly number[] {
    const middle = this.#point(plus(this.#points[bubble.from] as Vector, times(aim, bubble.radius)));
    this.#rod(bubble.from, middle, bubble.radius, 1);
    this.#leanings.push([bubble.from, middle, times(aim, bubble.radius), strength]);
    this.#capsule(bubble, index, middle, middle, bubble.radius, bubble.radius, 0, -1);
    return [bubble.from, middle, bubble.to];
  }

  #curved({ bubble, strength }: Plan, curve: readonly Vector[], index: number): readonly number[] {
    const { from, to, length } = bubble;
    const [start, end] = [this.#points[from] as Vector, this.#points[to] as Vector];
    const steps = curve.length - 1;
    const step = length / steps;
    // Where the other end is already held somewhere else, the template is sheared so that it ends there.
    const miss = minus(minus(end, start), curve[steps] as Vector);
    const line = curve.map((point, k) => {
      if (k === 0) return from;
      if (k === steps) return to;
      return this.#point(plus(plus(start, point), times(miss, k / steps)));
    });
    const held = strength === guessed ? guessed : template;
    for (let k = 0; k < steps; k++) {
      const [a, b] = [line[k] as number, line[k + 1] as number];
      this.#rod(a, b, step, 1);
      this.#leanings.push([a, b, minus(curve[k + 1] as Vector, curve[k] as Vector), held]);
      this.#capsule(bubble, index, a, b, k * step, length - (k + 1) * step, step, -1);
      if (k + 2 > steps) continue;
      const opening = minus(curve[k + 2] as Vector, curve[k] as Vector);
      this.#rod(a, line[k + 2] as number, Math.sqrt(dot(opening, opening)), 0.5);
    }
    return line;
  }

  /** Pulls the middles of bubbles that are pushed into one another together, and lets them pass. */
  tuck(bubbles: readonly number[], into: readonly number[], lines: readonly (readonly number[])[]): void {
    for (const one of bubbles)
      for (const other of into) {
        this.#through.add(pairKey(one, other));
        const [a, b] = [middleOf(lines[one] ?? []), middleOf(lines[other] ?? [])];
        if (a !== undefined && b !== undefined && a !== b) this.#rods.push([a, b, 0, 0.12]);
      }
  }

  #point(place: Vector): number {
    this.#points.push(place);
    return this.#points.length - 1;
  }

  #rod(a: number, b: number, length: number, stiffness: number): void {
    this.#rods.push([a, b, length, stiffness]);
  }

  #capsule(
    bubble: SkeletonBubble,
    index: number,
    a: number,
    b: number,
    toStart: number,
    toEnd: number,
    length: number,
    bundle: number,
  ): void {
    const squeeze = bubble.radius * Math.max(squeezedRadii, crowdedRadii(this.#crowds, bubble));
    this.#capsules.push({
      a,
      b,
      radius: bubble.radius,
      length,
      bubble: index,
      from: bubble.from,
      to: bubble.to,
      toStart,
      toEnd,
      bundle,
      squeeze,
    });
  }

  body(): Body {
    const [rods, leanings, capsules] = [this.#rods, this.#leanings, this.#capsules];
    return {
      points: Float64Array.from(this.#points.flat()),
      rods: {
        a: Int32Array.from(rods, (rod) => rod[0]),
        b: Int32Array.from(rods, (rod) => rod[1]),
        length: Float64Array.from(rods, (rod) => rod[2]),
        stiffness: Float64Array.from(rods, (rod) => rod[3]),
      },
      leanings: {
        a: Int32Array.from(leanings, (leaning) => leaning[0]),
        b: Int32Array.from(leanings, (leaning) => leaning[1]),
        vector: Float64Array.from(leanings.flatMap((leaning) => [...leaning[2]])),
        strength: Float64Array.from(leanings, (leaning) => leaning[3]),
      },
      capsules: {
        a: Int32Array.from(capsules, (capsule) => capsule.a),
        b: Int32Array.from(capsules, (capsule) => capsule.b),
        radius: Float64Array.from(capsules, (capsule) => capsule.radius),
        length: Float64Array.from(capsules, (capsule) => capsule.length),
        bubble: Int32Array.from(capsules, (capsule) => capsule.bubble),
        startJoint: Int32Array.from(capsules, (capsule) => capsule.from),
        endJoint: Int32Array.from(capsules, (capsule) => capsule.to),
        toStart: Float64Array.from(capsules, (capsule) => capsule.toStart),
        toEnd: Float64Array.from(capsules, (capsule) => capsule.toEnd),
        squeeze: Float64Array.from(capsules, (capsule) => capsule.squeeze),
        bundle: Int32Array.from(capsules, (capsule) => capsule.bundle),
        ...(this.#near.size === 0 ? {} : { near: this.#near }),
        ...(this.#through.size === 0 ? {} : { through: this.#through }),
      },
    };
  }
}

/** A bubble shorter than this, in radii, parts what meets at its two ends too little to keep it from being squeezed. */
const shortRadii = 3;

/** How far the axis of one of n bubbles side by side lies from their middle line, in radii. */
const neckShares: Readonly<Record<number, number>> = { 2: 1, 3: 1.1547, 4: 1.4143 };

const middleOf = (line: readonly number[]): number | undefined => line[line.length >> 1];
