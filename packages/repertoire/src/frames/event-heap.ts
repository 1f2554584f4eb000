/** Whole numbers by key, smallest key first; ties in no order that matters. A number may be in it more than once. */
export class EventHeap {
  readonly #numbers: number[] = [];
  readonly #keys: number[] = [];

  clear(): void {
    this.#numbers.length = 0;
    this.#keys.length = 0;
  }

  /** Smallest key, infinite where there is none. */
  get key(): number {
    return this.#keys[0] ?? Number.POSITIVE_INFINITY;
  }

  push(number: number, key: number): void {
    let place = this.#numbers.length;
    while (place > 0) {
      const above = (place - 1) >> 1;
      if ((this.#keys[above] as number) <= key) break;
      this.#move(above, place);
      place = above;
    }
    this.#numbers[place] = number;
    this.#keys[place] = key;
  }

  pop(): number | undefined {
    const top = this.#numbers[0];
    const number = this.#numbers.pop();
    const key = this.#keys.pop();
    if (number === undefined || key === undefined || this.#numbers.length === 0) return top;
    let place = 0;
    for (;;) {
      let below = 2 * place + 1;
      if (below >= this.#numbers.length) break;
      if ((this.#keys[below + 1] ?? Number.POSITIVE_INFINITY) < (this.#keys[below] as number)) below++;
      if ((this.#keys[below] as number) >= key) break;
      this.#move(below, place);
      place = below;
    }
    this.#numbers[place] = number;
    this.#keys[place] = key;
    return top;
  }

  #move(from: number, to: number): void {
    this.#numbers[to] = this.#numbers[from] as number;
    this.#keys[to] = this.#keys[from] as number;
  }
}
