/** How a stretch came about: an edge gone along once or twice, with what was there before; or, with `times` 0, stretches that were joined. */
export interface Made {
  readonly edge: number;
  readonly times: number;
  readonly before: readonly Made[];
}

/** A stretch of a balloon that hangs together and may go on. */
export interface Stretch {
  /** Rubber, in units of the network. */
  readonly used: number;
  /** Joints where the balloon begins or ends, among those that have all their edges. */
  readonly ends: number;
  /** Places of the open joints that it touches, and of those where it is odd. */
  readonly touched: number;
  readonly odd: number;
  readonly made: Made;
}

/** Balloons that are ready, one before the other. */
export interface Ready {
  readonly balloon: Made;
  readonly others: Ready | undefined;
}

/** One way to make the edges that are there so far. Stretches that meet at a joint are of different balloons; others may yet be joined. */
export interface Way {
  readonly ready: number;
  readonly balloons: Ready | undefined;
  /** Longest first. */
  readonly stretches: readonly Stretch[];
  /** Rubber and ends so far, a ready balloon at all that it has; and the same for the whole part at least. */
  readonly cost: number;
  readonly least: number;
}

const joinedMade = (stretches: readonly Stretch[], edge: number, times: number): Made => ({
  edge,
  times,
  before: stretches.map(({ made }) => made),
});

/** Stretches joined, and gone on with `times` along an edge between two places. */
export function goneOn(stretches: readonly Stretch[], edge: number, times: number, length: number, from: number, to: number): Stretch {
  let [used, ends, touched, odd] = [times * length, 0, from | to, times === 1 ? from ^ to : 0];
  for (const its of stretches) {
    used += its.used;
    ends += its.ends;
    touched |= its.touched;
    odd ^= its.odd;
  }
  return { used, ends, touched, odd, made: joinedMade(stretches, edge, times) };
}

export const joined = (a: Stretch, b: Stretch): Stretch => goneOn([a, b], -1, 0, 0, 0, 0);

/** Whether a balloon may be ready with this stretch alone. */
export const canStop = ({ ends, odd }: Stretch): boolean => ends + countPlaces(odd) <= 2;

/** Most stretches that meet at one place: as many balloons. */
export function mostThatMeet(stretches: readonly Stretch[]): number {
  let most = 0;
  for (let rest = stretches.reduce((places, { touched }) => places | touched, 0); rest !== 0; rest &= rest - 1) {
    const place = rest & -rest;
    most = Math.max(
      most,
      stretches.reduce((count, { touched }) => ((touched & place) === 0 ? count : count + 1), 0),
    );
  }
  return most;
}

/**
 * Whether whatever can be made of `b` can be made of `a` with no more balloons: stretches of `a` stand in for those of `b`, what is left of `a` is
 * ready, and what is left of `b` can be done without.
 */
export function dominates(a: Way, b: Way): boolean {
  const mayStop = b.ready - a.ready;
  if (a.cost > b.cost || mayStop < 0 || a.stretches.length - mayStop > b.stretches.length) return false;
  for (let index = mayStop; index < a.stretches.length; index++) {
    if ((a.stretches[index] as Stretch).used > (b.stretches[index - mayStop] as Stretch).used) return false;
  }
  const standing: number[] = [];
  for (const its of b.stretches) {
    let best = -1;
    for (let index = 0; index < a.stretches.length; index++) {
      const other = a.stretches[index] as Stretch;
      if (!standsFor(other, its) || standing.includes(index)) continue;
      if (best === -1 || other.used > (a.stretches[best] as Stretch).used) best = index;
    }
    if (best !== -1) standing.push(best);
    else if (!isSpare(its)) return false;
  }
  const left = a.stretches.filter((_, index) => !standing.includes(index));
  return left.length <= mayStop && left.every(canStop);
}

/** A joint where one is odd and the other not is an end more at most. */
const standsFor = (a: Stretch, b: Stretch): boolean =>
  a.used <= b.used && (b.touched & ~a.touched) === 0 && a.ends + countPlaces(a.odd ^ b.odd) <= b.ends;

/** Whether the rest of its balloon would hang together without it, with no more ends. */
const isSpare = ({ ends, odd, touched }: Stretch): boolean => (touched & (touched - 1)) === 0 && countPlaces(odd) <= ends;

function countPlaces(places: number): number {
  let count = 0;
  for (let rest = places; rest !== 0; rest &= rest - 1) count++;
  return count;
}
