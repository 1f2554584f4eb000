/** A round spot that a drawn thing covers, in the picture, and how near the viewer it is. */
export interface Cover {
  readonly x: number;
  readonly y: number;
  readonly near: number;
  readonly radius: number;
}

/** A thing that is drawn in one go. */
export interface Drawn {
  readonly covers: readonly Cover[];
  /** Stretches of one bubble have the same strand and successive places; they do not hide one another where they meet. */
  readonly strand: number;
  readonly place: number;
  /** Of the two ends of a loop: the joint where they meet. They are squeezed there, and not cut for other loops that are. */
  readonly twist?: number;
  /** Drawn on the rubber of this strand, so always after it. */
  readonly on?: number;
  /** Too small to cut a bubble for: where it goes round in a circle with others, it gives way. */
  readonly minor?: true;
}

/** Pictures with more things, or more spots, than this are ordered by depth alone. */
const mostThings = 900;
const mostCompared = 9000;
const depthOf = ({ covers }: Drawn): number => covers.reduce((sum, cover) => sum + cover.near, 0) / Math.max(1, covers.length);

/**
 * Back to front. Two things that overlap are ordered by how near they are where they overlap; where that goes round in a circle the
 * thing with least in front of it goes first. Bubbles that are in no such circle stay in one piece; of the others, the next stretch of the
 * same bubble is taken where it may come next.
 */
export function paintersOrder(things: readonly Drawn[]): readonly number[] {
  if (things.length > mostThings || things.reduce((sum, thing) => sum + thing.covers.length, 0) > mostCompared)
    return [...things.keys()].toSorted((a, b) => depthOf(things[a] as Drawn) - depthOf(things[b] as Drawn));
  const found = oneWay(overlaps(things), things);
  const units = unitsOf(things, found);
  const unitOf = new Map(units.flatMap((members, unit) => members.map((thing) => [thing, unit] as const)));
  const behind: Map<number, number>[] = units.map(() => new Map());
  for (const { one, other, lead } of found) {
    const [a, b] = [unitOf.get(one) as number, unitOf.get(other) as number];
    const [front, back] = lead > 0 ? [a, b] : [b, a];
    if (a !== b) behind[front]?.set(back, (behind[front]?.get(back) ?? 0) + Math.abs(lead));
  }
  const drawn = units.map((members): Drawn => {
    const [first, ...more] = members.map((thing) => things[thing] as Drawn) as [Drawn, ...Drawn[]];
    return more.length === 0 ? first : { ...first, covers: [first, ...more].flatMap(({ covers }) => covers) };
  });
  return sorted(drawn, behind).flatMap((unit) => units[unit] as readonly number[]);
}

/** A bubble that is nearer than another by less than this, in radii, is not cut for it. */
const aheadRadii = 0.6;

/** What is drawn together: all stretches of a bubble that is in no circle of bubbles each in front of the next, else every thing alone. */
function unitsOf(things: readonly Drawn[], found: readonly Overlap[]): readonly (readonly number[])[] {
  const strands = new Map<number, number[]>();
  things.forEach(({ strand }, index) => {
    strands.set(strand, [...(strands.get(strand) ?? []), index]);
  });
  const behind = new Map<number, Set<number>>([...strands.keys()].map((strand) => [strand, new Set()]));
  const sums = new Map<string, { lead: number; weight: number; a: Drawn; b: Drawn }>();
  for (const { one, other, lead, weight } of found) {
    const [a, b] = lead > 0 ? [things[one] as Drawn, things[other] as Drawn] : [things[other] as Drawn, things[one] as Drawn];
    if (a.minor === true || b.minor === true || meetAtTwist(a, b)) continue;
    const sum = sums.get(`${a.strand} ${b.strand}`) ?? { lead: 0, weight: 0, a, b };
    sums.set(`${a.strand} ${b.strand}`, { ...sum, lead: sum.lead + Math.abs(lead), weight: sum.weight + weight });
  }
  for (const { lead, weight, a, b } of sums.values())
    if (lead > aheadRadii * weight * Math.min(a.covers[0]?.radius ?? 0, b.covers[0]?.radius ?? 0)) behind.get(a.strand)?.add(b.strand);
  const circled = circledIn(behind);
  return [...strands].flatMap(([strand, members]) => (circled.has(strand) ? members.map((thing) => [thing]) : [members]));
}

/** The nodes of a graph that reach themselves, by taking away, as long as there are any, those that nothing leads to or that lead nowhere. */
function circledIn(graph: ReadonlyMap<number, ReadonlySet<number>>): ReadonlySet<number> {
  const left = new Set(graph.keys());
  for (let before = -1; before !== left.size; ) {
    before = left.size;
    const reached = new Set([...left].flatMap((node) => [...(graph.get(node) ?? [])].filter((next) => left.has(next))));
    for (const node of left) if (!reached.has(node) || ![...(graph.get(node) ?? [])].some((next) => left.has(next))) left.delete(node);
  }
  return left;
}

/** Two things that overlap, and by how much the first is nearer; infinite for what is drawn on something. */
interface Overlap {
  readonly one: number;
  readonly other: number;
  readonly lead: number;
  /** How much they overlap: `lead / weight` is how much nearer the first is, picture units. */
  readonly weight: number;
}

/** How many stretches of one bubble have to lie between two of them before one can lie over the other: less is only their own thickness. */
const leastBetween = 3;

const meetAtTwist = (one: Drawn, other: Drawn): boolean => one.twist !== undefined && one.twist === other.twist;

/** Cosine of the angle beyond which two stretches of one bubble lie along one another, as the sides of a fold seen on edge do. */
const alongside = 0.8;

/** Whether two stretches of one bubble run on into one another, or lie along one another, so that the bubble may be drawn in one go. */
const runsOn = (one: Drawn, other: Drawn): boolean =>
  Math.abs(one.place - other.place) <= leastBetween || meetAtTwist(one, other) || Math.abs(cosineOf(one, other)) > alongside;

/** Cosine of the angle between the directions of two stretches in the picture; 1 where one has none. */
function cosineOf(one: Drawn, other: Drawn): number {
  const [a, b] = [one, other].map(({ covers }) => {
    const [from, to] = [covers[0] as Cover, covers.at(-1) as Cover];
    return { x: to.x - from.x, y: to.y - from.y };
  }) as [{ x: number; y: number }, { x: number; y: number }];
  const sizes = Math.sqrt((a.x * a.x + a.y * a.y) * (b.x * b.x + b.y * b.y));
  return sizes < 1e-9 ? 1 : (a.x * b.x + a.y * b.y) / sizes;
}

function overlaps(things: readonly Drawn[]): readonly Overlap[] {
  const boxes = things.map(boxOf);
  const found: Overlap[] = [];
  for (let i = 0; i < things.length; i++)
    for (let j = i + 1; j < things.length; j++) {
      const [one, other] = [things[i] as Drawn, things[j] as Drawn];
      if (one.strand === other.strand && runsOn(one, other)) continue;
      if (one.on === other.strand) found.push({ one: i, other: j, lead: Number.POSITIVE_INFINITY, weight: 1 });
      else if (other.on === one.strand) found.push({ one: i, other: j, lead: Number.NEGATIVE_INFINITY, weight: 1 });
      else if (meet(boxes[i] as Box, boxes[j] as Box)) {
        const { lead, weight } = leadOf(one.covers, other.covers);
        if (lead !== 0) found.push({ one: i, other: j, lead, weight });
      }
    }
  return found;
}

/** Below this share of the greater, the smaller of two bubbles' leads over one another is only their squeezed twist. */
const woven = 0.3;
/** Bubbles that are nearer than one another by less than this, in radii, only touch. */
const wovenRadii = 0.5;

/** Bubbles that are truly woven keep the order of their stretches; of two others one is wholly in front, so that neither is cut for nothing. */
function oneWay(found: readonly Overlap[], things: readonly Drawn[]): readonly Overlap[] {
  const sums = new Map<string, { ahead: number; back: number; aheadWeight: number; backWeight: number }>();
  const strandsOf = ({ one, other }: Overlap): readonly [string, number] => {
    const [a, b] = [(things[one] as Drawn).strand, (things[other] as Drawn).strand];
    return a <= b ? [`${a} ${b}`, 1] : [`${b} ${a}`, -1];
  };
  for (const overlap of found) {
    const [key, sign] = strandsOf(overlap);
    const sum = sums.get(key) ?? { ahead: 0, back: 0, aheadWeight: 0, backWeight: 0 };
    if (overlap.lead * sign > 0) {
      sum.ahead += Math.abs(overlap.lead);
      sum.aheadWeight += overlap.weight;
    } else {
      sum.back += Math.abs(overlap.lead);
      sum.backWeight += overlap.weight;
    }
    sums.set(key, sum);
  }
  return found.map((overlap) => {
    const [key, sign] = strandsOf(overlap);
    const { ahead, back, aheadWeight, backWeight } = sums.get(key) as {
      ahead: number;
      back: number;
      aheadWeight: number;
      backWeight: number;
    };
    if ((things[overlap.one] as Drawn).strand === (things[overlap.other] as Drawn).strand) return overlap;
    const nearer = Math.min(ahead / Math.max(aheadWeight, 1e-9), back / Math.max(backWeight, 1e-9));
    const thick = Math.min(...[overlap.one, overlap.other].map((thing) => (things[thing] as Drawn).covers[0]?.radius ?? 0));
    const isWoven = Math.min(ahead, back) > woven * Math.max(ahead, back) && nearer > wovenRadii * thick;
    if (isWoven || !Number.isFinite(overlap.lead)) return overlap;
    return { ...overlap, lead: Math.abs(overlap.lead) * (ahead >= back ? sign : -sign) };
  });
}

function sorted(things: readonly Drawn[], behind: readonly Map<number, number>[]): readonly number[] {
  const depth = things.map(depthOf);
  const waits = behind.map((others) => others.size);
  const hard = behind.map((others) => [...others.values()].filter((weight) => !Number.isFinite(weight)).length);
  const soft = behind.map((others) => [...others.values()].reduce((sum, weight) => (Number.isFinite(weight) ? sum + weight : sum), 0));
  const ahead: number[][] = things.map(() => []);
  behind.forEach((others, index) => {
    for (const other of others.keys()) ahead[other]?.push(index);
  });
  /** What still has to be drawn before it; nothing is exactly nothing, whatever rounding left. */
  const blocked = (index: number): number =>
    waits[index] === 0 ? 0 : (hard[index] as number) * 1e12 + Math.max(soft[index] as number, 1e-9);
  const left = new Set(things.keys());
  const found: number[] = [];
  while (left.size > 0) {
    const last = things[found.at(-1) ?? -1];
    let best = -1;
    let bestBlocked = Number.POSITIVE_INFINITY;
    let bestDepth = Number.POSITIVE_INFINITY;
    for (const index of left) {
      const thing = things[index] as Drawn;
      const goesOn = last !== undefined && last.strand === thing.strand && Math.abs(last.place - thing.place) === 1;
      const order = goesOn ? Number.NEGATIVE_INFINITY : (depth[index] as number);
      const weight = blocked(index);
      if (best < 0 || weight < bestBlocked || (weight === bestBlocked && order < bestDepth))
        [best, bestBlocked, bestDepth] = [index, weight, order];
    }
    left.delete(best);
    found.push(best);
    for (const index of ahead[best] as number[]) {
      const weight = behind[index]?.get(best) as number;
      waits[index] = (waits[index] as number) - 1;
      if (Number.isFinite(weight)) soft[index] = (soft[index] as number) - weight;
      else hard[index] = (hard[index] as number) - 1;
    }
  }
  return found;
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function boxOf({ covers }: Drawn): Box {
  let [left, right, top, bottom] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { x, y, radius } of covers) {
    left = Math.min(left, x - radius);
    right = Math.max(right, x + radius);
    top = Math.min(top, y - radius);
    bottom = Math.max(bottom, y + radius);
  }
  return { left, right, top, bottom };
}

const meet = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Whether two things cover a common place. */
export const covering = (one: Drawn, other: Drawn): boolean =>
  one.covers.some((a) =>
    other.covers.some(
      (b) => (a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y) < (a.radius + b.radius - 0.4) * (a.radius + b.radius - 0.4),
    ),
  );

/** By how much the first is nearer than the second, weighed by how much they overlap; 0 where they do not. */
function leadOf(one: readonly Cover[], other: readonly Cover[]): { readonly lead: number; readonly weight: number } {
  let lead = 0;
  let weight = 0;
  for (const a of one)
    for (const b of other) {
      const overlap = a.radius + b.radius - Math.sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y));
      if (overlap <= 0.4) continue;
      lead += overlap * overlap * (a.near - b.near);
      weight += overlap * overlap;
    }
  return { lead, weight };
}
