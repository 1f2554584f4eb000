import { Link } from '@tanstack/react-router';
import { planningSettingsOf } from '@twistwright/books';
import { comingGigs, type ShoppingPlan, sayProof, sayShopping, sayThumb } from '@twistwright/planner';
import { type LocalDate, shortDate, showMoney } from '@twistwright/units';
import { type ReactElement, useMemo, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import { Page } from '../frame/page.tsx';
import { Empty } from '../parts/empty.tsx';
import { Measured } from '../parts/measured.tsx';
import { Progress } from '../parts/progress.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { Slider } from '../parts/slider.tsx';
import { Tick } from '../parts/tick.tsx';
import { type CurvePoint, StepCurve } from '../pictures/step-curve.tsx';
import { chanceStops, nearestStop } from '../planning/change-of-mind.ts';
import { HandNeeds } from '../shopping/hand-needs.tsx';
import { OnOrder } from '../shopping/on-order.tsx';
import { OrderSlip } from '../shopping/order-slip.tsx';
import type { Found, ShoppingDials } from '../shopping/shopping-ask.ts';
import { orderBySentence } from '../shopping/shopping-words.ts';
import { type Shopping as ShoppingState, useShopping } from '../shopping/use-shopping.ts';
import { chanceInWords, counted } from '../words/counted.ts';

/** What must I buy, where, by when, for how much? */
export function Shopping(): ReactElement {
  const { book, today } = useBook();
  const gigs = comingGigs(book, today);
  if (gigs.length === 0 || book.suppliers.length === 0)
    return (
      <Page title="Shopping" whose={book.business.name}>
        <div className="title">
          <h1 className="say">
            {gigs.length === 0 ? 'No gig is coming, so nothing has to be bought.' : 'There is no supplier to buy from yet.'}
          </h1>
        </div>
        <Empty
          sentence={
            gigs.length === 0
              ? 'Add a gig, and this page says what to buy for it, where, and by when.'
              : 'Add a supplier and its prices, and this page says what to buy where, and by when.'
          }
        >
          {gigs.length === 0 ? (
            <Link className="btn full" to="/gigs/new">
              Add a gig
            </Link>
          ) : (
            <Link className="btn full" to="/shopping/suppliers/$supplier" params={{ supplier: 'new' }}>
              Add a supplier
            </Link>
          )}
        </Empty>
        <OnOrder />
      </Page>
    );
  return <ShoppingPage days={[...new Set(gigs.map((gig) => gig.day))]} />;
}

function ShoppingPage({ days }: { readonly days: readonly LocalDate[] }): ReactElement {
  const { book } = useBook();
  const settings = planningSettingsOf(book);
  const [moved, setMoved] = useState<Partial<ShoppingDials>>({});
  const movedText = JSON.stringify(moved);
  const lastDay = days.at(-1) as LocalDate;
  const dials = useMemo(
    (): ShoppingDials => ({
      chance: settings.chanceOfRunningOut,
      daysToSpare: settings.daysToSpare,
      suppliers: book.suppliers.map((supplier) => supplier.id),
      until: lastDay,
      ...(JSON.parse(movedText) as Partial<ShoppingDials>),
    }),
    [book, movedText, settings.chanceOfRunningOut, settings.daysToSpare, lastDay],
  );
  const shopping = useShopping(dials, chanceStops);
  const found = atNoMoreMoney(shopping.found, dials.chance);
  return (
    <Page title="Shopping" whose={book.business.name} isBusy={found === undefined && shopping.broken === undefined}>
      <div className="plan">
        <div className="upper">
          <div className="first">
            <section className="served" style={{ paddingTop: 36 }}>
              <Answer found={found} shopping={shopping} dials={dials} />
            </section>
          </div>
          <Panel
            days={days}
            dials={dials}
            onMove={(part) => setMoved({ ...moved, ...part })}
            plan={found?.ok === true ? found.plan : undefined}
          />
        </div>
        <div className="rest">
          {planOf(found)?.orders.map((order, index) => (
            <OrderSlip key={`${order.supplier} ${order.orderBy}`} order={order} isFirst={index === 0} />
          ))}
          <OnOrder />
          <HandNeeds />
          <div className="row noprint" style={{ marginTop: 40 }}>
            <Link className="btn" to="/shopping/suppliers">
              Suppliers and prices
            </Link>
          </div>
        </div>
      </div>
    </Page>
  );
}

/**
 * What was found for a chance, or what was found for a smaller one where that costs no more and asks for no earlier order: for one
 * chance the solver stops at the least money, and several choices of bags and days may cost the same.
 */
function atNoMoreMoney(all: ReadonlyMap<number, Found>, chance: number): Found | undefined {
  const asked = all.get(chance);
  if (asked?.ok !== true) return asked;
  const isNoWorse = (plan: ShoppingPlan): boolean =>
    plan.total <= asked.plan.total && (plan.firstOrderBy ?? '') >= (asked.plan.firstOrderBy ?? '');
  let best = asked;
  for (const other of all.values()) if (other.ok && isNoWorse(other.plan) && other.plan.chance > best.plan.chance) best = other;
  return best;
}

const planOf = (found: Found | undefined): ShoppingPlan | undefined => (found?.ok === true ? found.plan : found?.refusal.nearest);

interface AnswerProps {
  readonly found: Found | undefined;
  readonly shopping: ShoppingState;
  readonly dials: ShoppingDials;
}
function Answer({ found, shopping, dials }: AnswerProps): ReactElement {
  const { book, today } = useBook();
  const currency = book.business.currency;
  const plan = planOf(found);
  const gigs = comingGigs(book, today, dials.until);
  const isForWholeCurve = shopping.progress?.what === 'Drawing the curve';
  return (
    <>
      <h1 className="say" aria-live="polite">
        {plan === undefined
          ? found === undefined
            ? 'What must be bought, where, and by when?'
            : 'This cannot be bought in time.'
          : sayShopping(plan, currency).answer}
      </h1>
      {shopping.broken !== undefined && <Refusal sentence="The plan could not be made." instead={shopping.broken} />}
      {found?.ok === false && (
        <div className="more">
          <Refusal sentence={found.refusal.problems[0]?.sentence ?? ''} instead={found.refusal.problems[0]?.todo ?? ''}>
            {found.refusal.problems.length > 1 && (
              <ul className="problems">
                {found.refusal.problems.slice(1, 8).map((problem) => (
                  <li key={problem.sentence}>{problem.sentence}</li>
                ))}
                {found.refusal.problems.length > 8 && <li>And {found.refusal.problems.length - 8} more.</li>}
              </ul>
            )}
          </Refusal>
        </div>
      )}
      {plan !== undefined && (
        <p className="lead more">
          For the {gigs.length === 1 ? 'gig' : counted(gigs.length, 'gig')} to {shortDate(dials.until)}.{' '}
          {plan.firstOrderBy !== undefined && (
            <>
              The first order must go by <b>{orderBySentence(plan.firstOrderBy, plan.orders[0]?.before)}</b>.{' '}
            </>
          )}
          {sayThumb(plan, currency)}
        </p>
      )}
      {shopping.progress !== undefined && (
        <Progress what={shopping.progress.what} done={shopping.progress.done} of={shopping.progress.of} onStop={shopping.stop} />
      )}
      <Curve shopping={shopping} plan={plan} isGrowing={isForWholeCurve} />
      {plan?.chanceElsewhere !== undefined && (
        <p className="note more">
          Counted on {plan.runs.toLocaleString('en')} tries: nothing runs out in {(plan.chance * 100).toFixed(1)} of 100. On as many fresh
          tries: {(plan.chanceElsewhere * 100).toFixed(1)}. After the last gig goods for about {showMoney(plan.tiedUp, currency)} are left;
          keeping them costs {showMoney(plan.keeping, currency)}.
        </p>
      )}
    </>
  );
}

/** The 90 % point of the standard normal distribution: the band is from the 10th to the 90th percentile of what other luck would say. */
const z90 = 1.2815515655446004;
function pointOf(plan: ShoppingPlan): CurvePoint {
  const risk = 1 - plan.chance;
  const width = z90 * Math.sqrt(Math.max(risk * (1 - risk), 1 / plan.runs) / plan.runs);
  return { at: plan.total, risk, low: Math.max(0, risk - width), high: Math.min(1, risk + width) };
}

function Curve({
  shopping,
  plan,
  isGrowing,
}: {
  readonly shopping: ShoppingState;
  readonly plan: ShoppingPlan | undefined;
  readonly isGrowing: boolean;
}): ReactElement | null {
  const { book } = useBook();
  const currency = book.business.currency;
  const plans = [...shopping.found.values()].flatMap((found) => (found.ok ? [found.plan] : []));
  const first = plans[0];
  if (first === undefined || plan === undefined) return null;
  const nothing: CurvePoint = { at: 0, risk: 1 - first.chanceNow, low: 1 - first.chanceNow, high: 1 - first.chanceNow };
  const points = stepsOf([nothing, ...plans.map(pointOf)]);
  const rule = plan.ruleOfThumb;
  return (
    <>
      <Measured className="pic">
        {(width) => (
          <StepCurve
            width={width}
            points={points}
            chosen={pointOf(plan)}
            showAt={(at) => showMoney(Math.round(at) as typeof plan.total, currency)}
            label={`Chance that something runs out against money spent, in ${points.length} steps. Chosen: ${showMoney(plan.total, currency)} with a chance of ${chanceInWords(1 - plan.chance)}.${isGrowing ? ' More steps are being worked out.' : ''}`}
            {...(rule === undefined
              ? {}
              : { rule: { at: rule.total, risk: 1 - rule.chance, label: width < 560 ? 'rounding up' : 'round everything up' } })}
          />
        )}
      </Measured>
      <details className="because">
        <summary>The steps in numbers</summary>
        <table>
          <caption className="skip">Money against the chance that something runs out</caption>
          <thead>
            <tr>
              <th scope="col" className="num">
                Money
              </th>
              <th scope="col" className="num">
                Runs out, of 100
              </th>
            </tr>
          </thead>
          <tbody>
            {points.map((point) => (
              <tr key={point.at}>
                <td className="num">{showMoney(point.at as typeof plan.total, currency)}</td>
                <td className="num">{(point.risk * 100).toFixed(1)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </>
  );
}
/** Ascending in money, each step safer than the one before. */
function stepsOf(points: readonly CurvePoint[]): readonly CurvePoint[] {
  const steps: CurvePoint[] = [];
  for (const point of [...points].sort((a, b) => a.at - b.at || a.risk - b.risk))
    if (steps.length === 0 || point.risk < (steps.at(-1)?.risk ?? 0)) steps.push(point);
  return steps;
}

interface PanelProps {
  readonly days: readonly LocalDate[];
  readonly dials: ShoppingDials;
  readonly onMove: (part: Partial<ShoppingDials>) => void;
  readonly plan: ShoppingPlan | undefined;
}
function Panel({ days, dials, onMove, plan }: PanelProps): ReactElement {
  const { book } = useBook();
  return (
    <aside className="if noprint" aria-label="What if">
      <h2>What if</h2>
      <Slider
        label="Chance of running out"
        min={0}
        max={chanceStops.length - 1}
        value={nearestStop(dials.chance)}
        text={chanceInWords(dials.chance)}
        ends={['1 in 100', '6 in 10']}
        onMove={(index) => onMove({ chance: chanceStops[index] ?? dials.chance })}
      />
      <Slider
        label="Days to spare"
        min={0}
        max={5}
        value={dials.daysToSpare}
        text={dials.daysToSpare === 1 ? '1 day' : `${dials.daysToSpare} days`}
        ends={['0', '5 days']}
        onMove={(daysToSpare) => onMove({ daysToSpare })}
      />
      <label className="choice">
        <span>For the gigs to</span>
        <span className="chooser">
          <select className="in" value={dials.until} onChange={(event) => onMove({ until: event.target.value as LocalDate })}>
            {days.map((day) => (
              <option key={day} value={day}>
                {shortDate(day)}
              </option>
            ))}
          </select>
        </span>
      </label>
      <fieldset>
        <legend>Buy from</legend>
        {book.suppliers.map((supplier) => (
          <Tick
            key={supplier.id}
            checked={dials.suppliers.includes(supplier.id)}
            onChange={(checked) =>
              onMove({ suppliers: checked ? [...dials.suppliers, supplier.id] : dials.suppliers.filter((id) => id !== supplier.id) })
            }
          >
            {supplier.name}
          </Tick>
        ))}
      </fieldset>
      {plan !== undefined && (
        <p className="note" style={{ marginTop: 20 }}>
          {sayProof(plan.proof)}
        </p>
      )}
    </aside>
  );
}
