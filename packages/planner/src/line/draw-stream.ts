import { Chance } from '@twistwright/units';

const block = 64;

/** A {@link Chance} read in blocks: uniforms come out of an array, so that no boxed number stands in the inner loop. */
export class DrawStream {
  private readonly chance = new Chance(0);
  private readonly draws = new Int32Array(block);
  private readonly uniforms = new Float64Array(block);
  private at = block;

  restart(seed: number, run: number, stream: number): void {
    this.chance.reseed(seed, run, stream);
    this.at = block;
  }
  /** Strictly between 0 and 1. */
  uniform(): number {
    if (this.at === block) this.refill();
    return this.uniforms[this.at++] as number;
  }
  /** A 32-bit draw as a signed whole number. */
  key(): number {
    if (this.at === block) this.refill();
    return this.draws[this.at++] as number;
  }
  private refill(): void {
    this.chance.fill(this.draws);
    for (let i = 0; i < block; i++) this.uniforms[i] = (((this.draws[i] as number) >>> 0) + 0.5) * 2.3283064365386963e-10;
    this.at = 0;
  }
}
