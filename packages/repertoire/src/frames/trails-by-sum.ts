import type { EdgeSet } from './edge-set.ts';
import type { Network } from './network.ts';
import { type SortedSums, type SumEdges, sortedSums } from './sorted-sums.ts';
import type { Work } from './work.ts';

/** What a balloon must be like to be listed. */
export interface BalloonDemand {
  /** The edge that must be in it. */
  readonly through: number;
  /** Edges that it may have, `through` among them; connected, so that they have at most one joint more than there are edges. */
  readonly among: readonly number[];
  /** Shortest and longest length (both included). */
  readonly least: number;
  readonly most: number;
  /** Most odd joints that the edges left over may have. */
  readonly oddLeft: number;
  /** Colour of each edge, -1 where any will do: a balloon has one. */
  readonly colours?: Int32Array;
}

/** Sums of so many edges at most are sorted at once. */
const mostHalf = 20;
/** Steps that putting a set together and looking at it as a whole costs, in the measure of looking at a pair of sums. */
const lookAtWhole = 10;

/**
 * Every set of edges that can be one balloon as demanded, each once, found while they are asked for. Sums of two halves of the edges
 * are sorted and matched (E. Horowitz and S. Sahni, "Computing partitions with applications to the knapsack problem", J. ACM 21 (1974)
 * 277-292), once for every choice among the edges that are in neither half: quick where few sums are in range, which is where following
 * the edges one by one is slow. Stops when the work is used up; then `work.left` is not above 0.
 */
export function* balloonsBySum(part: Network, demand: BalloonDemand, work: Work): Generator<EdgeSet, void, void> {
  const others = demand.among.filter((edge) => edge !== demand.through);
  const edges = numbered(part, [...others, demand.through], demand.colours);
  const through = others.length;
  const bits = Math.min(mostHalf, others.length >> 1);
  const chosenAhead = others.length - 2 * bits;
  const first = sortedSums(edges, chosenAhead, chosenAhead + bits);
  const second = sortedSums(edges, chosenAhead + bits, others.length);
  work.left -= 4 * (first.sums.length + second.sums.length);
  const all = parityOf(edges, edges.lengths.keys());
  const limits = { ...demand, all, work };
  for (let mask = 0; mask < 2 ** chosenAhead; mask++) {
    const ahead = [through, ...bitsOf(mask)];
    const found = matches(first, second, sumOf(edges, ahead), parityOf(edges, ahead), limits);
    for (const { low, high } of found) {
      const numbers = [...ahead, ...bitsOf(low).map((bit) => bit + chosenAhead), ...bitsOf(high).map((bit) => bit + chosenAhead + bits)];
      work.left -= lookAtWhole;
      if (hasOneColour(edges, numbers) && hangsTogether(edges, numbers))
        yield numbers.reduce((set, number) => set + (edges.bits[number] as number), 0);
    }
    if (work.left <= 0) return;
  }
}

interface Parity {
  readonly low: number;
  readonly high: number;
}

interface Limits extends BalloonDemand {
  readonly all: Parity;
  readonly work: Work;
}

/** The pairs of sums in range whose joints fit: at most two odd ones, and not too many left over. */
function* matches(first: SortedSums, second: SortedSums, start: number, parity: Parity, limits: Limits) {
  const { least, most, oddLeft, all, work } = limits;
  let top = second.sums.length - 1;
  for (let place = 0; place < first.sums.length; place++) {
    const sum = start + (first.sums[place] as number);
    if (sum > most) break;
    while (top >= 0 && sum + (second.sums[top] as number) > most) top--;
    const startLow = parity.low ^ (first.parityLow[place] as number);
    const startHigh = parity.high ^ (first.parityHigh[place] as number);
    let other = top;
    for (; other >= 0 && sum + (second.sums[other] as number) >= least; other--) {
      const low = startLow ^ (second.parityLow[other] as number);
      const high = startHigh ^ (second.parityHigh[other] as number);
      if (ones(low) + ones(high) > 2 || ones(low ^ all.low) + ones(high ^ all.high) > oddLeft) continue;
      yield { low: first.masks[place] as number, high: second.masks[other] as number };
      if (work.left <= 0) return;
    }
    work.left -= 1 + top - other;
    if (work.left <= 0) return;
  }
  work.left -= second.sums.length >> 2;
}

interface NumberedEdges extends SumEdges {
  /** Each edge as a set of one. */
  readonly bits: readonly EdgeSet[];
  readonly joints: readonly Parity[];
  readonly colours: readonly number[];
}

function numbered(part: Network, edges: readonly number[], colours?: Int32Array): NumberedEdges {
  const numbers = new Map<number, number>();
  const bitOf = (end: number): Parity => {
    const joint = part.jointOfEnd[end] as number;
    const number = numbers.get(joint) ?? numbers.size;
    numbers.set(joint, number);
    return number < 31 ? { low: 1 << number, high: 0 } : { low: 0, high: 1 << (number - 31) };
  };
  const ends = edges.map((edge) => [bitOf(2 * edge), bitOf(2 * edge + 1)] as const);
  return {
    lengths: edges.map((edge) => part.lengths[edge] as number),
    parityLow: ends.map(([from, to]) => from.low ^ to.low),
    parityHigh: ends.map(([from, to]) => from.high ^ to.high),
    joints: ends.map(([from, to]) => ({ low: from.low | to.low, high: from.high | to.high })),
    bits: edges.map((edge) => 2 ** edge),
    colours: edges.map((edge) => colours?.[edge] ?? -1),
  };
}

function sumOf(edges: SumEdges, numbers: readonly number[]): number {
  return numbers.reduce((sum, number) => sum + (edges.lengths[number] as number), 0);
}

function parityOf(edges: SumEdges, numbers: Iterable<number>): Parity {
  let [low, high] = [0, 0];
  for (const number of numbers) {
    low ^= edges.parityLow[number] as number;
    high ^= edges.parityHigh[number] as number;
  }
  return { low, high };
}

function ones(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count++;
  return count;
}

function bitsOf(mask: number): readonly number[] {
  const bits: number[] = [];
  for (let rest = mask; rest !== 0; rest &= rest - 1) bits.push(31 - Math.clz32(rest & -rest));
  return bits;
}

function hasOneColour({ colours }: NumberedEdges, numbers: readonly number[]): boolean {
  let colour = -1;
  for (const number of numbers) {
    const its = colours[number] as number;
    if (its === -1 || its === colour) continue;
    if (colour !== -1) return false;
    colour = its;
  }
  return true;
}

function hangsTogether({ joints }: NumberedEdges, numbers: readonly number[]): boolean {
  let { low, high } = joints[numbers[0] as number] as Parity;
  let waiting = numbers.slice(1);
  for (let left = -1; left !== waiting.length; ) {
    left = waiting.length;
    waiting = waiting.filter((number) => {
      const edge = joints[number] as Parity;
      if ((edge.low & low) === 0 && (edge.high & high) === 0) return true;
      low |= edge.low;
      high |= edge.high;
      return false;
    });
  }
  return waiting.length === 0;
}
