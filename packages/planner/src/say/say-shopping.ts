import { type CurrencyCode, type Money, money, shortDate } from '@twistwright/units';
import type { Proof, ShoppingPlan } from '../shopping/index.ts';
import { chanceInWords, counted, headNumber, partInWords } from './numbers.ts';
import { wholeMoney } from './say-charge.ts';
import type { Said } from './say-forecast.ts';

/** What to buy, for how much, and how sure that is. */
export function sayShopping(plan: ShoppingPlan, currency: CurrencyCode): Said {
  const show = (amount: Money): string => wholeMoney(amount, currency);
  const leaves = plan.orders.length === 1 ? 'leaves' : 'leave';
  const risk =
    plan.chance >= 1
      ? `${leaves} no try in which something runs out`
      : plan.chance <= 0
        ? `${leaves} no try in which nothing runs out`
        : `${leaves} a chance of ${chanceInWords(1 - plan.chance)} that something runs out`;
  if (plan.orders.length === 0)
    return {
      answer: plan.chance >= plan.wantedChance ? 'There is nothing to buy.' : 'Nothing is bought.',
      more: [`With what is in store and on order something runs out in ${partInWords(1 - plan.chanceNow)} tries.`],
    };
  if (plan.chance <= plan.chanceNow && plan.missing < plan.missingNow) return sayFewestMissing(plan, show);
  const orders = `${headNumber(plan.orders.length)} ${plan.orders.length === 1 ? 'order' : 'orders'}`;
  const first = plan.orders.find((order) => order.orderBy === plan.firstOrderBy);
  const elsewhere =
    plan.chanceElsewhere === undefined
      ? ''
      : ` On tries it was not made from, nothing runs out in ${percent(plan.chanceElsewhere)} of them.`;
  return {
    answer: `${orders} for ${show(plan.total)} ${risk}.`,
    more: [
      ...(first === undefined
        ? []
        : [`The first must go by ${shortDate(first.orderBy)}${first.before === undefined ? '' : `, ${first.before}`}, to ${first.name}.`]),
      `Without buying anything, something would run out in ${percent(1 - plan.chanceNow)} of the tries.${elsewhere}`,
      sayProof(plan.proof),
    ],
  };
}

/** Too little money to keep everything from running out: what it is best spent on. */
function sayFewestMissing(plan: ShoppingPlan, show: (amount: Money) => string): Said {
  const orders = `${headNumber(plan.orders.length)} ${plan.orders.length === 1 ? 'order' : 'orders'}`;
  const missing = (pieces: number): string => (pieces < 10 ? pieces.toFixed(1) : String(Math.round(pieces)));
  return {
    answer: `${orders} for ${show(plan.total)} ${plan.orders.length === 1 ? 'leaves' : 'leave'} ${missing(plan.missing)} pieces missing instead of ${missing(plan.missingNow)}.`,
    more: [
      `${plan.chanceNow <= 0 ? 'No purchase for this money keeps everything from running out' : `No purchase for this money makes it likelier than ${percent(plan.chanceNow)} that nothing runs out`}, so it goes where the fewest pieces are missed on average; found by search.`,
    ],
  };
}

/** How sure the answer is, in a sentence; never more than was proven. */
export function sayProof(proof: Proof): string {
  switch (proof.kind) {
    case 'proven':
      return 'Proven: no other choice of whole bags costs less for this chance.';
    case 'within':
      return `No choice of bags for this chance is cheaper by more than ${(100 * proof.share).toFixed(1)} %.`;
    case 'found':
      return 'Found by search; that nothing is cheaper is not proven.';
  }
}

/** The pencil's way beside the plan. */
export function sayThumb(plan: ShoppingPlan, currency: CurrencyCode): string | undefined {
  const thumb = plan.ruleOfThumb;
  if (thumb === undefined) return undefined;
  const way = thumb.kind === 'one shop' ? 'Rounding everything up at one shop' : 'Rounding each up where it is cheapest';
  const size = wholeMoney(money(Math.abs(thumb.dearerBy)), currency);
  const difference = thumb.dearerBy === 0 ? 'the same' : thumb.dearerBy > 0 ? `${size} more` : `${size} less`;
  return `${way} would cost ${difference} (${wholeMoney(thumb.total, currency)}, ${counted(thumb.bags, 'bag')}), and something would run out in ${percent(1 - thumb.chance)} of the tries.`;
}

const percent = (share: number): string => `${Number((100 * share).toFixed(share < 0.1 || share > 0.9 ? 1 : 0))} %`;
