import type { SavedKit } from '@twistwright/books';
import type { KitPlan } from '@twistwright/planner';
import { type Money, shortDate, showMoney } from '@twistwright/units';
import { type ReactElement, useState } from 'react';
import { newId } from '../book/change.ts';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { NotSaved } from '../forms/saving.tsx';
import { TextField } from '../parts/field.tsx';
import { Undo } from '../parts/undo.tsx';
import { counted, sentence } from '../words/counted.ts';
import type { UnpricedWishes } from './kit-ask.ts';
import { ordersOfKit } from './order-of-kit.ts';
import { savedKitOf } from './wishes-of-page.ts';

interface KeepProps {
  readonly plan: KitPlan;
  /** Whether the plan is for these wishes; nothing is kept before. */
  readonly isWhole: boolean;
  readonly wishes: UnpricedWishes;
  readonly budget: Money;
  readonly name: string;
  readonly onName: (name: string) => void;
  readonly onOpen: (kit: SavedKit) => void;
}

/** Keeps the kit in the book under a name, and lists those that were kept. */
export function KeepSection({ plan, isWhole, wishes, budget, name, onName, onOpen }: KeepProps): ReactElement {
  const { book, today } = useBook();
  const { change, undo, isSaving, error } = useChangeBook();
  const [problem, setProblem] = useState<string>();
  const kits = book.kits ?? [];
  const save = (): void => {
    const plain = name.trim();
    setProblem(plain === '' ? 'Give the kit a name, such as whom it is for.' : undefined);
    if (plain === '') return;
    const known = kits.find((kit) => kit.name === plain);
    change({
      list: 'kits',
      put: savedKitOf(plan, wishes, budget, { id: known?.id ?? newId(plain, kits), name: plain, savedOn: today }),
    });
  };
  return (
    <section>
      <h2>{kits.length === 0 ? 'Keep this kit in the book.' : `${sentence(counted(kits.length, 'kit'))} in the book.`}</h2>
      <div className="saving noprint">
        <TextField label="Name of the kit" note="Stands on the papers too." value={name} onChange={onName} problem={problem} />
        <button type="button" className="btn" disabled={isSaving || !isWhole} onClick={save}>
          Keep this kit
        </button>
      </div>
      {kits.length > 0 && (
        <ul className="kept">
          {kits.map((kit) => (
            <li key={kit.id}>
              <b>{kit.name}</b>
              <span className="note">
                {showMoney(kit.wishes.budget, book.business.currency)}, {counted(kit.lines.length + kit.tools.length, 'line')}, kept on{' '}
                {shortDate(kit.savedOn)}
              </span>
              <button type="button" className="btn plain noprint" aria-label={`Open ${kit.name}`} onClick={() => onOpen(kit)}>
                Open
              </button>
              <button
                type="button"
                className="btn plain noprint"
                aria-label={`Delete ${kit.name}`}
                disabled={isSaving}
                onClick={() => change({ list: 'kits', remove: kit.id })}
              >
                Delete
              </button>
            </li>
          ))}
        </ul>
      )}
      {undo !== undefined && <Undo sentence="The kits in the book have changed." action="Put it back" onUndo={undo} />}
      <NotSaved error={error} />
    </section>
  );
}

/** Turns the kit into orders that were placed, so that the store expects them. */
export function OrderSection({ plan, isWhole }: { readonly plan: KitPlan; readonly isWhole: boolean }): ReactElement | null {
  const { book, today } = useBook();
  const { change, isSaving, error } = useChangeBook();
  const [placed, setPlaced] = useState<readonly string[]>([]);
  const orders = ordersOfKit(book, plan.kit, today);
  const { currency } = book.business;
  if (orders.length === 0) return null;
  const nameOf = (supplier: string): string => book.suppliers.find((one) => one.id === supplier)?.name ?? supplier;
  const text = JSON.stringify(plan.kit.lines.map(({ offer, bags }) => [offer, bags]));
  return (
    <section className="noprint">
      <h2>Turn it into {orders.length === 1 ? 'an order' : `${counted(orders.length, 'order')}`}.</h2>
      <p className="note more">
        Order from the supplier, then mark it here: it stands among what is on its way, to be counted in when it arrives.
      </p>
      <ul className="kept">
        {orders.map((order) => {
          const isPlaced = placed.includes(`${order.supplier} ${text}`);
          const goods = order.lines.reduce((sum, line) => sum + line.bags * line.price, 0);
          return (
            <li key={order.supplier}>
              <b>{nameOf(order.supplier)}</b>
              <span className="note">
                {counted(order.lines.length, 'line')}, {showMoney((goods + order.carriage) as Money, currency)}, at the door on{' '}
                {shortDate(order.expectedOn)}
              </span>
              <button
                type="button"
                className="btn"
                disabled={isSaving || isPlaced || !isWhole}
                aria-label={`Mark as ordered at ${nameOf(order.supplier)}`}
                onClick={() =>
                  change({ list: 'orders', put: { id: newId(`kit ${order.supplier} ${today}`, book.orders), ...order } }, () =>
                    setPlaced([...placed, `${order.supplier} ${text}`]),
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
    </section>
  );
}
