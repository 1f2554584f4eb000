import type { Book } from '@twistwright/books';
import {
  type Advice,
  adviceFor,
  clockAt,
  counted,
  type GigPlan,
  type Outlook,
  outlookOf,
  type Plan,
  type PlanBookOptions,
  sayAdvice,
  sayCharge,
  shopFor,
} from '@twistwright/planner';
import { longDate, readTime } from '@twistwright/units';
import { type Arguments, amountOf, commonFlags, type Flag, outOfRange } from './arguments.ts';
import { openBook, problemText, refuse } from './open-book.ts';
import type { ExitCode, Outside } from './outside.ts';
import { type Page, pageFor } from './page.ts';
import { writeCharge, writeForecast, writeGigHead, writeNeeds, writePacking } from './plan-pages.ts';
import { Progress } from './progress.ts';
import type { Command } from './run-command.ts';
import { writeCurve, writeShopping } from './shopping-pages.ts';

const planFlags: readonly Flag[] = [
  ...commonFlags,
  { name: 'gig', takes: 'text', says: 'only this gig, by its id' },
  { name: 'until', takes: 'day', says: 'the last day that is looked at, YYYY-MM-DD' },
  { name: 'risk', takes: 'number', says: 'chance that something asked for runs out, 0 to 1' },
  { name: 'warm-up', takes: 'number', says: 'minutes from the start of a gig left out of the statistics' },
];

interface Looked {
  readonly book: Book;
  readonly outlook: Outlook;
  readonly progress: Progress;
}

/** Opens the book and plans it; says what stands in the way. */
async function look(args: Arguments, outside: Outside): Promise<Looked | ExitCode> {
  const [path = ''] = args.words;
  const wrong = outOfRange(args);
  if (wrong !== undefined) {
    outside.err(`${wrong}\n`);
    return 2;
  }
  const opened = await openBook(path, args.day('today'), outside);
  if (!opened.ok) return refuse(opened.problems, path, args, outside);
  for (const warning of opened.warnings) outside.err(`${problemText(warning, path)}\n`);
  const warmUp = args.number('warm-up');
  const book = warmUp === undefined ? opened.book : withWarmUp(opened.book, warmUp);
  const progress = new Progress(outside);
  const outlook = outlookOf(book, {
    today: opened.today,
    onPlayed: (done, all) => progress.say(`${done} of ${all} gigs played.`),
    ...given('seed', args.number('seed')),
    ...given('runs', args.number('runs')),
    ...given('chanceOfRunningOut', args.number('risk')),
    ...given('until', args.day('until')),
    ...given('gig', args.text('gig')),
  });
  if (!outlook.ok) return refuse(outlook.error, path, args, outside);
  for (const problem of outlook.value.problems) outside.err(`${problemText(problem, path)}\n`);
  return { book, outlook: outlook.value, progress };
}
const given = <K extends string, V>(key: K, value: V | undefined): { readonly [k in K]?: V } =>
  value === undefined ? {} : ({ [key]: value } as { readonly [k in K]: V });

const withWarmUp = (book: Book, minutes: number): Book => ({
  ...book,
  gigs: book.gigs.map((gig) => ({ ...gig, line: { ...gig.line, warmUpMinutes: minutes } })),
});

/** JSON of a plan: typed arrays of samples left out, maps as objects. */
export const toJson = (value: unknown): string =>
  `${JSON.stringify(value, (_key, entry: unknown) => (ArrayBuffer.isView(entry) ? undefined : entry instanceof Map ? Object.fromEntries(entry) : entry), 2)}\n`;

export const gigForJson = ({ gig, forecast, takes, packing, charge }: GigPlan) => ({
  gig,
  forecast: forecast.summary,
  takes,
  packing,
  charge,
});

function command(name: string, says: string, json: (looked: Looked) => unknown, write: (page: Page, looked: Looked) => void): Command {
  return {
    name,
    takes: 'BOOK [--gig ID] [--until DATE]',
    says,
    flags: planFlags,
    words: [1, 1],
    run: async (args, outside) => {
      const looked = await look(args, outside);
      if (typeof looked === 'number') return looked;
      if (args.has('json')) {
        outside.out(toJson(json(looked)));
        return 0;
      }
      const page = pageFor(outside.isTerminal);
      write(page, looked);
      outside.out(page.text());
      return 0;
    },
  };
}

/** Seconds within which the shopping has to be there. */
const shopSeconds = 20;
const shopFlags: readonly Flag[] = [
  ...planFlags,
  { name: 'budget', takes: 'amount', says: 'most money to spend, as 40 or 40.50' },
  { name: 'spare-days', takes: 'number', says: 'working days kept between arrival and gig' },
  { name: 'now', takes: 'text', says: 'the time of day, HH:MM: an order whose cut-off has passed goes on the next working day' },
];

/** A command that also buys. `curve`: with cost against risk, and a second opinion on other tries. */
function shoppingCommand(
  name: string,
  says: string,
  curve: boolean,
  json: (looked: Looked, plan: Plan) => unknown,
  write: (page: Page, looked: Looked, plan: Plan) => void,
): Command {
  return {
    name,
    takes: 'BOOK [--gig ID] [--until DATE] [--budget AMOUNT]',
    says,
    flags: shopFlags,
    words: [1, 1],
    run: async (args, outside) => {
      const now = args.text('now') === undefined ? undefined : readTime(args.text('now') ?? '');
      if (args.has('now') && now === undefined) {
        outside.err(`--now takes a time as HH:MM, not "${args.text('now')}".\n`);
        return 2;
      }
      const solver = outside.solver(); // gets ready while the gigs are played
      const looked = await look(args, outside);
      if (typeof looked === 'number') return looked;
      const budget = amountOf(args, 'budget', looked.book.business.currency);
      if (typeof budget === 'string') {
        outside.err(`${budget}\n`);
        return 2;
      }
      const options: PlanBookOptions = {
        ...looked.outlook,
        withCurve: curve,
        withSecondOpinion: curve,
        ...given('budget', budget),
        ...given('now', now),
        ...given('daysToSpare', args.number('spare-days')),
      };
      const plan = await looked.progress.during(
        'Looking for the cheapest shopping …',
        shopFor(looked.book, looked.outlook, options, { solver, seconds: shopSeconds, now: outside.now }),
      );
      if (args.has('json')) outside.out(toJson(json(looked, plan)));
      else {
        const page = pageFor(outside.isTerminal);
        write(page, looked, plan);
        outside.out(page.text());
      }
      return plan.shoppingProblems.some((problem) => problem.weight === 'error') ? 1 : 0;
    },
  };
}

function writeShopPart(page: Page, book: Book, plan: Plan): void {
  for (const problem of plan.shoppingProblems) page.tell(`${problem.sentence}${problem.todo === undefined ? '' : ` ${problem.todo}`}`);
  if (plan.shopping !== undefined) writeShopping(page, book, plan.shopping);
}

const eachGig = (page: Page, { book, outlook }: Looked, write: (plan: GigPlan) => void): void => {
  for (const [at, plan] of outlook.gigs.entries()) {
    if (at > 0) page.gap();
    writeGigHead(page, plan, book);
    page.gap();
    write(plan);
  }
};
const frame = ({ outlook }: Pick<Looked, 'outlook'>) => ({
  today: outlook.today,
  until: outlook.until,
  seed: outlook.seed,
  runs: outlook.runs,
});

export const forecastCommand = command(
  'forecast',
  'say who will be served and how long they wait',
  (looked) => ({ ...frame(looked), gigs: looked.outlook.gigs.map(({ gig, forecast }) => ({ gig: gig.id, forecast: forecast.summary })) }),
  (page, looked) => eachGig(page, looked, (plan) => writeForecast(page, plan, looked.book)),
);
export const needsCommand = command(
  'needs',
  'say which balloons the coming gigs take, and what is short',
  (looked) => ({ ...frame(looked), needs: looked.outlook.needs }),
  (page, { book, outlook }) => {
    page.tell(`All gigs from ${longDate(outlook.today)} to ${longDate(outlook.until)}.`);
    writeNeeds(page, book, outlook.needs, true);
  },
);
export const packCommand = command(
  'pack',
  'say what goes into apron, case and car',
  (looked) => ({ ...frame(looked), gigs: looked.outlook.gigs.map(({ gig, packing }) => ({ gig: gig.id, packing })) }),
  (page, looked) => eachGig(page, looked, (plan) => writePacking(page, looked.book, plan.packing)),
);
export const chargeCommand = command(
  'charge',
  'say what to ask for, and what an hour of it earns',
  (looked) => ({ ...frame(looked), gigs: looked.outlook.gigs.map(({ gig, charge }) => ({ gig: gig.id, charge })) }),
  (page, looked) => eachGig(page, looked, (plan) => writeCharge(page, looked.book, plan.charge)),
);
export const planCommand = shoppingCommand(
  'plan',
  'plan every coming gig: forecast, needs, shopping, packing and price',
  false,
  ({ outlook }, plan) => ({
    ...frame({ outlook }),
    gigs: outlook.gigs.map(gigForJson),
    needs: outlook.needs,
    ...(plan.shopping === undefined ? {} : { shopping: plan.shopping }),
    shoppingProblems: plan.shoppingProblems,
  }),
  (page, looked, plan) => {
    const { book, outlook } = looked;
    const one = outlook.gigs.length === 1;
    eachGig(page, looked, (gig) => {
      writeForecast(page, gig);
      page.gap();
      if (one) {
        writePacking(page, book, gig.packing);
        page.gap();
        writeCharge(page, book, gig.charge);
      } else {
        page.tell(sayCharge(gig.charge, book.business.currency).answer);
        const { missing, total } = gig.packing;
        page.tell(
          missing.length === 0
            ? `Everything to pack is there (${counted(total, 'line')}).`
            : `To pack: ${counted(total, 'line')}, ${missing.length} not complete.`,
        );
      }
    });
    page.gap();
    page.tell(`For all gigs from ${longDate(outlook.today)} to ${longDate(outlook.until)}:`);
    writeNeeds(page, book, outlook.needs, false);
    page.gap();
    writeShopPart(page, book, plan);
  },
);
export const shopCommand = shoppingCommand(
  'shop',
  'say what to buy, where, by when and for how much',
  true,
  (looked, plan) => ({ ...frame(looked), shopping: plan.shopping, shoppingProblems: plan.shoppingProblems, curve: plan.curve }),
  (page, { book }, plan) => {
    writeShopPart(page, book, plan);
    if (plan.curve !== undefined) {
      page.gap();
      writeCurve(page, book, plan.curve);
    }
  },
);

/** Runs on which numbers of artists, menus and the card are tried. */
const adviceRuns = 800;

function advices({ book, outlook, progress }: Looked): readonly { readonly plan: GigPlan; readonly advice: Advice }[] {
  return outlook.gigs.flatMap((plan, done) => {
    progress.say(`${done} of ${outlook.gigs.length} gigs looked at.`);
    const advice = adviceFor(book, plan.gig, { seed: outlook.seed, runs: Math.min(outlook.runs, adviceRuns) });
    return advice.ok ? [{ plan, advice: advice.value }] : [];
  });
}

export const adviseCommand = command(
  'advise',
  'say how many artists it takes, how many may still wait at each time, and which menu suits',
  (looked) => ({ ...frame(looked), gigs: advices(looked).map(({ plan, advice }) => ({ gig: plan.gig.id, ...advice })) }),
  (page, looked) => {
    const nameOf = (id: string): string => looked.book.figures.find((figure) => figure.id === id)?.name ?? id;
    for (const [at, { plan, advice }] of advices(looked).entries()) {
      if (at > 0) page.gap();
      writeGigHead(page, plan, looked.book);
      page.gap();
      for (const sentence of sayAdvice(plan.gig, advice, nameOf)) page.say(sentence);
      if (plan.gig.kind === 'class' || plan.gig.kind === 'made to order') continue;
      page.gap();
      page.table(
        ['at', 'may wait'],
        advice.card.filter((row) => row.minute % cardStep === 0).map((row) => [clockAt(plan.gig.starts, row.minute), row.mayWait]),
      );
      page.gap();
      page.table(
        ['artists', 'wait in time, %', 'served, %', ''],
        advice.artists.tried.map((tried) => [
          tried.artists,
          Math.round(100 * tried.shareWithin.mean),
          Math.round(100 * tried.shareServed.mean),
          tried.isKept ? 'keeps the promise' : '',
        ]),
      );
    }
  },
);
/** Minutes between the rows that are printed of a closing card. */
const cardStep = 15;
