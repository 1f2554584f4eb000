import type { BalloonTest } from '@twistwright/books';
import type { Belief, Calibration, Posterior } from '@twistwright/repertoire';
import { normalQuantile, showLength, toCm } from '@twistwright/units';
import { counted, sentence } from '../words/counted.ts';

export type Ruler = 'in' | 'cm';

/** Half of a band from the 10th to the 90th percentile, in standard deviations. */
const z90 = normalQuantile(0.9);
/** 10th percentile, mean, 90th percentile. */
export const bandOf = ({ mean, sd }: Belief): { readonly low: number; readonly mid: number; readonly high: number } => ({
  low: mean - z90 * sd,
  mid: mean,
  high: mean + z90 * sd,
});

/** One of the three numbers of a balloon as it is shown: what it is called, its unit, and how many units an inch of the book is. */
export interface NumberOf {
  readonly key: keyof Calibration['working'];
  readonly name: string;
  readonly unit: string;
  readonly per: number;
  readonly decimals: number;
}
export const numbersOf = (ruler: Ruler): readonly NumberOf[] => {
  const per = ruler === 'cm' ? toCm(1) : 1;
  return [
    { key: 'flat', name: 'Flat length', unit: ruler, per, decimals: 1 },
    { key: 'stretch', name: 'Stretch, blown up over flat', unit: 'times', per: 1, decimals: 2 },
    { key: 'tailPerBubble', name: 'Flat tail a bubble eats', unit: ruler, per, decimals: 2 },
  ];
};
/** "11.2 in", "5.40 times". */
export const valueWords = ({ unit, per, decimals }: NumberOf, value: number): string => `${(per * value).toFixed(decimals)} ${unit}`;
/** "10.7 to 11.6". */
export const bandWords = ({ per, decimals }: NumberOf, belief: Belief): string => {
  const { low, high } = bandOf(belief);
  return `${(per * low).toFixed(decimals)} to ${(per * high).toFixed(decimals)}`;
};

export const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** "of Ardle & Wynn", "of a maker that is not named". */
export const whoseWords = (maker: string | undefined): string => (maker === undefined ? 'of a maker that is not named' : `of ${maker}`);

/** A number and its unit stay on one line. */
const noBreak = '\u00a0';

/** "A 260 of Ardle & Wynn is 11.2 in flat and 60.3 in blown up." */
export function balloonSentence({ size, maker, working }: Calibration, ruler: Ruler): string {
  const { flat, stretch } = working;
  const article = /^(?:8|11|18)/u.test(size) ? 'An' : 'A';
  const show = (inches: number): string => showLength(inches, ruler).replace(' ', noBreak);
  return `${article} ${size} ${whoseWords(maker)} is ${show(flat.mean)} flat and ${show(flat.mean * stretch.mean)} blown up.`;
}

/** Shares of the numbers that were measured, smallest to largest: "72 %", "60 to 87 %"; undefined if none was. */
function weightWords(working: Calibration['working'], part: keyof Posterior['parts']): string | undefined {
  const shares = Object.values(working)
    .map(({ parts }: Posterior) => Math.round(100 * parts[part]))
    .filter((share) => share > 0);
  if (shares.length === 0) return undefined;
  const [least, most] = [Math.min(...shares), Math.max(...shares)];
  return least === most ? `${least} %` : `${least} to ${most} %`;
}

/** Whose data it is: "Your 3 tests of them weigh 72 to 87 %, one test of other makers' balloons 5 to 8 %." */
export function weightSentence({ tests, otherTests, working }: Calibration): string {
  const [own, others] = [weightWords(working, 'own'), weightWords(working, 'others')];
  const otherWords = others === undefined ? undefined : `${counted(otherTests, 'test')} of other makers’ balloons`;
  const verb = (count: number): string => (count === 1 ? 'weighs' : 'weigh');
  if (own !== undefined)
    return `Your ${tests === 1 ? 'one test' : `${tests} tests`} of them ${verb(tests)} ${own}${others === undefined ? '' : `, ${otherWords} ${others}`}; the rest are usual numbers.`;
  if (otherWords !== undefined)
    return `None of them was measured: ${otherWords} ${verb(otherTests)} ${others}; the rest are usual numbers.`;
  return 'These are usual numbers, common practice without a published source: nobody has measured yours.';
}

/** "flat 11.2 in, blown up 60.5 in, 0.29 in of tail a bubble" */
export function measuredWords({ flatInches = [], fullInches = [], twists = [] }: BalloonTest, ruler: Ruler): string {
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const said: string[] = [];
  if (flatInches.length > 0)
    said.push(`flat ${showLength(mean(flatInches), ruler)}${flatInches.length > 1 ? ` (${counted(flatInches.length, 'balloon')})` : ''}`);
  if (fullInches.length > 0) said.push(`blown up ${showLength(mean(fullInches), ruler)}`);
  if (twists.length > 0) {
    const eaten = mean(twists.map(({ bubbles, tailInches, leftInches }) => (tailInches - leftInches) / bubbles));
    said.push(`${(ruler === 'cm' ? toCm(eaten) : eaten).toFixed(2)} ${ruler} of tail a bubble`);
  }
  return sentence(said.join(', '));
}
