import { type Book, type Order, planningSettingsOf } from '@twistwright/books';
import type { Kit } from '@twistwright/planner';
import { type LocalDate, longDate, money, showMoney, workingDaysAfter } from '@twistwright/units';
import { itemName } from './kit-words.ts';

/** The kit as orders that were placed today, one for each supplier at whom something is bought, without ids. */
export function ordersOfKit(book: Book, kit: Kit, today: LocalDate): readonly Omit<Order, 'id'>[] {
  return kit.shops.flatMap((shop): readonly Omit<Order, 'id'>[] => {
    const supplier = book.suppliers.find((one) => one.id === shop.supplier);
    const lines = [
      ...kit.lines.filter((line) => line.supplier === shop.supplier),
      ...kit.tools.filter((tool) => tool.supplier === shop.supplier).map((tool) => ({ ...tool, price: money(tool.price / tool.bags) })),
    ].flatMap(({ offer: id, bags, price }): Order['lines'] => {
      const offer = book.offers.find((one) => one.id === id);
      return offer === undefined ? [] : [{ offer: offer.id, item: offer.item, bags, count: offer.count, price }];
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

/**
 * An order as it is sent or read out: for whom, a line a thing with the supplier's own number, carriage, what it comes to.
 * @param whom whom it is for; nobody named if empty
 */
export function orderText(book: Book, order: Omit<Order, 'id'>, whom: string): string {
  const { currency } = book.business;
  const show = (amount: number): string => showMoney(money(amount), currency);
  const supplier = book.suppliers.find((one) => one.id === order.supplier)?.name ?? order.supplier;
  const lines = order.lines.map(({ offer: id, item, bags, count, price }) => {
    const reference = book.offers.find((one) => one.id === id)?.reference;
    const what = `${itemName(book, item)}${count === 1 ? '' : `, ${count} in a ${isBalloon(book, item) ? 'bag' : 'pack'}`}`;
    return `${bags} x ${what}${reference === undefined ? '' : ` (${reference})`}: ${show(bags * price)}`;
  });
  const goods = order.lines.reduce((sum, line) => sum + line.bags * line.price, 0);
  return [
    `Order${whom === '' ? '' : `, ${whom}`}: ${supplier}, ${longDate(order.orderedOn)}`,
    '',
    ...lines,
    ...(order.carriage > 0 ? [`Carriage: ${show(order.carriage)}`] : []),
    `In all: ${show(goods + order.carriage)}`,
    '',
  ].join('\n');
}
const isBalloon = (book: Book, id: string): boolean => book.items.find((item) => item.id === id)?.kind === 'balloon';
