import type { FirstEarnings } from '@twistwright/planner';
import { type CurrencyCode, money } from '@twistwright/units';
import { type Arguments, amountOf, type Flag } from './arguments.ts';

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
  const feePerHour = amountOf(args, 'fee', currency) ?? money(0);
  if (typeof feePerHour === 'string') return feePerHour;
  const tipPerGuest = amountOf(args, 'tip', currency) ?? money(0);
  if (typeof tipPerGuest === 'string') return tipPerGuest;
  const costPerGig = amountOf(args, 'gig-cost', currency) ?? money(0);
  if (typeof costPerGig === 'string') return costPerGig;
  const setAside = args.number('set-aside');
  if (setAside !== undefined && !(setAside >= 0 && setAside <= 100)) return `--set-aside is from 0 to 100, not ${setAside}.`;
  const weeks = args.number('weeks');
  return {
    hoursPerGig: args.number('gig-hours') ?? 2,
    feePerHour,
    tipPerGuest,
    costPerGig,
    gigsPerWeek: args.number('gigs-per-week') ?? 1,
    ...(setAside === undefined ? {} : { setAside: setAside / 100 }),
    ...(weeks === undefined ? {} : { weeks }),
  };
}
