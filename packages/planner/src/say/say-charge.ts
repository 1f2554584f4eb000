import { type CurrencyCode, type Money, roundToMoney, type Spread, showMoney } from '@twistwright/units';
import type { Charge } from '../charge/index.ts';
import { range } from './numbers.ts';
import type { Said } from './say-forecast.ts';

/** What to ask for, and what an hour of it earns. */
export function sayCharge(charge: Charge, currency: CurrencyCode): Said {
  const show = (amount: number): string => wholeMoney(roundToMoney(amount), currency);
  const about = (of: Spread): string => (show(of.p10) === show(of.p90) ? show(of.p50) : `${show(of.p50)} (${range(of, show)})`);
  const wanted =
    charge.wantedHourly === undefined || charge.quoteForWanted === undefined
      ? charge.floor.breakEven > 0
        ? ` Below ${show(charge.floor.breakEven)} nothing is earned.`
        : ''
      : ` Below ${show(charge.quoteForWanted)} a true hour earns less than ${show(charge.wantedHourly)}.`;
  const asked =
    charge.fee === charge.quote
      ? `Ask for ${show(charge.quote)}.`
      : `${show(charge.fee)} is agreed; the rates would say ${show(charge.quote)}.`;
  return {
    answer: `${asked}${wanted}`,
    more: [
      `At ${show(charge.fee)} each true hour earns ${about(charge.hourly)}, driving, packing and paperwork counted.`,
      ...(charge.floor.materials.p90 > 0 ? [`Balloons for about ${about(charge.floor.materials)} go into it.`] : []),
    ],
  };
}

/** "£396" where there are no pence, "£20.55" where there are. */
export function wholeMoney(amount: Money, currency: CurrencyCode): string {
  return showMoney(amount, currency).replace(/\.0+(?!\d)/, '');
}
