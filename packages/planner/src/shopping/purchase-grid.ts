/**
 * A purchase problem with everything numbered: items, suppliers, possible orders and periods are indexes. The calendar (working days,
 * holidays, cut-off times) has been worked out before; what is left is arithmetic. Costs are minor units of one currency; holding may be
 * a fraction of one.
 */
export interface PurchaseGrid {
  readonly items: readonly GridItem[];
  /** Orders that could be placed, each at most once. */
  readonly orders: readonly GridOrder[];
  readonly offers: readonly GridOffer[];
  /** Number of periods; stock that arrives in a period can serve that period. */
  readonly periods: number;
}
export interface GridItem {
  readonly name: string;
  /** Pieces asked for in each period. */
  readonly demand: readonly number[];
  /** What is in store and on order. */
  readonly supply: readonly GridLot[];
  /** Cost of keeping one piece from the end of each period into the next (and after the last one); missing = nothing. */
  readonly holding?: readonly number[];
}
/** Pieces that can be used from one period to another, both included. */
export interface GridLot {
  readonly pieces: number;
  readonly from: number;
  /** Last period in which they are good; missing = they keep. */
  readonly until?: number;
}
export interface GridOrder {
  readonly supplier: number;
  /** Period in which it is placed; only to tell orders apart. */
  readonly placed: number;
  /** First period that it can serve. */
  readonly arrives: number;
  /** Carriage, paid once per order that has anything in it. */
  readonly fee: number;
  /** No carriage from this value of goods on; missing = always carriage. */
  readonly freeOver?: number;
  /** Least value of goods that the supplier accepts. */
  readonly minimum?: number;
}
export interface GridOffer {
  readonly item: number;
  readonly supplier: number;
  /** Balloons in a bag. */
  readonly pieces: number;
  /** All-units price breaks, ascending from 1 bag: from so many bags on, every bag costs this. */
  readonly steps: readonly PriceStep[];
  /** How many periods after arrival the bag is still good; 0 = only in the period it arrives; missing = it keeps. */
  readonly keeps?: number;
  /** Most bags in one order. */
  readonly mostBags?: number;
}
export interface PriceStep {
  readonly fromBags: number;
  /** Price of one bag, minor units. */
  readonly price: number;
}
/** Bags of one offer in one order. */
export interface GridBag {
  readonly order: number;
  readonly offer: number;
  readonly bags: number;
}

/** Price of one bag when `bags` are bought. */
export function priceAt(steps: readonly PriceStep[], bags: number): number {
  let price = Number.NaN;
  for (const step of steps) if (bags >= step.fromBags) price = step.price;
  if (Number.isNaN(price)) throw new RangeError(`no price for ${bags} bags`);
  return price;
}

/** What an order costs on top of its goods. An empty order costs nothing. */
export const carriageOf = (order: GridOrder, value: number): number =>
  value <= 0 || (order.freeOver !== undefined && value >= order.freeOver) ? 0 : order.fee;

/**
 * Demand that the lots cannot serve, by period, when each period is served from the lots that go off first; and what is left of them at
 * the end of each period.
 */
export function netOf(
  demand: readonly number[],
  lots: readonly GridLot[],
): { readonly short: readonly number[]; readonly left: readonly number[] } {
  const stock = lots.map((lot) => lot.pieces);
  const inOrder = lots.map((_, l) => l).sort((a, b) => (lots[a]?.until ?? Infinity) - (lots[b]?.until ?? Infinity) || a - b);
  const short: number[] = [];
  const left: number[] = [];
  for (const [period, asked] of demand.entries()) {
    let open = asked;
    for (const l of inOrder) {
      const lot = lots[l];
      if (lot === undefined || lot.from > period || (lot.until ?? Infinity) < period) continue;
      const taken = Math.min(open, stock[l] ?? 0);
      stock[l] = (stock[l] ?? 0) - taken;
      open -= taken;
    }
    short.push(open);
    left.push(lots.reduce((sum, lot, l) => sum + (lot.from <= period && (lot.until ?? Infinity) >= period ? (stock[l] ?? 0) : 0), 0));
  }
  return { short, left };
}

export interface GridCost {
  readonly goods: number;
  readonly carriage: number;
  readonly holding: number;
  readonly total: number;
  /** Pieces short, by item and period; all zero for a plan that works. */
  readonly short: readonly (readonly number[])[];
  /** Orders with goods below the supplier's least value. */
  readonly belowMinimum: readonly number[];
}

/** What a plan costs and whether it works, counted from scratch: the truth that every solver's answer is held against. */
export function costOf(grid: PurchaseGrid, plan: readonly GridBag[]): GridCost {
  const value = grid.orders.map(() => 0);
  const lots = grid.items.map((item): GridLot[] => [...item.supply]);
  for (const line of plan) {
    const offer = grid.offers[line.offer];
    const order = grid.orders[line.order];
    if (offer === undefined || order === undefined || offer.supplier !== order.supplier)
      throw new RangeError(`offer ${line.offer} cannot be in order ${line.order}`);
    value[line.order] = (value[line.order] ?? 0) + line.bags * priceAt(offer.steps, line.bags);
    lots[offer.item]?.push({
      pieces: line.bags * offer.pieces,
      from: order.arrives,
      ...(offer.keeps === undefined ? {} : { until: order.arrives + offer.keeps }),
    });
  }
  const goods = value.reduce((sum, v) => sum + v, 0);
  const carriage = grid.orders.reduce((sum, order, o) => sum + carriageOf(order, value[o] ?? 0), 0);
  const nets = grid.items.map((item, i) => netOf(item.demand, lots[i] ?? []));
  let holding = 0;
  for (const [i, item] of grid.items.entries())
    for (const [p, left] of (nets[i]?.left ?? []).entries()) holding += left * (item.holding?.[p] ?? 0);
  const belowMinimum = grid.orders.flatMap((order, o) => ((value[o] ?? 0) > 0 && (value[o] ?? 0) < (order.minimum ?? 0) ? [o] : []));
  return { goods, carriage, holding, total: goods + carriage + holding, short: nets.map((net) => net.short), belowMinimum };
}
