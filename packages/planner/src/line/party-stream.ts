import { exp, keyed, keyedUniform, log, normalOf } from '@twistwright/units';
import { DrawStream } from './draw-stream.ts';
import { drawn, gammaOf, vary } from './durations.ts';
import { durationKind, type PreparedLine } from './prepared-line.ts';
import { purpose, stream } from './purpose.ts';

/** Lowest strip of the arrival plane, parties a minute; each further strip doubles the height. Fixed, so that luck stays when rates change. */
const lowestStrip = 0.25;
const stripCount = 24;
const none = -1;

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
  readonly draws = new DrawStream();
  private readonly line: PreparedLine;
  private readonly strips: DrawStream[];
  private readonly stripAt = new Float64Array(stripCount);
  private readonly knot = new Int32Array(stripCount);
  private readonly low = new Float64Array(stripCount);
  private readonly height = new Float64Array(stripCount);
  private used = 0;
  private taken = none;
  private factor = 1.5;
  private runKey = 0;
  private number = 0;

  constructor(line: PreparedLine) {
    this.line = line;
    this.strips = line.twoStreams ? [this.draws] : Array.from({ length: stripCount }, () => new DrawStream());
  }
  /** Begins run `run`; the first party is found by {@link findNext}. */
  restart(seed: number, run: number): void {
    const line = this.line;
    const arrivals = line.model.arrivals;
    this.runKey = keyed(keyed(seed, run), stream.run);
    this.number = 0;
    if (line.twoStreams) this.draws.restart(seed, run, stream.arrivals);
    this.used = 0;
    this.taken = none;
    this.factor = 1;
    if (arrivals.kind !== 'stream') return;
    if (arrivals.shape !== undefined) this.factor = gammaOf(arrivals.shape, keyed(this.runKey, purpose.crowd)) / arrivals.shape;
    const top = line.highestRate * this.factor;
    if (line.twoStreams) this.addStrip(0, top);
    else
      for (let low = 0; low < top && this.used < stripCount; ) {
        const height = low === 0 ? lowestStrip : low;
        this.strips[this.used]?.restart(seed, run, stream.strips + this.used);
        this.addStrip(low, height);
        low += height;
      }
  }
  private addStrip(low: number, height: number): void {
    const j = this.used++;
    this.low[j] = low;
    this.height[j] = height;
    this.stripAt[j] = this.line.knotMinutes[0] as number;
    this.knot[j] = 0;
    this.step(j);
  }
  private step(j: number): void {
    this.stripAt[j] = (this.stripAt[j] as number) + -log((this.strips[j] as DrawStream).uniform()) / (this.height[j] as number);
  }
  findNext(): void {
    const { horizon, twoStreams, knotMinutes: minutes, knotRates: rates, knotSlopes: slopes } = this.line;
    const stripAt = this.stripAt;
    if (this.used === 1) {
      this.findNextInOnlyStrip();
      return;
    }
    if (this.taken !== none) this.step(this.taken);
    for (;;) {
      let j = 0;
      for (let other = 1; other < this.used; other++) if ((stripAt[other] as number) < (stripAt[j] as number)) j = other;
      const t = stripAt[j] as number;
      if (this.used === 0 || t >= horizon) {
        this.at = Number.POSITIVE_INFINITY;
        return;
      }
      let k = this.knot[j] as number;
      while (t >= (minutes[k + 1] as number)) k++;
      this.knot[j] = k;
      const rate = rates[k] as number;
      const rise = (slopes[k] as number) * (t - (minutes[k] as number));
      const draws = this.strips[j] as DrawStream;
      const mark = (this.low[j] as number) + draws.uniform() * (this.height[j] as number);
      if (!twoStreams) this.key = draws.key();
      if (mark < (rate + rise) * this.factor) {
        this.taken = j;
        this.at = t;
        if (twoStreams) this.key = keyed(this.runKey, purpose.members + this.number++);
        this.size = this.sizeOf(this.key);
        return;
      }
      this.step(j);
    }
  }
  /** The same with a single strip, without looking for the earliest. */
  private findNextInOnlyStrip(): void {
    const { horizon, twoStreams, knotMinutes: minutes, knotRates: rates, knotSlopes: slopes } = this.line;
    const draws = this.strips[0] as DrawStream;
    const height = this.height[0] as number;
    const perHeight = 1 / height;
    const factor = this.factor;
    let t = this.stripAt[0] as number;
    let k = this.knot[0] as number;
    let isFirst = this.taken === none;
    for (;;) {
      if (!isFirst) t -= log(draws.uniform()) * perHeight;
      isFirst = false;
      if (t >= horizon) {
        this.at = Number.POSITIVE_INFINITY;
        return;
      }
      while (t >= (minutes[k + 1] as number)) k++;
      const mark = draws.uniform() * height;
      if (!twoStreams) this.key = draws.key();
      if (mark < ((rates[k] as number) + (slopes[k] as number) * (t - (minutes[k] as number))) * factor) break;
    }
    this.taken = 0;
    this.stripAt[0] = t;
    this.knot[0] = k;
    this.at = t;
    if (twoStreams) this.key = keyed(this.runKey, purpose.members + this.number++);
    this.size = this.sizeOf(this.key);
  }
  /** The size of the party with this key; with two streams the next one drawn. */
  sizeOf(key: number): number {
    const sizes = this.line.sizes;
    const luck = this.line.twoStreams ? this.draws.uniform() : keyedUniform(key, purpose.size);
    let size = 0;
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
