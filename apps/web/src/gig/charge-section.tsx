import { type Charge, sayCharge } from '@twistwright/planner';
import { decimalOf, type Money, roundToMoney, shortDate, showMoney } from '@twistwright/units';
import { memo, type ReactElement } from 'react';
import { useBook } from '../book/use-book.ts';
import { Because } from '../parts/because.tsx';
import { sentence } from '../words/counted.ts';

/** What do I charge, and what does an hour of it earn? */
export const ChargeSection = memo(function ChargeSection({ charge }: { readonly charge: Charge }): ReactElement {
  const { book } = useBook();
  const currency = book.business.currency;
  const said = sayCharge(charge, currency);
  const plain = (amount: Money): string => decimalOf(amount, currency);
  const nothing = charge.quote === 0;
  const isOther = charge.fee !== charge.quote;
  const deposit =
    charge.deposit === undefined || charge.deposit.amount === 0
      ? ''
      : `deposit ${plain(charge.deposit.amount)}${charge.deposit.paidOn === undefined ? '' : ', paid'}; `;
  const payments = `${deposit}balance ${plain(charge.balance.amount)} by ${shortDate(charge.balance.dueOn)}`;
  return (
    <section>
      <h2>{nothing ? 'No rate is set, so there is no quote.' : said.answer}</h2>
      <p className="lead more">
        {nothing ? 'Write your hourly rate on the page of the book, and the quote stands here.' : said.more.join(' ')}
      </p>
      <div className="scroll">
        <table>
          <caption className="skip">What the price is made of</caption>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">How</th>
              <th scope="col" className="num">
                {currency}
              </th>
            </tr>
          </thead>
          <tbody>
            {charge.lines.map((line) => (
              <tr key={line.what}>
                <th scope="row">{sentence(line.what)}</th>
                <td>{line.how}</td>
                <td className="num">{plain(line.amount)}</td>
              </tr>
            ))}
            {charge.tax !== undefined && (
              <tr>
                <th scope="row">{charge.tax.name}</th>
                <td>{charge.tax.basisPoints / 100} %</td>
                <td className="num">{plain(charge.tax.amount)}</td>
              </tr>
            )}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">Quote</th>
              <td>{isOther ? 'what the rates would say' : payments}</td>
              <td className="num">{plain(charge.quote)}</td>
            </tr>
            {isOther && (
              <tr>
                <th scope="row">Agreed</th>
                <td>{payments}</td>
                <td className="num">{plain(charge.fee)}</td>
              </tr>
            )}
          </tfoot>
        </table>
      </div>
      <Because ask="What it costs you">
        <Floor charge={charge} />
      </Because>
    </section>
  );
});

function Floor({ charge: { floor, margin, hourly } }: { readonly charge: Charge }): ReactElement {
  const { book } = useBook();
  const currency = book.business.currency;
  const show = (minor: number): string => showMoney(roundToMoney(minor), currency);
  const hours = (minutes: number): string => (minutes / 60).toFixed(1);
  const { minutes } = floor;
  return (
    <>
      <p>
        Balloons and extras for about <b>{show(floor.materials.p50)}</b> ({show(floor.materials.p10)} to {show(floor.materials.p90)});{' '}
        {floor.milesDriven} miles for {show(floor.miles)}
        {floor.mileSource === undefined ? '' : ` (${floor.mileSource})`}; a share of the year's costs, {show(floor.fixedShare)}; put aside
        for tax about {show(floor.taxReserve.p50)}.
      </p>
      <p>
        True hours: {hours(minutes.total)}, of them {hours(minutes.atGig)} at the gig, {hours(minutes.settingUp)} setting up and striking,{' '}
        {hours(minutes.driving)} driving, {hours(minutes.preparing)} preparing. Each earns {show(hourly.p50)} ({show(hourly.p10)} to{' '}
        {show(hourly.p90)}); {Math.round(margin.p50 * 100)} in 100 of the fee stay before tax.
      </p>
      <p>Rates and tax are settings of your book with their source and year; they are not advice.</p>
    </>
  );
}
