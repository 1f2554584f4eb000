import type { Book } from '@twistwright/books';
import type { KitPlan } from '@twistwright/planner';
import { decimalOf, type Money, money, showMoney } from '@twistwright/units';
import { memo, type ReactElement } from 'react';
import { useBook } from '../book/use-book.ts';
import { counted, listed, sentence } from '../words/counted.ts';
import { figureName, of100, offerName } from './kit-words.ts';

interface BeyondProps {
  readonly plan: KitPlan;
  readonly onPutIn: (offers: readonly string[]) => void;
}

/** The best next purchases in order, with what each brings for its money. */
export const NextSection = memo(function NextSection({ plan, onPutIn }: BeyondProps): ReactElement | null {
  const { book } = useBook();
  const { currency } = book.business;
  if (plan.next.length === 0) return null;
  return (
    <section>
      <h2>What to buy next, the most for the money first.</h2>
      <div className="scroll">
        <table>
          <caption className="skip">Next purchases</caption>
          <thead>
            <tr>
              <th scope="col">Bag</th>
              <th scope="col" className="num">
                {currency}
              </th>
              <th scope="col" className="num">
                Then met, of 100
              </th>
              <th scope="col" className="roomy">
                Brings
              </th>
              <th scope="col">
                <span className="skip">Put in</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {plan.next.map((next) => (
              <tr key={next.offers.join(' ')}>
                <th scope="row">
                  {listed(next.offers.map((offer) => offerName(book, offer)))}
                  <CarriageNote book={book} offers={next.offers} cost={next.cost} />
                </th>
                <td className="num">{decimalOf(next.cost, currency)}</td>
                <td className="num">
                  {(100 * next.metAfter).toFixed(1)} <span className="sp">(+{(100 * next.gain).toFixed(1)})</span>
                </td>
                <td className="roomy">
                  {next.unlocks.length === 0 ? 'more choice, more pieces' : next.unlocks.map((id) => figureName(book, id)).join(', ')}
                </td>
                <td className="num noprint">
                  <button
                    type="button"
                    className="btn plain"
                    aria-label={`Put in ${listed(next.offers.map((offer) => offerName(book, offer)))}`}
                    onClick={() => onPutIn(next.offers)}
                  >
                    Put in
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
});

interface CarriageNoteProps {
  readonly book: Book;
  readonly offers: readonly string[];
  /** What they add to the bill. */
  readonly cost: Money;
}
/** Says so where the bill grows by more or by less than the price, because carriage comes or falls away. */
function CarriageNote({ book, offers, cost }: CarriageNoteProps): ReactElement | null {
  const { currency } = book.business;
  const prices = offers.reduce((sum, id) => sum + (book.offers.find((offer) => offer.id === id)?.price ?? 0), 0);
  if (cost === prices) return null;
  return (
    <small className="carried">
      {cost > prices
        ? `with ${showMoney(money(cost - prices), currency)} of carriage`
        : `its price less ${showMoney(money(prices - cost), currency)} of carriage that falls away`}
    </small>
  );
}

/** Figures that the kit does not make, and the cheapest that would bring each in. */
export const LeftOutSection = memo(function LeftOutSection({ plan, onPutIn }: BeyondProps): ReactElement | null {
  const { book } = useBook();
  const { currency } = book.business;
  const { leftOut } = plan.kit;
  const asked = leftOut.reduce((sum, left) => sum + left.share, 0);
  if (leftOut.length === 0) return null;
  return (
    <section>
      <h2>
        {sentence(counted(leftOut.length, 'figure'))} left out; {of100(asked)} of 100 guests ask for {leftOut.length === 1 ? 'it' : 'them'}.
      </h2>
      <div className="scroll">
        <table>
          <caption className="skip">Figures that are left out</caption>
          <thead>
            <tr>
              <th scope="col">Figure</th>
              <th scope="col" className="num roomy">
                Asked for, of 100
              </th>
              <th scope="col" className="num">
                Would cost, {currency}
              </th>
              <th scope="col" className="roomy">
                For
              </th>
              <th scope="col">
                <span className="skip">Put in</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {leftOut.map((left) => (
              <tr key={left.figure}>
                <th scope="row">{left.name}</th>
                <td className="num roomy">{(100 * left.share).toFixed(1)}</td>
                <td className="num">{left.cost === undefined ? 'not for sale' : decimalOf(left.cost, currency)}</td>
                <td className="roomy">
                  {listed(left.offers.map((offer) => offerName(book, offer)))}
                  {left.cost !== undefined && <CarriageNote book={book} offers={left.offers} cost={left.cost} />}
                </td>
                <td className="num noprint">
                  {left.cost !== undefined && (
                    <button type="button" className="btn plain" aria-label={`Bring in ${left.name}`} onClick={() => onPutIn(left.offers)}>
                      Bring in
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
});
