import { Link, Navigate, useParams } from '@tanstack/react-router';
import type { Book, Colourway, Figure } from '@twistwright/books';
import {
  airOptionsOf,
  colourNames,
  type FigureFacts,
  favouriteColourway,
  figureFacts,
  makeableFigures,
  withoutEnd,
} from '@twistwright/planner';
import { airOf, learningOrder, readRecipe, type Step, stepsOf, type View } from '@twistwright/repertoire';
import { roundToMoney, showMoney } from '@twistwright/units';
import { lazy, type ReactElement, Suspense, useEffect, useMemo, useState } from 'react';
import { WhoseNumbers } from '../balloons/whose-numbers.tsx';
import { useBook } from '../book/use-book.ts';
import { Page } from '../frame/page.tsx';
import { Lost } from '../pages/lost.tsx';
import { Because } from '../parts/because.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { Slot } from '../parts/slot.tsx';
import { rubberOf } from '../pictures/rubber.ts';
import { Swatch } from '../pictures/swatch.tsx';
import { stockIn } from '../store/stock-in.ts';
import { counted, listed } from '../words/counted.ts';
import { FigurePicture } from './figure-picture.tsx';
import { PieceRulers } from './piece-rulers.tsx';
import './repertoire.css';
import { canTurn } from './can-turn.ts';
import { minutesWords, strokesInWords, substituteWords } from './repertoire-words.ts';
import { useBody } from './use-drawing.ts';

/** What draws bodies is on its way before this page is; see {@link figureReady}. */
const turning = canTurn() ? import('./turned-figure.tsx') : undefined;
// Not where this page is only fetched ahead.
if (/^\/repertoire\/./u.test(location.pathname)) void turning?.then(({ makeReady }) => makeReady());
const TurnedFigure = lazy(async () => ({ default: (await (turning ?? import('./turned-figure.tsx'))).TurnedFigure }));

/** One figure: how it looks, how it is made, from what, how fast. */
export function FigurePage(): ReactElement {
  const { book } = useBook();
  const { figure: id } = useParams({ from: '/open/repertoire/$figure' });
  const figure = book.figures.find((entry) => entry.id === id);
  const facts = useMemo(() => (figure === undefined ? undefined : figureFacts(book, figure)), [book, figure]);
  if (id === 'new') return <Navigate to="/repertoire/$figure/edit" params={{ figure: id }} replace />;
  if (figure === undefined || facts === undefined) return <Lost />;
  if (!facts.ok)
    return (
      <Page title={figure.name} whose={book.business.name}>
        <div className="title">
          <h1 className="say">{figure.name} cannot be drawn.</h1>
        </div>
        <Refusal
          sentence={facts.error[0]?.sentence ?? ''}
          {...(facts.error[0]?.line === undefined ? {} : { instead: `It is line ${facts.error[0].line} of its recipe.` })}
        >
          <Link className="btn" to="/repertoire/$figure/edit" params={{ figure: figure.id }}>
            Change the recipe
          </Link>
        </Refusal>
      </Page>
    );
  return <ReadFigure key={id} book={book} figure={figure} facts={facts.value} />;
}

interface Shown {
  readonly book: Book;
  readonly figure: Figure;
  readonly facts: FigureFacts;
}

function ReadFigure({ book, figure, facts: usual }: Shown): ReactElement {
  const [wayId, setWay] = useState(() => favouriteColourway(figure)?.id);
  const way = figure.colourways.find((entry) => entry.id === wayId);
  const facts = useMemo(() => ({ ...usual, air: airOf(usual.recipe, airOptionsOf(book, way)) }), [usual, book, way]);
  const steps = useMemo(
    () => stepsOf(facts.recipe, { ...airOptionsOf(book, way), colours: way === undefined ? {} : colourNames(book, way.fill) }),
    [book, facts, way],
  );
  const [at, setAt] = useState<number>();
  const step = at === undefined ? undefined : steps[at];
  useEffect(() => {
    performance.mark('figure page');
  }, []);
  const { middle, spread } = minutesWords(facts.minutes);
  const { verdict } = facts.air;
  return (
    <Page title={figure.name} whose={book.business.name}>
      <div className="title">
        <div>
          <h1 className="say">
            {figure.name}, {middle}.
          </h1>
          <p className="lead">
            {spread === '' ? '' : `${spread.slice(1, -1)} minutes eight times in ten. `}
            {sentenceOf(facts)} {verdict === 'fits' ? 'It fits.' : verdict === 'tight' ? 'It is tight.' : 'It does not fit its balloon.'}
          </p>
        </div>
        <div className="row noprint">
          <Link className="btn" to="/repertoire/$figure/edit" params={{ figure: figure.id }}>
            Change it
          </Link>
          <a
            className="btn"
            href={`/api/figures/${encodeURIComponent(figure.id)}/card.pdf${wayId === undefined ? '' : `?colourway=${encodeURIComponent(wayId)}`}`}
            target="_blank"
            rel="noreferrer"
          >
            Print the card
          </a>
        </div>
      </div>
      <div className="making">
        <div className="look">
          <Look book={book} figure={figure} way={way} upToMove={step?.deeds} />
          <Colourways book={book} figure={figure} value={wayId} onChange={setWay} />
        </div>
        <Steps steps={steps} at={at} onChange={setAt} />
      </div>
      <Air book={book} facts={facts} way={way} />
      <Stock book={book} figure={figure} way={way} />
      <Learning book={book} figure={figure} facts={facts} />
      {figure.recipe !== undefined && (
        <section>
          <h2>The recipe.</h2>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long line is read by scrolling, and that has to work with the keyboard */}
          <pre className="notation" tabIndex={0}>
            {figure.recipe.trim()}
          </pre>
        </section>
      )}
    </Page>
  );
}

const sentenceOf = ({ balloons, bubbles }: FigureFacts): string =>
  balloons === 0 ? 'It takes no balloon.' : `It takes ${counted(balloons, 'balloon')} and ${counted(bubbles, 'bubble')}.`;

const flatViews: readonly (readonly [View | '', string])[] = [
  ['', 'its best side'],
  ['front', 'the front'],
  ['side', 'the side'],
  ['quarter', 'the side and front'],
  ['turned', 'the front and side'],
  ['top', 'above'],
];

interface LookProps {
  readonly book: Book;
  readonly figure: Figure;
  readonly way: Colourway | undefined;
  readonly upToMove: number | undefined;
}

/** The body that can be turned where the browser can draw one, else the flat picture from a side that can be chosen. */
function Look({ book, figure, way, upToMove }: LookProps): ReactElement {
  const drawable = { book, recipe: figure.recipe, colourway: way };
  const body = useBody(drawable);
  const [isAble, setAble] = useState(canTurn);
  const [isFlat, setFlat] = useState(false);
  const [view, setView] = useState<View | ''>('');
  const says = `${figure.name}${way === undefined ? '' : ` in ${way.name.toLowerCase()}`}`;
  const flat = <FigurePicture {...drawable} says={says} upToMove={upToMove} view={view === '' ? undefined : view} />;
  return (
    <>
      <div className="stage">
        {isFlat || !isAble ? (
          flat
        ) : (
          <Suspense fallback={flat}>
            <TurnedFigure
              before={flat}
              body={body}
              book={book}
              fill={way?.fill ?? {}}
              upToMove={upToMove}
              says={says}
              onFailure={() => setAble(false)}
            />
          </Suspense>
        )}
        <span className="shelf" />
      </div>
      <div className="row lookrow">
        {isAble && (
          <button type="button" className="btn plain" onClick={() => setFlat(!isFlat)}>
            {isFlat ? 'Show the body to turn' : 'Show the flat picture'}
          </button>
        )}
        {(isFlat || !isAble) && (
          <span className="ask seen">
            <span>Seen from</span>
            <Slot label="Side" value={view} onChange={(value) => setView(value as View | '')} options={flatViews} />
          </span>
        )}
      </div>
    </>
  );
}

interface ColourwaysProps {
  readonly book: Book;
  readonly figure: Figure;
  readonly value: string | undefined;
  readonly onChange: (id: string) => void;
}
function Colourways({ book, figure, value, onChange }: ColourwaysProps): ReactElement | null {
  if (figure.colourways.length < 2) return null;
  return (
    <fieldset className="ways">
      <legend>In which colours?</legend>
      {figure.colourways.map((way) => (
        <label className="way" key={way.id}>
          <input type="radio" name="colourway" checked={way.id === value} onChange={() => onChange(way.id)} />
          <span className="wayname">
            {[...new Set(Object.values(way.fill))].slice(0, 3).map((colour) => (
              <Swatch
                key={colour}
                size="260"
                rubber={rubberOf(book.colours.find((entry) => entry.id === colour) ?? { id: colour, name: colour })}
              />
            ))}
            {way.name}
          </span>
        </label>
      ))}
    </fieldset>
  );
}

interface StepsProps {
  readonly steps: readonly Step[];
  readonly at: number | undefined;
  readonly onChange: (at: number | undefined) => void;
}
/** The steps, one of them open: the picture shows the figure so far. */
function Steps({ steps, at, onChange }: StepsProps): ReactElement {
  const last = steps.length - 1;
  return (
    <section className="steps" aria-label="Steps">
      <h2>{steps.length === 0 ? 'There is nothing to twist.' : `Made in ${counted(steps.length, 'step')}.`}</h2>
      {steps.length > 0 && (
        <div className="row steprow">
          <button type="button" className="btn" disabled={at === 0} onClick={() => onChange(at === undefined ? 0 : Math.max(0, at - 1))}>
            {at === undefined ? 'Begin' : 'Step back'}
          </button>
          <button
            type="button"
            className="btn"
            disabled={at === undefined}
            onClick={() => onChange(at === last ? undefined : (at ?? 0) + 1)}
          >
            {at === last ? 'Show all of it' : 'Next step'}
          </button>
          <span className="note" role="status">
            {at === undefined ? 'All of it is shown.' : `Step ${at + 1} of ${steps.length}.`}
          </span>
        </div>
      )}
      <ol>
        {steps.map((step, index) => (
          <li key={step.number}>
            <button type="button" className="step" aria-current={index === at ? 'step' : undefined} onClick={() => onChange(index)}>
              <b>{step.number}</b> <span>{step.sentence}</span>
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}

interface AirProps {
  readonly book: Book;
  readonly facts: FigureFacts;
  readonly way: Colourway | undefined;
}
function Air({ book, facts, way }: AirProps): ReactElement | null {
  const { pieces, litres, strokes } = facts.air;
  if (pieces.length === 0) return null;
  return (
    <section>
      <h2>
        {litres.toFixed(1)} litres of air{strokes === undefined ? '' : `, about ${strokesInWords(strokes)} of the pump`}.
      </h2>
      <p className="note rulernote">Flat rubber above, inflated balloon below: two rulers, never one scale.</p>
      <PieceRulers pieces={pieces} facts={facts} ruler={book.business.ruler ?? 'in'} options={airOptionsOf(book, way)} />
      <WhoseNumbers book={book} recipe={facts.recipe} way={way} />
    </section>
  );
}

function Stock({
  book,
  figure,
  way: chosen,
}: {
  readonly book: Book;
  readonly figure: Figure;
  readonly way: Colourway | undefined;
}): ReactElement | null {
  const { today } = useBook();
  const entry = useMemo(() => makeableFigures({ ...book, figures: [figure] }, stockIn(book, today, ''))[0], [book, figure, today]);
  const way = entry?.ways.find((candidate) => candidate.colourway === chosen?.id) ?? entry?.ways[0];
  if (entry === undefined || way === undefined || way.takes.length === 0) return null;
  const instead = substituteWords(book, way);
  return (
    <section>
      <h2>
        {way.makes === withoutEnd
          ? 'It takes nothing.'
          : way.makes === 0
            ? 'None can be made in these colours.'
            : `${way.makes} can be made in these colours.`}
      </h2>
      {instead !== '' && <p className="lead">{instead.charAt(0).toUpperCase() + instead.slice(1)}.</p>}
      <table>
        <thead>
          <tr>
            <th scope="col">Takes</th>
            <th scope="col" className="num">
              each
            </th>
            <th scope="col" className="num">
              there are
            </th>
          </tr>
        </thead>
        <tbody>
          {way.takes.map((taking) => (
            <tr key={taking.name}>
              <td>
                <span className="item">
                  {taking.size !== undefined && (
                    <Swatch size={taking.size} rubber={rubberOf(book.colours.find((colour) => colour.id === taking.colour))} />
                  )}
                  <span>{taking.name}</span>
                </span>
              </td>
              <td className="num">{taking.count}</td>
              <td className="num">{taking.have}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {way.cost !== undefined && (
        <p className="more">One costs {showMoney(roundToMoney(way.cost), book.business.currency)} in balloons and sundries.</p>
      )}
    </section>
  );
}

/** Where it stands among the figures of the book when each adds as little new as possible. */
function Learning({ book, figure, facts }: Shown): ReactElement | null {
  const lessons = useMemo(
    () =>
      learningOrder(
        book.figures.flatMap((entry) => {
          const read = entry.recipe === undefined ? undefined : readRecipe(entry.recipe, airOptionsOf(book).sizes);
          return read?.ok === true
            ? [{ id: entry.id, recipe: read.value, ...(entry.difficulty === undefined ? {} : { difficulty: entry.difficulty }) }]
            : [];
        }),
      ),
    [book],
  );
  const place = lessons.findIndex((lesson) => lesson.id === figure.id);
  const lesson = lessons[place];
  if (lesson === undefined) return null;
  const before = lessons.slice(0, place).findLast((entry) => entry.adds.length > 0);
  const nameOf = (id: string | undefined): string => book.figures.find((entry) => entry.id === id)?.name.toLowerCase() ?? '';
  return (
    <section>
      <h2>{lesson.adds.length === 0 ? 'Nothing in it is new after the easier figures.' : `New in it: ${listed(lesson.adds)}.`}</h2>
      <Because ask="Why here?">
        <p>
          It is number {place + 1} of {lessons.length} when figures are learned in an order in which each adds as little new as possible
          {before === undefined ? '' : `; the last new thing before it came with the ${nameOf(before.id)}`}.
        </p>
        <p>Hands need: {listed(facts.techniques)}.</p>
      </Because>
    </section>
  );
}
