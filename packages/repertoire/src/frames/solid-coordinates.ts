import { distance, type Place } from './place.ts';
import { cosineOfTurn, sineOfTurn } from './turn.ts';

/**
 * Corner coordinates of the solids, centred on the origin, in whatever size comes out simplest. Platonic: REFERENCES 8A. Archimedean:
 * the permutations in H. S. M. Coxeter, M. S. Longuet-Higgins, J. C. P. Miller, "Uniform polyhedra", Phil. Trans. R. Soc. A 246 (1954)
 * 401-450 (from memory); edge counts, equal edges and equal corners are checked by tests.
 */
const phi = (1 + Math.sqrt(5)) / 2;
/** Real root of t^3 = t^2 + t + 1. */
const tribonacci = 1.839286755214161;
const root2 = Math.sqrt(2);

export const solidCoordinates: Readonly<Record<string, () => readonly Place[]>> = {
  tetrahedron: () => [
    [1, 1, 1],
    [1, -1, -1],
    [-1, 1, -1],
    [-1, -1, 1],
  ],
  cube: () => allSigns([1, 1, 1]),
  octahedron: () => everyOrder([1, 0, 0]),
  dodecahedron: () => [...allSigns([1, 1, 1]), ...turnedOrder([0, 1 / phi, phi])],
  icosahedron: () => turnedOrder([0, 1, phi]),
  'truncated tetrahedron': () => everyOrder([3, 1, 1]).filter((place) => minusSigns(place) % 2 === 0),
  cuboctahedron: () => everyOrder([1, 1, 0]),
  'truncated cube': () => everyOrder([root2 - 1, 1, 1]),
  'truncated octahedron': () => everyOrder([0, 1, 2]),
  rhombicuboctahedron: () => everyOrder([1, 1, 1 + root2]),
  'truncated cuboctahedron': () => everyOrder([1, 1 + root2, 1 + 2 * root2]),
  'snub cube': () => snubCube(),
  icosidodecahedron: () => [...everyOrder([0, 0, phi]), ...turnedOrder([0.5, phi / 2, (phi * phi) / 2])],
  'truncated dodecahedron': () => [
    ...turnedOrder([0, 1 / phi, 2 + phi]),
    ...turnedOrder([1 / phi, phi, 2 * phi]),
    ...turnedOrder([phi, 2, phi + 1]),
  ],
  'truncated icosahedron': () => [
    ...turnedOrder([0, 1, 3 * phi]),
    ...turnedOrder([1, 2 + phi, 2 * phi]),
    ...turnedOrder([phi, 2, 2 * phi + 1]),
  ],
  rhombicosidodecahedron: () => [
    ...turnedOrder([1, 1, phi * phi * phi]),
    ...turnedOrder([phi * phi, phi, 2 * phi]),
    ...turnedOrder([2 + phi, 0, phi * phi]),
  ],
  'truncated icosidodecahedron': () => [
    ...turnedOrder([1 / phi, 1 / phi, 3 + phi]),
    ...turnedOrder([2 / phi, phi, 1 + 2 * phi]),
    ...turnedOrder([1 / phi, phi * phi, 3 * phi - 1]),
    ...turnedOrder([2 * phi - 1, 2, 2 + phi]),
    ...turnedOrder([phi, 3, 2 * phi]),
  ],
  'snub dodecahedron': () => snubDodecahedron(),
};

/** A regular polygon in the plane of the first two axes, first corner at angle `shift` turns. */
export function polygon(corners: number, radius: number, height: number, shift = 0): readonly Place[] {
  return Array.from({ length: corners }, (_, corner) => {
    const turn = (corner + shift * corners) / corners;
    return [radius * cosineOfTurn(turn), radius * sineOfTurn(turn), height] as const;
  });
}

function allSigns([x, y, z]: Place): readonly Place[] {
  const both = (value: number) => (value === 0 ? [0] : [value, -value]);
  return both(x).flatMap((a) => both(y).flatMap((b) => both(z).map((c): Place => [a, b, c])));
}

const turnedOrder = ([x, y, z]: Place): readonly Place[] => [...allSigns([x, y, z]), ...allSigns([y, z, x]), ...allSigns([z, x, y])];

const everyOrder = ([x, y, z]: Place): readonly Place[] => distinct([...turnedOrder([x, y, z]), ...turnedOrder([y, x, z])]);

function distinct(places: readonly Place[]): readonly Place[] {
  return places.filter((place, index) => places.findIndex((other) => distance(place, other) < 1e-9) === index);
}

const minusSigns = (place: Place): number => place.filter((value) => value < 0).length;

function snubCube(): readonly Place[] {
  const t = tribonacci;
  return [
    ...turnedOrder([1, 1 / t, t]).filter((place) => minusSigns(place) % 2 === 1),
    ...turnedOrder([1 / t, 1, t]).filter((place) => minusSigns(place) % 2 === 0),
  ];
}

type Turning = (place: Place) => Place;

/** The sixty images of one corner under the turnings of the icosahedron; the corner is where its five edges are equal. */
function snubDodecahedron(): readonly Place[] {
  const fifth = turningAbout([0, 1, phi], 1 / 5);
  const third = turningAbout([phi, 0, 2 * phi + 1], 1 / 3);
  const halfTurn: Turning = ([x, y, z]) => [-x, -y, z];
  return orbit(equalCorner(fifth, third, halfTurn), [fifth, third, halfTurn]);
}

/**
 * The corner p on the unit sphere with |p - fifth p| = |p - third p| = |p - half p|, by Newton's method on two directions with the
 * slopes by differences. The three turnings are those about neighbouring corner, face and edge middles of the icosahedron.
 */
function equalCorner(fifth: Turning, third: Turning, halfTurn: Turning): Place {
  const at = (a: number, b: number): Place => [a, b, Math.sqrt(1 - a * a - b * b)];
  const unequal = (a: number, b: number): readonly [number, number] => {
    const place = at(a, b);
    const toHalf = distance(place, halfTurn(place));
    return [distance(place, fifth(place)) - toHalf, distance(place, third(place)) - toHalf];
  };
  let [a, b] = [0.12, 0.2];
  for (let round = 0; round < 40; round++) {
    const step = 1e-7;
    const [f, g] = unequal(a, b);
    const [fa, ga] = unequal(a + step, b);
    const [fb, gb] = unequal(a, b + step);
    const [ffa, ffb, gga, ggb] = [(fa - f) / step, (fb - f) / step, (ga - g) / step, (gb - g) / step];
    const determinant = ffa * ggb - ffb * gga;
    a -= (f * ggb - g * ffb) / determinant;
    b -= (g * ffa - f * gga) / determinant;
  }
  return at(a, b);
}

function orbit(start: Place, turnings: readonly Turning[]): readonly Place[] {
  const places: Place[] = [start];
  for (let index = 0; index < places.length; index++) {
    if (places.length > 120) throw new Error(`an orbit that does not close, from ${start.join(', ')}`);
    for (const turning of turnings) {
      const image = turning(places[index] as Place);
      if (!places.some((place) => distance(place, image) < 1e-6)) places.push(image);
    }
  }
  return places;
}

/** Turning about an axis by a share of a full turn (O. Rodrigues' formula). */
function turningAbout(axis: Place, turn: number): Turning {
  const long = Math.sqrt(axis[0] ** 2 + axis[1] ** 2 + axis[2] ** 2);
  const [x, y, z] = [axis[0] / long, axis[1] / long, axis[2] / long];
  const [c, s] = [cosineOfTurn(turn), sineOfTurn(turn)];
  return ([px, py, pz]) => {
    const along = (x * px + y * py + z * pz) * (1 - c);
    return [
      px * c + (y * pz - z * py) * s + x * along,
      py * c + (z * px - x * pz) * s + y * along,
      pz * c + (x * py - y * px) * s + z * along,
    ];
  };
}
