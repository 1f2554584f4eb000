import { type Book, nameOfItem } from '@twistwright/books';
import {
  type BookKitWishes,
  type Growth,
  growKit,
  type Kit,
  type KitPlan,
  type KitWork,
  type NearestKit,
  nearestKit,
  type PlanKitOptions,
  planKit,
  sayGrowth,
  sayKit,
  sayMilestone,
  sayMix,
} from '@twistwright/planner';
import { add, type CurrencyCode, decimalOf, type Money, money, type Problem, showMoney } from '@twistwright/units';
import { type Arguments, amountOf, outOfRange } from './arguments.ts';
import { earningFlags, earningsOf } from './kit-earnings.ts';
import { kitPaperFlags, paperSize, writeKitPapers } from './kit-papers.ts';
import { problemText, refuse, usableBook } from './open-book.ts';
import type { ExitCode, Outside } from './outside.ts';
import { type Page, pageFor } from './page.ts';
import type { Command } from './run-command.ts';

const works: readonly KitWork[] = ['tables', 'parties', 'small fairs'];

export const kitCommand: Command = {
  name: 'kit',
  takes: 'BOOK --budget AMOUNT --hours H [--kind parties]',
  says: 'say what a newcomer should buy first for the money',
  flags: [
    { name: 'json', takes: 'nothing', says: 'print JSON instead of a page' },
    { name: 'budget', takes: 'amount', says: 'money there is, as 60 or 59.50' },
    { name: 'hours', takes: 'number', says: 'hours of work to cover before the next order' },
    { name: 'kind', takes: 'text', says: `kind of work: ${works.join(', ')}` },
    { name: 'guests-per-hour', takes: 'number', says: 'guests who ask for a figure in an hour' },
    { name: 'most-colours', takes: 'number', says: 'at most so many colours' },
    { name: 'other-colour', takes: 'number', says: 'of 100 guests whose colour is missing, how many take another; default 80' },
    { name: 'no-assorted', takes: 'nothing', says: 'no bags of mixed colours' },
    { name: 'figures', takes: 'text', says: 'only these figures, by id, comma between them' },
    { name: 'have', takes: 'text', says: 'what is there already: 260-red=40,pump=1' },
    { name: 'with', takes: 'text', says: 'offers to buy in any case, by id' },
    { name: 'without', takes: 'text', says: 'offers, items or tools not to buy, by id' },
    { name: 'curve', takes: 'nothing', says: 'also money against requests met' },
    ...earningFlags,
    ...kitPaperFlags,
    { name: 'seed', takes: 'number', says: 'seed of the simulated guests' },
    { name: 'today', takes: 'day', says: 'the day from which to look, YYYY-MM-DD' },
  ],
  words: [1, 1],
  run: async (args, outside) => {
    const [path = ''] = args.words;
    const opened = await usableBook(path, args.day('today'), outside);
    if (!opened.ok) return refuse(opened.problems, path, args, outside);
    const { book } = opened;
    const wishes = outOfRange(args) ?? wishesOf(args, book);
    if (typeof wishes === 'string') {
      outside.err(`${wishes}\n`);
      return 2;
    }
    const earnings = earningsOf(args, book.business.currency);
    if (typeof earnings === 'string' || paperSize(args) === undefined) {
      outside.err(`${typeof earnings === 'string' ? earnings : `--paper is A4 or Letter, not "${args.text('paper')}".`}\n`);
      return 2;
    }
    const options: PlanKitOptions = {
      seed: args.number('seed') ?? 1,
      ...(args.has('curve') || args.has('json') ? { curvePoints: 20 } : {}),
    };
    const errors = opened.problems.filter((problem) => problem.weight === 'error');
    if (errors.length > 0)
      return refuseWithNearest(
        args,
        outside,
        errors.map((one) => problemText(one, path)),
        errors,
        nearestKit(book, wishes, options),
        book,
      );
    const plan = planKit(book, wishes, options);
    if (!plan.ok) return refuseWithNearest(args, outside, plan.error.map(sentenceOf), plan.error, nearestKit(book, wishes, options), book);
    const growth = earnings === undefined ? undefined : growKit(book, wishes, plan.value, earnings, { seed: args.number('seed') ?? 1 });
    if (growth?.ok === false) return refuseWithNearest(args, outside, growth.error.map(sentenceOf), growth.error, undefined, book);
    await writeKitPapers(args, outside, book, plan.value, wishes);
    if (args.has('json')) {
      outside.out(`${JSON.stringify({ ...plan.value, ...(growth === undefined ? {} : { growth: growth.value }) }, undefined, 2)}\n`);
      return 0;
    }
    const page = pageFor(outside.isTerminal);
    writeKit(page, plan.value, book);
    if (growth !== undefined) writeGrowth(page, growth.value, book);
    outside.out(page.text());
    return 0;
  },
};

const sentenceOf = ({ sentence, todo }: Problem): string => `${sentence}${todo === undefined ? '' : ` ${todo}`}`;

/** Says what stands in the way, and the nearest kit that is possible. */
function refuseWithNearest(
  args: Arguments,
  outside: Outside,
  said: readonly string[],
  problems: readonly Problem[],
  nearest: NearestKit | undefined,
  book: Book,
): ExitCode {
  if (args.has('json')) {
    outside.out(`${JSON.stringify({ problems, ...(nearest === undefined ? {} : { nearest }) }, undefined, 2)}\n`);
    return 1;
  }
  for (const text of said) outside.err(`${text}\n`);
  if (nearest === undefined) return 1;
  const page = pageFor(outside.isTerminal);
  page.say(`The nearest that is possible${nearest.changes.length === 0 ? ' without that:' : `: ${nearest.changes.join(' ')}`}`);
  page.gap();
  writeKit(page, nearest.plan, book);
  outside.out(page.text());
  return 1;
}

const listOf = (text: string | undefined): readonly string[] | undefined =>
  text
    ?.split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');

/** The wishes that the flags say, or a sentence about what makes no sense. */
function wishesOf(args: Arguments, book: Book): BookKitWishes | string {
  const { currency } = book.business;
  const budget = amountOf(args, 'budget', currency);
  if (budget === undefined) return 'Say how much money there is: --budget AMOUNT.';
  if (typeof budget === 'string') return budget;
  const hours = args.number('hours');
  if (hours === undefined || !(hours > 0 && hours <= 1000))
    return 'Say for how many hours it has to last: --hours H, more than 0 and at most 1000.';
  const kindText = args.text('kind') ?? 'parties';
  const kind = works.find((work) => work === kindText);
  if (kind === undefined) return `--kind is one of ${works.join(', ')}, not "${kindText}".`;
  const have = haveOf(args.text('have'), book);
  if (typeof have === 'string') return have;
  const guestsPerHour = args.number('guests-per-hour');
  const mostColours = args.number('most-colours');
  const otherColour = args.number('other-colour');
  if (otherColour !== undefined && !(otherColour >= 0 && otherColour <= 100)) return `--other-colour is from 0 to 100, not ${otherColour}.`;
  const unknown = listOf(args.text('without'))?.find((id) => ![...book.offers, ...book.items].some((known) => known.id === id));
  if (unknown !== undefined) return `--without names "${unknown}", which is no offer, item or tool of the book.`;
  const [figures, forcedIn, takenOut] = [listOf(args.text('figures')), listOf(args.text('with')), listOf(args.text('without'))];
  return {
    budget,
    hours,
    kind,
    ...(have === undefined ? {} : { have }),
    ...(guestsPerHour === undefined ? {} : { guestsPerHour }),
    ...(mostColours === undefined ? {} : { mostColours }),
    ...(otherColour === undefined ? {} : { chanceOfOtherColour: otherColour / 100 }),
    ...(args.has('no-assorted') ? { assortedBags: false } : {}),
    ...(figures === undefined ? {} : { figures }),
    ...(forcedIn === undefined ? {} : { forcedIn }),
    ...(takenOut === undefined ? {} : { takenOut }),
  };
}
function haveOf(text: string | undefined, book: Book): BookKitWishes['have'] | string {
  if (text === undefined) return undefined;
  const have: { item: string; count: number }[] = [];
  for (const part of listOf(text) ?? []) {
    const [item = '', number = '1'] = part.split('=');
    const pieces = Number(number);
    if (!book.items.some((known) => known.id === item)) return `--have names "${item}", which is no item of the book.`;
    if (!Number.isSafeInteger(pieces) || pieces < 0) return `--have says "${part}"; write it as 260-red=40.`;
    have.push({ item, count: pieces });
  }
  return have;
}

/** A line a tool: how many packs, and how many are in them where that is more. */
const toolRows = (currency: CurrencyCode, tools: Kit['tools']): readonly (readonly (string | number)[])[] =>
  tools.map((tool) => [
    '[ ]',
    tool.bags,
    `${tool.name}${tool.pieces > 1 ? ` (${tool.pieces})` : ''}`,
    tool.why === 'must-have' ? 'needed from the first gig.' : `${tool.why}.`,
    decimalOf(tool.price, currency),
  ]);

function writeKit(page: Page, plan: KitPlan, book: Book): void {
  const { currency } = book.business;
  const { kit } = plan;
  const show = (amount: Money): string => decimalOf(amount, currency);
  const said = sayKit(plan, currency);
  page.say(said.answer);
  for (const sentence of said.more) page.tell(sentence);
  for (const shop of kit.shops) {
    page.gap();
    page.tell(`${shop.name}:`);
    page.table(
      ['', 'bags', 'what', 'why', currency],
      [
        ...toolRows(
          currency,
          kit.tools.filter((tool) => tool.supplier === shop.supplier),
        ),
        ...kit.lines
          .filter((line) => line.supplier === shop.supplier)
          .map((line) => ['[ ]', line.bags, `${line.name} (${line.pieces})`, withoutName(line.name, line.why), show(line.cost)]),
        ...(shop.shipping > 0 ? [['', '', 'carriage', '', show(shop.shipping)]] : []),
      ],
      { foot: ['', '', 'in all', '', show(add(shop.goods, shop.shipping))] },
    );
    for (const line of kit.lines.filter(({ supplier }) => supplier === shop.supplier)) {
      const mix = sayMix(book, line);
      if (mix !== undefined) page.tell(`${line.name}: ${mix}`);
    }
  }
  const elsewhere = kit.tools.filter((tool) => tool.supplier === undefined || !kit.shops.some((shop) => shop.supplier === tool.supplier));
  if (elsewhere.length > 0) {
    page.gap();
    page.tell('Anywhere:');
    page.table(['', 'bags', 'what', 'why', currency], toolRows(currency, elsewhere));
  }
  if (plan.next.length > 0) {
    page.gap();
    page.tell('Next, the most for the money first, in one order with the kit:');
    page.table(
      ['what', currency, 'more requests, %', `for each ${showMoney(gainUnit, currency)}`, 'brings'],
      plan.next.map((next) => [
        next.offers.map((offer) => offerName(book, offer)).join(' and '),
        show(next.cost),
        (100 * next.gain).toFixed(1),
        next.cost > 0 ? (100 * next.gainPerThousand).toFixed(1) : 'for nothing',
        next.unlocks.map((id) => nameOf(book, id)).join(', '),
      ]),
    );
  }
  if (kit.leftOut.length > 0) {
    page.gap();
    page.tell('Left out:');
    page.table(
      ['figure', 'asked for, %', `would cost, ${currency}`, 'for'],
      kit.leftOut.map((left) => [
        left.name,
        (100 * left.share).toFixed(1),
        left.cost === undefined ? '' : show(left.cost),
        left.cost === undefined ? 'cannot be bought' : left.offers.map((offer) => offerName(book, offer)).join(' and '),
      ]),
    );
  }
  if (plan.warnings.length > 0) page.gap();
  for (const warning of plan.warnings) page.tell(sentenceOf(warning));
  if (plan.curve !== undefined) {
    page.gap();
    page.table(
      [`budget, ${currency}`, 'requests met, %', 'figures'],
      plan.curve.points.map((point) => [show(point.budget), (100 * point.met).toFixed(1), point.figures]),
    );
  }
}
/** Why a bag is bought, without the name that stands before it. */
const withoutName = (name: string, why: string): string => (why.startsWith(`${name}: `) ? why.slice(name.length + 2) : why);
function offerName(book: Book, id: string): string {
  const offer = book.offers.find((one) => one.id === id);
  const item = book.items.find((one) => one.id === offer?.item);
  return item === undefined || offer === undefined ? id : `${nameOfItem(item, book.colours)} (${offer.count})`;
}
const nameOf = (book: Book, id: string): string => book.figures.find((figure) => figure.id === id)?.name ?? id;

/** The unit of money in which `gainPerThousand` is said. */
const gainUnit = money(1000);

function writeGrowth(page: Page, growth: Growth, book: Book): void {
  const said = sayGrowth(growth, book.business.currency);
  page.gap();
  page.tell(said.answer);
  for (const sentence of said.more.slice(0, 1)) page.tell(sentence);
  if (growth.purchases.length === 0) return;
  page.gap();
  page.table(
    ['what comes next', book.business.currency, 'when'],
    growth.purchases.map((purchase) => [purchase.name, decimalOf(purchase.cost, book.business.currency), sayMilestone(purchase)]),
  );
}
