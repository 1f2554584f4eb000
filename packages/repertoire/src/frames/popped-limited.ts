import { eulerTrails } from './euler-trails.ts';
import { exactTrails, mostExactEdges } from './exact-trails.ts';
import { limitedPart } from './limited-part.ts';
import type { Network } from './network.ts';
import { OddPairing } from './odd-pairs.ts';
import { popChoices } from './pop-choices.ts';
import { markedTrails, type PoppedTrails, totalOf, withPopped } from './popped-trails.ts';
import { cutToFit, shortTrails } from './short-trails.ts';
import { type SearchWidth, StretchSearch } from './stretch-search.ts';
import { trailOf, type Walk } from './trail.ts';
import { longestRepeatedSum, packingBoundOf } from './trail-bound.ts';
import type { Work } from './work.ts';

/** Steps of each search for one part, some ten seconds at worst in all, and while somebody waits; of that with one choice of pops. */
const steps = { narrow: 200_000_000, choices: 400_000_000, wide: 300_000_000 };
const quickSteps = { narrow: 5_000_000, choices: 0, wide: 0 };
const choiceSteps = 60_000_000;
/** Larger parts are not searched. */
const mostSearchedEdges = 80;
/** In a large part numbers of balloons up to so many more than the bound are tried, further and further apart. */
const mostStep = 1000;
/** In a very large one only the first, since each takes seconds. */
const crowded = 50_000;
/** Choices of pops for which orders are looked for by annealing first. */
const annealedChoices = 3;

/**
 * Fewest balloons of `capacity` for a connected part with pops allowed. No fewer than packing the edges alone needs, and no fewer than
 * have room for the edges and the shortest pops that so many balloons need. From there number by number: the shortest pops, then
 * two searches that are complete unless they are stopped, one for parts that are put together with few joints open at a time, as trees are, and one
 * for small parts with few pops, which tries every choice of pops that there is room for. In a large part, the shortest pops only.
 */
export function poppedLimited(part: Network, capacity: number, seed: number, quick: boolean, work: Work): PoppedTrails {
  const plain = limitedPart(part, capacity, seed, quick);
  const pairing = new OddPairing(part, work);
  const total = totalOf(part);
  const room = longestRepeatedSum(part, capacity);
  const fits = (count: number) => total + pairing.least(2 * count) <= count * room;
  let bound = firstThat(packingBoundOf(part, capacity), plain.walks.length, fits);
  const isSearched = part.edgeCount <= (quick ? mostExactEdges : mostSearchedEdges);
  const found = (isSearched ? searched() : undefined) ?? annealed();
  const trails = found ?? plain.walks.map((walk) => trailOf(part, walk));
  return { trails, bound, least: total + pairing.least(2 * trails.length) };

  function searched() {
    const search = new PopSearch(part, capacity, seed, quick ? quickSteps : steps);
    let proven = true;
    for (let count = bound; count < plain.walks.length; count++) {
      const answer = search.answer(count, pairing.pairs(2 * count).edges, count * room - total);
      if (answer.walks !== undefined) return answer.walks;
      proven &&= answer.none;
      if (proven) bound = count + 1;
    }
    return undefined;
  }

  function annealed() {
    let best: { readonly doubled: Network; readonly walks: readonly Walk[] } | undefined;
    const most = () => best?.walks.length ?? plain.walks.length;
    for (
      let step = 0, count = bound;
      count < most() && step < (part.edgeCount > crowded ? 1 : mostStep);
      step = 2 * step + 1, count = bound + step
    ) {
      const doubled = withPopped(part, pairing.pairs(2 * count).edges);
      if (totalOf(doubled) > count * capacity) continue;
      const walks = quick ? cutToFit(doubled, eulerTrails(doubled), capacity) : shortTrails(doubled, capacity, count, seed);
      if (walks.length < most()) best = { doubled, walks };
    }
    return best && markedTrails(best.doubled, part.edgeCount, best.walks, false);
  }
}

/** The first number from `low` on, `high` at the latest, that has what every larger one has. */
function firstThat(low: number, high: number, holds: (count: number) => boolean): number {
  let [from, to] = [low, high];
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    if (holds(middle)) to = middle;
    else from = middle + 1;
  }
  return from;
}

/** Orders for so many balloons, or none: then whether it is proven that there are none. */
interface PopAnswer {
  readonly walks?: ReturnType<typeof markedTrails>;
  readonly none: boolean;
}

class PopSearch {
  readonly #part: Network;
  readonly #capacity: number;
  readonly #seed: number;
  readonly #work: { readonly narrow: Work; readonly choices: Work; readonly wide: Work };
  readonly #stretches: StretchSearch;

  constructor(part: Network, capacity: number, seed: number, { narrow, choices, wide }: typeof steps) {
    this.#part = part;
    this.#capacity = capacity;
    this.#seed = seed;
    this.#work = { narrow: { left: narrow }, choices: { left: choices }, wide: { left: wide } };
    this.#stretches = new StretchSearch(part, capacity);
  }

  /** `shortest` are the shortest pops; `room` is what all pops together may take. */
  answer(count: number, shortest: readonly number[], room: number): PopAnswer {
    const first = this.#annealed(count, shortest);
    if (first !== undefined) return { walks: first, none: false };
    const narrow = this.#byStretches(count, 'narrow');
    if (narrow.none || narrow.walks !== undefined) return narrow;
    const chosen = this.#byChoices(count, shortest, room);
    return chosen.none || chosen.walks !== undefined ? chosen : this.#byStretches(count, 'wide');
  }

  #byStretches(count: number, width: SearchWidth): PopAnswer {
    const answer = this.#stretches.answer(count, width, this.#work[width]);
    if (answer.outcome !== 'walks') return { none: answer.outcome === 'none' };
    return { walks: markedTrails(answer.doubled, this.#part.edgeCount, answer.walks, false), none: false };
  }

  #byChoices(count: number, shortest: readonly number[], room: number): PopAnswer {
    const work = this.#work.choices;
    if (this.#part.edgeCount + shortest.length > mostExactEdges || work.left <= 0) return { none: false };
    const aside = { left: Math.floor(work.left / 4) };
    const { choices, complete } = popChoices(this.#part, 2 * count, room, aside);
    work.left -= Math.floor(work.left / 4) - aside.left;
    for (const popped of choices.slice(1, annealedChoices)) {
      const walks = work.left > 0 ? this.#annealed(count, popped) : undefined;
      if (walks !== undefined) return { walks, none: false };
    }
    let none = complete;
    for (const popped of choices) {
      if (work.left <= 0) return { none: false };
      const answer = this.#exact(count, popped, work);
      if (answer.walks !== undefined) return answer;
      none &&= answer.none;
    }
    return { none };
  }

  #annealed(count: number, popped: readonly number[]) {
    const doubled = withPopped(this.#part, popped);
    if (totalOf(doubled) > count * this.#capacity) return undefined;
    const walks = shortTrails(doubled, this.#capacity, count, this.#seed);
    return walks.length <= count ? markedTrails(doubled, this.#part.edgeCount, walks, false) : undefined;
  }

  #exact(count: number, popped: readonly number[], work: Work): PopAnswer {
    const doubled = withPopped(this.#part, popped);
    if (doubled.edgeCount > mostExactEdges) return { none: false };
    const slice = { left: Math.min(choiceSteps, work.left) };
    const before = slice.left;
    const answer = exactTrails(doubled, this.#capacity, count, slice);
    work.left -= before - slice.left;
    if (answer.outcome !== 'walks') return { none: answer.outcome === 'none' };
    return { walks: markedTrails(doubled, this.#part.edgeCount, answer.walks, false), none: false };
  }
}
