import { firstFit } from './first-fit.ts';
import type { Network } from './network.ts';
import type { Walk } from './trail.ts';

/** Whether every edge is a loop at one joint, as the petals of a flower are: any loops can share a balloon, which is bin packing. */
export const isHubOfLoops = (part: Network): boolean => part.jointCount === 1;
/** Above, they are packed as they come, longest first. */
export const mostHubLoops = 1000;

export function packedAsTheyCome(part: Network, capacity: number): readonly Walk[] {
  const order = longestFirst(part);
  const lengths = order.map((edge) => part.lengths[edge] as number);
  return firstFit(lengths, capacity).map((places) => places.map((place) => 2 * (order[place] as number)));
}

const longestFirst = (part: Network): readonly number[] =>
  Array.from(part.lengths, (_, edge) => edge).sort((a, b) => (part.lengths[b] as number) - (part.lengths[a] as number) || a - b);

/** What the search found, as in the exact search. */
export type HubAnswer = { readonly outcome: 'walks'; readonly walks: readonly Walk[] } | { readonly outcome: 'none' | 'unknown' };

/**
 * Loops at one joint on at most `count` balloons of `capacity`. Fills one balloon after another: each takes the longest loop that is
 * left and the fullest filling beside it first; what the fillings waste may not exceed what the number of balloons leaves to waste
 * (bin completion after R. E. Korf, "A new algorithm for optimal bin packing", AAAI 2002, without its dominance test). Complete unless
 * it runs out of `visits`.
 */
export function hubTrails(part: Network, capacity: number, count: number, visits: number): HubAnswer {
  const order = longestFirst(part);
  const search = new Filling(
    order.map((edge) => part.lengths[edge] as number),
    capacity,
    visits,
  );
  const total = part.lengths.reduce((sum, length) => sum + length, 0);
  const fillings = search.fill(count, count * capacity - total);
  if (fillings !== undefined)
    return { outcome: 'walks', walks: fillings.map((filling) => filling.map((place) => 2 * (order[place] as number))) };
  return { outcome: search.stopped ? 'unknown' : 'none' };
}

class Filling {
  readonly #lengths: readonly number[];
  readonly #capacity: number;
  readonly #taken: Uint8Array;
  readonly #chosen: number[][] = [];
  #visitsLeft: number;
  #listCut = false;

  /** `lengths` longest first. */
  constructor(lengths: readonly number[], capacity: number, visits: number) {
    this.#lengths = lengths;
    this.#capacity = capacity;
    this.#taken = new Uint8Array(lengths.length);
    this.#visitsLeft = visits;
  }

  get stopped(): boolean {
    return this.#visitsLeft <= 0 || this.#listCut;
  }

  fill(balloons: number, waste: number): readonly (readonly number[])[] | undefined {
    const longest = this.#taken.indexOf(0);
    if (longest === -1) return this.#chosen.map((filling) => [...filling]);
    if (balloons === 0 || waste < 0) return undefined;
    const room = this.#capacity - (this.#lengths[longest] as number);
    for (const filling of this.#fullestBeside(longest, room, waste)) {
      this.#visitsLeft--;
      if (this.#visitsLeft <= 0) return undefined;
      const wasted = filling.places.reduce((left, place) => left - (this.#lengths[place] as number), room);
      const places = [longest, ...filling.places];
      for (const place of places) this.#taken[place] = 1;
      this.#chosen.push(places);
      const found = this.fill(balloons - 1, waste - wasted);
      if (found !== undefined) return found;
      this.#chosen.pop();
      for (const place of places) this.#taken[place] = 0;
    }
    return undefined;
  }

  /** Fillings of `room` by loops after `from` that waste at most `waste`, fullest first; equal lengths are not told apart. */
  #fullestBeside(from: number, room: number, waste: number): readonly { readonly left: number; readonly places: readonly number[] }[] {
    const fillings: { left: number; places: readonly number[] }[] = [];
    const places: number[] = [];
    const free: number[] = [];
    for (let place = from + 1; place < this.#lengths.length; place++) if (this.#taken[place] === 0) free.push(place);
    const rest = new Float64Array(free.length + 1);
    for (let index = free.length - 1; index >= 0; index--)
      rest[index] = (rest[index + 1] as number) + (this.#lengths[free[index] as number] as number);
    let steps = 0;
    const choose = (start: number, left: number): void => {
      steps++;
      if (steps > mostFillingSteps || fillings.length >= mostFillings) {
        this.#listCut = true;
        return;
      }
      if (left <= waste) fillings.push({ left, places: [...places] });
      let tried = -1;
      for (let index = start; index < free.length; index++) {
        if (left - (rest[index] as number) > waste) return;
        const length = this.#lengths[free[index] as number] as number;
        if (length > left || length === tried) continue;
        tried = length;
        places.push(free[index] as number);
        choose(index + 1, left - length);
        places.pop();
      }
    };
    choose(0, room);
    return fillings.toSorted((a, b) => a.left - b.left);
  }
}
const mostFillings = 400;
const mostFillingSteps = 200_000;
