import type { Proof, ShoppingLine, ShoppingPlan } from '@twistwright/planner';
import { type CurrencyCode, type LocalDate, type Money, shortDate, showMoney } from '@twistwright/units';
import { chanceInWords, counted, inWords, ordinal, sentence } from '../words/counted.ts';

/** The one sentence of the shopping page. */
export function shoppingSentence(plan: ShoppingPlan, currency: CurrencyCode): string {
  const risk = 1 - plan.chance;
  const left = risk < 0.0005 ? 'leave next to no chance' : `leave ${chanceOf(risk)}`;
  if (plan.orders.length === 0)
    return risk < 0.0005 ? 'Nothing has to be bought.' : `Nothing has to be bought; ${chanceOf(risk)} is left that something runs out.`;
  return `${sentence(counted(plan.orders.length, 'order'))} for ${showMoney(plan.total, currency)} ${plan.orders.length === 1 ? left.replace('leave', 'leaves') : left} that something runs out.`;
}
/** "1 chance in 10". */
export function chanceOf(risk: number): string {
  const words = chanceInWords(risk);
  const parts = /^(\d+) in ([\d,]+)$/.exec(words);
  return parts === null ? words : `${parts[1]} ${parts[1] === '1' ? 'chance' : 'chances'} in ${parts[2]}`;
}

/** What rounding everything up would cost, and what it would give. */
export function thumbSentence(plan: ShoppingPlan, currency: CurrencyCode, nameOf: (supplier: string) => string): string | undefined {
  const rule = plan.ruleOfThumb;
  if (rule === undefined) return undefined;
  const where = rule.supplier === undefined ? 'each where it is cheapest' : `at ${nameOf(rule.supplier)}`;
  const difference =
    rule.dearerBy === 0 ? 'the same' : `${showMoney(Math.abs(rule.dearerBy) as Money, currency)} ${rule.dearerBy > 0 ? 'more' : 'less'}`;
  return `Rounding everything up ${where} would cost ${difference}, for ${chanceOf(1 - rule.chance)}.`;
}

export function proofSentence(proof: Proof): string {
  switch (proof.kind) {
    case 'proven':
      return 'Proven cheapest: no other choice of whole bags meets this chance for less.';
    case 'within':
      return `No other choice of whole bags is cheaper by more than ${(proof.share * 100).toFixed(1)} in 100.`;
    case 'found':
      return 'A good choice of whole bags; that none is cheaper is not proven.';
  }
}

/** Why bags are there: which gigs, and how much would be missing. */
export function whySentence({ because }: ShoppingLine, nameOf: (gig: string) => string): string {
  const causes = because.causes
    .slice(0, 2)
    .map(
      (cause) => `${cause.gig === undefined ? (cause.reason ?? 'entered by hand') : nameOf(cause.gig)} on the ${ordinal(dayOf(cause.day))}`,
    );
  const more = because.causes.length > 2 ? ` and ${inWords(because.causes.length - 2)} more` : '';
  return `${causes.join(', ')}${more}; ${because.short} short`;
}
const dayOf = (day: LocalDate): number => Number(day.slice(8));

export const orderBySentence = (day: LocalDate, before: string | undefined): string =>
  `${shortDate(day)}${before === undefined ? '' : `, ${before}`}`;
