import { fail, ok, type Result } from '@twistwright/units';
import { type Frame, frameProblem, isEdgeLength } from './frame.ts';
import { distance, type Place, times } from './place.ts';
import { polygon, solidCoordinates } from './solid-coordinates.ts';
import { dualWires, shortestWires, type Wires } from './solid-wires.ts';
import { cosineOfTurn, sineOfTurn } from './turn.ts';

/** Where a ready-made frame comes from. */
export type ReadyKind = 'Platonic' | 'Archimedean' | 'Catalan' | 'family';

/** A frame that need not be typed in. A family takes a number of sides after its name, as in `prism 6`. */
export interface ReadyFrame {
  readonly name: string;
  readonly kind: ReadyKind;
  /** What it looks like, one sentence. */
  readonly says: string;
}

const platonic = ['tetrahedron', 'cube', 'octahedron', 'dodecahedron', 'icosahedron'] as const;

/** Each Catalan solid is the dual of the Archimedean solid beside it. */
const catalanOf: Readonly<Record<string, string>> = {
  'truncated tetrahedron': 'triakis tetrahedron',
  cuboctahedron: 'rhombic dodecahedron',
  'truncated cube': 'triakis octahedron',
  'truncated octahedron': 'tetrakis hexahedron',
  rhombicuboctahedron: 'deltoidal icositetrahedron',
  'truncated cuboctahedron': 'disdyakis dodecahedron',
  'snub cube': 'pentagonal icositetrahedron',
  icosidodecahedron: 'rhombic triacontahedron',
  'truncated dodecahedron': 'triakis icosahedron',
  'truncated icosahedron': 'pentakis dodecahedron',
  rhombicosidodecahedron: 'deltoidal hexecontahedron',
  'truncated icosidodecahedron': 'disdyakis triacontahedron',
  'snub dodecahedron': 'pentagonal hexecontahedron',
};

interface Family {
  readonly says: string;
  readonly fewestSides: number;
  readonly wires: (sides: number) => Wires;
}

const families: Readonly<Record<string, Family>> = {
  prism: { says: 'two equal rings, one above the other, joined by posts', fewestSides: 3, wires: prism },
  antiprism: { says: 'two equal rings, one turned, joined by a zigzag', fewestSides: 3, wires: antiprism },
  pyramid: { says: 'a ring and one tip', fewestSides: 3, wires: pyramid },
  bipyramid: { says: 'a ring with a tip above and one below', fewestSides: 3, wires: bipyramid },
  star: { says: 'a flat star whose straight strokes cross', fewestSides: 5, wires: star },
};
const mostSides = 200;

/** Every ready-made frame, families by their name alone. */
export const readyFrames: readonly ReadyFrame[] = [
  ...platonic.map((name): ReadyFrame => ({ name, kind: 'Platonic', says: 'one kind of face, all corners alike' })),
  ...Object.keys(catalanOf).map((name): ReadyFrame => ({ name, kind: 'Archimedean', says: 'several kinds of face, all corners alike' })),
  ...Object.entries(catalanOf).map(
    ([dual, name]): ReadyFrame => ({ name, kind: 'Catalan', says: `one kind of face, the dual of the ${dual}` }),
  ),
  ...Object.entries(families).map(([name, family]): ReadyFrame => ({ name, kind: 'family', says: family.says })),
];

/**
 * A ready-made frame with its places; the shortest edge is `edgeInches` long, and where the solid allows it all are.
 * Problems: `frame.ready-unknown`, `frame.sides`, `frame.edge-length`.
 * @example readyFrame('prism 6', 5).value.edges.length // -> 18
 */
export function readyFrame(name: string, edgeInches: number): Result<Frame> {
  if (!isEdgeLength(edgeInches))
    return fail([frameProblem('frame.edge-length', ['edgeInches'], `An edge cannot be ${edgeInches} inches long.`)]);
  const plain = name.trim().toLowerCase().replace(/\s+/g, ' ');
  const solid = solidWires(plain);
  if (solid !== undefined) return ok(frameOf(plain, solid, edgeInches));
  const [familyName = '', sidesText = ''] = plain.split(/ (?=[^ ]*$)/);
  const family = Object.hasOwn(families, familyName) ? families[familyName] : undefined;
  if (family === undefined) return fail([frameProblem('frame.ready-unknown', ['name'], `There is no ready-made frame called ${name}.`)]);
  const sides = Number(sidesText);
  if (!Number.isInteger(sides) || sides < family.fewestSides || sides > mostSides) {
    const sentence = `A ${familyName} cannot have ${sidesText === '' ? 'an unknown number of' : sidesText} sides.`;
    return fail([frameProblem('frame.sides', ['name'], sentence, `Give a whole number from ${family.fewestSides} to ${mostSides}.`)]);
  }
  return ok(frameOf(plain, family.wires(sides), edgeInches));
}

function solidWires(name: string): Wires | undefined {
  const coordinates = Object.hasOwn(solidCoordinates, name) ? solidCoordinates[name] : undefined;
  if (coordinates !== undefined) return shortestWires(coordinates());
  const dualOf = Object.keys(catalanOf).find((dual) => catalanOf[dual] === name);
  const original = dualOf === undefined ? undefined : solidCoordinates[dualOf];
  return original === undefined ? undefined : dualWires(shortestWires(original()));
}

function frameOf(name: string, wires: Wires, edgeInches: number): Frame {
  const lengths = wires.edges.map(([from, to]) => distance(wires.places[from] as Place, wires.places[to] as Place));
  const shortest = Math.min(...lengths);
  const order = wires.places.map((_, index) => index).toSorted((a, b) => topFirst(wires.places[a] as Place, wires.places[b] as Place));
  const names = new Map(order.map((index, place) => [index, `${place + 1}`]));
  return {
    name,
    joints: order.map((index, place) => ({ name: `${place + 1}`, at: times(wires.places[index] as Place, edgeInches / shortest) })),
    edges: wires.edges.map(([from, to], index) => ({
      from: names.get(from) as string,
      to: names.get(to) as string,
      lengthInches: evenOut((lengths[index] as number) / shortest) * edgeInches,
    })),
  };
}

/** Takes the rounding of coordinates off a ratio, so that equal edges are equal. */
const evenOut = (ratio: number): number => Math.round(ratio * 1e9) / 1e9;

/** Highest first, then by side; near-equal heights count as equal. */
function topFirst(a: Place, b: Place): number {
  for (const axis of [2, 1, 0] as const) if (Math.abs(a[axis] - b[axis]) > 1e-9) return b[axis] - a[axis];
  return 0;
}

/** Radius of a ring of `sides` edges of length 1. */
const ringRadius = (sides: number): number => 1 / (2 * sineOfTurn(1 / (2 * sides)));
const ring = (sides: number, start: number): (readonly [number, number])[] =>
  Array.from({ length: sides }, (_, side) => [start + side, start + ((side + 1) % sides)] as const);

function prism(sides: number): Wires {
  const radius = ringRadius(sides);
  const posts = Array.from({ length: sides }, (_, side) => [side, sides + side] as const);
  return {
    places: [...polygon(sides, radius, 0.5), ...polygon(sides, radius, -0.5)],
    edges: [...ring(sides, 0), ...ring(sides, sides), ...posts],
  };
}

function antiprism(sides: number): Wires {
  const radius = ringRadius(sides);
  const sideways = 2 * radius * sineOfTurn(1 / (4 * sides));
  const height = Math.sqrt(1 - sideways * sideways) / 2;
  const zigzag = Array.from({ length: sides }, (_, side) => [
    [side, sides + side] as const,
    [sides + side, (side + 1) % sides] as const,
  ]).flat();
  return {
    places: [...polygon(sides, radius, height), ...polygon(sides, radius, -height, 0.5 / sides)],
    edges: [...ring(sides, 0), ...ring(sides, sides), ...zigzag],
  };
}

/** Up to five sides all edges are equal; from six on that would be flat, so the tip is as high as the ring is wide. */
function tipHeight(sides: number): number {
  const radius = ringRadius(sides);
  return sides <= 5 ? Math.sqrt(1 - radius * radius) : radius;
}

function pyramid(sides: number): Wires {
  const spokes = Array.from({ length: sides }, (_, side) => [side, sides] as const);
  return { places: [...polygon(sides, ringRadius(sides), 0), [0, 0, tipHeight(sides)]], edges: [...ring(sides, 0), ...spokes] };
}

function bipyramid(sides: number): Wires {
  const upper = pyramid(sides);
  const spokes = Array.from({ length: sides }, (_, side) => [side, sides + 1] as const);
  return { places: [...upper.places, [0, 0, -tipHeight(sides)]], edges: [...upper.edges, ...spokes] };
}

/** The star whose strokes join every second tip, standing upright: tips outside, crossings on an inner ring. */
function star(tips: number): Wires {
  const inner = cosineOfTurn(1 / tips) / cosineOfTurn(1 / (2 * tips));
  const arms = Array.from({ length: tips }, (_, tip) => [
    [tip, tips + tip] as const,
    [tip, tips + ((tip + tips - 1) % tips)] as const,
  ]).flat();
  const topTip = 0.25;
  const flat = [...polygon(tips, 1, 0, topTip), ...polygon(tips, inner, 0, topTip + 0.5 / tips)];
  return {
    places: flat.map(([across, up]): Place => [0, across, up]),
    edges: [...arms, ...ring(tips, tips)],
  };
}
