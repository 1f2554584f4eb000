import { Link } from '@tanstack/react-router';
import type { Book, Figure, TimeLaw } from '@twistwright/books';
import { piecesOf, readRecipe } from '@twistwright/repertoire';
import { type ReactElement, useMemo, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import { FigurePicture } from '../figures/figure-picture.tsx';
import { Page } from '../frame/page.tsx';
import { Empty } from '../parts/empty.tsx';
import { rubberOf } from '../pictures/rubber.ts';
import { Swatch } from '../pictures/swatch.tsx';
import { stockIn } from '../store/stock-in.ts';
import { counted } from '../words/counted.ts';
import { Slot } from './store.tsx';

interface Makeable {
  readonly figure: Figure;
  readonly pieces: readonly PieceShown[];
  /** How many can be made from the stock that is looked at; undefined where the recipe cannot be read. */
  readonly makes: number | undefined;
}
interface PieceShown {
  readonly size: string;
  readonly colour: string;
  readonly count: number;
  readonly item: string | undefined;
}

/** What can I make, from what, how fast? */
export function Repertoire(): ReactElement {
  const { book, today } = useBook();
  const [place, setPlace] = useState('');
  const [most, setMost] = useState('');
  const stock = useMemo(() => stockIn(book, today, place), [book, today, place]);
  const all = useMemo(() => book.figures.map((figure) => makeable(book, figure, stock)), [book, stock]);
  const shown = all.filter((entry) => most === '' || middleMinutes(entry.figure.minutes) <= Number(most));
  const can = all.filter((entry) => (entry.makes ?? 0) > 0).length;
  return (
    <Page title="Repertoire" whose={book.business.name}>
      <div className="title" style={{ paddingBottom: 8 }}>
        <h1 className="say" style={{ maxWidth: '17em' }}>
          {book.figures.length === 0
            ? 'No figure yet.'
            : `You can make ${counted(book.figures.length, 'figure')}; ${can === all.length ? 'all' : can} of them from what ${placePhrase(book, place)}.`}
        </h1>
      </div>
      {book.figures.length === 0 ? (
        <Empty sentence="Add what you can make, and gigs, needs and shopping follow from it.">
          <Link className="btn full" to="/repertoire/$figure" params={{ figure: 'new' }}>
            Add a figure
          </Link>
        </Empty>
      ) : (
        <>
          <form className="ask" aria-label="Which figures">
            <span>Show what can be made from</span>
            <Slot
              label="Stock"
              value={place}
              onChange={setPlace}
              options={[
                ['', 'everything there is'],
                ...book.places.map((entry) => [entry.id, `the ${entry.name.replace(/^the /, '')}`] as const),
              ]}
            />
            <span>in at most</span>
            <Slot
              label="Minutes"
              value={most}
              onChange={setMost}
              options={[['', 'any time'], ...[1, 2, 3, 5, 8].map((minutes) => [String(minutes), `${minutes} minutes`] as const)]}
            />
          </form>
          <ul className="figs">
            {shown.map((entry) => (
              <FigureStand key={entry.figure.id} entry={entry} />
            ))}
          </ul>
          <div className="row" style={{ marginTop: 24 }}>
            <Link className="btn full" to="/repertoire/$figure" params={{ figure: 'new' }}>
              Add a figure
            </Link>
          </div>
        </>
      )}
    </Page>
  );
}

const placePhrase = (book: Book, place: string): string => {
  const name = book.places.find((entry) => entry.id === place)?.name;
  return name === undefined ? 'there is' : `is in the ${name.replace(/^the /, '')}`;
};

function FigureStand({ entry: { figure, pieces, makes } }: { readonly entry: Makeable }): ReactElement {
  const { book } = useBook();
  return (
    <li>
      <Link className="stand" to="/repertoire/$figure" params={{ figure: figure.id }}>
        <FigurePicture book={book} name={figure.name} recipe={figure.recipe} colourway={figure.colourways[0]} />
        <span className="shelf" />
        <span className="nm">{figure.name}</span>
      </Link>
      <p className="what">
        {pieces.slice(0, 4).map((piece) => (
          <span className="item" key={`${piece.size} ${piece.colour}`}>
            <Swatch size={piece.size} rubber={rubberOf(book.colours.find((colour) => colour.id === piece.colour))} />
            <span>
              {piece.count} × <span className="sz">{piece.size}</span> {piece.colour}
            </span>
          </span>
        ))}
        {pieces.length > 4 && <span className="note">and {counted(pieces.length - 4, 'more kind', 'more kinds')}</span>}
      </p>
      <p className="facts">
        {figure.minutes === undefined ? 'minutes estimated' : <MinutesText law={figure.minutes} />}
        <br />
        {makes === undefined ? (
          <span className="tight">the recipe cannot be read</span>
        ) : makes === 0 ? (
          <span className="tight">none can be made</span>
        ) : (
          `${makes > 500 ? 'over 500' : makes} can be made`
        )}
      </p>
    </li>
  );
}

function MinutesText({ law }: { readonly law: TimeLaw }): ReactElement {
  const [low, middle, high] = spreadOfMinutes(law);
  return (
    <>
      <b>{middle.toFixed(1)} min</b>
      {high > low && (
        <span className="sp">
          {' '}
          ({low.toFixed(1)} to {high.toFixed(1)})
        </span>
      )}
    </>
  );
}
/** The 90 % point of the standard normal distribution. */
const z90 = 1.2815515655446004;
function spreadOfMinutes(law: TimeLaw): readonly [number, number, number] {
  if (law.law === 'log-normal') return [law.median * Math.exp(-z90 * law.sigma), law.median, law.median * Math.exp(z90 * law.sigma)];
  const middle = middleMinutes(law);
  return [middle, middle, middle];
}
/** The middle of how long a figure takes; the mean where the law has no simple median. */
export function middleMinutes(law: TimeLaw | undefined): number {
  if (law === undefined) return 0;
  return law.law === 'log-normal' ? law.median : law.law === 'fixed' ? law.minutes : law.mean;
}

function makeable(book: Book, figure: Figure, stock: ReadonlyMap<string, number>): Makeable {
  const read = figure.recipe === undefined ? undefined : readRecipe(figure.recipe);
  if (read !== undefined && !read.ok) return { figure, pieces: [], makes: undefined };
  const colourway = figure.colourways[0];
  const byKind = new Map<string, PieceShown>();
  for (const piece of read === undefined ? [] : piecesOf(read.value)) {
    const colour = colourway?.fill[piece.role] ?? '';
    const key = `${piece.size} ${colour}`;
    const item = book.items.find((entry) => entry.kind === 'balloon' && entry.size === piece.size && entry.colour === colour)?.id;
    byKind.set(key, { size: piece.size, colour, item, count: (byKind.get(key)?.count ?? 0) + piece.count });
  }
  const pieces = [...byKind.values()];
  const makes = pieces.length === 0 ? 0 : Math.min(...pieces.map((piece) => Math.floor((stock.get(piece.item ?? '') ?? 0) / piece.count)));
  return { figure, pieces, makes };
}
