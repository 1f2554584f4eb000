import { fail, ok, type Problem, type Result } from '@twistwright/units';
import type { Tube } from '../sizes/size.ts';
import { type Belief, defaultWorking, type Working } from './working.ts';

/**
 * What was measured in two minutes: some flat balloons of the bag along a ruler, one of them blown up fully, and ten bubbles of two inches
 * made from a known tail. Any part may be left out.
 */
export interface TwoMinuteTest {
  /** Flat working length of each balloon, from the knot, in inches. */
  readonly flatInches: readonly number[];
  /** Length of each balloon that was blown up fully, in inches. */
  readonly fullInches: readonly number[];
  readonly twists: readonly { readonly bubbles: number; readonly tailInches: number; readonly leftInches: number }[];
}

/** A belief after measuring, beside the one before. */
export interface Posterior extends Belief {
  readonly prior: Belief;
  readonly observations: number;
  /** Share of the precision that comes from one's own measurements, 0 to 1. */
  readonly shareOwn: number;
}

export interface Calibration {
  readonly size: string;
  readonly maker: string;
  readonly working: { readonly [K in keyof Working]: Posterior };
}

/** Scatter from balloon to balloon in one bag, taken as known: 3 % of the flat length, 4 % of the stretch, 15 % of the tail of ten bubbles. Estimates. */
const scatter = { flat: 0.03, stretch: 0.04, tailPerBubble: 0.15 } as const;

/**
 * Normal belief with known scatter: precisions add, the mean is the precision-weighted one (Gelman et al., Bayesian Data Analysis, 3rd ed.,
 * eq. 2.11). The default of the size is the prior.
 * @example learnNormal({ mean: 11, sd: 0.5 }, [10.5, 10.5], 0.5).mean // -> 10.666666666666666
 */
export function learnNormal(prior: Belief, observations: readonly number[], sd: number): Posterior {
  const priorPrecision = 1 / (prior.sd * prior.sd);
  const ownPrecision = observations.length / (sd * sd);
  const precision = priorPrecision + ownPrecision;
  const sum = observations.reduce((total, value) => total + value, 0);
  const mean = (priorPrecision * prior.mean + sum / (sd * sd)) / precision;
  return { mean, sd: Math.sqrt(1 / precision), prior, observations: observations.length, shareOwn: ownPrecision / precision };
}

/** What is believed of this size and maker after the test. Refuses measurements that cannot be. */
export function calibrate(size: Tube, maker: string, test: TwoMinuteTest): Result<Calibration> {
  const problems = [
    ...test.flatInches.flatMap((value, index) =>
      outside(['flatInches', index], value, 0.3 * size.flatInches, 2 * size.flatInches, 'A flat length'),
    ),
    ...test.fullInches.flatMap((value, index) =>
      outside(['fullInches', index], value, 0.3 * size.lengthInches, 2 * size.lengthInches, 'A full length'),
    ),
    ...test.twists.flatMap((twist, index) => twistProblems(twist, index, size)),
  ];
  if (problems.length > 0) return fail(problems);
  const prior = defaultWorking(size);
  const flat = learnNormal(prior.flat, test.flatInches, scatter.flat * prior.flat.mean);
  const stretches = test.fullInches.map((full) => full / flat.mean);
  const tails = test.twists.map((twist) => (twist.tailInches - twist.leftInches) / twist.bubbles);
  return ok({
    size: size.code,
    maker,
    working: {
      flat,
      stretch: learnNormal(prior.stretch, stretches, scatter.stretch * prior.stretch.mean),
      tailPerBubble: learnNormal(prior.tailPerBubble, tails, scatter.tailPerBubble * prior.tailPerBubble.mean),
    },
  });
}

function outside(path: Problem['path'], value: number, least: number, most: number, what: string): readonly Problem[] {
  if (value >= least && value <= most) return [];
  const sentence = `${what} of ${value} in cannot be right; expected ${least.toFixed(1)} to ${most.toFixed(1)} in.`;
  return [{ code: 'calibration.measurement', path, sentence, todo: 'Measure again, in inches.', weight: 'error' }];
}

function twistProblems(twist: TwoMinuteTest['twists'][number], index: number, size: Tube): readonly Problem[] {
  if (!(Number.isInteger(twist.bubbles) && twist.bubbles >= 1 && twist.bubbles <= 100)) {
    return [
      {
        code: 'calibration.measurement',
        path: ['twists', index, 'bubbles'],
        sentence: `${twist.bubbles} bubbles cannot be counted.`,
        weight: 'error',
      },
    ];
  }
  return [
    ...outside(['twists', index, 'tailInches'], twist.tailInches, 0.2, size.flatInches, 'A tail'),
    ...outside(['twists', index, 'leftInches'], twist.leftInches, 0, twist.tailInches, 'A tail that was left'),
  ];
}
