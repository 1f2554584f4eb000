import type { Order } from '@twistwright/books';
import type { KitPlan } from '@twistwright/planner';
import { type LocalDate, money, shortDate, showMoney } from '@twistwright/units';
import { memo, type ReactElement, useState } from 'react';
import { newId } from '../book/change.ts';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { NotSaved } from '../forms/saving.tsx';
import { Tick } from '../parts/tick.tsx';
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

/** The kit as orders: the newcomer's own, to hand over; marked as the coach's only where the coach says so. */
export const OrderSection = memo(function OrderSection({ plan, isWhole, name }: OrderProps): ReactElement | null {
  const { book, today } = useBook();
  const { change, isSaving, error } = useChangeBook();
  const [isOwn, setOwn] = useState(false);
  const [placed, setPlaced] = useState<readonly string[]>([]);
  const orders = ordersOfKit(book, plan.kit, today);
  if (orders.length === 0) return null;
  const place = (order: Draft): void =>
    change({ list: 'orders', put: { id: newId(`kit ${order.supplier} ${today}`, book.orders), ...order } }, () =>
      setPlaced((before) => [...before, JSON.stringify(order)]),
    );
  return (
    <section className="noprint">
      <h2>Turn it into {orders.length === 1 ? 'an order' : counted(orders.length, 'order')}.</h2>
      <p className="note more">
        {isOwn
          ? 'Order from the supplier, then mark it here: it stands among what is on its way, and is counted into your store when it arrives.'
          : `${name === '' ? 'The newcomer orders and pays' : `${name}: the newcomer orders and pays`}; nothing of it comes into your store.`}
      </p>
      <Tick checked={isOwn} onChange={setOwn}>
        It is for your own store
      </Tick>
      <ul className="kept">
        {orders.map((order) => (
          <OneOrder
            key={order.supplier}
            order={order}
            isWhole={isWhole}
            name={name}
            onPlace={isOwn ? () => place(order) : undefined}
            isPlaced={placed.includes(JSON.stringify(order))}
            isSaving={isSaving}
          />
        ))}
      </ul>
      <NotSaved error={error} />
    </section>
  );
});

const arrival = ({ expectedOn }: Draft, today: LocalDate): string =>
  expectedOn === today ? 'collected today' : `at the door on ${shortDate(expectedOn)}`;

interface OneOrderProps extends Pick<OrderProps, 'isWhole' | 'name'> {
  readonly order: Draft;
  /** Puts it among the orders of the store; missing where it is the newcomer's. */
  readonly onPlace: (() => void) | undefined;
  readonly isPlaced: boolean;
  readonly isSaving: boolean;
}
/** An order to copy or to save as a text, and to mark as ordered where it is for the coach's own store. */
function OneOrder({ order, isWhole, name, onPlace, isPlaced, isSaving }: OneOrderProps): ReactElement {
  const { book, today } = useBook();
  const [told, setTold] = useState('');
  const shop = book.suppliers.find((one) => one.id === order.supplier)?.name ?? order.supplier;
  const text = orderText(book, order, onPlace === undefined ? name : '');
  const goods = order.lines.reduce((sum, line) => sum + line.bags * line.price, 0);
  return (
    <li>
      <div className="about">
        <b>{shop}</b>
        <span className="note">
          {counted(order.lines.length, 'line')}, {showMoney(money(goods + order.carriage), book.business.currency)}, {arrival(order, today)}
        </span>
      </div>
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
        className={onPlace === undefined ? 'btn' : 'btn plain'}
        disabled={!isWhole}
        aria-label={`Save the order for ${shop}`}
        onClick={() => saveAsFile(new Blob([text], { type: 'text/plain' }), `order-${order.supplier}.txt`)}
      >
        Save the order
      </button>
      {onPlace !== undefined && (
        <button
          type="button"
          className="btn"
          disabled={isSaving || isPlaced || !isWhole}
          aria-label={`Mark as ordered at ${shop}`}
          onClick={onPlace}
        >
          {isPlaced ? 'Ordered' : 'Mark as ordered'}
        </button>
      )}
    </li>
  );
}
