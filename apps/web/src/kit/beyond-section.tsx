import type { Book } from '@twistwright/books';
import { type KitPlan, wholeMoney } from '@twistwright/planner';
import { decimalOf, type Money, money, showMoney } from '@twistwright/units';
import { memo, type ReactElement } from 'react';
import { useBook } from '../book/use-book.ts';
import { counted, listed, sentence } from '../words/counted.ts';
import { figureName, of100, offersName } from './kit-words.ts';

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
      <p className="note more">Each on top of those above it, in one order with the kit.</p>
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
              <th scope="col" className="num roomy">
                More for each {wholeMoney(gainUnit, currency)}
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
                  {offersName(book, next.offers)}
                  <small className="carried">
                    {next.unlocks.length === 0
                      ? 'More choice, more pieces'
                      : `Brings ${listed(next.unlocks.map((id) => figureName(book, id)))}`}
                    {carriageNote(book, next.offers, next.cost)}
                  </small>
                </th>
                <td className="num">{decimalOf(next.cost, currency)}</td>
                <td className="num">
                  {(100 * next.metAfter).toFixed(1)} <span className="sp">(+{(100 * next.gain).toFixed(1)})</span>
                </td>
                <td className="num roomy">{next.cost > 0 ? (100 * next.gainPerThousand).toFixed(1) : 'for nothing'}</td>
                <td className="num noprint">
                  <button
                    type="button"
                    className="btn plain"
                    aria-label={`Put in ${offersName(book, next.offers)}`}
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

/** Minor units for which a gain is said. */
const gainUnit = money(1000);

/** ", with £3.95 of carriage": where the bill grows by more or by less than the price, because carriage comes or falls away. */
function carriageNote(book: Book, offers: readonly string[], cost: Money): string {
  const { currency } = book.business;
  const prices = offers.reduce((sum, id) => sum + (book.offers.find((offer) => offer.id === id)?.price ?? 0), 0);
  if (cost === prices) return '';
  return cost > prices
    ? `, with ${showMoney(money(cost - prices), currency)} of carriage`
    : `, its price less ${showMoney(money(prices - cost), currency)} of carriage that falls away`;
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
              <th scope="col" className="num">
                Would cost, {currency}
              </th>
              <th scope="col">
                <span className="skip">Put in</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {leftOut.map((left) => (
              <tr key={left.figure}>
                <th scope="row">
                  {left.name}
                  <small className="carried">
                    {(100 * left.share).toFixed(1)} of 100 ask for it.
                    {left.cost !== undefined && ` It takes ${offersName(book, left.offers)}${carriageNote(book, left.offers, left.cost)}.`}
                  </small>
                </th>
                <td className="num">{left.cost === undefined ? 'not for sale' : decimalOf(left.cost, currency)}</td>
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
