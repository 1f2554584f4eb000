import { chargeSettingsOf } from '@twistwright/books';
import {
  type BookKitWishes,
  type FirstEarnings,
  type Growth,
  growKit,
  guestsPerHourOf,
  sayGrowth,
  sayMilestone,
  wholeMoney,
} from '@twistwright/planner';
import { type CurrencyCode, decimalOf, type Money, money, showMoney } from '@twistwright/units';
import { memo, type ReactElement, useMemo, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import { Because } from '../parts/because.tsx';
import { Measured } from '../parts/measured.tsx';
import { Slider } from '../parts/slider.tsx';
import { Pinch } from '../pictures/pinch.tsx';
import { niceStep } from '../pictures/step-curve.tsx';
import { sentence } from '../words/counted.ts';
import { priceLevelOf } from './price-level.ts';
import type { PlannedKit } from './use-kit.ts';

/** Weeks that the growth looks ahead. */
const weeks = 52;

/** From the earnings of the first gigs to the next purchases. */
export const GrowthSection = memo(function GrowthSection({ plan, wishes }: PlannedKit): ReactElement {
  const { book } = useBook();
  const { currency } = book.business;
  const { step, smallStep } = useMemo(() => priceLevelOf(book), [book]);
  const hourly = chargeSettingsOf(book).hourly ?? money(60 * step);
  const [earnings, setEarnings] = useState<FirstEarnings>(() => ({
    hoursPerGig: 2,
    // A beginner asks for less than the coach; where to start is for the coach to say.
    feePerHour: money(Math.round(hourly / 3 / step) * step),
    tipPerGuest: money(5 * smallStep),
    costPerGig: money(5 * step),
    gigsPerWeek: 1,
    weeks,
  }));
  const growth = useMemo(() => growKit(book, wishes, plan, earnings, { runs: 600 }), [book, wishes, plan, earnings]);
  const move = (part: Partial<FirstEarnings>): void => setEarnings({ ...earnings, ...part });
  const dearest = Math.max(1, Math.ceil((hourly * 1.2) / (5 * step))) * 5 * step;
  return (
    <section>
      <h2>{growth.ok ? sayGrowth(growth.value, currency).answer : growth.error[0]?.sentence}</h2>
      {growth.ok && <p className="lead more">{sayGrowth(growth.value, currency).more[0]}</p>}
      {growth.ok && <WhyPerGig perGig={growth.value.perGig} earnings={earnings} wishes={wishes} met={plan.kit.met} />}
      <div className="dials noprint">
        <Slider
          label="Fee an hour"
          min={0}
          max={dearest}
          step={step}
          value={Math.min(dearest, earnings.feePerHour)}
          text={wholeMoney(earnings.feePerHour, currency)}
          ends={['0', wholeMoney(money(dearest), currency)]}
          onMove={(fee) => move({ feePerHour: money(fee) })}
        />
        <Slider
          label="Tip of a guest"
          min={0}
          max={20 * smallStep}
          step={smallStep}
          value={earnings.tipPerGuest}
          text={showMoney(earnings.tipPerGuest, currency)}
          ends={['0', wholeMoney(money(20 * smallStep), currency)]}
          onMove={(tip) => move({ tipPerGuest: money(tip) })}
        />
        <Slider
          label="Hours of a gig"
          min={1}
          max={6}
          step={0.5}
          value={earnings.hoursPerGig}
          text={`${earnings.hoursPerGig} h`}
          ends={['1', '6 h']}
          onMove={(hoursPerGig) => move({ hoursPerGig })}
        />
        <Slider
          label="Gigs a week"
          min={0.25}
          max={5}
          step={0.25}
          value={earnings.gigsPerWeek}
          text={String(earnings.gigsPerWeek)}
          ends={['1 a month', '5']}
          onMove={(gigsPerWeek) => move({ gigsPerWeek })}
        />
        <Slider
          label="Travel and parking of a gig"
          min={0}
          max={30 * step}
          step={step}
          value={earnings.costPerGig}
          text={wholeMoney(earnings.costPerGig, currency)}
          ends={['0', wholeMoney(money(30 * step), currency)]}
          onMove={(cost) => move({ costPerGig: money(cost) })}
        />
      </div>
      {growth.ok && <Path growth={growth.value} currency={currency} />}
      {growth.ok && growth.value.purchases.length > 0 && (
        <table style={{ marginTop: 16 }}>
          <caption className="note" style={{ padding: '8px 0' }}>
            Half of what a gig leaves goes into these, in this order. Prices without carriage.
          </caption>
          <thead>
            <tr>
              <th scope="col">What comes next</th>
              <th scope="col" className="num">
                {currency}
              </th>
            </tr>
          </thead>
          <tbody>
            {growth.value.purchases.map((purchase) => (
              <tr key={purchase.name}>
                <th scope="row">
                  {sentence(purchase.name)} <small className="carried">{sayMilestone(purchase)}</small>
                </th>
                <td className="num">{decimalOf(purchase.cost, currency)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
});

interface WhyPerGigProps {
  readonly perGig: Money;
  readonly earnings: FirstEarnings;
  readonly wishes: BookKitWishes;
  readonly met: number;
}
/** What a gig brings and what it takes. */
function WhyPerGig({ perGig, earnings, wishes, met }: WhyPerGigProps): ReactElement {
  const { currency } = useBook().book.business;
  const show = (amount: number): string => showMoney(money(Math.round(amount)), currency);
  const guests = earnings.hoursPerGig * (wishes.guestsPerHour ?? guestsPerHourOf[wishes.kind]) * met;
  const fee = earnings.hoursPerGig * earnings.feePerHour;
  const tips = guests * earnings.tipPerGuest;
  return (
    <Because ask={`Why ${show(perGig)} a gig?`}>
      <p>
        {show(fee)} of fee and {show(tips)} of tips from about {Math.round(guests)} guests served, less{' '}
        {show(fee + tips - earnings.costPerGig - perGig)} for the balloons that they take and {show(earnings.costPerGig)} for travel and
        parking.
      </p>
    </Because>
  );
}

/** Money after each gig: spreads as twisted balloons, and the line at which the kit is paid for. */
function Path({ growth, currency }: { readonly growth: Growth; readonly currency: CurrencyCode }): ReactElement {
  return (
    <Measured className="pic">
      {(width) => {
        const shown = growth.path.slice(0, width < 560 ? 12 : 24);
        const height = 220;
        const low = Math.min(0, ...shown.map((point) => point.balance.p10));
        const high = Math.max(1, ...shown.map((point) => point.balance.p90));
        const y = (amount: number): number => height - 40 - ((amount - low) / (high - low)) * (height - 66);
        const x = (gigs: number): number => 30 + ((gigs - 1) / Math.max(1, shown.length - 1)) * (width - 60);
        const tick = niceStep(high - low, 4);
        const guides = Array.from({ length: Math.floor(high / tick) + 1 }, (_, index) => index * tick);
        const paid = growth.paidBack.gigs;
        return (
          <svg
            viewBox={`0 0 ${width} ${height}`}
            width="100%"
            role="img"
            aria-label={`What is left after each of ${shown.length} gigs, the price of the kit taken off.${paid === undefined ? ' It is never paid for.' : ` It is paid for after about ${Math.round(paid.p50)}.`}`}
          >
            {guides.map((amount) => (
              <g key={amount}>
                <path
                  d={`M8 ${y(amount)}H${width - 8}`}
                  stroke={amount === 0 ? 'var(--ink)' : 'var(--rule-strong)'}
                  strokeWidth={amount === 0 ? 2 : 1}
                  strokeDasharray={amount === 0 ? undefined : '1 5'}
                />
                <text className="ax" x={amount === 0 ? width - 8 : 8} textAnchor={amount === 0 ? 'end' : 'start'} y={y(amount) - 5}>
                  {amount === 0 ? 'paid for' : wholeMoney(money(amount), currency)}
                </text>
              </g>
            ))}
            {shown.map(({ gigs, balance }) => (
              <g key={gigs}>
                <g transform={`translate(${x(gigs)} 0) rotate(90)`}>
                  <Pinch low={y(balance.p90)} middle={y(balance.p50)} high={y(balance.p10)} y={0} height={12} />
                </g>
                {(gigs === 1 || gigs % 4 === 0) && (
                  <text className="ax" x={x(gigs)} y={height - 8} textAnchor="middle">
                    {gigs === 1 ? 'gig 1' : gigs}
                  </text>
                )}
              </g>
            ))}
          </svg>
        );
      }}
    </Measured>
  );
}
