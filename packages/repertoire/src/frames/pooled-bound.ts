import type { Network } from './network.ts';
import type { Step, Steps } from './putting-together.ts';

/** What all balloons together must at least take, told apart by which open joints are odd (a set of places). */
export interface PooledBound {
  readonly price: number;
  /** Least of the whole part: rubber, and the price for each end. */
  readonly whole: number;
  /** For each step, the least of all that is not there yet, by the places that are odd so far. */
  readonly outside: readonly Float64Array[];
}

/**
 * As if all balloons were one heap of rubber: each edge is made once or once more and popped, and each joint that is odd then costs the
 * `price` of an end. Balloons that keep within their lengths and their two ends can only take more (J. L. Lagrange's multipliers; duality holds
 * for any price).
 */
export function pooledBound(part: Network, { steps, places }: Steps, price: number): PooledBound {
  const inside = steps.map(() => new Float64Array(2 ** places).fill(Number.POSITIVE_INFINITY));
  const outside = steps.map(() => new Float64Array(2 ** places).fill(Number.POSITIVE_INFINITY));
  const table = (of: readonly Float64Array[], step: number): Float64Array => of[step] as Float64Array;
  for (const [number, step] of steps.entries()) {
    const its = table(inside, number);
    if (step.kind === 'nothing') its[0] = 0;
    else if (step.kind === 'edge') addEdge(its, table(inside, step.after), step, part);
    else if (step.kind === 'done') {
      const before = table(inside, step.after);
      for (const odd of setsIn(step.open)) its[odd] = Math.min(before[odd] as number, (before[odd | step.place] as number) + price);
    } else addSums(its, table(inside, step.after), steps[step.after]?.open ?? 0, table(inside, step.beside), steps[step.beside]?.open ?? 0);
  }
  table(outside, steps.length - 1)[0] = 0;
  for (const [number, step] of [...steps.entries()].toReversed()) {
    const its = table(outside, number);
    if (step.kind === 'edge') addEdge(table(outside, step.after), its, { ...step, open: steps[step.after]?.open ?? 0 }, part);
    else if (step.kind === 'done') {
      const before = table(outside, step.after);
      for (const odd of setsIn(step.open)) {
        before[odd] = its[odd] as number;
        before[odd | step.place] = (its[odd] as number) + price;
      }
    } else if (step.kind === 'beside') {
      const [a, b] = [steps[step.after]?.open ?? 0, steps[step.beside]?.open ?? 0];
      addDifferences(table(outside, step.after), a, its, table(inside, step.beside), b);
      addDifferences(table(outside, step.beside), b, its, table(inside, step.after), a);
    }
  }
  return { price, whole: table(inside, steps.length - 1)[0] as number, outside };
}

/** The price at which the bound says most about `count` balloons. */
export function tightestBound(part: Network, steps: Steps, count: number, longest: number): PooledBound {
  const says = (bound: PooledBound): number => bound.whole - 2 * count * bound.price;
  let [low, high] = [0, Math.ceil(longest)];
  let best = pooledBound(part, steps, 0);
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    const [here, next] = [pooledBound(part, steps, middle), pooledBound(part, steps, middle + 1)];
    if (says(here) > says(best)) best = here;
    if (says(next) > says(best)) best = next;
    if (says(next) > says(here)) low = middle + 1;
    else high = middle;
  }
  return best;
}

function addEdge(to: Float64Array, from: Float64Array, step: Extract<Step, { kind: 'edge' }>, part: Network): void {
  const length = part.lengths[step.edge] as number;
  const turned = step.from ^ step.to;
  for (const odd of setsIn(step.open)) to[odd] = Math.min((from[odd ^ turned] as number) + length, (from[odd] as number) + 2 * length);
}

function addSums(to: Float64Array, a: Float64Array, openA: number, b: Float64Array, openB: number): void {
  for (const oddA of setsIn(openA)) {
    for (const oddB of setsIn(openB)) to[oddA ^ oddB] = Math.min(to[oddA ^ oddB] as number, (a[oddA] as number) + (b[oddB] as number));
  }
}

function addDifferences(to: Float64Array, open: number, whole: Float64Array, other: Float64Array, openOther: number): void {
  for (const odd of setsIn(open)) {
    for (const beside of setsIn(openOther))
      to[odd] = Math.min(to[odd] as number, (other[beside] as number) + (whole[odd ^ beside] as number));
  }
}

/** All sets of places within one, the empty one last. */
function setsIn(all: number): readonly number[] {
  const sets: number[] = [];
  for (let set = all; set > 0; set = (set - 1) & all) sets.push(set);
  sets.push(0);
  return sets;
}

/** For each step and place, the shortest edge there that is still to come. */
export function nearestOutside(part: Network, { steps, places }: Steps): readonly Float64Array[] {
  const inside = steps.map(() => new Float64Array(places).fill(Number.POSITIVE_INFINITY));
  const outside = steps.map(() => new Float64Array(places).fill(Number.POSITIVE_INFINITY));
  const number = (place: number): number => 31 - Math.clz32(place);
  const lower = (of: readonly Float64Array[], step: number, by: Float64Array): void => {
    const its = of[step] as Float64Array;
    for (const [place, length] of by.entries()) its[place] = Math.min(its[place] as number, length);
  };
  const lowerByEdge = (of: Float64Array, { edge, from, to }: Extract<Step, { kind: 'edge' }>): void => {
    for (const place of [number(from), number(to)]) of[place] = Math.min(of[place] as number, part.lengths[edge] as number);
  };
  for (const [index, step] of steps.entries()) {
    if (step.kind === 'nothing') continue;
    const its = inside[index] as Float64Array;
    lower(inside, index, inside[step.after] as Float64Array);
    if (step.kind === 'beside') lower(inside, index, inside[step.beside] as Float64Array);
    else if (step.kind === 'edge') lowerByEdge(its, step);
    else its[number(step.place)] = Number.POSITIVE_INFINITY;
  }
  for (const [index, step] of [...steps.entries()].toReversed()) {
    if (step.kind === 'nothing') continue;
    const before = outside[step.after] as Float64Array;
    lower(outside, step.after, outside[index] as Float64Array);
    if (step.kind === 'edge') lowerByEdge(before, step);
    else if (step.kind === 'done') before[number(step.place)] = Number.POSITIVE_INFINITY;
    else {
      lower(outside, step.after, inside[step.beside] as Float64Array);
      lower(outside, step.beside, outside[index] as Float64Array);
      lower(outside, step.beside, inside[step.after] as Float64Array);
    }
  }
  return outside;
}
