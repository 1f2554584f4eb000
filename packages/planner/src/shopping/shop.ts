import {
  fail,
  type LocalDate,
  longDate,
  type Money,
  money,
  ok,
  type Problem,
  type Result,
  roundToMoney,
  shortDate,
  showMoney,
} from '@twistwright/units';
import type { JointSamples } from '../needs/index.ts';
import { type NumberedProblem, numbered, scenariosOf } from './grid-of-problem.ts';
import { boughtLots, cashOf } from './grid-program.ts';
import { meanMissing, missingCounter } from './missing-pieces.ts';
import { carriageOf, type GridBag, netOf, priceAt } from './purchase-grid.ts';
import type { PurchaseProblem } from './purchase-problem.ts';
import { type ThumbPurchases, thumbPurchases } from './rule-of-thumb.ts';
import { coveredRuns, type GridScenarios } from './scenario-levels.ts';
import type { Because, CurvePoint, RuleOfThumb, ShoppingLine, ShoppingOrder, ShoppingPlan, ShoppingRefusal } from './shopping-plan.ts';
import {
  cheapestPurchases,
  type PurchaseAnswer,
  type PurchaseOutcome,
  type PurchaseRefusal,
  type PurchaseTools,
  safestPurchases,
} from './solve-purchases.ts';

export interface ShopOptions {
  /** `cheapest` for the chance (default), or `safest` within the budget. */
  readonly goal?: 'cheapest' | 'safest';
  /** An independent sample: the plan's chance is counted on it too. */
  readonly elsewhere?: JointSamples;
}

/**
 * The shopping plan: least cost of goods, carriage and keeping such that nothing asked for runs out with the chance, exactly on the joint sample;
 * or the best chance for a budget. Refusals come with the nearest plan that is possible.
 */
export async function shop(
  problem: PurchaseProblem,
  tools: PurchaseTools,
  options: ShopOptions = {},
): Promise<Result<ShoppingPlan, ShoppingRefusal>> {
  const foreign = foreignCurrencies(problem);
  if (foreign.length > 0) return refuseForeign(problem, foreign, tools, options);
  if (problem.budget !== undefined && problem.budget < 0) throw new RangeError(`a budget cannot be ${problem.budget}`);
  const begun = tools.now?.() ?? 0;
  const frame = prepared(problem);
  const goal = options.goal ?? 'cheapest';
  if (goal === 'safest') {
    const budget = problem.budget;
    if (budget === undefined) throw new RangeError('the safest plan needs a budget');
    const outcome = await safestPurchases(frame.grid, { scenarios: frame.scenarios, budget }, tools);
    return outcome.ok ? ok(planOf(frame, outcome.value, options)) : refuse(frame, outcome.error, leftOf(tools, begun), options);
  }
  const outcome = await solveCheapest(frame, tools);
  return outcome.ok ? ok(planOf(frame, outcome.value, options)) : refuse(frame, outcome.error, leftOf(tools, begun), options);
}

/** The same tools with what is left of the time limit, at least half a second so that a refusal can name the nearest plan. */
function leftOf(tools: PurchaseTools, begun: number): PurchaseTools {
  if (tools.now === undefined || tools.seconds === undefined) return tools;
  return { ...tools, seconds: Math.max(0.5, tools.seconds - (tools.now() - begun)) };
}

/** A numbered problem with its rule of thumb, which is both a start for the solver and what the plan is compared with. */
interface Prepared extends NumberedProblem {
  readonly thumb?: ThumbPurchases;
}
function prepared(problem: PurchaseProblem): Prepared {
  const frame = numbered(problem);
  const thumb = thumbPurchases(frame);
  return thumb === undefined ? frame : { ...frame, thumb };
}

function solveCheapest(frame: Prepared, tools: PurchaseTools, scenarios: GridScenarios = frame.scenarios): Promise<PurchaseOutcome> {
  const { problem, grid } = frame;
  const start = frame.thumb?.plan;
  return cheapestPurchases(
    grid,
    {
      scenarios,
      chance: problem.chance,
      ...(problem.budget === undefined ? {} : { budget: problem.budget }),
      ...(start === undefined ? {} : { start }),
    },
    tools,
  );
}

/** Chances between which the curve is drawn if none are named. */
const usualChances: readonly number[] = [0.5, 0.7, 0.8, 0.9, 0.95, 0.98, 0.99];

/** Cost against chance: the cheapest plan for each chance, those that cost no less than a safer one left out. Impossible chances are left out. */
export async function shoppingCurve(
  problem: PurchaseProblem,
  tools: PurchaseTools,
  chances: readonly number[] = usualChances,
): Promise<readonly CurvePoint[]> {
  if (foreignCurrencies(problem).length > 0) return [];
  const { budget: _budget, ...unlimited } = problem;
  const frame = numbered(unlimited);
  const points: CurvePoint[] = [];
  let start: readonly GridBag[] = [];
  for (const chance of [...new Set([...chances, problem.chance])].sort((a, b) => b - a)) {
    const outcome = await cheapestPurchases(frame.grid, { scenarios: frame.scenarios, chance, start }, tools);
    if (!outcome.ok) continue;
    start = outcome.value.plan;
    points.push({
      wantedChance: chance,
      chance: outcome.value.chance,
      total: money(outcome.value.cash),
      bags: outcome.value.plan.reduce((sum, line) => sum + line.bags, 0),
      proof: outcome.value.proof,
    });
  }
  const nothing = coveredShare(frame, [], frame.scenarios);
  points.push({ wantedChance: nothing, chance: nothing, total: money(0), bags: 0, proof: { kind: 'proven' } });
  return points
    .filter(
      (point, k) =>
        !points.some(
          (other, n) =>
            n !== k &&
            other.total <= point.total &&
            other.chance >= point.chance &&
            (other.total < point.total || other.chance > point.chance || n < k),
        ),
    )
    .sort((a, b) => a.chance - b.chance);
}

const coveredShare = (frame: Prepared, plan: readonly GridBag[], scenarios: GridScenarios): number =>
  coveredRuns(frame.grid, scenarios, boughtLots(frame.grid, plan)).reduce((sum, covered) => sum + covered, 0) / scenarios.runs;

function meanMissingOf({ grid, scenarios }: Prepared, plan: readonly GridBag[]): number {
  return boughtLots(grid, plan).reduce((sum, lots, item) => sum + meanMissing(grid, scenarios, item, lots), 0);
}

function planOf(frame: Prepared, answer: PurchaseAnswer, options: ShopOptions): ShoppingPlan {
  const { problem, grid, scenarios } = frame;
  const orders = ordersOf(frame, answer.plan);
  const goods = money(orders.reduce((sum, order) => sum + order.goods, 0));
  const total = money(answer.cash);
  const elsewhere =
    options.elsewhere === undefined
      ? undefined
      : coveredShare(frame, answer.plan, scenariosOf({ ...problem, samples: options.elsewhere }, frame.items, frame.days));
  const firstOrderBy = orders.map((order) => order.orderBy).sort()[0];
  const rule = ruleOf(frame, total);
  return {
    orders,
    goods,
    carriage: money(total - goods),
    total,
    keeping: roundToMoney(keepingOf(frame, answer.plan)),
    tiedUp: roundToMoney(tiedUpOf(frame, answer.plan)),
    wantedChance: problem.chance,
    chance: answer.chance,
    ...(elsewhere === undefined ? {} : { chanceElsewhere: elsewhere }),
    chanceNow: coveredShare(frame, [], scenarios),
    missingNow: meanMissingOf(frame, []),
    missing: meanMissingOf(frame, answer.plan),
    runs: scenarios.runs,
    proof: answer.proof,
    ...(firstOrderBy === undefined ? {} : { firstOrderBy }),
    ...(rule === undefined ? {} : { ruleOfThumb: rule }),
  };

  function ruleOf(within: Prepared, cash: Money): RuleOfThumb | undefined {
    const { thumb } = within;
    if (thumb === undefined) return undefined;
    const supplier = thumb.supplier === undefined ? undefined : problem.suppliers[thumb.supplier]?.id;
    return {
      kind: supplier === undefined ? 'each where cheapest' : 'one shop',
      ...(supplier === undefined ? {} : { supplier }),
      bags: thumb.plan.reduce((sum, line) => sum + line.bags, 0),
      total: money(thumb.cash),
      chance: coveredShare(within, thumb.plan, scenarios),
      dearerBy: money(thumb.cash - cash),
    };
  }
  /** Keeping of the bought pieces beyond what the expected demand takes of them. */
  function keepingOf(within: NumberedProblem, plan: readonly GridBag[]): number {
    return grid.items.reduce((sum, item, i) => {
      const bought = boughtLots(within.grid, plan)[i] ?? [];
      const left = netOf(item.demand, [...item.supply, ...bought]).left;
      const before = netOf(item.demand, item.supply).left;
      return sum + (item.holding ?? []).reduce((cost, each, p) => cost + each * Math.max(0, (left[p] ?? 0) - (before[p] ?? 0)), 0);
    }, 0);
  }
  function tiedUpOf(within: NumberedProblem, plan: readonly GridBag[]): number {
    const lots = boughtLots(within.grid, plan);
    return grid.items.reduce((sum, item, i) => {
      const bought = lots[i] ?? [];
      const pieces = bought.reduce((all, lot) => all + lot.pieces, 0);
      if (pieces === 0) return sum;
      const left = netOf(item.demand, [...item.supply, ...bought]).left.at(-1) ?? 0;
      const before = netOf(item.demand, item.supply).left.at(-1) ?? 0;
      const value = plan.reduce((all, { offer, bags }) => {
        const sold = grid.offers[offer];
        return all + (sold?.item === i ? bags * priceAt(sold.steps, bags) : 0);
      }, 0);
      return sum + value * Math.min(1, Math.max(0, left - before) / pieces);
    }, 0);
  }
}

function ordersOf(frame: Prepared, plan: readonly GridBag[]): readonly ShoppingOrder[] {
  const { grid, problem } = frame;
  const covered = coveredRuns(grid, frame.scenarios, boughtLots(grid, plan));
  const reasons = new Map<number, Because>();
  const reasonOf = (item: number): Because => {
    const known = reasons.get(item) ?? becauseOf(frame, item, covered);
    reasons.set(item, known);
    return known;
  };
  return [...new Set(plan.map((line) => line.order))]
    .map((o): ShoppingOrder => {
      const order = grid.orders[o];
      const date = frame.dates[o];
      const supplier = problem.suppliers[order?.supplier ?? -1];
      if (order === undefined || date === undefined || supplier === undefined) throw new RangeError(`no order ${o}`);
      const lines = plan
        .filter((line) => line.order === o)
        .map((line) => lineOf(frame, line, reasonOf))
        .sort((a, b) => (a.name < b.name ? -1 : 1));
      const goods = lines.reduce((sum, line) => sum + line.total, 0);
      const carriage = carriageOf(order, goods);
      return {
        supplier: supplier.id,
        name: supplier.name,
        orderBy: date.orderBy,
        ...(date.before === undefined ? {} : { before: date.before }),
        arrives: date.arrives,
        neededOn: frame.days[order.arrives] ?? problem.today,
        daysToSpare: date.daysToSpare,
        lines,
        goods: money(goods),
        carriage: money(carriage),
        total: money(goods + carriage),
        ...(carriage > 0 && order.freeOver !== undefined ? { toFreeCarriage: money(order.freeOver - goods) } : {}),
      };
    })
    .sort((a, b) => (a.orderBy < b.orderBy ? -1 : a.orderBy > b.orderBy ? 1 : a.name < b.name ? -1 : 1));
}

function lineOf(frame: Prepared, { offer: f, bags }: GridBag, reasonOf: (item: number) => Because): ShoppingLine {
  const sold = frame.grid.offers[f];
  const offer = frame.offers[f];
  const item = frame.items[sold?.item ?? -1];
  if (sold === undefined || offer === undefined || item === undefined) throw new RangeError(`no offer ${f}`);
  const price = priceAt(sold.steps, bags);
  return {
    offer: offer.id,
    item: item.id,
    name: item.name,
    bags,
    count: offer.count,
    price: money(price),
    total: money(bags * price),
    because: reasonOf(sold.item),
  };
}

function becauseOf(frame: Prepared, i: number, covered: Uint8Array): Because {
  const { grid, scenarios, problem } = frame;
  const item = grid.items[i];
  const facts = frame.items[i];
  if (item === undefined || facts === undefined) throw new RangeError(`no item ${i}`);
  const width = grid.items.length;
  let short = 0;
  let runsShort = 0;
  const missingIn = missingCounter(grid.periods, item.supply);
  const coversNone = !covered.includes(1);
  for (let r = 0; r < scenarios.runs; r++) {
    const missing = missingIn(scenarios.need, r * width + i);
    if (missing > 0) runsShort++;
    if (coversNone || covered[r] === 1) short = Math.max(short, missing);
  }
  const column = problem.samples.items.indexOf(facts.id);
  const fromGigs = problem.samples.perGig
    .filter((gig) => gig.day >= problem.today && column >= 0)
    .map(({ gig, day, used }) => ({ gig, day, mean: columnMean(used, problem.samples.items.length, column) }));
  const fromHand = problem.byHand
    .filter((need) => need.item === facts.id && need.by >= problem.today)
    .map((need) => ({ reason: need.reason ?? 'entered by hand', day: need.by, mean: need.count }));
  const causes = [...fromGigs, ...fromHand].filter((cause) => cause.mean > 0);
  const mean = causes.reduce((sum, cause) => sum + cause.mean, 0);
  const lastDay = frame.days.at(-1) ?? problem.today;
  return {
    have: facts.stock.reduce((sum, lot) => sum + lot.count, 0),
    onOrder: facts.onOrder.reduce((sum, order) => sum + (order.expectedOn <= lastDay ? order.count : 0), 0),
    mean,
    short,
    chanceShort: runsShort / scenarios.runs,
    causes: causes.map((cause) => ({ ...cause, share: cause.mean / mean })).sort((a, b) => b.share - a.share),
  };
}
function columnMean(used: Int32Array, width: number, column: number): number {
  let sum = 0;
  for (let k = column; k < used.length; k += width) sum += used[k] ?? 0;
  return sum / (used.length / width);
}

const foreignCurrencies = (problem: PurchaseProblem): PurchaseProblem['suppliers'] =>
  problem.suppliers.filter((supplier) => supplier.currency !== undefined && supplier.currency !== problem.currency);

async function refuseForeign(
  problem: PurchaseProblem,
  foreign: PurchaseProblem['suppliers'],
  tools: PurchaseTools,
  options: ShopOptions,
): Promise<Result<ShoppingPlan, ShoppingRefusal>> {
  const problems = foreign.map(
    (supplier): Problem => ({
      code: 'shopping.currency',
      path: ['suppliers', supplier.id, 'currency'],
      sentence: `${supplier.name} sells in ${supplier.currency}, but the book is in ${problem.currency}; prices of two currencies cannot be added.`,
      todo: `Enter its prices in ${problem.currency}, or leave it out.`,
      weight: 'error',
    }),
  );
  const suppliers = problem.suppliers.filter((supplier) => !foreign.includes(supplier));
  const nearest = await shop({ ...problem, suppliers }, tools, options);
  return fail(
    nearest.ok
      ? { problems, nearest: nearest.value }
      : {
          problems: [...problems, ...nearest.error.problems],
          ...(nearest.error.nearest === undefined ? {} : { nearest: nearest.error.nearest }),
        },
  );
}

async function refuse(
  frame: Prepared,
  error: PurchaseRefusal,
  tools: PurchaseTools,
  options: ShopOptions,
): Promise<Result<ShoppingPlan, ShoppingRefusal>> {
  if (error.kind === 'cannot be covered') return refuseUncovered(frame, error, tools, options);
  if (error.kind === 'no answer in time')
    return fail({
      problems: [
        {
          code: 'shopping.out-of-time',
          path: ['shopping'],
          sentence: 'No plan was found in the time allowed.',
          todo: 'Allow more seconds, or plan for fewer gigs at once.',
          weight: 'error',
        },
      ],
    });
  return refuseNoPlan(frame, tools, options);
}

/** Something is needed that nobody sells, or that cannot be there in time: says what, and plans for the rest. */
async function refuseUncovered(
  frame: Prepared,
  error: PurchaseRefusal & { readonly kind: 'cannot be covered' },
  tools: PurchaseTools,
  options: ShopOptions,
): Promise<Result<ShoppingPlan, ShoppingRefusal>> {
  const { problem, items, days } = frame;
  const reached = new Map<number, number>();
  const worst = new Map<number, number>();
  for (const gap of error.gaps) {
    reached.set(gap.item, Math.max(reached.get(gap.item) ?? -1, gap.period));
    worst.set(gap.item, Math.max(worst.get(gap.item) ?? 0, gap.runs / frame.scenarios.runs));
  }
  const byChance = [...reached].sort(([a], [b]) => (worst.get(b) ?? 0) - (worst.get(a) ?? 0) || a - b);
  const problems = byChance.map(([i, period]): Problem => {
    const chance = outOf100(worst.get(i) ?? 0);
    const item = items[i];
    const day = days[period] ?? problem.today;
    const name = item?.name ?? '';
    return problem.offers.some((offer) => offer.item === item?.id)
      ? lateProblem(name, item?.id ?? '', day, chance)
      : {
          code: 'shopping.no-offer',
          path: ['items', item?.id ?? ''],
          sentence: `${name} may run out by ${longDate(day)} (${chance}), and no supplier in the book sells it.`,
          todo: 'Enter an offer for it, offer figures that do without it, or accept that it may run out.',
          weight: 'error',
        };
  });
  const possible = withoutGaps(frame, reached);
  const outcome = await solveCheapest(frame, tools, possible);
  if (!outcome.ok) return fail({ problems });
  const covered = coveredShare(frame, outcome.value.plan, frame.scenarios);
  return fail({ problems, nearest: planOf(frame, { ...outcome.value, chance: covered }, options) });
}
const lateProblem = (name: string, id: string, day: LocalDate, chance: string): Problem => ({
  code: 'shopping.too-late',
  path: ['items', id],
  sentence: `${name} may run out by ${longDate(day)} (${chance}), and no order placed now can arrive in time.`,
  todo: `Keep fewer days to spare, fetch it from a counter before ${shortDate(day)}, or offer figures that do without it.`,
  weight: 'error',
});
/** Futures in which what cannot be bought in time is asked for only as far as there is some. */
function withoutGaps(frame: Prepared, reached: ReadonlyMap<number, number>): GridScenarios {
  const { scenarios, grid } = frame;
  const width = grid.items.length;
  const need = scenarios.need.map((row) => row.slice());
  for (const [i, period] of reached)
    for (let r = 0; r < scenarios.runs; r++) {
      const short = netOf(
        scenarios.need.map((row) => row[r * width + i] ?? 0),
        grid.items[i]?.supply ?? [],
      ).short;
      for (let p = 0; p <= period; p++) {
        const row = need[p];
        if (row !== undefined) row[r * width + i] = (row[r * width + i] ?? 0) - (short[p] ?? 0);
      }
    }
  return { runs: scenarios.runs, need };
}

/** Budget, least orders or most bags stand in the way: says which, with the best that the budget buys or what it would cost. */
async function refuseNoPlan(frame: Prepared, tools: PurchaseTools, options: ShopOptions): Promise<Result<ShoppingPlan, ShoppingRefusal>> {
  const { problem, grid, scenarios } = frame;
  const { budget, currency } = problem;
  if (budget !== undefined) {
    const { budget: _budget, ...unlimited } = problem;
    const needed = await solveCheapest(prepared(unlimited), tools);
    const nearest = await safestPurchases(grid, { scenarios, budget }, tools);
    const cost = needed.ok ? ` The cheapest plan for this chance costs ${showMoney(money(needed.value.cash), currency)}.` : '';
    if (needed.ok)
      return fail({
        problems: [
          {
            code: budget === 0 ? 'shopping.budget-zero' : 'shopping.budget-too-small',
            path: ['settings', 'planning', 'budget'],
            sentence: `A budget of ${showMoney(budget, currency)} does not buy what is short.${cost}`,
            todo: nearest.ok
              ? nearest.value.chance > 0
                ? `Raise the budget, or accept ${outOf100(1 - nearest.value.chance)} that something runs out.`
                : 'Raise the budget, or accept that something runs out for sure.'
              : 'Raise the budget.',
            weight: 'error',
          },
        ],
        ...(nearest.ok ? { nearest: planOf(frame, nearest.value, options) } : {}),
      });
  }
  const lenient = { ...problem, suppliers: problem.suppliers.map(({ leastOrder: _least, ...supplier }) => supplier) };
  const withoutLeast = await solveCheapest(prepared(lenient), tools);
  const problems: readonly Problem[] = withoutLeast.ok
    ? leastOrderProblems(frame, withoutLeast.value.plan)
    : [
        {
          code: 'shopping.too-few-bags',
          path: ['offers'],
          sentence: 'The suppliers have fewer bags than this chance needs.',
          todo: 'Enter more offers, or accept a higher chance of running out.',
          weight: 'error',
        },
      ];
  const safest = await safestPurchases(grid, { scenarios, budget: budget ?? Number.MAX_SAFE_INTEGER }, tools);
  return fail({ problems, ...(safest.ok ? { nearest: planOf(frame, safest.value, options) } : {}) });
}
const outOf100 = (chance: number): string =>
  chance > 0 && chance < 0.01
    ? 'less than 1 chance in 100'
    : chance < 0.015
      ? '1 chance in 100'
      : `${Math.round(chance * 100)} chances in 100`;

function leastOrderProblems(frame: Prepared, plan: readonly GridBag[]): readonly Problem[] {
  const { grid, problem } = frame;
  return [...new Set(plan.map((line) => grid.orders[line.order]?.supplier ?? -1))].flatMap((s): readonly Problem[] => {
    const supplier = problem.suppliers[s];
    const goods = cashOf(
      { ...grid, orders: grid.orders.map((order) => ({ ...order, fee: 0 })) },
      plan.filter((line) => grid.orders[line.order]?.supplier === s),
    );
    if (supplier?.leastOrder === undefined || goods >= supplier.leastOrder) return [];
    return [
      {
        code: 'shopping.least-order',
        path: ['suppliers', supplier.id, 'leastOrder'],
        sentence: `${supplier.name} takes orders from ${showMoney(supplier.leastOrder, problem.currency)}; what is short there is worth ${showMoney(money(goods), problem.currency)}.`,
        todo: 'Add bags that will be used anyway, or buy elsewhere.',
        weight: 'error',
      },
    ];
  });
}

/** Chance that a plan gives on other futures than it was made from. */
export function chanceOfOrders(problem: PurchaseProblem, plan: ShoppingPlan, samples: JointSamples): number {
  const frame = numbered({ ...problem, samples });
  const lots = plan.orders.flatMap((order) =>
    order.lines.map(({ offer, bags }): GridBag => {
      const f = frame.offers.findIndex(({ id }) => id === offer);
      const o = frame.grid.orders.findIndex(
        (candidate) => problem.suppliers[candidate.supplier]?.id === order.supplier && frame.days[candidate.arrives] === order.neededOn,
      );
      return { order: o, offer: f, bags };
    }),
  );
  return coveredShare(frame, lots, frame.scenarios);
}
