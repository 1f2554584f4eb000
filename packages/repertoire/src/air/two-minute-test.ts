import type { Problem } from '@twistwright/units';
import type { Tube } from '../sizes/size.ts';

/**
 * What was measured in two minutes: some flat balloons of the bag along a ruler, one of them blown up fully, and ten bubbles of two inches
 * made from a known tail. Any part may be left out. Common practice, no published source.
 */
export interface TwoMinuteTest {
  /** Flat working length of each balloon, from the knot, in inches. */
  readonly flatInches?: readonly number[];
  /** Length of each balloon that was blown up fully, in inches. */
  readonly fullInches?: readonly number[];
  readonly twists?: readonly TailTwist[];
}
/** A row of bubbles made out of a tail of known length. */
export interface TailTwist {
  readonly bubbles: number;
  /** Flat inches before the first bubble. */
  readonly tailInches: number;
  /** Flat inches after the last one. */
  readonly leftInches: number;
}

/**
 * What cannot be right about the measurements of a test, each with its path in the test. Empty: it can be used.
 * @example measurementProblems({ code: '260', shape: 'tube', diameterInches: 2, lengthInches: 60, flatInches: 11, stretch: 5.4, tailPerBubbleInches: 0.3, source: '' }, { flatInches: [10.5] }) // -> []
 */
export function measurementProblems(size: Tube, { flatInches = [], fullInches = [], twists = [] }: TwoMinuteTest): readonly Problem[] {
  if (flatInches.length + fullInches.length + twists.length === 0)
    return [wrong([], 'Nothing was measured.', 'Measure a flat length, a full length, or the tail before and after a row of bubbles.')];
  const longest = Math.max(0, ...flatInches.filter((value) => value <= 2 * size.flatInches));
  return [
    ...flatInches.flatMap((value, index) =>
      outside(['flatInches', index], value, 0.3 * size.flatInches, 2 * size.flatInches, 'A flat length'),
    ),
    ...fullInches.flatMap((value, index) =>
      value > 0 && value <= longest
        ? [
            wrong(
              ['fullInches', index],
              `A full length of ${shown(value)} in is no longer than a flat balloon of the same test, ${shown(longest)} in.`,
              'Measure it blown up, from knot to tip.',
            ),
          ]
        : outside(['fullInches', index], value, 0.3 * size.lengthInches, 2 * size.lengthInches, 'A full length'),
    ),
    ...twists.flatMap((twist, index) => twistProblems(twist, index, size)),
  ];
}

const shown = (value: number): string => String(Number(value.toFixed(2)));
const wrong = (path: Problem['path'], sentence: string, todo: string): Problem => ({
  code: 'calibration.measurement',
  path,
  sentence,
  todo,
  weight: 'error',
});

function outside(path: Problem['path'], value: number, least: number, most: number, what: string): readonly Problem[] {
  if (value >= least && value <= most) return [];
  return [
    wrong(
      path,
      `${what} of ${shown(value)} in cannot be right; expected ${shown(least)} to ${shown(most)} in.`,
      'Measure again, in inches.',
    ),
  ];
}

function twistProblems({ bubbles, tailInches, leftInches }: TailTwist, index: number, size: Tube): readonly Problem[] {
  const path = ['twists', index] as const;
  if (!(Number.isInteger(bubbles) && bubbles >= 1 && bubbles <= 100))
    return [wrong([...path, 'bubbles'], `${bubbles} bubbles cannot be counted.`, 'Make 1 to 100 bubbles; ten is usual.')];
  if (leftInches > tailInches)
    return [
      wrong(
        [...path, 'leftInches'],
        `More tail is left, ${shown(leftInches)} in, than there was, ${shown(tailInches)} in.`,
        'Measure the flat tail before the first bubble and after the last.',
      ),
    ];
  return [
    ...outside([...path, 'tailInches'], tailInches, 0.2, size.flatInches, 'A tail'),
    ...outside([...path, 'leftInches'], leftInches, 0, tailInches, 'A tail that was left'),
  ];
}
