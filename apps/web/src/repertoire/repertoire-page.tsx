import { Link } from '@tanstack/react-router';
import type { Book, Colourway } from '@twistwright/books';
import {
  favouriteColourway,
  filterMakeable,
  type MakeableFigure,
  type MakeableWay,
  makeableFigures,
  withoutEnd,
} from '@twistwright/planner';
import { roundToMoney, showMoney } from '@twistwright/units';
import { type ReactElement, useEffect, useMemo, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import { Page } from '../frame/page.tsx';
import { Empty } from '../parts/empty.tsx';
import { Slot } from '../parts/slot.tsx';
import { rubberOf } from '../pictures/rubber.ts';
import { Swatch } from '../pictures/swatch.tsx';
import { stockIn } from '../store/stock-in.ts';
import { counted } from '../words/counted.ts';
import { BoardButton } from './board-button.tsx';
import { FigurePicture } from './figure-picture.tsx';
import { readyAhead } from './ready-ahead.ts';
import './repertoire.css';
import { lackingSentence, makeableSentence, minutesWords, substituteWords } from './repertoire-words.ts';

const ranges = { '': [0, withoutEnd], '1': [1, 1], '2': [1, 2], '3': [1, 3], more: [4, withoutEnd] } as const;
type Range = keyof typeof ranges;

/** What can I make, from what, how fast, how does it look? */
export function RepertoirePage(): ReactElement {
  const { book, today } = useBook();
  const [place, setPlace] = useState(() => book.places.find((entry) => entry.kind === 'case')?.id ?? '');
  const [minutes, setMinutes] = useState('');
  const [range, setRange] = useState<Range>('');
  const [colours, setColours] = useState<'own' | 'there'>('own');
  const [which, setWhich] = useState<'all' | 'can'>('all');
  const counts = useMemo(() => stockIn(book, today, place), [book, today, place]);
  const all = useMemo(() => makeableFigures(book, counts), [book, counts]);
  const [least, most] = ranges[range];
  const shown = filterMakeable(all, {
    makeable: which === 'can',
    ...(minutes === '' ? {} : { mostMinutes: Number(minutes) }),
    ...(range === '' ? {} : { leastBalloons: least, mostBalloons: most }),
  });
  const lacking = lackingSentence(all);
  useEffect(readyAhead, []);
  if (book.figures.length === 0) return <NoFigures book={book} />;
  return (
    <Page title="Repertoire" whose={book.business.name}>
      <div className="title" style={{ paddingBottom: 8 }}>
        <h1 className="say" style={{ maxWidth: '17em' }}>
          {makeableSentence(all, placeWords(book, place))}
        </h1>
      </div>
      {lacking !== '' && <p className="lead">{lacking}</p>}
      <form className="ask" aria-label="Which figures" onSubmit={(event) => event.preventDefault()}>
        <span>Show</span>
        <Slot
          label="Which"
          value={which}
          onChange={(value) => setWhich(value === 'can' ? 'can' : 'all')}
          options={[
            ['all', 'all figures'],
            ['can', 'what can be made'],
          ]}
        />
        <span>from</span>
        <Slot
          label="Stock"
          value={place}
          onChange={setPlace}
          options={[
            ['', 'everything there is'],
            ...book.places.map((entry) => [entry.id, `the ${entry.name.replace(/^the /u, '')}`] as const),
          ]}
        />
        <span>in at most</span>
        <Slot
          label="Minutes"
          value={minutes}
          onChange={setMinutes}
          options={[
            ['', 'any time'],
            ['1', 'one minute'],
            ...[2, 3, 4, 6, 10].map((count) => [String(count), `${count} minutes`] as const),
          ]}
        />
        <span>with</span>
        <Slot
          label="Balloons"
          value={range}
          onChange={(value) => setRange(value in ranges ? (value as Range) : '')}
          options={[
            ['', 'any number of balloons'],
            ['1', '1 balloon'],
            ['2', '1 to 2 balloons'],
            ['3', '1 to 3 balloons'],
            ['more', '4 balloons and more'],
          ]}
        />
        <span>shown in</span>
        <Slot
          label="Colours"
          value={colours}
          onChange={(value) => setColours(value === 'there' ? 'there' : 'own')}
          options={[
            ['own', 'their own colours'],
            ['there', 'colours that are there'],
          ]}
        />
      </form>
      <p className="note" role="status" aria-live="polite">
        {shown.length === all.length ? '' : `${shown.length} of ${all.length} are shown.`}
      </p>
      {shown.length === 0 ? (
        <Empty sentence="No figure is like that: allow more minutes, more balloons or another place." />
      ) : (
        <ul className="figs">
          {shown.map((entry) => (
            <Stand key={entry.figure.id} book={book} entry={entry} fromStock={colours === 'there'} />
          ))}
        </ul>
      )}
      <div className="row" style={{ marginTop: 24 }}>
        <Link className="btn full" to="/repertoire/$figure/edit" params={{ figure: 'new' }}>
          Design a figure
        </Link>
        <Link className="btn" to="/repertoire/your-balloons">
          Measure your balloons
        </Link>
        <BoardButton book={book} />
      </div>
    </Page>
  );
}

function NoFigures({ book }: { readonly book: Book }): ReactElement {
  return (
    <Page title="Repertoire" whose={book.business.name}>
      <div className="title">
        <h1 className="say">No figure yet.</h1>
      </div>
      <Empty sentence="Add what you can make, and gigs, needs and shopping follow from it.">
        <Link className="btn full" to="/repertoire/$figure/edit" params={{ figure: 'new' }}>
          Design a figure
        </Link>
      </Empty>
    </Page>
  );
}

const placeWords = (book: Book, place: string): string => {
  const name = book.places.find((entry) => entry.id === place)?.name;
  return name === undefined ? 'there is' : `is in the ${name.replace(/^the /u, '')}`;
};

/** The colourway that is shown: the favourite one, or with `fromStock` the one of which most can be made, other colours put in where they help. */
function shownWay(
  { figure, ways, makes }: MakeableFigure,
  fromStock: boolean,
): { readonly colourway: Colourway | undefined; readonly way: MakeableWay | undefined } {
  const favourite = favouriteColourway(figure);
  if (!fromStock) return { colourway: favourite, way: ways.find((way) => way.colourway === favourite?.id) };
  const way = ways.find((entry) => entry.makes === makes && makes > 0) ?? ways.find((entry) => entry.substitutes.length > 0) ?? ways[0];
  const colourway = figure.colourways.find((entry) => entry.id === way?.colourway);
  if (colourway === undefined || way === undefined) return { colourway, way };
  const other = Object.fromEntries(way.substitutes.map(({ role, to }) => [role, to]));
  return { colourway: { ...colourway, fill: { ...colourway.fill, ...other } }, way };
}

const mostKinds = 4;

function Stand({
  book,
  entry,
  fromStock,
}: {
  readonly book: Book;
  readonly entry: MakeableFigure;
  readonly fromStock: boolean;
}): ReactElement {
  const { figure, facts, makes } = entry;
  const { colourway, way } = shownWay(entry, fromStock);
  const takes = way?.takes ?? [];
  const kinds = takes.length > mostKinds + 1 ? takes.slice(0, mostKinds) : takes;
  const instead = substituteWords(book, way);
  return (
    <li>
      <Link className="stand" to="/repertoire/$figure" params={{ figure: figure.id }}>
        <span className="fig">
          <FigurePicture book={book} recipe={figure.recipe} colourway={colourway} />
        </span>
        <span className="shelf" />
        <span className="nm">{figure.name}</span>
      </Link>
      <p className="what">
        {kinds.map((taking) => (
          <span className="item" key={taking.name}>
            {taking.size !== undefined && <Swatch size={taking.size} rubber={rubberOf(colourOf(book, taking.colour))} />}
            <span>
              {taking.count} × {taking.name}
            </span>
          </span>
        ))}
        {takes.length > kinds.length && <span className="note">and {counted(takes.length - kinds.length, 'more kind', 'more kinds')}</span>}
      </p>
      <p className="facts">
        {facts === undefined ? (
          <span className="tight">the recipe cannot be read</span>
        ) : (
          <>
            <b>{minutesWords(facts.minutes).middle}</b> <span className="sp">{minutesWords(facts.minutes).spread}</span>
            <br />
            {facts.bubbles} {facts.bubbles === 1 ? 'bubble' : 'bubbles'}
            {facts.air.verdict === 'fits' ? ', fits' : ''}
            {way?.cost === undefined ? '' : `, ${showMoney(roundToMoney(way.cost), book.business.currency)}`}
            {facts.air.verdict !== 'fits' && (
              <>
                <br />
                <span className="tight">{facts.air.verdict === 'tight' ? 'tight' : 'does not fit its balloon'}</span>
              </>
            )}
            <br />
            {makes > 0 ? (
              makes === withoutEnd ? (
                'takes no balloon'
              ) : (
                `${makes} can be made`
              )
            ) : (
              <span className="tight">none can be made{instead === '' ? '' : `; ${instead}`}</span>
            )}
          </>
        )}
      </p>
    </li>
  );
}
const colourOf = (book: Book, id: string | undefined) =>
  book.colours.find((colour) => colour.id === id) ?? (id === undefined ? undefined : { id, name: id });
