import type { Network } from './network.ts';

/**
 * A step of putting a part together from its edges: nothing yet, one edge more, a joint that has all its edges, or two stretches that are
 * laid side by side. `after` and `beside` are numbers of earlier steps. Joints that still await edges, and these alone, have a place, a bit
 * of its own among all joints of the same step; `open` are the places in use after the step.
 */
export type Step = { readonly open: number } & (
  | { readonly kind: 'nothing' }
  | { readonly kind: 'edge'; readonly after: number; readonly edge: number; readonly from: number; readonly to: number }
  | { readonly kind: 'done'; readonly after: number; readonly place: number }
  | { readonly kind: 'beside'; readonly after: number; readonly beside: number }
);

export interface Steps {
  readonly steps: readonly Step[];
  /** Places that are ever in use. */
  readonly places: number;
}

/**
 * Puts a connected part together so that few joints are open at a time: always next the joint with the fewest neighbours, of these the one
 * with the least behind it (elimination by least degree, after D. J. Rose 1972). A tree is put together from its leaves, one joint open at a time.
 */
export function putTogether(part: Network): Steps {
  const { order, later } = elimination(part);
  const place = new Int32Array(part.jointCount);
  for (const joint of order.toReversed()) {
    const taken = (later[joint] as readonly number[]).reduce((all, other) => all | (place[other] as number), 0);
    place[joint] = ~taken & (taken + 1);
  }
  const steps: Step[] = [];
  const add = (step: Step): number => steps.push(step) - 1;
  const openAt = (step: number): number => (steps[step] as Step).open;
  const waiting: number[][] = Array.from({ length: part.jointCount }, () => []);
  const taken = new Uint8Array(part.edgeCount);
  for (const joint of order) {
    const [first = add({ kind: 'nothing', open: 0 }), ...others] = waiting[joint] as readonly number[];
    let last = first;
    for (const beside of others) last = add({ kind: 'beside', after: last, beside, open: openAt(last) | openAt(beside) });
    for (let at = part.first[joint] as number; at < (part.first[joint + 1] as number); at++) {
      const edge = (part.ends[at] as number) >> 1;
      if (taken[edge] === 1) continue;
      taken[edge] = 1;
      const from = place[part.jointOfEnd[2 * edge] as number] as number;
      const to = place[part.jointOfEnd[2 * edge + 1] as number] as number;
      last = add({ kind: 'edge', after: last, edge, from, to, open: openAt(last) | from | to });
    }
    const its = place[joint] as number;
    last = add({ kind: 'done', after: last, place: its, open: openAt(last) & ~its });
    const next = (later[joint] as readonly number[])[0];
    if (next !== undefined) waiting[next]?.push(last);
  }
  return { steps, places: 32 - Math.clz32(place.reduce((all, its) => all | its, 0)) };
}

/** The joints in the order they are done, and for each the open ones it is linked to then, in that order too. */
function elimination(part: Network): { readonly order: readonly number[]; readonly later: readonly (readonly number[])[] } {
  const links = Array.from({ length: part.jointCount }, () => new Set<number>());
  for (let edge = 0; edge < part.edgeCount; edge++) {
    const [from, to] = [part.jointOfEnd[2 * edge] as number, part.jointOfEnd[2 * edge + 1] as number];
    if (from === to) continue;
    links[from]?.add(to);
    links[to]?.add(from);
  }
  const behind = new Float64Array(part.jointCount).fill(1);
  const open = new Set(links.keys());
  const linked = (joint: number): Set<number> => links[joint] as Set<number>;
  const order: number[] = [];
  while (open.size > 0) {
    const next = [...open].reduce((best, joint) => {
      const fewer = linked(joint).size - linked(best).size || (behind[joint] as number) - (behind[best] as number);
      return fewer < 0 ? joint : best;
    });
    open.delete(next);
    order.push(next);
    for (const joint of linked(next)) {
      linked(joint).delete(next);
      for (const other of linked(next)) if (other !== joint) linked(joint).add(other);
      behind[joint] = Math.max(behind[joint] as number, 0) + (behind[next] as number);
    }
  }
  const number = new Int32Array(part.jointCount);
  for (const [index, joint] of order.entries()) number[joint] = index;
  return { order, later: links.map((its) => [...its].sort((a, b) => (number[a] as number) - (number[b] as number))) };
}
