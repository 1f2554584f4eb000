import { addDays, daysBetween, type LocalDate } from '@twistwright/units';
import { type OrderDate, orderDateFor } from './order-dates.ts';
import type { GridLot, GridOffer, GridOrder, PurchaseGrid } from './purchase-grid.ts';
import type { PurchaseItem, PurchaseOffer, PurchaseProblem } from './purchase-problem.ts';
import type { GridScenarios } from './scenario-levels.ts';

/** A problem with the calendar worked out, and the way back from its indexes. */
export interface NumberedProblem {
  readonly problem: PurchaseProblem;
  readonly grid: PurchaseGrid;
  readonly scenarios: GridScenarios;
  /** Day of each period: the days on which something is needed. */
  readonly days: readonly LocalDate[];
  readonly items: readonly PurchaseItem[];
  readonly offers: readonly PurchaseOffer[];
  readonly dates: readonly OrderDate[];
}

/** Only days with needs matter: one period each, and per supplier one order that is just in time for it. */
export function numbered(problem: PurchaseProblem): NumberedProblem {
  const gigs = problem.samples.perGig.filter((gig) => gig.day >= problem.today);
  const byHand = problem.byHand.filter((need) => need.by >= problem.today);
  const days = [...new Set([...gigs.map((gig) => gig.day), ...byHand.map((need) => need.by)])].sort();
  const needed = new Set([...problem.samples.items, ...byHand.map((need) => need.item)]);
  const items = itemsNeeded(problem, needed);
  const indexOf = new Map(items.map((item, i) => [item.id, i]));
  const supplierOf = new Map(problem.suppliers.map((supplier, s) => [supplier.id, s]));
  const offers = problem.offers.filter((offer) => indexOf.has(offer.item) && supplierOf.has(offer.supplier));
  const scenarios = scenariosOf(problem, items, days);
  const orders: GridOrder[] = [];
  const dates: OrderDate[] = [];
  for (const [s, supplier] of problem.suppliers.entries())
    for (const [p, day] of days.entries()) {
      const date = orderDateFor(problem, supplier, day);
      // days so close that they share a last safe order day share the order
      if (date === undefined || orders.some((order, o) => order.supplier === s && dates[o]?.orderBy === date.orderBy)) continue;
      dates.push(date);
      orders.push({
        supplier: s,
        placed: p,
        arrives: p,
        fee: supplier.carriage,
        ...(supplier.freeFrom === undefined ? {} : { freeOver: supplier.freeFrom }),
        ...(supplier.leastOrder === undefined ? {} : { minimum: supplier.leastOrder }),
      });
    }
  const grid: PurchaseGrid = {
    periods: days.length,
    items: items.map((item, i) => ({
      name: item.name,
      demand: scenarios.need.map((need) => meanOf(need, scenarios.runs, items.length, i)),
      supply: lotsOf(item, days),
      holding: holdingOf(problem, item, days),
    })),
    orders,
    offers: offers.map((offer) => gridOffer(offer, indexOf.get(offer.item) ?? -1, supplierOf.get(offer.supplier) ?? -1, days)),
  };
  return { problem, grid, scenarios, days, items, offers, dates };
}

function itemsNeeded(problem: PurchaseProblem, needed: ReadonlySet<string>): readonly PurchaseItem[] {
  const known = new Map(problem.items.map((item) => [item.id, item]));
  return [...needed].map((id) => known.get(id) ?? { id, name: id, stock: [], onOrder: [] });
}

/** The same futures by day instead of by gig; needs entered by hand are part of every one. */
export function scenariosOf(
  problem: Pick<PurchaseProblem, 'samples' | 'byHand' | 'today'>,
  items: readonly PurchaseItem[],
  days: readonly LocalDate[],
): GridScenarios {
  const { samples, byHand, today } = problem;
  const width = items.length;
  const from = items.map((item) => samples.items.indexOf(item.id));
  const need = days.map(() => new Int32Array(samples.runs * width));
  for (const { day, used } of samples.perGig) {
    const row = need[days.indexOf(day)];
    if (row === undefined || day < today) continue;
    for (let r = 0; r < samples.runs; r++)
      for (const [i, column] of from.entries())
        if (column >= 0) row[r * width + i] = (row[r * width + i] ?? 0) + (used[r * samples.items.length + column] ?? 0);
  }
  for (const { item, count, by } of byHand) {
    const row = need[days.indexOf(by)];
    const i = items.findIndex(({ id }) => id === item);
    if (row === undefined || i < 0 || by < today) continue;
    for (let r = 0; r < samples.runs; r++) row[r * width + i] = (row[r * width + i] ?? 0) + count;
  }
  return { runs: samples.runs, need };
}

function meanOf(need: Int32Array, runs: number, width: number, item: number): number {
  let sum = 0;
  for (let r = 0; r < runs; r++) sum += need[r * width + item] ?? 0;
  return sum / runs;
}

function lotsOf(item: PurchaseItem, days: readonly LocalDate[]): readonly GridLot[] {
  const stock = item.stock.flatMap(({ count, goodUntil }): readonly GridLot[] => {
    if (goodUntil === undefined) return [{ pieces: count, from: 0 }];
    const until = days.findLastIndex((day) => day <= goodUntil);
    return until < 0 ? [] : [{ pieces: count, from: 0, ...(until === days.length - 1 ? {} : { until }) }];
  });
  const coming = item.onOrder.flatMap(({ count, expectedOn }): readonly GridLot[] => {
    const from = days.findIndex((day) => day >= expectedOn);
    return from < 0 ? [] : [{ pieces: count, from }];
  });
  return [...stock, ...coming];
}

/** Cost of keeping one piece from each day to the next, and after the last. */
function holdingOf(problem: PurchaseProblem, item: PurchaseItem, days: readonly LocalDate[]): readonly number[] {
  const { holding } = problem;
  if (holding === undefined) return days.map(() => 0);
  const prices = problem.offers.filter((offer) => offer.item === item.id).map((offer) => offer.price / offer.count);
  const perDay =
    'perPieceWeek' in holding ? holding.perPieceWeek / 7 : prices.length === 0 ? 0 : (holding.sharePerYear * Math.min(...prices)) / 365;
  return days.map((day, p) => perDay * daysBetween(day, days[p + 1] ?? addDays(day, problem.keptAfterDays ?? 30)));
}

function gridOffer(offer: PurchaseOffer, item: number, supplier: number, days: readonly LocalDate[]): GridOffer {
  const keeps = keepsPeriods(offer.keepsDays, days);
  return {
    item,
    supplier,
    pieces: offer.count,
    steps: [{ fromBags: 1, price: offer.price }, ...(offer.breaks ?? []).map(({ bags, price }) => ({ fromBags: bags, price }))],
    ...(keeps === undefined ? {} : { keeps }),
    ...(offer.mostBags === undefined ? {} : { mostBags: offer.mostBags }),
  };
}
/** Periods after arrival in which a bag is good whichever order it comes with; missing if it outlasts them all. */
function keepsPeriods(keepsDays: number | undefined, days: readonly LocalDate[]): number | undefined {
  if (keepsDays === undefined) return undefined;
  const reach = days.map((day, p) => days.findLastIndex((later) => daysBetween(day, later) <= keepsDays) - p);
  const least = Math.min(...reach.filter((periods, p) => p + periods < days.length - 1));
  return least === Infinity ? undefined : least;
}
