/**
 * Sorted lengths, longest first, each put into the first balloon of `capacity` that has room for it: at most 11/9 of the fewest balloons and
 * one more (D. S. Johnson 1973), hardly more than the fewest where there are thousands. The places of each balloon; n log n.
 */
export function firstFit(lengths: readonly number[], capacity: number): readonly (readonly number[])[] {
  const rooms = new Rooms(lengths.length, capacity);
  const balloons: number[][] = [];
  for (const [place, length] of lengths.entries()) {
    const balloon = rooms.takeFrom(length);
    const taken = balloons[balloon];
    if (taken === undefined) balloons.push([place]);
    else taken.push(place);
  }
  return balloons;
}

/** What is free in each balloon, with the most of every pair of neighbours above it, and so on up. */
class Rooms {
  readonly #size: number;
  readonly #most: Float64Array;

  constructor(count: number, capacity: number) {
    this.#size = 2 ** Math.ceil(Math.log2(Math.max(1, count)));
    this.#most = new Float64Array(2 * this.#size).fill(capacity);
  }

  /** The first balloon with that much room, which has less then. */
  takeFrom(length: number): number {
    let node = 1;
    while (node < this.#size) node = (this.#most[2 * node] as number) >= length ? 2 * node : 2 * node + 1;
    const balloon = node - this.#size;
    this.#most[node] = (this.#most[node] as number) - length;
    for (node >>= 1; node >= 1; node >>= 1) this.#most[node] = Math.max(this.#most[2 * node] as number, this.#most[2 * node + 1] as number);
    return balloon;
  }
}
