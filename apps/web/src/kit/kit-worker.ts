import type { Book } from '@twistwright/books';
import {
  type BookKitWishes,
  boughtOffers,
  describeKit,
  findKit,
  type KitPlan,
  type KitProblem,
  kitCurve,
  kitProblemOf,
  lastingOf,
  planKit,
  rulesOfThumb,
} from '@twistwright/planner';
import { type Money, money, type Result } from '@twistwright/units';
import type { BudgetRange, CurvePoint, KitAnswer, KitAsk, UnpricedWishes } from './kit-ask.ts';

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
  readonly starts: Map<number, ReadonlyMap<string, number>>;
}
let latest = 0;
let ground: Ground | undefined;

const tell = (answer: KitAnswer): void => postMessage(answer);
const breathe = (): Promise<void> => new Promise((go) => setTimeout(go, 0));

addEventListener('message', (event: MessageEvent<KitAsk>) => {
  const ask = event.data;
  latest = ask.number;
  answer(ask).catch((error: unknown) =>
    tell({ kind: 'broken', number: ask.number, message: error instanceof Error ? error.message : String(error) }),
  );
});

async function answer(ask: KitAsk): Promise<void> {
  // Lets newer questions in first, so that only the newest is worked on.
  await breathe();
  if (latest !== ask.number) return;
  if (ask.kind === 'soon') await soon(ask);
  else full(ask);
}

function full(ask: Extract<KitAsk, { kind: 'full' | 'other' }>): void {
  const { number, book, wishes } = ask;
  const plan = planKit(book, wishes, { runs: manyRuns });
  if (!plan.ok) tell({ kind: 'refused', number, of: ask.kind, problems: plan.error });
  else if (ask.kind === 'other') tell({ kind: 'other', number, plan: plan.value });
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

async function soon({ number, book, wishes, budget }: Extract<KitAsk, { kind: 'soon' }>): Promise<void> {
  const on = groundFor(book, wishes);
  if (!on.problem.ok) return tell({ kind: 'refused', number, of: 'soon', problems: on.problem.error });
  if (budget !== undefined) {
    const found = findAt(on, on.problem.value, budget);
    if (found.ok) {
      const kit = describeKit(found.value);
      const lasting = lastingOf(found.value.model, found.value.bought, fewRuns, 1);
      const rules = rulesOfThumb(found.value.model).map(({ rule, spent, met }) => ({ rule, spent, met }));
      tell({ kind: 'quick', number, quick: { kit, lasting, rules } });
    } else tell({ kind: 'refused', number, of: 'soon', problems: found.error });
  }
  await breathe();
  if (latest !== number) return undefined;
  on.range ??= rangeOf(on.problem.value);
  if (on.range === undefined) return undefined;
  tell({ kind: 'range', number, range: on.range });
  return drawCurve(on, on.problem.value, on.range, number);
}

/** The curve from left to right; stops when something newer is asked, and goes on where it was. */
async function drawCurve(on: Ground, problem: KitProblem, { cheapest, everything }: BudgetRange, number: number): Promise<void> {
  if (on.points.length > 0) tell({ kind: 'points', number, points: [...on.points], isDone: on.points.length >= pointsOnCurve });
  while (on.points.length < pointsOnCurve) {
    await breathe();
    if (latest !== number) return;
    const budget = money(Math.round(cheapest + ((everything - cheapest) * on.points.length) / (pointsOnCurve - 1)));
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
  const smaller = [...on.starts.keys()].filter((known) => known <= budget);
  const start = smaller.length === 0 ? undefined : on.starts.get(Math.max(...smaller));
  const found = findKit(
    { ...problem, wishes: { ...problem.wishes, budget } },
    { effort: 'soon', ...(start === undefined ? {} : { start }) },
  );
  if (found.ok) on.starts.set(budget, boughtOffers(found.value));
  return found;
}

function groundFor(book: Book, wishes: UnpricedWishes): Ground {
  const key = JSON.stringify([wishes, book.offers, book.suppliers, book.items, book.figures, book.settings?.tools]);
  if (ground?.key !== key)
    ground = {
      key,
      problem: kitProblemOf(book, { ...wishes, budget: money(0) }),
      range: undefined,
      points: [],
      starts: new Map(),
    };
  return ground;
}

function rangeOf(problem: KitProblem): BudgetRange | undefined {
  const curve = kitCurve(problem, 2);
  return curve.ok ? { cheapest: curve.value.cheapest, everything: curve.value.everything } : undefined;
}
