import { Chance } from '@twistwright/units';

const block = 128;

/**
 * A {@link Chance} read in blocks: uniforms come out of an array, so that no boxed number stands in the inner loop. A plain array and not a
 * typed one, for the reason that `Way` gives. A loop that reads it itself calls {@link ready} before and not in its midst.
 */
export class DrawStream {
  /** The block at hand and the place of the next draw in it. */
  readonly uniforms: number[];
  at: number;
  private readonly chance = new Chance(0);

  /** `atOnce`: the most draws that {@link ready} is asked for. */
  constructor(atOnce = 1) {
    this.uniforms = Array.from({ length: Math.max(block, atOnce) }, () => 0.5);
    this.at = this.uniforms.length;
  }
  restart(seed: number, run: number, stream: number): void {
    this.chance.reseed(seed, run, stream);
    this.at = this.uniforms.length;
  }
  /** Strictly between 0 and 1. */
  uniform(): number {
    this.ready(1);
    return this.uniforms[this.at++] as number;
  }
  /** Sees to it that the next `count` draws stand in the block. */
  ready(count: number): void {
    if (this.at + count > this.uniforms.length) this.refill();
  }
  private refill(): void {
    this.uniforms.copyWithin(0, this.at);
    this.chance.fill(this.uniforms, this.uniforms.length - this.at);
    this.at = 0;
  }
}

/** A draw as a signed 32-bit number. */
export const keyOf = (uniform: number): number => (uniform * 4294967296 - 2147483648) | 0;
