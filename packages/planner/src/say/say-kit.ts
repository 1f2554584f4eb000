import type { Book } from '@twistwright/books';
import { type CurrencyCode, type Money, money, subtract } from '@twistwright/units';
import { type Kit, type KitLine, metWithin, mostHoursFollowed } from '../kit/index.ts';
import type { KitPlan } from '../plan/index.ts';
import { count, counted, listed, partInWords, range } from './numbers.ts';
import { wholeMoney } from './say-charge.ts';
import type { Said } from './say-forecast.ts';

/** What a first kit does for its money. */
export function sayKit(plan: KitPlan, currency: CurrencyCode): Said {
  const { kit, lasting } = plan;
  const show = (amount: Money): string => wholeMoney(amount, currency);
  const { low, high } = metWithin(kit, lasting);
  const made = kit.figures.filter((figure) => figure.met > 0).length;
  return {
    answer: `${show(kit.spent)} buys ${counted(
      kit.lines.reduce((sum, line) => sum + line.bags, 0),
      'bag',
    )}: ${counted(made, 'figure')}, and ${percent(kit.met)} of the requests are met.`,
    more: [
      `About ${counted(kit.requests, 'guest')} ${Math.round(kit.requests) === 1 ? 'asks' : 'ask'} over the hours: expect ${range(lasting.figures)} figures, ${range({ p10: 100 * low, p90: 100 * high })} % of the requests. ${sayLasting(kit, lasting)}`,
      sayStanding(kit),
      sayAssumed(kit),
      ...rulesSaid(plan, show),
      ...(kit.spent < kit.budget ? [`${show(subtract(kit.budget, kit.spent))} of ${show(kit.budget)} is left.`] : []),
    ],
  };
}
/** When something first runs out; runs are followed so long and no longer. */
function sayLasting({ requests }: Kit, { guestsUntilShort: until }: KitPlan['lasting']): string {
  const most = mostHoursFollowed * requests;
  const show = (guests: number): string => `${count(guests)}${guests >= most ? ' or more' : ''}`;
  return until.p10 >= most
    ? `Nothing runs out before ${counted(until.p10, 'guest')} have come.`
    : `Something first runs out after about ${show(until.p50)} guests (${range(until, show)}).`;
}
function sayStanding(kit: Kit): string {
  return kit.standing.kind === 'proven'
    ? 'Proven: no other purchase for this money meets more.'
    : `No purchase for this money meets more than ${percent(kit.metAtMost)}.`;
}
/** What the share of requests met rests on beside the figures and offers. */
function sayAssumed({ chanceOfOtherColour, metFirstChoice }: Kit): string {
  return `${percent(metFirstChoice)} get the colours they ask for first; assumed that ${Math.round(100 * chanceOfOtherColour)} of 100 guests whose colours are missing take others that the figure is made in (common practice, no published source).`;
}
function rulesSaid(plan: KitPlan, show: (amount: Money) => string): readonly string[] {
  const said = plan.rules.map((rule) => `"${rule.rule}" ${percent(rule.met)} (${show(money(rule.spent))})`);
  return said.length === 0 ? [] : [`Two rules of thumb would meet on the same money: ${listed(said)}.`];
}
/**
 * What lies in bags of mixed colours, which chance fills: how many of each colour to count on, and how likely one is missing altogether
 * where that may happen. Undefined for bags of one colour.
 */
export function sayMix({ items, colours }: Pick<Book, 'items' | 'colours'>, { mix }: Pick<KitLine, 'mix'>): string | undefined {
  if (mix === undefined) return undefined;
  const nameOf = (id: string): string => {
    const item = items.find((one) => one.id === id);
    return item?.kind === 'balloon' ? (colours.find((colour) => colour.id === item.colour)?.name ?? item.colour) : (item?.name ?? id);
  };
  const least = listed(mix.map(({ item, atLeast }) => `${atLeast} ${nameOf(item)}`));
  const missing = mix.flatMap(({ item, chanceOfNone }) =>
    chanceOfNone < 0.001 ? [] : [`no ${nameOf(item)} at all in ${partInWords(chanceOfNone)}`],
  );
  return `Colours by chance: at least ${least}, each in 9 of 10 purchases${missing.length === 0 ? '' : `; ${listed(missing)}`}.`;
}
const percent = (share: number): string => `${Math.round(100 * share)} %`;
