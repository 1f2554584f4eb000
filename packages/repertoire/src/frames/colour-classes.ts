import type { Frame } from './frame.ts';
import { capacityOf, lengthUnitsPerInch } from './network.ts';
import { type Trail, trailInches } from './trail.ts';

const mostJoinedEdges = 20_000;
const mostHosts = 64;

export interface ColouredTrail {
  readonly colour: string | undefined;
  readonly trail: Trail;
}

/**
 * The frame with each connected group of edges without a colour in the colour that it meets most often, first come where equal; groups that
 * meet none stay as they are. Twisted together with that colour they often take fewer balloons than hung on afterwards.
 */
export function lendColours(frame: Frame): Frame {
  const parent = new Map<string, string>();
  const root = (joint: string): string => {
    let top = joint;
    for (let up = parent.get(top); up !== undefined; up = parent.get(top)) {
      const above = parent.get(up);
      if (above !== undefined) parent.set(top, above);
      top = up;
    }
    return top;
  };
  const plain = frame.edges.filter(({ colour }) => colour === undefined);
  for (const { from, to } of plain) {
    const [start, end] = [root(from), root(to)];
    if (start !== end) parent.set(start, end);
  }
  const joints = new Set(plain.flatMap(({ from, to }) => [from, to]));
  const met = new Map<string, Map<string, number>>();
  for (const { from, to, colour } of frame.edges) {
    if (colour === undefined) continue;
    for (const joint of [from, to]) if (joints.has(joint)) count(met, root(joint), colour);
  }
  const edges = frame.edges.map((edge) => {
    const colour = edge.colour ?? mostOften(met.get(root(edge.from)));
    return colour === undefined ? edge : { ...edge, colour };
  });
  return { ...frame, edges };
}

function count(met: Map<string, Map<string, number>>, group: string, colour: string): void {
  const colours = met.get(group) ?? new Map<string, number>();
  colours.set(colour, (colours.get(colour) ?? 0) + 1);
  met.set(group, colours);
}

function mostOften(colours: ReadonlyMap<string, number> = new Map()): string | undefined {
  let best: string | undefined;
  for (const [colour, times] of colours) if (best === undefined || times > (colours.get(best) ?? 0)) best = colour;
  return best;
}

/**
 * Hangs balloons without a colour on to coloured ones that end, or (a ring) pass, at the same joint, where the length allows it; each
 * saves a balloon. Greedy: first come, first joined, among the first few balloons at a joint; not tried on very large frames.
 */
export function joinUncoloured(frame: Frame, trails: readonly ColouredTrail[], balloonInches: number): readonly ColouredTrail[] {
  if (frame.edges.length > mostJoinedEdges) return trails;
  const kept: { colour: string | undefined; trail: Trail; inches: number }[] = [];
  const loose: Trail[] = [];
  for (const { colour, trail } of trails) {
    if (colour === undefined) loose.push(trail);
    else kept.push({ colour, trail, inches: trailInches(frame, trail) });
  }
  const placesOf = indexByJoint(kept);
  for (const trail of loose) {
    const inches = trailInches(frame, trail);
    const host = hostFor(trail, inches);
    if (host === undefined) kept.push({ colour: undefined, trail, inches });
  }
  return kept.map(({ colour, trail }) => ({ colour, trail }));

  function hostFor(trail: Trail, inches: number): number | undefined {
    let tries = mostHosts;
    for (const joint of isRing(trail) ? trail.joints : [trail.joints[0] as number, trail.joints.at(-1) as number]) {
      for (const place of placesOf.get(joint) ?? []) {
        const host = kept[place];
        if (tries-- === 0) return undefined;
        if (host === undefined || Math.round((host.inches + inches) * lengthUnitsPerInch) > capacityOf(balloonInches)) continue;
        const joined = join(host.trail, trail, joint);
        if (joined === undefined) continue;
        host.trail = joined;
        host.inches += inches;
        for (const passed of trail.joints) addTo(placesOf, passed, place);
        return place;
      }
    }
    return undefined;
  }
}

const isRing = (trail: Trail): boolean => trail.joints[0] === trail.joints.at(-1);

function indexByJoint(kept: readonly { readonly trail: Trail }[]): Map<number, Set<number>> {
  const places = new Map<number, Set<number>>();
  for (const [place, { trail }] of kept.entries()) for (const joint of trail.joints) addTo(places, joint, place);
  return places;
}

function addTo(places: Map<number, Set<number>>, joint: number, place: number): void {
  const set = places.get(joint);
  if (set === undefined) places.set(joint, new Set([place]));
  else set.add(place);
}

/** One trail out of two that share `joint`: a ring is put in where it is passed, anything else end to end. */
function join(host: Trail, guest: Trail, joint: number): Trail | undefined {
  if (isRing(guest)) return insert(host, startingAt(guest, joint), host.joints.indexOf(joint));
  const onward = guest.joints[0] === joint ? guest : reversed(guest);
  if (host.joints.at(-1) === joint) return insert(host, onward, host.joints.length - 1);
  if (host.joints[0] === joint) return insert(host, reversed(onward), 0);
  return undefined;
}

/** `guest` made at place `at` of `host`; at an end it may lead away, inside it must come back. */
function insert(host: Trail, guest: Trail, at: number): Trail {
  const before = at === 0 ? [] : host.joints.slice(0, at);
  return {
    joints: [...before, ...guest.joints, ...host.joints.slice(at + 1)],
    edges: [...host.edges.slice(0, at), ...guest.edges, ...host.edges.slice(at)],
  };
}

const reversed = (trail: Trail): Trail => ({ joints: trail.joints.toReversed(), edges: trail.edges.toReversed() });

function startingAt(ring: Trail, joint: number): Trail {
  const at = ring.joints.indexOf(joint);
  return {
    joints: [...ring.joints.slice(at, -1), ...ring.joints.slice(0, at + 1)],
    edges: [...ring.edges.slice(at), ...ring.edges.slice(0, at)],
  };
}
