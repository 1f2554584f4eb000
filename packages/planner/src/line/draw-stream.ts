import { Chance } from '@twistwright/units';

const block = 64;

/** A {@link Chance} read in blocks: uniforms come out of an array, so that no boxed number stands in the inner loop. */
export class DrawStream {
  /** The block at hand and the place of the next draw in it, for loops that read it themselves and call {@link refill} at its end. */
  readonly uniforms = new Float64Array(block);
  at = block;
  private readonly chance = new Chance(0);

  restart(seed: number, run: number, stream: number): void {
    this.chance.reseed(seed, run, stream);
    this.at = block;
  }
  /** Strictly between 0 and 1. */
  uniform(): number {
    if (this.at === block) this.refill();
    return this.uniforms[this.at++] as number;
  }
  /** The next draw as a signed 32-bit number. */
  key(): number {
    return (this.uniform() * 4294967296 - 2147483648) | 0;
  }
  refill(): void {
    this.chance.fill(this.uniforms);
    this.at = 0;
  }
}
