import { cross, distance, dot, minus, type Place, plus, size, times } from './place.ts';

/** Corners and the pairs of corners that an edge joins. */
export interface Wires {
  readonly places: readonly Place[];
  readonly edges: readonly (readonly [number, number])[];
}

/** The solid whose edges all have the shortest distance between two of the given corners. */
export function shortestWires(places: readonly Place[]): Wires {
  let shortest = Number.POSITIVE_INFINITY;
  for (const [index, place] of places.entries()) {
    for (let other = 0; other < index; other++) shortest = Math.min(shortest, distance(place, places[other] as Place));
  }
  const edges: [number, number][] = [];
  for (const [index, place] of places.entries()) {
    for (let other = index + 1; other < places.length; other++) {
      if (distance(place, places[other] as Place) < shortest * 1.000001) edges.push([index, other]);
    }
  }
  return { places, edges };
}

/**
 * The faces of a convex solid around the origin, each as its corners in turn: at every corner the neighbours are put in the order in
 * which they lie around it, and a face is followed by always taking the next one.
 */
export function facesOf(wires: Wires): readonly (readonly number[])[] {
  const around = neighboursInOrder(wires);
  const done = new Set<number>();
  const count = wires.places.length;
  const faces: number[][] = [];
  for (const [start, neighbours] of around.entries()) {
    for (const second of neighbours) {
      if (done.has(start * count + second)) continue;
      const face: number[] = [];
      let [from, to] = [start, second];
      while (!done.has(from * count + to)) {
        done.add(from * count + to);
        face.push(from);
        const turn = around[to] as readonly number[];
        [from, to] = [to, turn[(turn.indexOf(from) + 1) % turn.length] as number];
      }
      faces.push(face);
    }
  }
  return faces;
}

function neighboursInOrder(wires: Wires): readonly (readonly number[])[] {
  const neighbours = wires.places.map((): number[] => []);
  for (const [from, to] of wires.edges) {
    neighbours[from]?.push(to);
    neighbours[to]?.push(from);
  }
  return neighbours.map((list, corner) => {
    const place = wires.places[corner] as Place;
    const ahead = minus(wires.places[list[0] as number] as Place, place);
    const left = cross(place, ahead);
    const forward = cross(left, place);
    const angle = (other: number) => {
      const step = minus(wires.places[other] as Place, place);
      return turnOrder(dot(step, forward) / size(forward), dot(step, left) / size(left));
    };
    return list.toSorted((a, b) => angle(a) - angle(b));
  });
}

/** Grows with the angle of a direction, from 0 (included) to 4 (not included); needs no arc functions. */
function turnOrder(x: number, y: number): number {
  const slope = y / (Math.abs(x) + Math.abs(y));
  if (x < 0) return 2 - slope;
  return slope < -1e-12 ? 4 + slope : slope;
}

/**
 * The dual of a solid with one mid-sphere: a corner for each face, where the planes touching the mid-sphere at the edge middles meet,
 * and an edge across each edge (polar reciprocation; the Catalan solids are the duals of the Archimedean ones).
 */
export function dualWires(wires: Wires): Wires {
  const faces = facesOf(wires);
  const [from, to] = wires.edges[0] as readonly [number, number];
  const middle = times(plus(wires.places[from] as Place, wires.places[to] as Place), 0.5);
  const sphere = dot(middle, middle);
  const places = faces.map((face) => {
    const sum = face.reduce<Place>((total, corner) => plus(total, wires.places[corner] as Place), [0, 0, 0]);
    const normal = times(sum, 1 / size(sum));
    return times(normal, sphere / dot(normal, wires.places[face[0] as number] as Place));
  });
  return { places, edges: edgesAcross(wires, faces) };
}

function edgesAcross(wires: Wires, faces: readonly (readonly number[])[]): readonly (readonly [number, number])[] {
  const faceAlong = new Map<string, number>();
  for (const [number, face] of faces.entries()) {
    for (const [step, corner] of face.entries()) faceAlong.set(`${corner} ${face[(step + 1) % face.length]}`, number);
  }
  return wires.edges.map(([from, to]) => [faceAlong.get(`${from} ${to}`) as number, faceAlong.get(`${to} ${from}`) as number] as const);
}
