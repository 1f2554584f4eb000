import type { CurrencyCode, Spread } from '@twistwright/units';
import type { Growth, Milestone } from '../kit/index.ts';
import { chanceInWords, count, counted, range } from './numbers.ts';
import { wholeMoney } from './say-charge.ts';
import type { Said } from './say-forecast.ts';

/** When a kit has paid for itself, and when the next things can be bought. */
export function sayGrowth(growth: Growth, currency: CurrencyCode): Said {
  const { paidBack, perGig } = growth;
  const left = `A gig leaves about ${wholeMoney(perGig, currency)}.`;
  return {
    answer:
      paidBack.gigs === undefined
        ? 'On these fees and tips the kit never pays for itself.'
        : `The kit has paid for itself after ${counted(paidBack.gigs.p50, 'gig')}${inBrackets(paidBack.gigs)}.`,
    more: [
      paidBack.weeks === undefined
        ? left
        : `${left} That is about ${counted(paidBack.weeks.p50, 'week')}${inBrackets(paidBack.weeks)}${unless(paidBack)}.`,
      ...growth.purchases.map((purchase) => `${purchase.name} for ${wholeMoney(purchase.cost, currency)}: ${sayMilestone(purchase)}.`),
    ],
  };
}

/** "in week 5 (4 to 7), after gig 5". */
export function sayMilestone(milestone: Milestone): string {
  const { gigs, weeks } = milestone;
  if (gigs === undefined || weeks === undefined) return 'not within the weeks that were looked at';
  return `in week ${week(weeks.p50)} (${range(weeks, week)}), after ${counted(gigs.p50, 'gig')}${unless(milestone)}`;
}
/** " (4 to 7)"; nothing where both ends are the same. */
function inBrackets(spread: Spread): string {
  const said = range(spread);
  return said.includes(' to ') ? ` (${said})` : '';
}
/** Which week a moment lies in, the first one being week 1. */
const week = (value: number): string => count(Math.floor(value) + 1);
const unless = ({ chance }: Milestone): string => (chance > 0.995 ? '' : `, and ${chanceInWords(chance)} that it comes at all`);
