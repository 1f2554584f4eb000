import type { Tube } from '../sizes/size.ts';
import { type Observed, poolNormal } from './pool-normal.ts';
import type { TwoMinuteTest } from './two-minute-test.ts';
import { type Belief, defaultWorking, type Working } from './working.ts';

/** A belief after measuring, beside the one before. */
export interface Posterior extends Belief {
  readonly prior: Belief;
  /** Single measurements of this maker's balloons. */
  readonly measured: number;
  /** Tests of this maker's balloons in which this was measured. */
  readonly tests: number;
  /** Whose data the mean is made of; the three sum to 1. `own`: tests of this maker; `others`: tests of other makers' balloons of the size. */
  readonly parts: { readonly own: number; readonly others: number; readonly prior: number };
}

/** The three numbers of a size code and maker after all tests. */
export interface Calibration {
  readonly size: string;
  /** Missing: nobody said whose balloons they are. */
  readonly maker?: string;
  /** Tests of this maker's balloons. */
  readonly tests: number;
  /** Tests of other makers' balloons of this size code. */
  readonly otherTests: number;
  readonly working: { readonly [K in keyof Working]: Posterior };
}

/** A two-minute test and whose balloons they were. */
export interface MakersTest extends TwoMinuteTest {
  readonly maker?: string;
}

/**
 * What makes a number vary, as shares of the variance of its default: nobody has measured the size code, makers differ, bags of a maker
 * differ, balloons of a bag differ. Tests take away the first two; a balloon out of the next bag keeps the others, so a band never closes.
 * Estimates: common practice says that makers and bags differ, and no source says by how much.
 */
export const spreadParts = { size: 0.3, maker: 0.3, bag: 0.15, balloon: 0.25 } as const;

/** How makers are told apart: capital letters and spaces do not count. */
export const makerKey = (maker: string | undefined): string =>
  maker === undefined ? '' : maker.normalize('NFKC').trim().toLowerCase().replace(/\s+/gu, ' ');

/**
 * What is believed of the next balloon of this size and maker after these tests of the size; which size they are of is the caller's to see.
 * Own tests first, then those of other makers, then the default of the size: each as far as the others leave room (`poolNormal`). Without
 * tests it is the default. Tests must be free of problems (`measurementProblems`).
 * @example calibrate({ code: '260', shape: 'tube', diameterInches: 2, lengthInches: 60, flatInches: 11, stretch: 5.4, tailPerBubbleInches: 0.3, source: '' }, 'own', []).working.flat.mean // -> 11
 */
export function calibrate(size: Tube, maker: string | undefined, tests: readonly MakersTest[]): Calibration {
  const prior = defaultWorking(size);
  const learn = (belief: Belief, measured: readonly Measured[]): Posterior => learnBelief(belief, measured, makerKey(maker));
  const flats = tests.flatMap((test) => measuredIn(test, test.flatInches ?? []));
  const flat = learn(prior.flat, flats);
  const believed = new Map<string, number>();
  const believedFlat = (maker: string): number => {
    const known = believed.get(maker) ?? learnBelief(prior.flat, flats, maker).mean;
    believed.set(maker, known);
    return known;
  };
  const stretches = tests.flatMap((test) => measuredIn(test, stretchesIn(test, believedFlat)));
  const tails = tests.flatMap((test) =>
    measuredIn(
      test,
      (test.twists ?? []).map(({ bubbles, tailInches, leftInches }) => (tailInches - leftInches) / bubbles),
    ),
  );
  const own = tests.filter((test) => makerKey(test.maker) === makerKey(maker)).length;
  return {
    size: size.code,
    ...(maker === undefined ? {} : { maker }),
    tests: own,
    otherTests: tests.length - own,
    working: { flat, stretch: learn(prior.stretch, stretches), tailPerBubble: learn(prior.tailPerBubble, tails) },
  };
}

/** The mean of what one test measured. */
interface Measured {
  readonly maker: string;
  readonly mean: number;
  readonly count: number;
}
const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const measuredIn = (test: MakersTest, values: readonly number[]): readonly Measured[] =>
  values.length === 0 ? [] : [{ maker: makerKey(test.maker), mean: meanOf(values), count: values.length }];

/** Balloons of one bag: full lengths are held against the flat lengths of the same test, else against what is believed of that maker's. */
function stretchesIn({ flatInches = [], fullInches = [], maker }: MakersTest, believedFlat: (maker: string) => number): readonly number[] {
  if (fullInches.length === 0) return [];
  const flat = flatInches.length > 0 ? meanOf(flatInches) : believedFlat(makerKey(maker));
  return fullInches.map((full) => full / flat);
}

function learnBelief(prior: Belief, measured: readonly Measured[], maker: string): Posterior {
  const variance = prior.sd * prior.sd;
  const observed = measured.map(
    ({ maker: group, mean, count }): Observed => ({
      group,
      value: mean,
      variance: variance * (spreadParts.bag + spreadParts.balloon / count),
    }),
  );
  const pooled = poolNormal({ mean: prior.mean, variance: variance * spreadParts.size }, variance * spreadParts.maker, observed, maker);
  const own = measured.filter((entry) => entry.maker === maker);
  const isDefault = measured.length === 0;
  return {
    // Sums of parts are not equal to their whole in the last bit; nothing measured is the default, exactly.
    mean: isDefault ? prior.mean : pooled.mean,
    sd: isDefault ? prior.sd : Math.sqrt(pooled.variance + variance * (spreadParts.bag + spreadParts.balloon)),
    prior,
    measured: own.reduce((sum, { count }) => sum + count, 0),
    tests: own.length,
    parts: pooled.parts,
  };
}
