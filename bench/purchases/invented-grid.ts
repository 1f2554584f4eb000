import type { PurchaseGrid } from '@twistwright/planner';
import { Chance } from '@twistwright/units';

/**
 * An invented purchase problem of the given size: bags of 50 and 100, carriage free from a value on, needs in bursts. The first periods are
 * covered from stock as far as no order can arrive in them.
 */
export function inventedGrid(
  seed: number,
  size: { readonly items: number; readonly suppliers: number; readonly periods: number },
): PurchaseGrid {
  const chance = new Chance(seed, size.items, 77);
  const between = (low: number, high: number): number => low + (high - low) * chance.uniform();
  const suppliers = Array.from({ length: size.suppliers }, () => ({
    lead: size.periods === 1 ? 0 : chance.uniform() < 0.7 ? 1 : 2,
    fee: Math.round(between(600, 1300)),
    freeOver: [7500, 12_000, 15_000][Math.floor(3 * chance.uniform())] ?? 12_000,
  }));
  const offers: PurchaseGrid['offers'][number][] = [];
  const items = Array.from({ length: size.items }, (_, item) => {
    const piece = between(3, 11) / 100;
    const before = offers.length;
    for (let supplier = 0; supplier < size.suppliers; supplier++) {
      if (chance.uniform() > (size.periods === 1 ? 0.8 : 0.6) && !(supplier === size.suppliers - 1 && offers.length === before)) continue;
      const own = piece * between(size.periods === 1 ? 0.8 : 0.9, size.periods === 1 ? 1.3 : 1.15);
      const price = (pieces: number, factor: number): number => Math.round(own * pieces * factor * 100);
      if (chance.uniform() < 0.7) offers.push({ item, supplier, pieces: 50, steps: [{ fromBags: 1, price: price(50, 1) }] });
      offers.push({ item, supplier, pieces: 100, steps: [{ fromBags: 1, price: price(100, between(0.78, 0.92)) }] });
    }
    const demand = Array.from({ length: size.periods }, (_, p) =>
      size.periods === 1 || (p > 1 && chance.uniform() < 0.4)
        ? Math.round(between(0, size.periods === 1 ? 350 : 150) * chance.uniform() + 5)
        : 0,
    );
    return {
      name: `item ${item + 1}`,
      demand,
      supply: [{ pieces: Math.round(between(0, 60) * chance.uniform()), from: 0 }],
      holding: demand.map((_, p) => (p === size.periods - 1 ? 0 : 0.004 * piece * 100)),
    };
  });
  const orders = suppliers.flatMap(({ lead, fee, freeOver }, supplier) =>
    Array.from({ length: size.periods }, (_, placed) => ({ supplier, placed, arrives: placed + lead, fee, freeOver })),
  );
  return { periods: size.periods, items, orders, offers };
}
