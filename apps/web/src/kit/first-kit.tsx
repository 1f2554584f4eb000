import { curveThrough } from '@twistwright/planner';
import { exponentOf, type Money, money } from '@twistwright/units';
import { type ReactElement, useMemo, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import { Page } from '../frame/page.tsx';
import { Because } from '../parts/because.tsx';
import { Empty } from '../parts/empty.tsx';
import { Measured } from '../parts/measured.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { counted, listed, sentence } from '../words/counted.ts';
import { LeftOutSection, NextSection } from './beyond-section.tsx';
import { BudgetCurve } from './budget-curve.tsx';
import { BudgetSlider } from './budget-slider.tsx';
import { BuyList } from './buy-list.tsx';
import { CompareSection } from './compare-section.tsx';
import { GrowthSection } from './growth-section.tsx';
import { KeepSection, OrderSection } from './keep-section.tsx';
import './kit.css';
import type { CurvePoint } from './kit-ask.ts';
import { answerSentence, expectSentence, lossSentence, nextSentence, of100, offerName, shownMoney, sliderOf } from './kit-words.ts';
import { NewcomerPanel } from './newcomer-panel.tsx';
import { PapersRow } from './papers-row.tsx';
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
        <Empty sentence="With figures that have recipes, and suppliers with prices, this page says what a newcomer should buy first for the money." />
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
  const { range, quick, plan, isWhole } = state;
  const slider = range === undefined ? undefined : sliderOf(range, 10 ** exponentOf(currency));
  if (suggested === undefined && slider !== undefined)
    setSuggested(money(Math.round((slider.min + 0.2 * (slider.max - slider.min)) / slider.step) * slider.step));
  const wishes = useMemo(() => ({ ...unpriced, budget: budget ?? money(0) }), [unpriced, budget]);
  const change = (part: Partial<PageWishes>): void => setPage({ ...page, ...part });
  const putIn = (offers: readonly string[]): void =>
    change({
      forcedIn: [...new Set([...page.forcedIn, ...offers])],
      takenOut: page.takenOut.filter((id) => !offers.includes(id)),
    });
  const shares = useMemo(() => new Map((quick?.kit.figures ?? []).map((figure) => [figure.figure, figure.share])), [quick]);
  return (
    <Page title="First kit" whose={book.business.name} isBusy={!isWhole && state.refused === undefined && state.broken === undefined}>
      <div className="plan">
        <div className="upper">
          <div className="first">
            <section className="served" style={{ paddingTop: 36 }}>
              <Answer state={state} page={page} />
              {slider !== undefined && budget !== undefined && (
                <>
                  <Curve state={state} slider={slider} budget={budget} />
                  <BudgetSlider
                    {...slider}
                    value={Math.min(Math.max(budget, slider.min), slider.max)}
                    text={shownMoney(budget, currency)}
                    onMove={(value) => setMoved(money(value))}
                  />
                  <CurveTable state={state} />
                </>
              )}
            </section>
          </div>
          <NewcomerPanel wishes={page} onChange={change} shares={shares} />
        </div>
        <div className="rest">
          {quick !== undefined && (
            <BuyList
              quick={quick}
              forcedIn={page.forcedIn}
              onTakeOut={(id) =>
                page.forcedIn.includes(id)
                  ? change({ forcedIn: page.forcedIn.filter((one) => one !== id) })
                  : change({ takenOut: [...page.takenOut, id] })
              }
            />
          )}
          <TakenOut page={page} onChange={change} />
          {plan !== undefined && budget !== undefined && (
            <div className="noprint" hidden={quick === undefined}>
              <PapersRow wishes={wishes} name={name.trim()} />
              <NextSection plan={plan} onPutIn={putIn} />
              <LeftOutSection plan={plan} onPutIn={putIn} />
              <GrowthSection plan={plan} wishes={wishes} />
              <CompareSection plan={plan} wishes={wishes} />
              <KeepSection
                plan={plan}
                isWhole={isWhole}
                wishes={unpriced}
                budget={budget}
                name={name}
                onName={setName}
                onOpen={(kit) => {
                  setPage(pageOfSaved(book, kit));
                  setMoved(kit.wishes.budget);
                  setName(kit.name);
                }}
              />
              <OrderSection plan={plan} isWhole={isWhole} />
            </div>
          )}
        </div>
      </div>
    </Page>
  );
}

function Answer({ state, page }: { readonly state: KitState; readonly page: PageWishes }): ReactElement {
  const { book } = useBook();
  const { currency } = book.business;
  const { quick, plan, isWhole, refused, broken, freeMet } = state;
  const next = isWhole ? plan?.next[0] : undefined;
  const said = next === undefined ? undefined : nextSentence(book, next);
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
          <Refusal sentence={refused[0]?.sentence ?? ''} instead={refused[0]?.todo ?? ''}>
            {refused.length > 1 && (
              <ul className="problems">
                {refused.slice(1, 6).map((problem) => (
                  <li key={problem.sentence}>
                    {problem.sentence} {problem.todo}
                  </li>
                ))}
              </ul>
            )}
          </Refusal>
        </div>
      )}
      {quick !== undefined && (
        <p className="lead more">
          {expectSentence(quick, page.hours)}{' '}
          {said !== undefined && (
            <>
              Next best: <b>{said.money}</b> for {said.rest}.
            </>
          )}
        </p>
      )}
      {plan !== undefined && isWhole && freeMet !== undefined && (
        <p className="lead more" role="status">
          {lossSentence(plan, freeMet, { forcedIn: page.forcedIn.length, takenOut: page.takenOut.length })}
        </p>
      )}
      {plan !== undefined && isWhole && <Proof state={state} />}
    </>
  );
}

function Proof({ state: { plan } }: { readonly state: KitState }): ReactElement | null {
  if (plan === undefined) return null;
  const { kit, lasting, warnings } = plan;
  const cannot = warnings.filter((one) => one.code === 'kit.figure-out-of-reach');
  return (
    <Because ask={`Why ${of100(kit.met)}?`}>
      <p>
        About {Math.round(kit.requests)} guests ask over the hours. {of100(kit.metFirstChoice)} of 100 get the colour they ask for first,{' '}
        {of100(kit.met - kit.metFirstChoice)} another one that will do. About {Math.round(lasting.figures.p50)} figures are made (
        {Math.round(lasting.figures.p10)} to {Math.round(lasting.figures.p90)}).
      </p>
      <p>
        {kit.standing.kind === 'proven'
          ? 'Proven: no other purchase for this money meets more.'
          : `No purchase for this money meets more than ${(100 * kit.metAtMost).toFixed(1)} of 100; this one meets ${(100 * kit.met).toFixed(1)}.`}
      </p>
      {cannot.length > 0 && (
        <p>
          {sentence(counted(cannot.length, 'figure'))} cannot be made from any offer:{' '}
          {listed(cannot.map((one) => one.sentence.split(' cannot be made')[0] ?? ''))}.
        </p>
      )}
    </Because>
  );
}

/** Where the kit at hand lies on the curve. */
const pointOf = (quick: KitState['quick']): CurvePoint | undefined =>
  quick === undefined
    ? undefined
    : {
        budget: quick.kit.budget,
        met: quick.kit.met,
        low: Math.min(quick.kit.met, quick.lasting.met.p10),
        high: Math.max(quick.kit.met, quick.lasting.met.p90),
      };

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
          showAt={(at) => shownMoney(money(Math.round(at)), currency)}
          label={`Requests met against money from ${shownMoney(money(slider.min), currency)} to ${shownMoney(money(slider.max), currency)}.${quick === undefined ? '' : ` Chosen: ${shownMoney(budget, currency)}, ${of100(quick.kit.met)} of 100 requests met.`}`}
        />
      )}
    </Measured>
  );
}
const ruleWords = { 'every colour once': 'every colour once', 'most popular figures first': 'popular figures first' } as const;

function CurveTable({ state: { points, quick } }: { readonly state: KitState }): ReactElement {
  const { book } = useBook();
  const { currency } = book.business;
  return (
    <details className="because noprint">
      <summary>The curve in numbers, and two rules of thumb</summary>
      <div className="told">
        {(quick?.rules ?? []).map((rule) => (
          <p key={rule.rule}>
            Buying {rule.rule === 'every colour once' ? 'every colour once' : 'for the most popular figures first'} meets {of100(rule.met)}{' '}
            of 100 for {shownMoney(rule.spent, currency)}.
          </p>
        ))}
        <table>
          <caption className="skip">Money against requests met</caption>
          <thead>
            <tr>
              <th scope="col" className="num">
                Money
              </th>
              <th scope="col" className="num">
                Requests met, of 100
              </th>
            </tr>
          </thead>
          <tbody>
            {curveThrough(points, pointOf(quick)).map((point) => (
              <tr key={point.budget}>
                <td className="num">{shownMoney(point.budget, currency)}</td>
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
    </details>
  );
}

/** What may not be bought, each with a way back. */
function TakenOut({
  page,
  onChange,
}: {
  readonly page: PageWishes;
  readonly onChange: (part: Partial<PageWishes>) => void;
}): ReactElement | null {
  const { book } = useBook();
  if (page.takenOut.length === 0 && page.forcedIn.length === 0) return null;
  return (
    <section className="noprint">
      <h2>What you have decided.</h2>
      <ul className="kept">
        {page.forcedIn.map((id) => (
          <li key={id}>
            <b>{offerName(book, id)}</b>
            <span className="note">put in</span>
            <button
              type="button"
              className="btn plain"
              aria-label={`Let it go: ${offerName(book, id)}`}
              onClick={() => onChange({ forcedIn: page.forcedIn.filter((one) => one !== id) })}
            >
              Let it go
            </button>
          </li>
        ))}
        {page.takenOut.map((id) => (
          <li key={id}>
            <b>{offerName(book, id)}</b>
            <span className="note">taken out</span>
            <button
              type="button"
              className="btn plain"
              aria-label={`Put it back: ${offerName(book, id)}`}
              onClick={() => onChange({ takenOut: page.takenOut.filter((one) => one !== id) })}
            >
              Put it back
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
