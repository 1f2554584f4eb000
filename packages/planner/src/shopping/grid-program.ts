import type { Column, LinearTerm, Program, Row } from '../solver-port.ts';
import { carriageOf, type GridBag, type GridLot, type PurchaseGrid, priceAt } from './purchase-grid.ts';
import { type ScenarioLevels, serves } from './scenario-levels.ts';

/** What the programme is to find. */
export type GridGoal =
  /** Least cost with at least so many runs covered. */
  | { readonly kind: 'cheapest'; readonly covered: number; readonly budget?: number }
  /** Most runs covered within a budget for goods and carriage; at least so many are known to be possible. */
  | { readonly kind: 'safest'; readonly budget: number; readonly atLeast: number };

export interface GridProgram {
  readonly program: Program;
  readonly planOf: (values: readonly number[]) => readonly GridBag[];
  /** Values of all columns for a plan, to start from. */
  readonly valuesOf: (plan: readonly GridBag[]) => readonly number[];
  /** Runs that are covered whatever happens within the rows, plus those whose class is covered. */
  readonly coveredBy: (values: readonly number[]) => number;
}

interface BagColumn {
  readonly order: number;
  readonly offer: number;
  /** Bags from and to of the price step. */
  readonly from: number;
  readonly to: number;
  /** Most bags that are of use in an order that pays carriage. */
  readonly useful: number;
  readonly price: number;
  readonly bags: number;
  readonly isTaken?: number;
}

/** Collects columns and rows. */
class Sheet {
  readonly columns: Column[] = [];
  readonly rows: Row[] = [];
  column(name: string, cost: number, bounds: { readonly upper?: number; readonly whole: boolean }): number {
    this.columns.push({ name, cost, ...bounds });
    return this.columns.length - 1;
  }
  row(name: string, terms: readonly LinearTerm[], limits: { readonly atLeast?: number; readonly atMost?: number }): void {
    this.rows.push({ name, terms, ...limits });
  }
}
const term = (column: number, factor: number): LinearTerm => ({ column, factor });

/**
 * The integer programme of purchases: whole bags at all-units price steps, carriage that ends at the free-over value, least values, and
 * bag levels that cover joint futures. A run counts as covered only if every row reaches its level; levels that too many runs need
 * are fixed, runs that ask for nothing above them drop out, and runs that ask for the same are one class.
 */
export function gridProgram(grid: PurchaseGrid, levels: ScenarioLevels, runs: number, goal: GridGoal): GridProgram {
  const sheet = new Sheet();
  const isCheapest = goal.kind === 'cheapest';
  const mayLose = runs - levels.hopeless - (goal.kind === 'cheapest' ? goal.covered : goal.atLeast);
  if (mayLose < 0)
    throw new RangeError(`only ${runs - levels.hopeless} of ${runs} runs can be covered, not ${runs - levels.hopeless - mayLose}`);
  const asked = askedLevels(levels, mayLose);
  const bagColumns = bagColumnsOf(grid, levels, sheet, isCheapest);
  const ends = orderColumns(grid, bagColumns, sheet, isCheapest);
  const stepColumns = levelRows(grid, levels, asked, bagColumns, sheet);
  const classes = classRows(levels, asked, stepColumns, mayLose, goal, sheet);
  const budget = goal.budget;
  if (budget !== undefined) sheet.row('budget', [...bagColumns.map((c) => term(c.bags, c.price)), ...ends.cash], { atMost: budget });
  const program: Program = { sense: isCheapest ? 'minimise' : 'maximise', columns: sheet.columns, rows: sheet.rows };
  const always = runs - levels.hopeless - classes.reduce((sum, { count }) => sum + count, 0);
  return {
    program,
    planOf: (values) => planOf(bagColumns, values),
    valuesOf: (plan) =>
      valuesOf(grid, levels, { bagColumns, ends, stepColumns, above: asked.above, classes, columns: sheet.columns.length }, plan),
    coveredBy: (values) =>
      always +
      classes.reduce((sum, { column, count }) => sum + (column === undefined ? count : count * Math.round(values[column] ?? 0)), 0),
  };
}

function planOf(bagColumns: readonly BagColumn[], values: readonly number[]): readonly GridBag[] {
  const bags = new Map<string, GridBag>();
  for (const column of bagColumns) {
    const count = Math.round(values[column.bags] ?? 0);
    if (count <= 0) continue;
    const key = `${column.order} ${column.offer}`;
    bags.set(key, { order: column.order, offer: column.offer, bags: count + (bags.get(key)?.bags ?? 0) });
  }
  return [...bags.values()];
}

interface AskedLevels {
  /** Level of each row that must be reached in any case. */
  readonly base: readonly number[];
  /** Levels above the base that some coverable run asks for, ascending. */
  readonly above: readonly (readonly number[])[];
}
function askedLevels(levels: ScenarioLevels, mayLose: number): AskedLevels {
  const base: number[] = [];
  const above: (readonly number[])[] = [];
  for (const row of levels.rows) {
    const asked = Array.from(row.level)
      .filter((_, r) => levels.isHopeless[r] === 0)
      .sort((a, b) => b - a);
    const least = asked[mayLose] ?? 0;
    base.push(least);
    above.push([...new Set(asked.filter((level) => level > least))].sort((a, b) => a - b));
  }
  return { base, above };
}

function bagColumnsOf(grid: PurchaseGrid, levels: ScenarioLevels, sheet: Sheet, isCheapest: boolean): readonly BagColumn[] {
  const most = grid.items.map((_, i) =>
    levels.rows.reduce(
      (peak, row) => (row.item === i ? row.level.reduce((high, level) => Math.max(high, level), peak / row.unit) * row.unit : peak),
      0,
    ),
  );
  return grid.orders.flatMap((order, o) =>
    grid.offers.flatMap((offer, f) => {
      const pieces = most[offer.item] ?? 0;
      if (offer.supplier !== order.supplier || order.arrives >= grid.periods || pieces <= 0) return [];
      const needed = Math.ceil(pieces / offer.pieces);
      const cheapest = Math.min(...offer.steps.map((step) => step.price));
      const topUpTo = (value: number): number => Math.ceil(value / Math.max(1, cheapest));
      // more than the whole need is bought only to reach a price step, a least value, or free carriage
      const useful = Math.max(needed, offer.steps.at(-1)?.fromBags ?? 1) + topUpTo(order.minimum ?? 0);
      const forFree = order.freeOver === undefined ? 0 : topUpTo(order.fee);
      const limit = Math.min(offer.mostBags ?? Infinity, useful + forFree);
      const keeping = holdingFrom(grid, offer.item, order.arrives) * offer.pieces;
      const steps = offer.steps.filter((step) => step.fromBags <= limit);
      return steps.map((step, k): BagColumn => {
        const to = Math.min(limit, (steps[k + 1]?.fromBags ?? Infinity) - 1);
        const name = `${grid.items[offer.item]?.name ?? ''} ${offer.pieces} order ${o}`;
        const bags = sheet.column(name, isCheapest ? step.price + keeping : 0, { upper: to, whole: true });
        const column = { order: o, offer: f, from: step.fromBags, to, useful: Math.min(useful, to), price: step.price, bags };
        if (steps.length === 1) return column;
        const isTaken = sheet.column(`${name} from ${step.fromBags}`, 0, { upper: 1, whole: true });
        sheet.row('step from', [term(bags, 1), term(isTaken, -step.fromBags)], { atLeast: 0 });
        sheet.row('step to', [term(bags, 1), term(isTaken, -to)], { atMost: 0 });
        return { ...column, isTaken };
      });
    }),
  );
}
const holdingFrom = (grid: PurchaseGrid, item: number, period: number): number =>
  (grid.items[item]?.holding ?? []).reduce((sum, cost, p) => sum + (p >= period ? cost : 0), 0);

interface OrderEnds {
  readonly isPlaced: readonly (number | undefined)[];
  readonly isFree: readonly (number | undefined)[];
  readonly cash: readonly LinearTerm[];
}
function orderColumns(grid: PurchaseGrid, bagColumns: readonly BagColumn[], sheet: Sheet, isCheapest: boolean): OrderEnds {
  const isPlaced: (number | undefined)[] = [];
  const isFree: (number | undefined)[] = [];
  const cash: LinearTerm[] = [];
  for (const [o, order] of grid.orders.entries()) {
    const mine = bagColumns.filter((column) => column.order === o);
    isPlaced.push(undefined);
    isFree.push(undefined);
    for (const f of new Set(mine.map((column) => column.offer))) {
      const taken = mine.filter((column) => column.offer === f && column.isTaken !== undefined);
      if (taken.length > 0)
        sheet.row(
          'one step',
          taken.map((column) => term(column.isTaken ?? 0, 1)),
          { atMost: 1 },
        );
    }
    if (mine.length === 0 || (order.fee === 0 && (order.minimum ?? 0) === 0)) continue;
    const placed = sheet.column(`order ${o}`, isCheapest ? order.fee : 0, { upper: 1, whole: true });
    isPlaced[o] = placed;
    cash.push(term(placed, order.fee));
    const value = mine.map((column) => term(column.bags, column.price));
    if ((order.minimum ?? 0) > 0) sheet.row('least value', [...value, term(placed, -(order.minimum ?? 0))], { atLeast: 0 });
    const isEverFree = order.freeOver !== undefined && order.fee > 0;
    if (!isEverFree)
      for (const column of mine) sheet.row('only if ordered', [term(column.bags, 1), term(placed, -column.to)], { atMost: 0 });
    if (!isEverFree || order.freeOver === undefined) continue;
    const free = sheet.column(`order ${o} free`, isCheapest ? -order.fee : 0, { upper: 1, whole: true });
    isFree[o] = free;
    cash.push(term(free, -order.fee));
    sheet.row('free only if ordered', [term(placed, 1), term(free, -1)], { atLeast: 0 });
    for (const column of mine)
      sheet.row(
        'only if ordered',
        [term(column.bags, 1), term(placed, -column.useful), ...(column.to > column.useful ? [term(free, column.useful - column.to)] : [])],
        { atMost: 0 },
      );
    sheet.row('free over', [...value, term(free, -order.freeOver)], { atLeast: 0 });
  }
  return { isPlaced, isFree, cash };
}

/** Step columns of each row: one per level above the base, one if it is reached. */
function levelRows(
  grid: PurchaseGrid,
  levels: ScenarioLevels,
  asked: AskedLevels,
  bagColumns: readonly BagColumn[],
  sheet: Sheet,
): readonly (readonly number[])[] {
  return levels.rows.map((row, k) => {
    const base = asked.base[k] ?? 0;
    const above = asked.above[k] ?? [];
    if (base === 0 && above.length === 0) return [];
    const bags = bagColumns
      .filter((column) => grid.offers[column.offer]?.item === row.item && serves(grid, column.order, column.offer, row.periods))
      .map((column) => term(column.bags, (grid.offers[column.offer]?.pieces ?? 0) / row.unit));
    const steps = above.map((level) => sheet.column(`${grid.items[row.item]?.name ?? ''} reaches ${level}`, 0, { upper: 1, whole: true }));
    for (let n = 1; n < steps.length; n++)
      sheet.row('level by level', [term(steps[n - 1] ?? 0, 1), term(steps[n] ?? 0, -1)], { atLeast: 0 });
    sheet.row('level', [...bags, ...steps.map((column, n) => term(column, -((above[n] ?? 0) - (n === 0 ? base : (above[n - 1] ?? 0)))))], {
      atLeast: base,
    });
    return steps;
  });
}

interface RunClass {
  /** Missing if the class asks for nothing above the base. */
  readonly column?: number;
  readonly count: number;
  /** Row and level that each run of the class asks for. */
  readonly asks: readonly { readonly row: number; readonly level: number }[];
}
function classRows(
  levels: ScenarioLevels,
  asked: AskedLevels,
  stepColumns: readonly (readonly number[])[],
  mayLose: number,
  goal: GridGoal,
  sheet: Sheet,
): readonly RunClass[] {
  const counts = new Map<string, { count: number; readonly asks: readonly { readonly row: number; readonly level: number }[] }>();
  for (let r = 0; r < levels.isHopeless.length; r++) {
    if (levels.isHopeless[r] === 1) continue;
    const asks = asksOf(levels, asked, r);
    if (asks.length === 0) continue;
    const key = asks.map(({ row, level }) => `${row}:${level}`).join(' ');
    const known = counts.get(key);
    if (known === undefined) counts.set(key, { count: 1, asks });
    else known.count++;
  }
  const isSafest = goal.kind === 'safest';
  const classes = [...counts.values()].map(({ count, asks }): RunClass => {
    const column = sheet.column(`runs ${count}`, isSafest ? count : 0, { upper: 1, whole: false });
    for (const { row, level } of asks) {
      const step = stepColumns[row]?.[asked.above[row]?.indexOf(level) ?? -1];
      if (step === undefined) throw new Error(`level ${level} of row ${row} has no column`);
      sheet.row('covered only if', [term(step, 1), term(column, -1)], { atLeast: 0 });
    }
    return { column, count, asks };
  });
  const all = classes.reduce((sum, { count }) => sum + count, 0);
  if (classes.length > 0 && all > mayLose)
    sheet.row(
      'covered runs',
      classes.map(({ column, count }) => term(column ?? 0, count)),
      { atLeast: all - mayLose },
    );
  return classes;
}
/** What a run asks for above the base; a later row of the same kind that asks for no more is implied. */
function asksOf(levels: ScenarioLevels, asked: AskedLevels, run: number): readonly { readonly row: number; readonly level: number }[] {
  const asks: { readonly row: number; readonly level: number }[] = [];
  let item = -1;
  let highest = 0;
  for (const [k, row] of levels.rows.entries()) {
    const isPrefix = row.periods.every((period, n) => period === n);
    if (row.item !== item) highest = 0;
    item = row.item;
    const level = row.level[run] ?? 0;
    if (level <= (asked.base[k] ?? 0) || (isPrefix && level <= highest && keepsThroughout(levels, row.item))) continue;
    if (isPrefix) highest = Math.max(highest, level);
    asks.push({ row: k, level });
  }
  return asks;
}
/** Rows of an item whose bags keep are prefixes only, so that a later row counts at least the bags of an earlier one. */
const keepsThroughout = (levels: ScenarioLevels, item: number): boolean =>
  levels.rows.every((row) => row.item !== item || row.periods.every((period, n) => period === n));

function valuesOf(
  grid: PurchaseGrid,
  levels: ScenarioLevels,
  made: {
    readonly bagColumns: readonly BagColumn[];
    readonly ends: OrderEnds;
    readonly stepColumns: readonly (readonly number[])[];
    readonly above: AskedLevels['above'];
    readonly classes: readonly RunClass[];
    readonly columns: number;
  },
  plan: readonly GridBag[],
): readonly number[] {
  const values = new Array<number>(made.columns).fill(0);
  const value = grid.orders.map(() => 0);
  for (const line of plan) {
    const column = made.bagColumns.find(
      (c) => c.order === line.order && c.offer === line.offer && line.bags >= c.from && line.bags <= c.to,
    );
    if (column === undefined) continue;
    values[column.bags] = line.bags;
    if (column.isTaken !== undefined) values[column.isTaken] = 1;
    value[line.order] = (value[line.order] ?? 0) + line.bags * column.price;
  }
  for (const [o, order] of grid.orders.entries()) {
    const placed = made.ends.isPlaced[o];
    const free = made.ends.isFree[o];
    if (placed !== undefined && (value[o] ?? 0) > 0) values[placed] = 1;
    if (free !== undefined && (value[o] ?? 0) >= (order.freeOver ?? Infinity)) values[free] = 1;
  }
  const reached = levels.rows.map((row) =>
    plan.reduce((sum, line) => {
      const offer = grid.offers[line.offer];
      const counts = offer?.item === row.item && serves(grid, line.order, line.offer, row.periods);
      return sum + (counts ? (line.bags * (offer?.pieces ?? 0)) / row.unit : 0);
    }, 0),
  );
  for (const [k, steps] of made.stepColumns.entries()) {
    for (const [n, column] of steps.entries()) if ((made.above[k]?.[n] ?? Infinity) <= (reached[k] ?? 0)) values[column] = 1;
  }
  for (const { column, asks } of made.classes)
    if (column !== undefined && asks.every(({ row, level }) => (reached[row] ?? 0) >= level)) values[column] = 1;
  return values;
}

/** Bought lots by item, for counting covered runs. */
export function boughtLots(grid: PurchaseGrid, plan: readonly GridBag[]): readonly (readonly GridLot[])[] {
  const lots = grid.items.map((): GridLot[] => []);
  for (const { order, offer: f, bags } of plan) {
    const offer = grid.offers[f];
    const from = grid.orders[order]?.arrives;
    if (offer === undefined || from === undefined) throw new RangeError(`no order ${order} or offer ${f}`);
    lots[offer.item]?.push({ pieces: bags * offer.pieces, from, ...(offer.keeps === undefined ? {} : { until: from + offer.keeps }) });
  }
  return lots;
}

/** Goods and carriage of a plan, what has to be paid. */
export function cashOf(grid: PurchaseGrid, plan: readonly GridBag[]): number {
  const value = grid.orders.map(() => 0);
  for (const { order, offer, bags } of plan) value[order] = (value[order] ?? 0) + bags * priceAt(grid.offers[offer]?.steps ?? [], bags);
  return grid.orders.reduce((sum, order, o) => sum + (value[o] ?? 0) + carriageOf(order, value[o] ?? 0), 0);
}
