import type { CountName, MinuteName } from './line-samples.ts';
import type { PreparedLine } from './prepared-line.ts';

/**
 * What one run found, in the names of `LineSamples`; every engine of the line is one and plays the runs. Counts are guests. Minutes begin as
 * fractions, so that the compiler keeps them as such and boxes none.
 */
export abstract class RunFindings implements Record<CountName, number>, Record<MinuteName, number> {
  arrived = 0;
  returned = 0;
  hidden = 0;
  turnedAway = 0;
  notJoined = 0;
  gaveUp = 0;
  unserved = 0;
  disappointed = 0;
  served = 0;
  waited = 0;
  waitedLong = 0;
  longestLine = 0;
  pops = 0;
  waitMinutes = 0.5;
  waitMinutesOfAll = 0.5;
  lastWait = 0.5;
  longestWait = 0.5;
  finish = 0.5;
  closedAt = 0.5;
  /** Minutes worked by each artist. */
  readonly busy: Float64Array;
  readonly used: Int32Array;
  readonly made: Int32Array;
  readonly lengths: Int32Array;
  /** Waits of the guests who were served, by half minutes; the last cell holds all longer ones. Adds up over runs. */
  readonly waitCounts = new Float64Array(1201);
  protected readonly line: PreparedLine;
  /** Minutes between two notes of the length of the line; none if 0. */
  protected readonly gridStep: number;

  constructor(line: PreparedLine, gridStep: number) {
    this.line = line;
    this.gridStep = gridStep;
    this.busy = new Float64Array(line.artistCount);
    this.used = new Int32Array(line.itemCount);
    this.made = new Int32Array(line.figureCount);
    this.lengths = new Int32Array(gridStep > 0 ? Math.floor(line.end / gridStep) + 1 : 0);
  }

  /** Plays run number `run` of `seed`; the findings stand in the public fields until the next call. */
  abstract play(seed: number, run: number): void;

  /** Nothing is found yet. */
  protected clear(): void {
    this.arrived = this.returned = this.hidden = this.turnedAway = this.notJoined = this.gaveUp = this.unserved = 0;
    this.disappointed = this.served = this.waited = this.waitedLong = this.longestLine = this.pops = 0;
    this.waitMinutes = this.waitMinutesOfAll = this.lastWait = this.longestWait = this.finish = 0;
    this.closedAt = Math.min(this.line.end, this.line.closesAt);
    this.busy.fill(0);
    this.made.fill(0);
    this.lengths.fill(0);
  }
}
