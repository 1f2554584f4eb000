import { type Book, type Colourway, tubesTaken, workingsOf } from '@twistwright/books';
import { counted } from '@twistwright/planner';
import type { Belief, Calibration, Posterior, Recipe } from '@twistwright/repertoire';
import { normalQuantile, showLength } from '@twistwright/units';
import type { Page } from './page.ts';

/** Before and after the tests of a maker: means with 80 % bands, and how much of it is one's own. */
export function writeCalibration(page: Page, { size, maker, tests, otherTests, working }: Calibration, ruler: 'in' | 'cm'): void {
  const whose = maker ?? unnamed;
  const { flat, stretch, tailPerBubble } = working;
  page.say(`${size} of ${whose}: ${showLength(flat.mean, ruler)} flat, ${showLength(flat.mean * stretch.mean, ruler)} blown up.`);
  page.tell(testsSaid(tests, otherTests));
  const per = ruler === 'cm' ? 2.54 : 1;
  const band = ({ mean, sd }: Belief, scale: number): string =>
    `${(scale * mean).toFixed(2)} (${(scale * (mean - z90 * sd)).toFixed(2)} to ${(scale * (mean + z90 * sd)).toFixed(2)})`;
  const row = (what: string, posterior: Posterior, scale: number): readonly (string | number)[] => [
    what,
    band(posterior.prior, scale),
    band(posterior, scale),
    posterior.measured,
    percent(posterior.parts.own),
    percent(posterior.parts.others),
  ];
  page.gap();
  page.table(
    ['What', 'usual', 'these balloons', 'measured', 'own part', 'other makers'],
    [
      row(`flat working length, ${ruler}`, flat, per),
      row('inflated length out of a flat one', stretch, 1),
      row(`tail that a bubble eats, flat ${ruler}`, tailPerBubble, per),
    ],
  );
  page.gap();
}
const z90 = normalQuantile(0.9);
/** On whose measurements air and tail of a figure rest; nothing where nobody measured anything. */
export function sayWhose(book: Book, recipe: Recipe, way: Colourway | undefined): readonly string[] {
  if ((book.balloonTests ?? []).length === 0) return [];
  const workings = workingsOf(book);
  return tubesTaken(book, recipe, way).map(({ size, maker }) => {
    const { tests, otherTests } = workings(size, maker);
    return `${size.code} of ${maker ?? unnamed}: ${testsSaid(tests, otherTests)}`;
  });
}
const unnamed = 'a maker that is not known';

function testsSaid(own: number, others: number): string {
  if (own + others === 0) return 'Nothing was measured: these are the usual numbers.';
  if (own === 0) return `None of these balloons were measured; ${counted(others, 'test')} of other makers' balloons.`;
  return `${counted(own, 'test')} of these balloons${others === 0 ? '' : `, ${counted(others, 'test')} of other makers' balloons`}.`;
}
const percent = (share: number): string => `${Math.round(100 * share)} %`;
