import { type Problem, toCm } from '@twistwright/units';
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
 * @param ruler in which lengths are said; they are always given in inches
 * @example measurementProblems({ code: '260', shape: 'tube', diameterInches: 2, lengthInches: 60, flatInches: 11, stretch: 5.4, tailPerBubbleInches: 0.3, source: '' }, { flatInches: [10.5] }) // -> []
 */
export function measurementProblems(size: Tube, test: TwoMinuteTest, ruler: 'in' | 'cm' = 'in'): readonly Problem[] {
  const { flatInches = [], fullInches = [], twists = [] } = test;
  if (flatInches.length + fullInches.length + twists.length === 0)
    return [wrong([], 'Nothing was measured.', 'Measure a flat length, a full length, or the tail before and after a row of bubbles.')];
  const longest = Math.max(0, ...flatInches.filter((value) => value <= 2 * size.flatInches));
  return [
    ...flatInches.flatMap((value, index) =>
      outside(['flatInches', index], value, [0.3 * size.flatInches, 2 * size.flatInches], 'A flat length', ruler),
    ),
    ...fullInches.flatMap((value, index) =>
      value > 0 && value <= longest
        ? [
            wrong(
              ['fullInches', index],
              `A full length of ${shown(value, ruler)} is no longer than a flat balloon of the same test, ${shown(longest, ruler)}.`,
              'Measure it blown up, from knot to tip.',
            ),
          ]
        : outside(['fullInches', index], value, [0.3 * size.lengthInches, 2 * size.lengthInches], 'A full length', ruler),
    ),
    ...twists.flatMap((twist, index) => twistProblems(twist, index, size, ruler)),
  ];
}

type Ruler = 'in' | 'cm';
const lengthOf = (inches: number, ruler: Ruler): number => Number((ruler === 'cm' ? toCm(inches) : inches).toFixed(2));
const shown = (inches: number, ruler: Ruler): string => `${lengthOf(inches, ruler)} ${ruler}`;
const wrong = (path: Problem['path'], sentence: string, todo: string): Problem => ({
  code: 'calibration.measurement',
  path,
  sentence,
  todo,
  weight: 'error',
});

function outside(
  path: Problem['path'],
  value: number,
  [least, most]: readonly [number, number],
  what: string,
  ruler: Ruler,
): readonly Problem[] {
  if (value >= least && value <= most) return [];
  const sentence = `${what} of ${shown(value, ruler)} cannot be right; expected ${lengthOf(least, ruler)} to ${shown(most, ruler)}.`;
  return [wrong(path, sentence, `Measure again, in ${ruler === 'cm' ? 'centimetres' : 'inches'}.`)];
}

function twistProblems({ bubbles, tailInches, leftInches }: TailTwist, index: number, size: Tube, ruler: Ruler): readonly Problem[] {
  const path = ['twists', index] as const;
  if (!(Number.isInteger(bubbles) && bubbles >= 1 && bubbles <= 100))
    return [wrong([...path, 'bubbles'], `${bubbles} bubbles cannot be counted.`, 'Make 1 to 100 bubbles; ten is usual.')];
  if (leftInches > tailInches)
    return [
      wrong(
        [...path, 'leftInches'],
        `More tail is left, ${shown(leftInches, ruler)}, than there was, ${shown(tailInches, ruler)}.`,
        'Measure the flat tail before the first bubble and after the last.',
      ),
    ];
  return [
    ...outside([...path, 'tailInches'], tailInches, [0.2, size.flatInches], 'A tail', ruler),
    ...outside([...path, 'leftInches'], leftInches, [0, tailInches], 'A tail that was left', ruler),
  ];
}
