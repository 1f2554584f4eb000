import { Link } from '@tanstack/react-router';
import type { SavedKit } from '@twistwright/books';
import { curveThrough, metWithin, wholeMoney } from '@twistwright/planner';
import { decimalOf, exponentOf, type Money, money, showMoney } from '@twistwright/units';
import { memo, type ReactElement, useCallback, useDeferredValue, useMemo, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import { Page } from '../frame/page.tsx';
import { Empty } from '../parts/empty.tsx';
import { Measured } from '../parts/measured.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { LeftOutSection, NextSection } from './beyond-section.tsx';
import { BudgetCurve } from './budget-curve.tsx';
import { BudgetSlider } from './budget-slider.tsx';
import { BuyList } from './buy-list.tsx';
import { CareSection } from './care-section.tsx';
import { CompareSection } from './compare-section.tsx';
import { GrowthSection } from './growth-section.tsx';
import { KeepSection } from './keep-section.tsx';
import './kit.css';
import type { CurvePoint } from './kit-ask.ts';
import { answerSentence, expectSentence, isTool, lossSentence, nextSentence, of100, offerName, sliderOf } from './kit-words.ts';
import { NewcomerPanel } from './newcomer-panel.tsx';
import { OrderSection } from './order-section.tsx';
import { PapersRow } from './papers-row.tsx';
import { Proof } from './proof.tsx';
import { type KitState, useKit } from './use-kit.ts';
import { firstWishes, kitFigures, type PageWishes, pageOfSaved, wishesOf } from './wishes-of-page.ts';

/** What should a newcomer buy first? */
export function FirstKit(): ReactElement {
  const { book } = useBook();
  if (kitFigures(book).length === 0 || book.offers.length === 0)
    return (
      <Page title="First kit" whose={book.business.name}>
        <div className="title">
          <h1 className="say">There is nothing to choose a first kit from yet.</h1>
        </div>
        <Empty sentence="With figures that have recipes, and suppliers with prices, this page says what a newcomer should buy first for the money.">
          <div className="row">
            {kitFigures(book).length === 0 && (
              <Link className="btn full" to="/repertoire">
                Figures
              </Link>
            )}
            {book.offers.length === 0 && (
              <Link className="btn full" to="/shopping/suppliers">
                Suppliers and prices
              </Link>
            )}
          </div>
        </Empty>
      </Page>
    );
  return <FirstKitPage />;
}

function FirstKitPage(): ReactElement {
  const { book } = useBook();
  const { currency } = book.business;
  const [page, setPage] = useState<PageWishes>(firstWishes);
  const [moved, setMoved] = useState<Money>();
  const [name, setName] = useState('');
  const [suggested, setSuggested] = useState<Money>();
  const unpriced = useMemo(() => wishesOf(book, page), [book, page]);
  const budget = moved ?? suggested;
  const state = useKit(unpriced, budget);
  const { range, quick, planned, isWhole } = state;
  // The sentence and the picture follow the finger; the list and the table come a moment later, so that they never hold it up.
  const list = useDeferredValue(quick);
  const points = useDeferredValue(state.points);
  const slider = range === undefined ? undefined : sliderOf(range, 10 ** exponentOf(currency));
  if (suggested === undefined && slider !== undefined)
    setSuggested(money(Math.round((slider.min + 0.2 * (slider.max - slider.min)) / slider.step) * slider.step));
  const wishes = useMemo(() => ({ ...unpriced, budget: budget ?? money(0) }), [unpriced, budget]);
  const change = useCallback((part: Partial<PageWishes>): void => setPage((before) => ({ ...before, ...part })), []);
  const putIn = useCallback(
    (offers: readonly string[]): void =>
      setPage((before) => ({
        ...before,
        forcedIn: [...new Set([...before.forcedIn, ...offers])],
        takenOut: before.takenOut.filter((id) => !offers.includes(id)),
      })),
    [],
  );
  const takeOut = useCallback(
    (id: string): void =>
      setPage((before) =>
        before.forcedIn.includes(id)
          ? { ...before, forcedIn: before.forcedIn.filter((one) => one !== id) }
          : { ...before, takenOut: [...before.takenOut, id] },
      ),
    [],
  );
  const open = useCallback(
    (kit: SavedKit): void => {
      setPage(pageOfSaved(book, kit));
      setMoved(kit.wishes.budget);
      setName(kit.name);
      window.scrollTo({ top: 0 });
    },
    [book],
  );
  const shares = useShares(quick);
  return (
    <Page title="First kit" whose={book.business.name} isBusy={!isWhole && state.refused === undefined && state.broken === undefined}>
      <div className="plan">
        <div className="upper">
          <div className="first">
            <section className="served" style={{ paddingTop: 36 }}>
              <Answer state={state} page={page} />
              <div className={slider === undefined || budget === undefined ? 'unseen' : undefined}>
                <Curve state={state} slider={slider ?? noSlider} budget={budget ?? money(0)} />
                <BudgetSlider
                  {...(slider ?? noSlider)}
                  value={Math.min(Math.max(budget ?? 0, slider?.min ?? 0), slider?.max ?? 0)}
                  text={wholeMoney(budget ?? money(0), currency)}
                  onMove={(value) => setMoved(money(value))}
                />
                <CurveTable points={points} quick={list} />
              </div>
            </section>
          </div>
          <NewcomerPanel wishes={page} onChange={change} shares={shares} />
        </div>
        <div className="rest">
          {list !== undefined && quick !== undefined && (
            <>
              <BuyList quick={list} forcedIn={page.forcedIn} onTakeOut={takeOut} />
              <TakenOut forcedIn={page.forcedIn} takenOut={page.takenOut} onChange={change} />
              <CareSection kit={list.kit} />
            </>
          )}
          {quick === undefined && state.nearest !== undefined && (
            <BuyList quick={state.nearest.plan} forcedIn={page.forcedIn} onTakeOut={takeOut} />
          )}
          {quick === undefined && <TakenOut forcedIn={page.forcedIn} takenOut={page.takenOut} onChange={change} />}
          {planned !== undefined && budget !== undefined && (
            <div className="noprint" hidden={quick === undefined}>
              <PapersRow wishes={wishes} kit={isWhole ? planned.plan.kit : undefined} name={name.trim()} />
              <NextSection plan={planned.plan} onPutIn={putIn} />
              <LeftOutSection plan={planned.plan} onPutIn={putIn} />
              <GrowthSection {...planned} />
              <CompareSection {...planned} />
              <KeepSection {...planned} isWhole={isWhole} name={name} onName={setName} onOpen={open} />
              <OrderSection plan={planned.plan} isWhole={isWhole} name={name.trim()} />
            </div>
          )}
        </div>
      </div>
    </Page>
  );
}

/** Keeps the place of the slider, unseen, until it is known how far it goes: what stands below does not move. */
const noSlider = { min: 0, max: 1, step: 1 } as const;

/** How often each figure is asked for; the same object as long as that stays the same, whatever the money. */
function useShares(quick: KitState['quick']): ReadonlyMap<string, number> {
  const text = JSON.stringify((quick?.kit.figures ?? []).map((figure) => [figure.figure, figure.share]));
  return useMemo(() => new Map(JSON.parse(text) as readonly (readonly [string, number])[]), [text]);
}

function Answer({ state, page }: { readonly state: KitState; readonly page: PageWishes }): ReactElement {
  const { book } = useBook();
  const { currency } = book.business;
  const { quick, planned, isWhole, refused, nearest, broken, freeMet } = state;
  const plan = isWhole ? planned?.plan : undefined;
  const next = plan?.next[0];
  const said = next === undefined ? undefined : nextSentence(book, next);
  const decided = { forcedIn: page.forcedIn.length, takenOut: page.takenOut.length };
  const isEmpty = kitFigures(book).every(({ id }) => page.unwanted.includes(id));
  return (
    <>
      <h1 className="say" aria-live="polite">
        {quick === undefined
          ? refused === undefined
            ? 'What should a newcomer buy first?'
            : 'This kit cannot be had.'
          : answerSentence(quick, currency)}
      </h1>
      {broken !== undefined && <Refusal sentence="The kit could not be worked out." instead={broken} />}
      {refused !== undefined && quick === undefined && (
        <div className="more">
          <Refusal
            sentence={isEmpty ? 'No figure is ticked, so there is nothing to buy for.' : (refused[0]?.sentence ?? '')}
            instead={isEmpty ? 'Tick at least one.' : (refused[0]?.todo ?? '')}
          >
            {refused.length > 1 && !isEmpty && (
              <ul className="problems">
                {refused.slice(1, 6).map((problem) => (
                  <li key={problem.sentence}>
                    {problem.sentence} {problem.todo}
                  </li>
                ))}
              </ul>
            )}
            {nearest !== undefined && !isEmpty && (
              <p>
                The nearest that is possible: {nearest.changes.join(' ')} {answerSentence(nearest.plan, currency)}
              </p>
            )}
          </Refusal>
        </div>
      )}
      {(quick !== undefined || refused === undefined) && (
        <>
          <p className="lead more expected">{quick !== undefined && expectSentence(quick, page.hours)}</p>
          <p className="lead expected">
            {said !== undefined && (
              <>
                Next best: <b>{said.money}</b> for {said.rest}.
              </>
            )}
          </p>
          {decided.forcedIn + decided.takenOut > 0 && (
            <p className="lead expected" role="status">
              {plan !== undefined && freeMet !== undefined && lossSentence(plan, freeMet, decided)}
            </p>
          )}
          <div className={plan === undefined ? 'why-met unseen' : 'why-met'}>
            {planned !== undefined && <Proof plan={planned.plan} page={page} />}
          </div>
        </>
      )}
    </>
  );
}

/** Where the kit at hand lies on the curve. */
const pointOf = (quick: KitState['quick']): CurvePoint | undefined =>
  quick === undefined ? undefined : { budget: quick.kit.budget, met: quick.kit.met, ...metWithin(quick.kit, quick.lasting) };

interface CurveProps {
  readonly state: KitState;
  readonly slider: { readonly min: number; readonly max: number };
  readonly budget: Money;
}
function Curve({ state, slider, budget }: CurveProps): ReactElement {
  const { book } = useBook();
  const { currency } = book.business;
  const { quick, points } = state;
  const chosen = pointOf(quick);
  const rules = (quick?.rules ?? []).map((rule) => ({ label: ruleWords[rule.rule], at: rule.spent, met: rule.met }));
  return (
    <Measured className="pic">
      {(width) => (
        <BudgetCurve
          width={width}
          min={slider.min}
          max={slider.max}
          points={curveThrough(points, chosen)}
          chosen={chosen}
          rules={rules}
          showAt={(at) => wholeMoney(money(Math.round(at)), currency)}
          label={`Requests met against money from ${wholeMoney(money(slider.min), currency)} to ${wholeMoney(money(slider.max), currency)}.${quick === undefined ? '' : ` Chosen: ${wholeMoney(budget, currency)}, ${of100(quick.kit.met)} of 100 requests met.`}`}
        />
      )}
    </Measured>
  );
}
const ruleWords = { 'every colour once': 'every colour once', 'most popular figures first': 'popular figures first' } as const;

const CurveTable = memo(function CurveTable({ points, quick }: Pick<KitState, 'points' | 'quick'>): ReactElement {
  const { book } = useBook();
  const { currency } = book.business;
  return (
    <details className="because noprint">
      <summary>The curve in numbers, and two rules of thumb</summary>
      <div className="told">
        {(quick?.rules ?? []).map((rule) => (
          <p key={rule.rule}>
            Buying {rule.rule === 'every colour once' ? 'every colour once' : 'for the most popular figures first'} meets {of100(rule.met)}{' '}
            of 100 for {showMoney(rule.spent, currency)}.
          </p>
        ))}
        <div className="scroll">
          <table>
            <caption className="skip">Money against requests met</caption>
            <thead>
              <tr>
                <th scope="col" className="num">
                  Money, {currency}
                </th>
                <th scope="col" className="num">
                  Requests met, of 100
                </th>
              </tr>
            </thead>
            <tbody>
              {curveThrough(points, pointOf(quick)).map((point) => (
                <tr key={point.budget}>
                  <td className="num">{decimalOf(point.budget, currency)}</td>
                  <td className="num">
                    {of100(point.met)}{' '}
                    <span className="sp">
                      ({of100(point.low)} to {of100(point.high)})
                    </span>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </div>
    </details>
  );
});

/** What may not be bought, each with a way back. */
const TakenOut = memo(function TakenOut({
  forcedIn,
  takenOut,
  onChange,
}: Pick<PageWishes, 'forcedIn' | 'takenOut'> & {
  readonly onChange: (part: Partial<PageWishes>) => void;
}): ReactElement | null {
  const { book } = useBook();
  if (takenOut.length === 0 && forcedIn.length === 0) return null;
  return (
    <section className="noprint">
      <h2>What you have decided.</h2>
      <ul className="kept">
        {forcedIn.map((id) => (
          <li key={id}>
            <b>{offerName(book, id)}</b>
            <span className="note">put in</span>
            <button
              type="button"
              className="btn plain"
              aria-label={`Let it go: ${offerName(book, id)}`}
              onClick={() => onChange({ forcedIn: forcedIn.filter((one) => one !== id) })}
            >
              Let it go
            </button>
          </li>
        ))}
        {takenOut.map((id) => (
          <li key={id}>
            <b>{offerName(book, id)}</b>
            <span className="note">{isTool(book, id) ? 'taken out; has to be there already, or to come from elsewhere' : 'taken out'}</span>
            <button
              type="button"
              className="btn plain"
              aria-label={`Put it back: ${offerName(book, id)}`}
              onClick={() => onChange({ takenOut: takenOut.filter((one) => one !== id) })}
            >
              Put it back
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
});
