import { type Book, type Order, planningSettingsOf } from '@twistwright/books';
import type { Kit } from '@twistwright/planner';
import { type LocalDate, workingDaysAfter } from '@twistwright/units';

/** The kit as orders that were placed today, one for each supplier at whom something is bought, without ids. */
export function ordersOfKit(book: Book, kit: Kit, today: LocalDate): readonly Omit<Order, 'id'>[] {
  return kit.shops.flatMap((shop): readonly Omit<Order, 'id'>[] => {
    const supplier = book.suppliers.find((one) => one.id === shop.supplier);
    const lines = [
      ...kit.lines.filter((line) => line.supplier === shop.supplier).map((line) => ({ offer: line.offer, bags: line.bags })),
      ...kit.tools
        .filter((tool) => tool.supplier === shop.supplier)
        .flatMap((tool) => {
          const offer = book.offers.find((one) => one.item === tool.tool && one.supplier === shop.supplier && one.price === tool.price);
          return offer === undefined ? [] : [{ offer: offer.id, bags: 1 }];
        }),
    ].flatMap(({ offer: id, bags }): Order['lines'] => {
      const offer = book.offers.find((one) => one.id === id);
      return offer === undefined ? [] : [{ offer: id, item: offer.item, bags, count: offer.count, price: offer.price }];
    });
    if (supplier === undefined || lines.length === 0) return [];
    const closed = new Set([...(planningSettingsOf(book).holidays ?? []), ...(supplier.closedOn ?? [])]);
    return [
      {
        supplier: supplier.id,
        orderedOn: today,
        expectedOn: workingDaysAfter(today, supplier.leadWorkingDays, closed),
        lines,
        carriage: shop.shipping,
      },
    ];
  });
}
