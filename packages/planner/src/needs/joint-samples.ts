import type { LocalDate } from '@twistwright/units';

/**
 * What the gigs used in the same simulated futures: run r of every gig belongs to one future, so that sums over gigs are joint.
 * `used[r * items.length + i]` is how many pieces of item i were asked for at the gig in run r (had nothing run out).
 */
export interface JointSamples {
  /** Item ids; the columns of every `used`. */
  readonly items: readonly string[];
  readonly runs: number;
  readonly perGig: readonly GigSample[];
}
export interface GigSample {
  readonly gig: string;
  readonly day: LocalDate;
  readonly used: Int32Array;
}

/** A need entered by hand: so many pieces of an item, to be there by the day. */
export interface HandNeed {
  readonly item: string;
  readonly count: number;
  readonly by: LocalDate;
  /** What it is for, in the person's words. */
  readonly reason?: string;
}

/** Throws with the values if the matrices do not fit or hold anything but whole numbers from 0. */
export function requireSoundSamples(samples: JointSamples): void {
  if (!Number.isSafeInteger(samples.runs) || samples.runs < 1)
    throw new RangeError(`joint samples need at least one run, not ${samples.runs}`);
  if (new Set(samples.items).size !== samples.items.length) throw new RangeError('an item is listed twice in the joint samples');
  for (const { gig, used } of samples.perGig) {
    if (used.length !== samples.runs * samples.items.length)
      throw new RangeError(`the sample of gig ${gig} has ${used.length} counts, not ${samples.runs} runs of ${samples.items.length} items`);
    const below = used.findIndex((count) => count < 0);
    if (below >= 0) throw new RangeError(`the sample of gig ${gig} uses ${used[below]} pieces`);
  }
}
