import { showLength } from '@twistwright/units';
import { type FitChange, isNewVerdict } from '../makeable/index.ts';

/** What a change of what is known of balloons does to one figure: "The giraffe now fits: 2.1 in are left." */
export function sayFitChange(change: FitChange, ruler: 'in' | 'cm' = 'in'): string {
  const { figure, way, isOneOfSeveral, before, after } = change;
  const show = (inches: number): string => showLength(inches, ruler);
  const name = `The ${figure.name.toLowerCase()}${isOneOfSeveral && way !== undefined ? ` in ${way.name.toLowerCase()}` : ''}`;
  const left = after.leftInflatedInches.mid;
  const rest = left >= 0 ? `${show(left)} are left` : `${show(-left)} are missing`;
  if (!isNewVerdict(change)) {
    const blown = `blow the ${after.size} up to ${show(after.inflatedInches)} instead of ${show(before.inflatedInches)}`;
    const tail = after.tailInches > 0 ? `, leave ${show(after.tailInches)} flat` : '';
    const verdict = after.verdict === 'fits' ? 'still fits' : after.verdict === 'tight' ? 'is still tight' : 'still does not fit';
    return `${name} ${verdict}: ${blown}${tail}.`;
  }
  if (after.verdict === 'fits') return `${name} now fits: ${rest}.`;
  const why = after.verdict === 'tight' ? after.cautions[0] : after.changes[0]?.sentence;
  const more = why === undefined ? '' : ` ${why}`;
  return after.verdict === 'tight' ? `${name} is now tight.${more}` : `${name} no longer fits: ${rest}.${more}`;
}
