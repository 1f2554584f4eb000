import type { Order } from '@twistwright/books';
import type { KitPlan } from '@twistwright/planner';
import { type LocalDate, money, shortDate, showMoney } from '@twistwright/units';
import { memo, type ReactElement, useState } from 'react';
import { newId } from '../book/change.ts';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { NotSaved } from '../forms/saving.tsx';
import { counted } from '../words/counted.ts';
import { saveAsFile } from './kit-paper-door.ts';
import { ordersOfKit, orderText } from './order-of-kit.ts';

interface OrderProps {
  readonly plan: KitPlan;
  /** Whether the plan is for what is wished now; nothing is ordered before. */
  readonly isWhole: boolean;
  /** Whom the kit is for, as it was named. */
  readonly name: string;
}
type Draft = Omit<Order, 'id'>;

/** The kit as orders: the newcomer's own, to hand over; only if the coach says so one for the coach's store. */
export const OrderSection = memo(function OrderSection({ plan, isWhole, name }: OrderProps): ReactElement | null {
  const { book, today } = useBook();
  const orders = ordersOfKit(book, plan.kit, today);
  if (orders.length === 0) return null;
  return (
    <section className="noprint">
      <h2>Turn it into {orders.length === 1 ? 'an order' : `${counted(orders.length, 'order')}`}.</h2>
      <p className="note more">
        {name === '' ? 'The newcomer orders and pays' : `${name}: the newcomer orders and pays`}; nothing of it comes into your store.
      </p>
      <ul className="kept">
        {orders.map((order) => (
          <TheirOrder key={order.supplier} order={order} isWhole={isWhole} name={name} />
        ))}
      </ul>
      <OwnOrders orders={orders} isWhole={isWhole} />
    </section>
  );
});

/** Name of the shop, and what the order comes to. */
function About({ order }: { readonly order: Draft }): ReactElement {
  const { book, today } = useBook();
  const goods = order.lines.reduce((sum, line) => sum + line.bags * line.price, 0);
  return (
    <>
      <b>{shopName(book.suppliers, order)}</b>
      <span className="note">
        {counted(order.lines.length, 'line')}, {showMoney(money(goods + order.carriage), book.business.currency)}, {arrival(order, today)}
      </span>
    </>
  );
}
const shopName = (suppliers: readonly { readonly id: string; readonly name: string }[], { supplier }: Draft): string =>
  suppliers.find((one) => one.id === supplier)?.name ?? supplier;
const arrival = ({ expectedOn }: Draft, today: LocalDate): string =>
  expectedOn === today ? 'collected today' : `at the door on ${shortDate(expectedOn)}`;

interface TheirOrderProps {
  readonly order: Draft;
  readonly isWhole: boolean;
  readonly name: string;
}
function TheirOrder({ order, isWhole, name }: TheirOrderProps): ReactElement {
  const { book } = useBook();
  const [told, setTold] = useState('');
  const shop = shopName(book.suppliers, order);
  const text = orderText(book, order, name);
  return (
    <li>
      <About order={order} />
      {navigator.clipboard !== undefined && (
        <button
          type="button"
          className="btn plain"
          disabled={!isWhole}
          aria-label={told === text ? `Copied: the order for ${shop}` : `Copy the order for ${shop}`}
          aria-live="polite"
          onClick={() => void navigator.clipboard.writeText(text).then(() => setTold(text))}
        >
          {told === text ? 'Copied' : 'Copy'}
        </button>
      )}
      <button
        type="button"
        className="btn"
        disabled={!isWhole}
        aria-label={`Save the order for ${shop}`}
        onClick={() => saveAsFile(new Blob([text], { type: 'text/plain' }), `order-${order.supplier}.txt`)}
      >
        Save the order
      </button>
    </li>
  );
}

/** For a coach who buys the kit: the things become part of the store when they are counted in. */
function OwnOrders({ orders, isWhole }: { readonly orders: readonly Draft[]; readonly isWhole: boolean }): ReactElement {
  const { book, today } = useBook();
  const { change, isSaving, error } = useChangeBook();
  const [placed, setPlaced] = useState<readonly string[]>([]);
  return (
    <details className="because">
      <summary>It is for your own store</summary>
      <p className="note">
        Order from the supplier, then mark it here: it stands among what is on its way, and is counted into your store when it arrives.
      </p>
      <ul className="kept">
        {orders.map((order) => {
          const key = JSON.stringify(order);
          const isPlaced = placed.includes(key);
          return (
            <li key={order.supplier}>
              <About order={order} />
              <button
                type="button"
                className="btn"
                disabled={isSaving || isPlaced || !isWhole}
                aria-label={`Mark as ordered at ${shopName(book.suppliers, order)}`}
                onClick={() =>
                  change({ list: 'orders', put: { id: newId(`kit ${order.supplier} ${today}`, book.orders), ...order } }, () =>
                    setPlaced([...placed, key]),
                  )
                }
              >
                {isPlaced ? 'Ordered' : 'Mark as ordered'}
              </button>
            </li>
          );
        })}
      </ul>
      <NotSaved error={error} />
    </details>
  );
}
