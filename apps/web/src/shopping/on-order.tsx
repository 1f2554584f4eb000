import type { Book, Order, StockMove } from '@twistwright/books';
import { type LocalDate, money, shortDate, showMoney } from '@twistwright/units';
import { type ReactElement, useState } from 'react';
import { newId } from '../book/change.ts';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { NotSaved } from '../forms/saving.tsx';
import { ItemName } from '../parts/item-name.tsx';
import { Undo } from '../parts/undo.tsx';
import { counted, sentence } from '../words/counted.ts';

/** What is ordered and not yet there; a parcel that comes is counted in with one press. */
export function OnOrder(): ReactElement | null {
  const { book, today } = useBook();
  const { change, undo, error, isSaving } = useChangeBook();
  const [told, setTold] = useState('');
  const open = book.orders.filter((order) => order.arrivedOn === undefined);
  const home = book.places.find((place) => place.kind === 'home') ?? book.places[0];
  if (open.length === 0) return null;
  const arrive = (order: Order): void => {
    for (const move of movesOf(book, order, today, home?.id ?? 'home')) change({ list: 'moves', put: move });
    change({ list: 'orders', put: { ...order, arrivedOn: today } });
  };
  return (
    <section>
      <h2>{sentence(counted(open.length, 'order'))} on the way.</h2>
      {open.map((order) => (
        <div key={order.id} style={{ marginTop: 18 }}>
          <p className="lead">
            {book.suppliers.find((supplier) => supplier.id === order.supplier)?.name ?? order.supplier}, ordered{' '}
            {shortDate(order.orderedOn)}, expected <b>{shortDate(order.expectedOn)}</b>:{' '}
            {showMoney(money(order.lines.reduce((sum, line) => sum + line.bags * line.price, 0) + order.carriage), book.business.currency)}
          </p>
          <ul className="rows" style={{ padding: 0 }}>
            {order.lines.map((line) => (
              <li key={line.item} className="row">
                <ItemName book={book} item={line.item} />
                <span className="note">
                  {counted(line.bags, 'bag')} of {line.count}
                </span>
              </li>
            ))}
          </ul>
          <div className="row noprint" style={{ marginTop: 12 }}>
            <button type="button" className="btn" disabled={isSaving} onClick={() => arrive(order)}>
              It has arrived
            </button>
            <button
              type="button"
              className="btn plain"
              disabled={isSaving}
              onClick={() => {
                change({ list: 'orders', remove: order.id });
                setTold('The order is off the list.');
              }}
            >
              It was not ordered
            </button>
          </div>
        </div>
      ))}
      {told !== '' && undo !== undefined && (
        <Undo
          sentence={told}
          action="Put it back"
          onUndo={() => {
            undo();
            setTold('');
          }}
        />
      )}
      <NotSaved error={error} />
    </section>
  );
}

function movesOf(book: Book, order: Order, day: LocalDate, place: string): readonly StockMove[] {
  return order.lines.map((line) => ({
    id: newId(`arrived ${order.id} ${line.item} ${line.count}`, book.moves),
    day,
    item: line.item,
    kind: 'arrived' as const,
    place,
    bags: line.bags,
    perBag: line.count,
    bagPrice: line.price,
    order: order.id,
  }));
}
