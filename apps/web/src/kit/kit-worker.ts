import type { Book } from '@twistwright/books';
import {
  type BookKitWishes,
  boughtOffers,
  describeKit,
  type FoundKit,
  findKit,
  foundBefore,
  type KitPlan,
  type KitProblem,
  kitCurve,
  kitProblemOf,
  lastingOf,
  nearestKit,
  planKit,
  rulesOfThumb,
} from '@twistwright/planner';
import { type Money, money, ok, type Result } from '@twistwright/units';
import { curveBudgets } from './curve-budgets.ts';
import {
  type BudgetRange,
  type CurvePoint,
  type KitAnswer,
  type KitAsk,
  keyOf,
  type QuickKit,
  type ToldPurchase,
  type UnpricedWishes,
} from './kit-ask.ts';

/** Budgets on the curve. */
const pointsOnCurve = 32;
/** Runs of guests for a spread while a finger moves, and at rest. */
const fewRuns = 100;
const manyRuns = 400;

/** All that holds for one set of wishes, whatever the money. */
interface Ground {
  readonly key: string;
  readonly problem: Result<KitProblem>;
  range: BudgetRange | undefined;
  readonly points: CurvePoint[];
  /** Purchases found so far, by budget: better ones grow from them. */
  readonly known: Map<number, FoundKit>;
}
let latest = 0;
let book: Book | undefined;
/** Number of the question with which the book came: what was found for another one is not remembered. */
let bookNumber = 0;
let ground: Ground | undefined;
/** Where purchases are told. */
let listener: MessagePort | undefined;
/** Purchases that another worker has told, for one set of wishes. */
let told: { readonly key: string; readonly known: Map<number, Told> } | undefined;
interface Told {
  readonly found: FoundKit;
  /** Described ahead of the question, while nothing is asked. */
  quick: Omit<QuickKit, 'rules'> | undefined;
}

const tell = (answer: KitAnswer): void => postMessage(answer);
const breathe = (): Promise<void> => new Promise((go) => setTimeout(go, 0));

addEventListener('message', (event: MessageEvent<KitAsk>) => {
  const ask = event.data;
  if (ask.kind === 'book') {
    book = ask.book;
    bookNumber = ask.number;
    ground = undefined;
    told = undefined;
    return;
  }
  if (ask.kind === 'port') {
    if (ask.use === 'tell') listener = ask.port;
    else ask.port.onmessage = ({ data }: MessageEvent<ToldPurchase>) => remember(data);
    return;
  }
  latest = ask.number;
  answer(ask).catch((error: unknown) =>
    tell({ kind: 'broken', number: ask.number, message: error instanceof Error ? error.message : String(error) }),
  );
});

function remember({ book: of, key, budget, found }: ToldPurchase): void {
  if (of !== bookNumber) return;
  if (told?.key !== key) told = { key, known: new Map() };
  const entry: Told = { found, quick: undefined };
  told.known.set(budget, entry);
  setTimeout(() => describedOf(entry, budget), 0);
}
const describedOf = (entry: Told, budget: Money): Omit<QuickKit, 'rules'> => {
  entry.quick ??= quickOf(entry.found, budget);
  return entry.quick;
};

async function answer(ask: Exclude<KitAsk, { kind: 'book' | 'port' }>): Promise<void> {
  // Lets newer questions in first, so that only the newest is worked on.
  await breathe();
  if (latest !== ask.number) return;
  if (ask.kind === 'known') tellKnown(ask);
  else if (book === undefined) return;
  else if (ask.kind === 'soon') await soon(book, ask);
  else full(book, ask);
}

function full(book: Book, ask: Extract<KitAsk, { kind: 'full' | 'other' }>): void {
  const { number, wishes } = ask;
  const plan = planKit(book, wishes, { runs: manyRuns });
  if (!plan.ok) {
    tell({ kind: 'refused', number, of: ask.kind, problems: plan.error });
    const nearest = nearestKit(book, wishes, { effort: 'soon', runs: fewRuns });
    if (nearest !== undefined) tell({ kind: 'nearest', number, nearest });
  } else if (ask.kind === 'other') tell({ kind: 'other', number, plan: plan.value });
  else {
    tell({ kind: 'full', number, plan: plan.value, freeMet: undefined });
    if ((wishes.forcedIn ?? []).length > 0 || (wishes.takenOut ?? []).length > 0) free(number, book, wishes, plan.value);
  }
}

/** What would be met if nothing were forced in or taken out. */
function free(number: number, book: Book, wishes: BookKitWishes, plan: KitPlan): void {
  const { forcedIn: _forced, takenOut: _out, ...plain } = wishes;
  const without = planKit(book, plain, { runs: 1 });
  if (without.ok) tell({ kind: 'full', number, plan, freeMet: Math.max(without.value.kit.met, plan.kit.met) });
}

/** The best that is known for the money; for other wishes the same bags, if they can still be had. */
function tellKnown({ number, wishes, budget }: Extract<KitAsk, { kind: 'known' }>): void {
  const near = told === undefined ? undefined : nearest(told.known, budget);
  if (near === undefined) return;
  const quick = told?.key === keyOf(wishes) ? describedOf(near, budget) : forOtherWishes(wishes, budget, near.found);
  if (quick !== undefined) tell({ kind: 'known', number, quick: { ...quick, kit: { ...quick.kit, budget } } });
}
function forOtherWishes(wishes: UnpricedWishes, budget: Money, near: FoundKit): Omit<QuickKit, 'rules'> | undefined {
  const problem = book === undefined ? undefined : groundFor(book, wishes).problem;
  if (problem?.ok !== true) return undefined;
  const found = foundBefore({ ...problem.value, wishes: { ...problem.value.wishes, budget } }, boughtOffers(near));
  return found === undefined ? undefined : quickOf(found, budget);
}

async function soon(book: Book, { number, wishes, budget }: Extract<KitAsk, { kind: 'soon' }>): Promise<void> {
  const on = groundFor(book, wishes);
  if (!on.problem.ok) return tell({ kind: 'refused', number, of: 'soon', problems: on.problem.error });
  if (budget !== undefined) {
    const known = on.known.get(budget);
    const found = known === undefined ? findAt(on, on.problem.value, budget) : ok(known);
    if (found.ok) {
      const rules = rulesOfThumb(found.value.model).map(({ rule, spent, met }) => ({ rule, spent, met }));
      tell({ kind: 'quick', number, quick: { ...quickOf(found.value, budget), rules } });
    } else tell({ kind: 'refused', number, of: 'soon', problems: found.error });
  }
  await breathe();
  if (latest !== number) return undefined;
  on.range ??= rangeOf(on.problem.value);
  if (on.range === undefined) return undefined;
  tell({ kind: 'range', number, range: on.range });
  return drawCurve(on, on.problem.value, on.range, number);
}

const quickOf = (found: FoundKit, budget: Money): Omit<QuickKit, 'rules'> => ({
  kit: { ...describeKit(found), budget },
  lasting: lastingOf(found.model, found.bought, fewRuns, 1),
});

/** The curve from left to right; stops when something newer is asked, and goes on where it was. */
async function drawCurve(on: Ground, problem: KitProblem, range: BudgetRange, number: number): Promise<void> {
  if (on.points.length > 0) tell({ kind: 'points', number, points: [...on.points], isDone: on.points.length >= pointsOnCurve });
  const budgets = curveBudgets(range, pointsOnCurve);
  for (const budget of budgets.slice(on.points.length)) {
    await breathe();
    if (latest !== number) return;
    on.points.push(pointAt(on, problem, budget));
    if (on.points.length % 4 === 0) tell({ kind: 'points', number, points: [...on.points], isDone: on.points.length >= pointsOnCurve });
  }
}

function pointAt(on: Ground, problem: KitProblem, budget: Money): CurvePoint {
  const before = on.points.at(-1);
  const found = findAt(on, problem, budget);
  if (!found.ok) return { budget, met: before?.met ?? 0, low: before?.low ?? 0, high: before?.high ?? 0 };
  const { model, bought, answer: search } = found.value;
  const { met } = lastingOf(model, bought, fewRuns, 1);
  const middle = Math.max(before?.met ?? 0, search.value / model.requests);
  return { budget, met: middle, low: Math.min(middle, met.p10), high: Math.max(middle, met.p90) };
}

/** The best purchase found soon, grown from the one of the next smaller budget. */
function findAt(on: Ground, problem: KitProblem, budget: Money): ReturnType<typeof findKit> {
  const near = nearest(on.known, budget);
  const start = near === undefined ? undefined : boughtOffers(near);
  const found = findKit(
    { ...problem, wishes: { ...problem.wishes, budget } },
    { effort: 'soon', ...(start === undefined ? {} : { start }) },
  );
  if (found.ok) {
    on.known.set(budget, found.value);
    listener?.postMessage({ book: bookNumber, key: on.key, budget, found: found.value } satisfies ToldPurchase);
  }
  return found;
}
/** What is known for the next smaller budget, or this one. */
function nearest<T>(known: ReadonlyMap<number, T>, budget: Money): T | undefined {
  const smaller = [...known.keys()].filter((other) => other <= budget);
  return smaller.length === 0 ? undefined : known.get(Math.max(...smaller));
}

function groundFor(book: Book, wishes: UnpricedWishes): Ground {
  const key = keyOf(wishes);
  if (ground?.key !== key)
    ground = {
      key,
      problem: kitProblemOf(book, { ...wishes, budget: money(0) }),
      range: undefined,
      points: [],
      known: new Map(),
    };
  return ground;
}

function rangeOf(problem: KitProblem): BudgetRange | undefined {
  const curve = kitCurve(problem, 2);
  return curve.ok ? { cheapest: curve.value.cheapest, everything: curve.value.everything } : undefined;
}
