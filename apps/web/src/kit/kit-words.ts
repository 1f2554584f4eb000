import type { Book } from '@twistwright/books';
import { nameOfItem } from '@twistwright/books';
import { type Kit, type KitPlan, metWithin, mostHoursFollowed, type NextPurchase, wholeMoney } from '@twistwright/planner';
import { type CurrencyCode, money, showMoney } from '@twistwright/units';
import { counted, listed, sentence } from '../words/counted.ts';
import type { BudgetRange, QuickKit } from './kit-ask.ts';

export const of100 = (share: number): number => Math.round(100 * share);

/** "For £60, six colours meet about 85 of 100 requests." */
export function answerSentence({ kit }: QuickKit, currency: CurrencyCode): string {
  if (!(kit.met > 0)) return `For ${wholeMoney(kit.budget, currency)} nothing can be made.`;
  const colours = kit.colours.length;
  const what = colours === 0 ? 'what is there' : counted(colours, 'colour');
  return `For ${wholeMoney(kit.budget, currency)}, ${what} ${colours < 2 ? 'meets' : 'meet'} ${aboutOf100(kit.met)} of 100 requests.`;
}

const aboutOf100 = (share: number): string => (of100(share) === 0 ? 'fewer than 1' : `about ${of100(share)}`);

/** "Expect 76 to 94 of 100. Something first runs out after about 25 hours (20 to 31)." */
export function expectSentence({ kit, lasting }: QuickKit, hours: number): string {
  const { low, high } = metWithin(kit, lasting);
  const { hoursUntilShort: until } = lasting;
  const whole = (value: number): string => value.toFixed(value < 9.5 ? 1 : 0).replace(/\.0$/, '');
  // Nobody has looked further than this.
  const most = mostHoursFollowed * hours;
  const shown = (value: number): string => `${whole(value)}${value >= most ? ' or more' : ''}`;
  const hoursInWords = (value: number): string =>
    `${whole(value)} ${whole(value) === '1' ? 'hour' : 'hours'}${value >= most ? ' or more' : ''}`;
  const spread = until.p10 >= most ? '' : ` (${whole(until.p10)} to ${shown(until.p90)})`;
  const lasts =
    until.p10 >= hours
      ? `Nothing runs out in ${hours === 1 ? 'the hour' : `the ${whole(hours)} hours`}: the kit lasts about ${hoursInWords(until.p50)}${spread}.`
      : `Something first runs out after about ${hoursInWords(until.p50)}${spread}.`;
  return `Expect ${of100(low)} to ${of100(high)} of 100. ${lasts}`;
}

/** "Buy these eight things for £58.70." */
export function buySentence({ kit }: QuickKit, currency: CurrencyCode): string {
  const things = kit.lines.reduce((sum, line) => sum + line.bags, 0) + kit.tools.reduce((sum, tool) => sum + tool.bags, 0);
  return things === 0
    ? 'There is nothing to buy.'
    : `Buy ${things === 1 ? 'this one thing' : `these ${counted(things, 'thing')}`} for ${showMoney(kit.spent, currency)}.`;
}

/** What an offer is called: "260 red, 100 in a bag", "holding stick, 100 in a pack"; one piece of something has no count. */
export function offerName(book: Book, id: string, withCount = true): string {
  const offer = book.offers.find((one) => one.id === id);
  const item = book.items.find((one) => one.id === (offer?.item ?? id));
  if (item === undefined) return id;
  const name = nameOfItem(item, book.colours);
  if (!withCount || offer === undefined || offer.count === 1) return name;
  return `${name}, ${offer.count} in a ${item.kind === 'balloon' ? 'bag' : 'pack'}`;
}
export const itemName = (book: Book, id: string): string => {
  const item = book.items.find((one) => one.id === id);
  return item === undefined ? id : nameOfItem(item, book.colours);
};
/** What several offers are called, each as often as it stands there: "2 x 260 red, 100 in a bag and 260 blue, 50 in a bag". */
export function offersName(book: Book, ids: readonly string[], withCount = true): string {
  const times = (id: string): number => ids.filter((one) => one === id).length;
  return listed([...new Set(ids)].map((id) => `${times(id) === 1 ? '' : `${times(id)} x `}${offerName(book, id, withCount)}`));
}
/** Whether an item, or what was taken out, is a tool or a sundry and no balloon. */
export const isTool = (book: Book, id: string): boolean => book.items.some((item) => item.id === id && item.kind !== 'balloon');
/** How a tool comes: "1 piece", "2 pieces", "1 pack of 2". */
export function packsWords(packs: number, pieces: number): string {
  const each = pieces / packs;
  const [one, many, of] = each === 1 ? (['piece', 'pieces', ''] as const) : (['pack', 'packs', ` of ${each}`] as const);
  return `${packs} ${packs === 1 ? one : many}${of}`;
}
/** How a line of a kit comes: "1 bag of 100", "1 pack of 100" where it is no balloon. */
export const bagsWords = (book: Book, offer: string, bags: number, pieces: number): string =>
  isTool(book, book.offers.find((one) => one.id === offer)?.item ?? '')
    ? packsWords(bags, pieces)
    : `${bags} ${bags === 1 ? 'bag' : 'bags'} of ${pieces / bags}`;
export const figureName = (book: Book, id: string): string => book.figures.find((figure) => figure.id === id)?.name ?? id;

/** "£8.20 more" and "260 yellow, and 89 of 100 are met". */
export function nextSentence(book: Book, next: NextPurchase): { readonly money: string; readonly rest: string } {
  const what = offersName(book, next.offers, false);
  return {
    money: next.cost > 0 ? `${wholeMoney(next.cost, book.business.currency)} more` : 'no more money',
    rest: `${what}, and ${of100(next.metAfter)} of 100 are met`,
  };
}

/** Why a line is there, without its name in front. */
export const whyText = (name: string, why: string): string => sentence(why.startsWith(`${name}: `) ? why.slice(name.length + 2) : why);

/** What taking out and forcing in costs: "What you have put in and taken out costs 4 of 100 requests." */
export function lossSentence(plan: KitPlan, freeMet: number, wishes: { readonly forcedIn: number; readonly takenOut: number }): string {
  const lost = of100(freeMet) - of100(plan.kit.met);
  const what =
    wishes.forcedIn === 0
      ? 'What you have taken out'
      : wishes.takenOut === 0
        ? 'What you have put in'
        : 'What you have put in and taken out';
  return lost <= 0 ? `${what} costs no request.` : `${what} costs ${lost} of 100 requests: without it ${of100(freeMet)} would be met.`;
}

/** "This kit meets 7 of 100 requests more than the kit for £90, and costs £55.65 more." */
export function comparedSentence(kit: Kit, other: Kit, name: string, currency: CurrencyCode): string {
  const more = of100(kit.met) - of100(other.met);
  const dearer = kit.spent - other.spent;
  const meets =
    more === 0 ? `as many requests as ${name}` : `${Math.abs(more)} of 100 requests ${more > 0 ? 'more' : 'fewer'} than ${name}`;
  const costs = `costs ${dearer === 0 ? 'the same' : `${showMoney(money(Math.abs(dearer)), currency)} ${dearer > 0 ? 'more' : 'less'}`}`;
  return `This kit meets ${meets} and ${costs}.`;
}

/** Steps of the slider and its ends: whole steps of one, two or five that part the range into about 150, whole units of the currency where the range has many. */
export function sliderOf(
  { cheapest, everything }: BudgetRange,
  minorPerMajor: number,
): { readonly min: number; readonly max: number; readonly step: number } {
  const range = everything - cheapest;
  const isNarrow = range > 0 && range < 20 * minorPerMajor;
  const rough = Math.max(isNarrow ? 1 : minorPerMajor, range / 150);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((factor) => factor * power >= rough) ?? 10) * power;
  return {
    min: Math.ceil(cheapest / step) * step,
    max: Math.max(Math.ceil(everything / step), Math.ceil(cheapest / step) + 1) * step,
    step,
  };
}
