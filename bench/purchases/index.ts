import { readFileSync } from 'node:fs';
import {
  cheapestPurchases,
  costOf,
  type GridBag,
  gridProgram,
  ownDemand,
  type PurchaseGrid,
  type SearchedPurchases,
  scenarioLevels,
  searchOrders,
} from '@twistwright/planner';
import { openSolver } from '@twistwright/solver/node';
import { type Measured, median } from '../measure.ts';
import { inventedGrid } from './invented-grid.ts';

interface PurchaseCase {
  readonly grid: PurchaseGrid;
  readonly expects: { readonly cost?: number; readonly bound?: number; readonly rule: number };
}
const caseOf = (name: string): PurchaseCase =>
  JSON.parse(readFileSync(new URL(`../../cases/purchases/${name}.json`, import.meta.url), 'utf8'));

/** Processor seconds of this process, all threads: on a shared machine the only clock that says what the work costs. */
const processorSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};
const wallSeconds = (): number => performance.now() / 1000;

/** Purchases: small ones against plain HiGHS and the rule of thumb, the two kept instances, and a year of fortnights at eight suppliers. */
export async function benchPurchases(): Promise<readonly Measured[]> {
  const solver = openSolver();
  try {
    return [
      ...(await smallCase(solver)),
      ...(await randomSmall(solver)),
      ...largeCase(),
      ...largest(),
      ...growth(),
      ...(await timeLimit(solver)),
    ];
  } finally {
    await solver.close();
  }
}

type Solver = ReturnType<typeof openSolver>;

async function smallCase(solver: Solver): Promise<readonly Measured[]> {
  const { grid, expects } = caseOf('buy-12x2x1');
  const times: number[] = [];
  let cost = Number.NaN;
  let proven = false;
  for (let k = 0; k < 24; k++) {
    const begun = processorSeconds();
    const found = await cheapestPurchases(grid, {}, { solver, now: wallSeconds });
    if (k >= 15) times.push(1000 * (processorSeconds() - begun));
    cost = found.ok ? found.value.cost : Number.NaN;
    proven = found.ok && found.value.proof.kind === 'proven';
  }
  const time = median(times);
  return [
    {
      what: `buy-12x2x1, ${proven ? 'proven' : 'found'}`,
      value: cost / 100,
      unit: '',
      goal: 'proven 139.21',
      met: proven && cost === expects.cost,
    },
    {
      what: 'buy-12x2x1, processor time to the proof, warm (after 15 others)',
      value: time,
      unit: 'ms',
      goal: 'at most 50',
      met: time <= 50,
    },
  ];
}

async function randomSmall(solver: Solver): Promise<readonly Measured[]> {
  const count = 100;
  const ours: number[] = [];
  const plain: number[] = [];
  const rule: number[] = [];
  let proven = 0;
  let same = 0;
  for (let seed = 1; seed <= count; seed++) {
    const grid = inventedGrid(seed, { items: 12, suppliers: 2, periods: 1 });
    let begun = processorSeconds();
    const found = await cheapestPurchases(grid, {}, { solver, now: wallSeconds });
    ours.push(1000 * (processorSeconds() - begun));
    begun = processorSeconds();
    const model = gridProgram(grid, scenarioLevels(grid, ownDemand(grid)), 1, { kind: 'cheapest', covered: 1 });
    const solved = await solver.solve(model.program);
    plain.push(1000 * (processorSeconds() - begun));
    if (!found.ok || solved.outcome !== 'optimal') continue;
    if (found.value.proof.kind === 'proven') proven++;
    if (Math.abs(found.value.cost - costOf(grid, model.planOf(solved.values)).total) < 1e-6) same++;
    rule.push(bestRule(grid) / found.value.cost - 1);
  }
  return [
    { what: `${count} random 12x2x1: proven`, value: proven, unit: `of ${count}`, goal: 'all', met: proven === count },
    { what: 'of these, the cost that plain HiGHS finds', value: same, unit: `of ${count}`, goal: 'all', met: same === count },
    { what: 'processor time, median', value: median(ours), unit: 'ms', goal: 'at most 50', met: median(ours) <= 50 },
    { what: 'processor time, worst', value: Math.max(...ours), unit: 'ms' },
    { what: 'plain HiGHS, processor time, median', value: median(plain), unit: 'ms' },
    { what: 'plain HiGHS, processor time, worst', value: Math.max(...plain), unit: 'ms' },
    { what: 'best rule of thumb, dearer by, median', value: 100 * median(rule), unit: '%' },
    { what: 'best rule of thumb, dearer by, worst', value: 100 * Math.max(...rule), unit: '%' },
    {
      what: 'best rule of thumb, dearer by, least',
      value: 100 * Math.min(...rule),
      unit: '%',
      goal: 'never cheaper',
      met: Math.min(...rule) > -1e-9,
    },
  ];
}

/** The best of two rules: everything at one shop where one has all of it, and each item where it is cheapest; whole bags, all in the first order that can serve. */
function bestRule(grid: PurchaseGrid): number {
  const shops = [...new Set(grid.orders.map((order) => order.supplier))];
  const plans = [...shops.map((shop) => [shop]), shops].map((from) => rulePlan(grid, from));
  return Math.min(...plans.map((plan) => (plan === undefined ? Infinity : costOf(grid, plan).total)));
}
function rulePlan(grid: PurchaseGrid, shops: readonly number[]): readonly GridBag[] | undefined {
  const plan: GridBag[] = [];
  for (const [i, item] of grid.items.entries()) {
    const missing = item.demand.reduce((sum, d) => sum + d, 0) - item.supply.reduce((sum, lot) => sum + lot.pieces, 0);
    if (missing <= 0) continue;
    const lines = grid.offers
      .map((offer, f) => ({ offer, f, bags: Math.ceil(missing / offer.pieces) }))
      .filter(({ offer }) => offer.item === i && shops.includes(offer.supplier))
      .sort((a, b) => a.bags * (a.offer.steps[0]?.price ?? 0) - b.bags * (b.offer.steps[0]?.price ?? 0));
    const best = lines[0];
    if (best === undefined) return undefined;
    plan.push({ order: grid.orders.findIndex((order) => order.supplier === best.offer.supplier), offer: best.f, bags: best.bags });
  }
  return plan;
}

function largeCase(): readonly Measured[] {
  const { grid, expects } = caseOf('buy-60x5x12');
  const bound = expects.bound ?? Number.NaN;
  const seeds = [1, 2, 3, 4, 5, 6, 7, 8, 9];
  const { found, times } = searched(grid, seeds, 1);
  const gaps = found.map(({ cost }) => 100 * (cost / bound - 1));
  const own = found.map(({ cost, bound: ours }) => 100 * (cost / ours - 1));
  const worst = Math.max(...gaps);
  return [
    {
      what: `buy-60x5x12, ${seeds.length} seeds, cost, median, within ${median(own).toFixed(2)} %`,
      value: median(found.map(({ cost }) => cost)) / 100,
      unit: '',
    },
    { what: 'above the known bound 1768.39, median', value: median(gaps), unit: '%', goal: 'at most 0.3', met: median(gaps) <= 0.3 },
    { what: 'above the known bound, worst seed', value: worst, unit: '%', goal: 'at most 0.5', met: worst <= 0.5 },
    { what: 'above our own bound, median', value: median(own), unit: '%' },
    { what: 'processor time, median', value: median(times), unit: 's', goal: 'one second', met: median(times) <= 1.05 },
    {
      what: 'dearer than no rule of thumb (1841.00): worst seed',
      value: Math.max(...found.map(({ cost }) => cost)) / 100,
      unit: '',
      goal: 'at most 1841',
      met: Math.max(...found.map(({ cost }) => cost)) <= expects.rule,
    },
  ];
}

function largest(): readonly Measured[] {
  const { found, times } = searched(inventedGrid(1, { items: 200, suppliers: 8, periods: 26 }), [1], 10);
  const gaps = found.map(({ cost, bound }) => 100 * (cost / bound - 1));
  return [
    {
      what: '200 items x 8 suppliers x 26 dates, within (own bound)',
      value: Math.max(...gaps),
      unit: '%',
      goal: 'at most 2',
      met: Math.max(...gaps) <= 2,
    },
    { what: 'processor time', value: median(times), unit: 's', goal: 'ten seconds', met: median(times) <= 10.5 },
  ];
}

/** Searches with a limit in processor seconds. */
function searched(
  grid: PurchaseGrid,
  seeds: readonly number[],
  seconds: number,
): { readonly found: readonly SearchedPurchases[]; readonly times: readonly number[] } {
  const found: SearchedPurchases[] = [];
  const times: number[] = [];
  searchOrders(grid, { seed: 99, work: 2e7, seconds: 1, now: processorSeconds }); // warms the engine
  for (const seed of seeds) {
    const begun = processorSeconds();
    const answer = searchOrders(grid, { seed, work: 2.2e8 * seconds, seconds, now: processorSeconds });
    times.push(processorSeconds() - begun);
    if (answer === undefined) throw new Error('no plan was found');
    if (Math.abs(costOf(grid, answer.plan).total - answer.cost) > 1e-4) throw new Error('a plan does not cost what it says');
    found.push(answer);
  }
  return { found, times };
}

/** Cost of one pass over items x dates: linear if the last column is about 1. */
function growth(): readonly Measured[] {
  const perCell = (items: number, periods: number): number => {
    const grid = inventedGrid(3, { items, suppliers: 4, periods });
    searchOrders(grid, { seed: 1, work: 2e7 });
    const begun = processorSeconds();
    const answer = searchOrders(grid, { seed: 1, work: 6e7 });
    return ((processorSeconds() - begun) / (answer?.work ?? Number.NaN)) * 1e9;
  };
  const small = perCell(30, 10);
  const large = perCell(300, 10);
  return [
    {
      what: 'time for one addition of the programme by item, 300 items against 30',
      value: large / small,
      unit: 'x',
      goal: 'at most 1.5',
      met: large / small <= 1.5,
    },
  ];
}

async function timeLimit(solver: Solver): Promise<readonly Measured[]> {
  const grid = inventedGrid(5, { items: 40, suppliers: 4, periods: 5 });
  const model = gridProgram(grid, scenarioLevels(grid, ownDemand(grid)), 1, { kind: 'cheapest', covered: 1 });
  const seconds = 2;
  const begun = wallSeconds();
  const solved = await solver.solve(model.program, { seconds });
  const spent = wallSeconds() - begun;
  return [
    {
      what: `time limit of ${seconds} s on a hard programme (${solved.outcome}), kept to`,
      value: spent / seconds,
      unit: 'x',
      goal: 'at most 1.1',
      met: spent / seconds <= 1.1,
    },
  ];
}
