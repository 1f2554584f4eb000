import { orderFact, purchaseOfBook, type ShoppingOrder } from '@twistwright/planner';
import { decimalOf, showMoney } from '@twistwright/units';
import type { ReactElement } from 'react';
import { newId } from '../book/change.ts';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { NotSaved } from '../forms/saving.tsx';
import { ItemName, rubberOfItem } from '../parts/item-name.tsx';
import { Bag } from '../pictures/bag.tsx';
import { counted } from '../words/counted.ts';
import { orderBySentence, whySentence } from './shopping-words.ts';

/** One order at one supplier, with the last safe day to place it. */
export function OrderSlip({ order, isFirst }: { readonly order: ShoppingOrder; readonly isFirst: boolean }): ReactElement {
  const { book, today } = useBook();
  const { change, error, isSaving } = useChangeBook();
  const currency = book.business.currency;
  const supplier = book.suppliers.find((entry) => entry.id === order.supplier);
  const markOrdered = (): void => {
    const problem = purchaseOfBook(book, { items: [], runs: 1, perGig: [] }, { today });
    change({ list: 'orders', put: orderFact(problem, order, { id: newId(`${order.supplier} ${today}`, book.orders), orderedOn: today }) });
  };
  return (
    <section className="slip">
      <div className="sliphead">
        <div>
          <h2>{order.name}</h2>
          <p className="note">{termsText(supplier?.leadWorkingDays ?? 0, order.daysToSpare)}</p>
        </div>
        <p className="by">
          <span>Order by</span>
          <b>{orderBySentence(order.orderBy, order.before)}</b>
        </p>
      </div>
      <table>
        <caption className="skip">Order at {order.name}</caption>
        <thead>
          <tr>
            <th scope="col">Bags</th>
            <th scope="col">Item</th>
            <th scope="col" className="roomy">
              Why
            </th>
            <th scope="col" className="num roomy">
              {currency} a bag
            </th>
            <th scope="col" className="num">
              {currency}
            </th>
          </tr>
        </thead>
        <tbody>
          {order.lines.map((line) => {
            const item = book.items.find((entry) => entry.id === line.item);
            return (
              <tr key={line.offer}>
                <td>
                  <span className="bags">
                    {line.bags <= 2 &&
                      item?.kind === 'balloon' &&
                      Array.from({ length: line.bags }, (_, bag) => bag).map((bag) => (
                        <Bag
                          key={bag}
                          rubber={rubberOfItem(book, item)}
                          size={item.size}
                          {...(item.print === undefined ? {} : { print: item.print })}
                        />
                      ))}
                    <span className="note">
                      {line.bags} of {line.count}
                    </span>
                  </span>
                </td>
                <th scope="row">
                  <ItemName book={book} item={line.item} />
                </th>
                <td className="roomy">{whySentence(line, (gig) => book.gigs.find((entry) => entry.id === gig)?.name ?? gig)}</td>
                <td className="num roomy">{decimalOf(line.price, currency)}</td>
                <td className="num">{decimalOf(line.total, currency)}</td>
              </tr>
            );
          })}
          <tr>
            <td />
            <th scope="row" style={{ fontWeight: 500 }}>
              Carriage
            </th>
            <td className="roomy">
              {order.carriage === 0
                ? 'none'
                : order.toFreeCarriage === undefined
                  ? ''
                  : `free from ${showMoney(supplier?.freeFrom ?? order.goods, currency)}; this is ${showMoney(order.goods, currency)}`}
            </td>
            <td className="roomy" />
            <td className="num">{decimalOf(order.carriage, currency)}</td>
          </tr>
        </tbody>
        <tfoot>
          <tr>
            <td />
            <th scope="row">Order</th>
            <td className="roomy" />
            <td className="roomy" />
            <td className="num">{decimalOf(order.total, currency)}</td>
          </tr>
        </tfoot>
      </table>
      <div className="row noprint" style={{ marginTop: 18 }}>
        <button type="button" className={isFirst ? 'btn full' : 'btn'} disabled={isSaving} onClick={markOrdered}>
          Mark as ordered
        </button>
        <button type="button" className="btn plain" onClick={() => window.print()}>
          Print the orders
        </button>
      </div>
      <NotSaved error={error} />
    </section>
  );
}

const termsText = (lead: number, spare: number): string =>
  `${lead === 0 ? 'collected from the counter' : `${counted(lead, 'working day')} to your door`}; ${spare === 0 ? 'it must go today' : `${counted(spare, 'working day')} left to order`}`;
