import type { Book } from '@twistwright/books';
import { type Kit, sayMix, wholeMoney } from '@twistwright/planner';
import { decimalOf, type Money, showMoney } from '@twistwright/units';
import { memo, type ReactElement, type ReactNode, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import { rubberOfItem } from '../parts/item-name.tsx';
import { Unbroken } from '../parts/unbroken.tsx';
import { Bag } from '../pictures/bag.tsx';
import { listed, sentence } from '../words/counted.ts';
import type { QuickKit } from './kit-ask.ts';
import { bagsWords, buySentence, figureName, of100, packsWords, whyText } from './kit-words.ts';
import { ToolPicture } from './tool-picture.tsx';

interface BuyListProps {
  readonly quick: QuickKit;
  readonly forcedIn: readonly string[];
  /** Takes an offer or a tool out of what may be bought. */
  readonly onTakeOut: (id: string) => void;
}

/** What to buy, by shop: a box, what it is, why it is there, what is lost without it, what it costs. */
export const BuyList = memo(function BuyList({ quick, forcedIn, onTakeOut }: BuyListProps): ReactElement {
  const { book } = useBook();
  const { currency } = book.business;
  const { kit } = quick;
  const elsewhere = kit.tools.filter((tool) => !kit.shops.some((shop) => shop.supplier === tool.supplier));
  return (
    <section className="buy">
      <h2>{buySentence(quick, currency)}</h2>
      <p className="note" style={{ margin: '6px 0 16px' }}>
        Each box is for ticking in the shop. Prices in {currency}.
      </p>
      {kit.shops.map((shop) => (
        <Shop
          key={shop.supplier}
          name={shop.name}
          terms={termsOf(book, shop.supplier)}
          carriage={shop.shipping}
          total={(shop.goods + shop.shipping) as Money}
        >
          <Tools tools={kit.tools.filter((tool) => tool.supplier === shop.supplier)} onTakeOut={onTakeOut} />
          {kit.lines
            .filter((line) => line.supplier === shop.supplier)
            .map((line) => (
              <Line key={line.offer} line={line} isForced={forcedIn.includes(line.offer)} onTakeOut={onTakeOut} />
            ))}
        </Shop>
      ))}
      {elsewhere.length > 0 && (
        <Shop name="Anywhere" terms="" carriage={0 as Money} total={elsewhere.reduce((sum, tool) => sum + tool.price, 0) as Money}>
          <Tools tools={elsewhere} onTakeOut={onTakeOut} />
        </Shop>
      )}
      <p className="together">
        <span>Together</span>
        <span>{showMoney(kit.spent, currency)}</span>
      </p>
    </section>
  );
});

/** What a shop asks of an order: "Takes orders from £15. No carriage from £60." */
function termsOf(book: Book, id: string): string {
  const { leastOrder, freeFrom, carriage } = book.suppliers.find((supplier) => supplier.id === id) ?? {};
  const show = (amount: Money): string => wholeMoney(amount, book.business.currency);
  return [
    ...(leastOrder === undefined ? [] : [`Takes orders from ${show(leastOrder)}.`]),
    ...(freeFrom === undefined || !((carriage ?? 0) > 0) ? [] : [`No carriage from ${show(freeFrom)}.`]),
  ].join(' ');
}

function Shop({
  name,
  terms,
  carriage,
  total,
  children,
}: {
  readonly name: string;
  readonly terms: string;
  readonly carriage: Money;
  readonly total: Money;
  readonly children: ReactNode;
}): ReactElement {
  const { book } = useBook();
  const { currency } = book.business;
  return (
    <div className="shop">
      <h3>
        {name} <span className="sp">{showMoney(total, currency)}</span>
      </h3>
      {terms !== '' && <p className="note">{terms}</p>}
      <ul className="kits">
        {children}
        {carriage > 0 && (
          <li className="kit carriage">
            <span>Carriage</span>
            <span className="num">{decimalOf(carriage, currency)}</span>
          </li>
        )}
      </ul>
    </div>
  );
}

function Tools({ tools, onTakeOut }: { readonly tools: Kit['tools']; readonly onTakeOut: (id: string) => void }): ReactElement {
  return (
    <>
      {tools.map((tool) => (
        <Row
          key={tool.tool}
          picture={<ToolPicture name={tool.name} />}
          name={sentence(tool.name)}
          count={packsWords(tool.bags, tool.pieces)}
          why={tool.why === 'must-have' ? 'Needed from the first gig.' : 'A spare, with money that is left.'}
          price={tool.price}
          onTakeOut={() => onTakeOut(tool.tool)}
        />
      ))}
    </>
  );
}

interface LineProps {
  readonly line: Kit['lines'][number];
  readonly isForced: boolean;
  readonly onTakeOut: (id: string) => void;
}
function Line({ line, isForced, onTakeOut }: LineProps): ReactElement {
  const { book } = useBook();
  const offer = book.offers.find(({ id }) => id === line.offer);
  // A mixed bag is shown by the first of its balloons.
  const shown = Object.keys(offer?.mix ?? {})[0] ?? offer?.item;
  const item = book.items.find(({ id }) => id === shown);
  const lost = of100(line.lossWithout);
  const others = line.serves.filter((id) => !line.unlocks.includes(id));
  const namesOf = (ids: readonly string[]): string => listed(ids.map((id) => figureName(book, id)));
  return (
    <Row
      picture={
        item?.kind === 'balloon' ? (
          <Bag rubber={rubberOfItem(book, item)} size={item.size} {...(item.print === undefined ? {} : { print: item.print })} />
        ) : (
          <ToolPicture name={line.name} />
        )
      }
      name={line.name}
      count={bagsWords(book, line.offer, line.bags, line.pieces)}
      why={
        <details className="which">
          <summary>
            <span>
              {isForced ? 'You have put it in. ' : ''}
              <Unbroken text={whyText(line.name, line.why)} />{' '}
              <span className="asks">
                Without it {lost === 0 ? 'under 1' : lost} of 100 requests {lost > 1 ? 'are' : 'is'} lost.
              </span>
            </span>
          </summary>
          {line.unlocks.length > 0 && <p>Not without it: {namesOf(line.unlocks)}.</p>}
          {others.length > 0 && (
            <p>
              {line.unlocks.length > 0 ? 'Also used in' : 'Used in'}: {namesOf(others)}.
            </p>
          )}
          {line.mix !== undefined && <p>{sayMix(book, line)}</p>}
        </details>
      }
      price={line.cost}
      onTakeOut={() => onTakeOut(line.offer)}
    />
  );
}
interface RowProps {
  readonly picture: ReactElement;
  readonly name: string;
  readonly count: string;
  readonly why: ReactNode;
  readonly price: Money;
  readonly onTakeOut: () => void;
}
function Row({ picture, name, count, why, price, onTakeOut }: RowProps): ReactElement {
  const { book } = useBook();
  const [isBought, setBought] = useState(false);
  return (
    <li className="kit">
      <label className="pick">
        <input type="checkbox" className="tick" checked={isBought} onChange={(event) => setBought(event.target.checked)} />
        <span className="pic2">{picture}</span>
        <span className="nm2">
          <b>
            <Unbroken text={name} />
          </b>
          <small>{count}</small>
        </span>
      </label>
      <div className="un">{why}</div>
      <button type="button" className="btn plain noprint" aria-label={`Take out ${name}`} onClick={onTakeOut}>
        Take out
      </button>
      <span className="num">{decimalOf(price, book.business.currency)}</span>
    </li>
  );
}
