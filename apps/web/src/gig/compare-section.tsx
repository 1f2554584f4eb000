import { type Money, roundToMoney, showMoney } from '@twistwright/units';
import type { ReactElement } from 'react';
import { useBook } from '../book/use-book.ts';
import type { GigView } from '../planning/gig-view.ts';
import { between } from '../planning/gig-words.ts';

export interface CompareSectionProps {
  readonly before: GigView;
  readonly after: GigView;
  readonly onKeep: () => void;
  readonly onBack: () => void;
}

/** A change of mind beside the plan it came from. Same luck, so that nothing else moves. */
export function CompareSection({ before, after, onKeep, onBack }: CompareSectionProps): ReactElement {
  const { book } = useBook();
  const money = (minor: number): string => showMoney(roundToMoney(minor) as Money, book.business.currency);
  const pieces = (view: GigView): number => view.needs.reduce((sum, need) => sum + need.takes.mean, 0);
  const short = (view: GigView): number => view.needs.filter((need) => need.short > 0).length;
  const rows: readonly (readonly [string, (view: GigView) => string])[] = [
    ['Served', ({ forecast }) => `${Math.round(forecast.served.p50)} of ${Math.round(forecast.arrived.p50)} (${between(forecast.served)})`],
    ['The last wait', ({ forecast }) => `${Math.round(forecast.lastWait.p50)} min (${between(forecast.lastWait)})`],
    [`Wait at most ${after.forecast.promiseMinutes} min`, ({ forecast }) => `${Math.round(forecast.shareWithin.mean * 100)} in 100`],
    ['Pieces taken', (view) => String(Math.round(pieces(view)))],
    ['Items short', (view) => String(short(view))],
    ['Quote', ({ charge }) => money(charge.quote)],
    ['A true hour earns', ({ charge }) => `${money(charge.hourly.p50)}`],
  ];
  return (
    <section className="compared">
      <h2>Side by side.</h2>
      <div className="scroll more">
        <table className="compare">
          <caption className="skip">The change of mind beside the plan as booked</caption>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col" className="num">
                As booked
              </th>
              <th scope="col" className="num">
                As it would be
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(([what, text]) => (
              <tr key={what}>
                <th scope="row">{what}</th>
                <td className="num">{text(before)}</td>
                <td className="num now">{text(after)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div className="row" style={{ marginTop: 18 }}>
        <button type="button" className="btn" onClick={onKeep}>
          Keep this change
        </button>
        <button type="button" className="btn plain" onClick={onBack}>
          Back to what is booked
        </button>
      </div>
    </section>
  );
}
