import { exp, keyed, keyedUniform, log, normalOf } from '@twistwright/units';
import { DrawStream, keyOf } from './draw-stream.ts';
import { drawn, gammaOf, vary } from './durations.ts';
import { durationKind, guideCells, type Knot, type PreparedLine } from './prepared-line.ts';
import { purpose, stream } from './purpose.ts';

/** Lowest strip of the arrival plane, parties a minute; each further strip doubles the height. Fixed, so that luck stays when rates change. */
const lowestStrip = 0.25;
const stripCount = 24;

/** One strip of the plane and the next point in it. */
class Strip {
  readonly draws: DrawStream;
  at = 0.5;
  /** The knot at or before that minute. */
  knot = 0;
  low = 0.5;
  height = 0.5;
  private perHeight = 0.5;

  constructor(draws: DrawStream) {
    this.draws = draws;
  }
  restart(from: number, low: number, height: number): void {
    this.low = low;
    this.height = height;
    this.perHeight = 1 / height;
    this.knot = 0;
    this.at = from + -log(this.draws.uniform()) / height;
  }
  step(): void {
    this.at -= log(this.draws.uniform()) * this.perHeight;
  }
}

/**
 * Parties of a Poisson stream with a rate that changes: points strewn evenly over the plane of time and rate, strip by strip, and those
 * below the rate taken (P. A. W. Lewis and G. S. Shedler, "Simulation of nonhomogeneous Poisson processes by thinning", Naval Research
 * Logistics Quarterly 26 (1979) 403-413). A higher rate only adds parties; the others keep their time and their key.
 */
export class PartyStream {
  /** Minute of the party at hand; infinite when no more come. */
  at = 0.5;
  /** Its key, and how many they are. */
  key = 0;
  size = 1;
  /** The minute at which it will have waited long enough; after {@link drawPatience}. */
  leaves = 0.5;
  /** A minute up to which it waits for sure. */
  sureUntil = 0.5;
  private luck = 0.5;
  /** The stream of the arrivals; with two streams, all about who comes is drawn from it. */
  readonly draws: DrawStream;
  private readonly line: PreparedLine;
  private readonly strips: readonly Strip[];
  /** How many of the strips this run uses, and the one that the party at hand came from. */
  private used = 0;
  private taken: Strip | undefined;
  private factor = 1.5;
  private runKey = 0;
  private number = 0;

  constructor(line: PreparedLine) {
    this.line = line;
    this.draws = new DrawStream(2 + line.sizes.length);
    this.strips = Array.from(
      { length: line.twoStreams ? 1 : stripCount },
      () => new Strip(line.twoStreams ? this.draws : new DrawStream(3)),
    );
  }
  /** Begins run `run`; the first party is found by {@link findNext}. */
  restart(seed: number, run: number): void {
    const line = this.line;
    const arrivals = line.model.arrivals;
    this.runKey = keyed(keyed(seed, run), stream.run);
    this.number = 0;
    if (line.twoStreams) this.draws.restart(seed, run, stream.arrivals);
    this.used = 0;
    this.taken = undefined;
    this.factor = 1;
    if (arrivals.kind !== 'stream') return;
    if (arrivals.shape !== undefined) this.factor = gammaOf(arrivals.shape, keyed(this.runKey, purpose.crowd)) / arrivals.shape;
    const top = line.highestRate * this.factor;
    const from = line.knots[0]?.minute ?? 0;
    if (line.twoStreams) this.strips[this.used++]?.restart(from, 0, top);
    else
      for (let low = 0; low < top && this.used < stripCount; ) {
        const height = low === 0 ? lowestStrip : low;
        const strip = this.strips[this.used] as Strip;
        strip.draws.restart(seed, run, stream.strips + this.used++);
        strip.restart(from, low, height);
        low += height;
      }
  }
  findNext(): void {
    const { horizon, twoStreams, knots } = this.line;
    const { strips, used, factor } = this;
    if (used === 0) {
      this.at = Number.POSITIVE_INFINITY;
      return;
    }
    if (this.taken !== undefined) this.taken.step();
    for (;;) {
      let strip = strips[0] as Strip;
      for (let j = 1; j < used; j++) {
        const other = strips[j] as Strip;
        if (other.at < strip.at) strip = other;
      }
      const t = strip.at;
      if (t >= horizon) {
        this.at = Number.POSITIVE_INFINITY;
        return;
      }
      let knot = knots[strip.knot] as Knot;
      while (t >= knot.until) knot = knots[++strip.knot] as Knot;
      const draws = strip.draws;
      draws.ready(3);
      const mark = strip.low + (draws.uniforms[draws.at++] as number) * strip.height;
      if (!twoStreams) this.key = keyOf(draws.uniforms[draws.at++] as number);
      if (mark < (knot.rate + knot.slope * (t - knot.minute)) * factor) {
        this.taken = strip;
        this.at = t;
        if (twoStreams) this.key = keyed(this.runKey, purpose.members + this.number++);
        this.size = this.sizeOf(this.key);
        return;
      }
      strip.step();
    }
  }
  /** The size of the party with this key; with two streams the next one drawn. */
  sizeOf(key: number): number {
    const { sizes, sizeGuide, twoStreams } = this.line;
    const luck = twoStreams ? this.draws.uniform() : keyedUniform(key, purpose.size);
    let size = sizeGuide[(luck * guideCells) | 0] as number;
    while (luck >= (sizes[size] as number)) size++;
    return size + 1;
  }
  /** Draws how long the party at hand is ready to wait. {@link leaves} holds it after {@link settlePatience}; till then, at least {@link sureUntil}. */
  drawPatience(): void {
    const { patience, twoStreams, surePatience } = this.line;
    if (patience.kind === durationKind.logNormal) {
      this.luck = twoStreams ? this.draws.uniform() : keyedUniform(this.key, purpose.patience);
      this.sureUntil = this.at + (surePatience[(this.luck * 64) | 0] as number);
    } else {
      this.leaves = patience.kind === durationKind.endless ? Number.POSITIVE_INFINITY : this.at + this.otherPatience();
      this.sureUntil = this.leaves;
    }
  }
  /** Works out {@link leaves}: only who waits longer than sure needs it, and hardly anybody does. */
  settlePatience(): void {
    const patience = this.line.patience;
    if (patience.kind === durationKind.logNormal) this.leaves = this.at + exp(patience.first + patience.second * normalOf(this.luck));
  }
  private otherPatience(): number {
    const { patience, twoStreams } = this.line;
    return twoStreams && patience.kind !== durationKind.gamma
      ? vary(patience.kind, patience.first, patience.second, this.draws.uniform())
      : drawn(patience, this.key, purpose.patience);
  }
}
