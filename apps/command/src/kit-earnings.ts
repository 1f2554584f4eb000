import type { FirstEarnings } from '@twistwright/planner';
import { type CurrencyCode, type Money, money, parseMoney } from '@twistwright/units';
import type { Arguments, Flag } from './arguments.ts';

export const earningFlags: readonly Flag[] = [
  { name: 'fee', takes: 'amount', says: 'fee for an hour of the first gigs: also say how the kit grows' },
  { name: 'tip', takes: 'amount', says: 'mean tip of a guest' },
  { name: 'gig-hours', takes: 'number', says: 'hours of a gig, default 2' },
  { name: 'gigs-per-week', takes: 'number', says: 'gigs in a week, default 1' },
  { name: 'gig-cost', takes: 'amount', says: 'what a gig costs beside balloons: travel, parking' },
  { name: 'set-aside', takes: 'number', says: 'per cent of what a gig leaves for the next purchases, default 50' },
  { name: 'weeks', takes: 'number', says: 'weeks to look ahead, default 52' },
];

/** What the flags say of the first gigs: undefined if they say nothing, a sentence if it makes no sense. */
export function earningsOf(args: Arguments, currency: CurrencyCode): FirstEarnings | string | undefined {
  if (!earningFlags.some((flag) => args.has(flag.name))) return undefined;
  const wrong: string[] = [];
  const amount = (flag: string): Money => {
    const text = args.text(flag);
    const read = text === undefined ? money(0) : parseMoney(text, currency);
    if (read === undefined) wrong.push(`--${flag} takes an amount of ${currency}, not "${text}".`);
    return read ?? money(0);
  };
  const setAside = args.number('set-aside');
  const weeks = args.number('weeks');
  const earnings: FirstEarnings = {
    hoursPerGig: args.number('gig-hours') ?? 2,
    feePerHour: amount('fee'),
    tipPerGuest: amount('tip'),
    costPerGig: amount('gig-cost'),
    gigsPerWeek: args.number('gigs-per-week') ?? 1,
    ...(setAside === undefined ? {} : { setAside: setAside / 100 }),
    ...(weeks === undefined ? {} : { weeks }),
  };
  return wrong[0] ?? earnings;
}
