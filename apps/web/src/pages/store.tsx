import { Link } from '@tanstack/react-router';
import { type Book, type Item, nameOfItem, type Stock, type StockLine, stockOf } from '@twistwright/books';
import { sizeInWords } from '@twistwright/repertoire';
import { daysBetween, type LocalDate } from '@twistwright/units';
import { type FormEvent, type ReactElement, useMemo, useState } from 'react';
import { newId } from '../book/change.ts';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { FieldReader } from '../forms/field-reader.ts';
import { NotSaved } from '../forms/saving.tsx';
import { Page } from '../frame/page.tsx';
import { Empty } from '../parts/empty.tsx';
import { ChoiceField, TextField } from '../parts/field.tsx';
import { ItemName, rubberOfItem } from '../parts/item-name.tsx';
import { Slot } from '../parts/slot.tsx';
import { Undo } from '../parts/undo.tsx';
import { Bag, Loose } from '../pictures/bag.tsx';
import { rubberOf } from '../pictures/rubber.ts';
import { counted, inWords, sentence } from '../words/counted.ts';

/** What have I got, where, how old? */
export function Store(): ReactElement {
  const { book, today } = useBook();
  const [place, setPlace] = useState('');
  const [size, setSize] = useState('');
  const stock = useMemo(() => stockOf(book.moves, today), [book.moves, today]);
  const lines = stock.lines.filter((line) => place === '' || line.place === place);
  const items = book.items.filter(
    (item) => (size === '' || sizeOfItem(item) === size) && (place === '' || lines.some((line) => line.item === item.id)),
  );
  const sizes = [...new Set(book.items.map(sizeOfItem))].sort(byKindAndInches);
  return (
    <Page title="Store" whose={book.business.name}>
      <div className="title" style={{ paddingBottom: 8 }}>
        <h1 className="say" style={{ maxWidth: '20em' }}>
          {storeSentence(book, stock)}
        </h1>
      </div>
      {book.items.length === 0 ? (
        <Empty sentence="Nothing is listed yet. Add what you buy, and this page says how much of it lies where.">
          <Link className="btn full" to="/store/$item" params={{ item: 'new' }}>
            Add an item
          </Link>
        </Empty>
      ) : (
        <>
          <p className="lead">{ageSentence(stock, today)}</p>
          <form className="ask" aria-label="Which items">
            <span>Show</span>
            <Slot
              label="Size"
              value={size}
              onChange={setSize}
              options={[['', 'every size'], ...sizes.map((code) => [code, sizeInWords(code)] as const)]}
            />
            <span>that lies in</span>
            <Slot
              label="Place"
              value={place}
              onChange={setPlace}
              options={[['', 'any place'], ...book.places.map((entry) => [entry.id, entry.name] as const)]}
            />
          </form>
          <StockTable items={items} lines={lines} />
          <Count items={book.items} stock={stock} />
        </>
      )}
    </Page>
  );
}

/** Long ones, then the other shapes by their inches, then what is no balloon. */
const byKindAndInches = (a: string, b: string): number => rankOf(a) - rankOf(b) || a.localeCompare(b, 'en', { numeric: true });
const rankOf = (size: string): number => (/^\d/u.test(size) ? 0 : size.includes('-') ? 1 : 2);

const sizeOfItem = (item: Item): string => (item.kind === 'balloon' ? item.size : 'tools and sundries');

function StockTable({ items, lines }: { readonly items: readonly Item[]; readonly lines: readonly StockLine[] }): ReactElement {
  const { book } = useBook();
  return (
    <table className="list-row">
      <caption className="skip">Stock by item</caption>
      <thead>
        <tr>
          <th scope="col">Item</th>
          <th scope="col" className="roomy">
            Bags and loose
          </th>
          <th scope="col" className="roomy">
            Where
          </th>
          <th scope="col" className="num">
            Pieces
          </th>
        </tr>
      </thead>
      <tbody>
        {items.map((item) => {
          const here = lines.filter((line) => line.item === item.id);
          return (
            <tr key={item.id}>
              <th scope="row">
                <Link to="/store/$item" params={{ item: item.id }}>
                  <ItemName book={book} item={item.id} />
                </Link>
              </th>
              <td className="roomy">
                <Amount book={book} item={item} lines={here} />
              </td>
              <td className="roomy plainrow">{whereText(book, here)}</td>
              <td className="num">{here.reduce((sum, line) => sum + line.count, 0)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** Bags as bags while there are few, then in words. */
function Amount({ book, item, lines }: { readonly book: Book; readonly item: Item; readonly lines: readonly StockLine[] }): ReactElement {
  const bags = lines.flatMap((line) => line.sealed).reduce((sum, sealed) => sum + sealed.bags, 0);
  const loose = lines.reduce((sum, line) => sum + line.loose, 0);
  const rubber = item.kind === 'balloon' ? rubberOfItem(book, item) : rubberOf(undefined);
  const pieces = lines.reduce((sum, line) => sum + line.count, 0);
  const words = [bags === 0 ? '' : counted(bags, 'bag'), loose === 0 ? '' : `${loose} loose`].filter((word) => word !== '');
  if (item.kind !== 'balloon') return <span className="note">{pieces === 0 ? 'none' : counted(pieces, 'piece')}</span>;
  const inside = { rubber, size: item.size, ...(item.print === undefined ? {} : { print: item.print }) };
  return (
    <span className="bags">
      {bags <= 3 && Array.from({ length: bags }, (_, index) => index).map((bag) => <Bag key={bag} {...inside} />)}
      {loose > 0 && loose < 60 && <Loose count={loose} {...inside} />}
      {loose >= 60 && <Bag {...inside} open />}
      <span className="note">{words.length === 0 ? 'none' : words.join(', ')}</span>
    </span>
  );
}

const whereText = (book: Book, lines: readonly StockLine[]): string =>
  lines.map((line) => `${line.count} ${book.places.find((place) => place.id === line.place)?.name ?? line.place}`).join(', ');

function storeSentence(book: Book, stock: Stock): string {
  const counts = new Map<string, number>();
  for (const line of stock.lines) counts.set(line.item, (counts.get(line.item) ?? 0) + line.count);
  const balloons = book.items.filter((item) => item.kind === 'balloon');
  const pieces = balloons.reduce((sum, item) => sum + (counts.get(item.id) ?? 0), 0);
  const none = balloons.filter((item) => (counts.get(item.id) ?? 0) === 0).length;
  if (pieces === 0) return 'You have no balloons yet.';
  const kinds = balloons.length - none;
  return `You have ${pieces.toLocaleString('en')} ${pieces === 1 ? 'balloon' : 'balloons'} of ${counted(kinds, 'kind')}${none === 0 ? '' : `; of ${inWords(none)} you have none`}.`;
}

/** What is going stale: past its date, or soon. */
function ageSentence(stock: Stock, today: LocalDate): string {
  const lots = stock.lines.flatMap((line) => line.lots.map((lot) => ({ lot, item: line.item })));
  const stale = lots.filter(({ lot }) => lot.goodUntil !== undefined && lot.goodUntil < today);
  const soon = lots.filter(({ lot }) => lot.goodUntil !== undefined && lot.goodUntil >= today && daysBetween(today, lot.goodUntil) <= 60);
  const pieces = (of: readonly { readonly lot: { readonly count: number } }[]): number => of.reduce((sum, { lot }) => sum + lot.count, 0);
  if (stale.length === 0 && soon.length === 0) return 'Nothing goes stale in the next two months.';
  const past = stale.length === 0 ? '' : `${pieces(stale)} pieces are past their date. `;
  return `${past}${soon.length === 0 ? '' : `${pieces(soon)} pieces go stale within two months; use them first.`}`;
}

/** A stocktake: there are this many, whatever the ledger said. */
function Count({ items, stock }: { readonly items: readonly Item[]; readonly stock: Stock }): ReactElement | null {
  const { book, today } = useBook();
  const { change, undo, error } = useChangeBook();
  const [draft, setDraft] = useState({ item: items[0]?.id ?? '', place: book.places[0]?.id ?? '', count: '' });
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const [told, setTold] = useState('');
  const there = stock.lines.find((line) => line.item === draft.item && line.place === draft.place)?.count ?? 0;
  if (book.places.length === 0) return null;
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const read = new FieldReader();
    const count = read.number('count', draft.count, { example: '40', whole: true });
    setProblems(read.problems);
    if (!read.isFine) return;
    const id = newId(`counted ${today} ${draft.item} ${draft.place}`, book.moves);
    change({ list: 'moves', put: { id, day: today, item: draft.item, kind: 'counted', place: draft.place, count } });
    setTold(`Counted: ${count} of ${nameOf(book, draft.item)}${count === there ? ', as the book had it' : `; the book had ${there}`}.`);
    setDraft({ ...draft, count: '' });
  };
  return (
    <section>
      <h2>Count what is there.</h2>
      <p className="note" style={{ marginTop: 6 }}>
        What you count is right from now on; the difference stays in the ledger of the item.
      </p>
      <form className="form" onSubmit={save} noValidate>
        <ChoiceField
          label="Item"
          value={draft.item}
          options={items.map((item) => ({ value: item.id, text: nameOfItem(item, book.colours) }))}
          onChange={(item) => setDraft({ ...draft, item })}
        />
        <ChoiceField
          label="Place"
          value={draft.place}
          options={book.places.map((entry) => ({ value: entry.id, text: entry.name }))}
          onChange={(place) => setDraft({ ...draft, place })}
        />
        <TextField
          label="Pieces counted"
          inputMode="numeric"
          value={draft.count}
          note={`The book has ${there}.`}
          problem={problems.count}
          onChange={(count) => setDraft({ ...draft, count })}
        />
        <div className="wide row">
          <button type="submit" className="btn">
            Write down the count
          </button>
          <Link className="btn plain" to="/store/$item" params={{ item: 'new' }}>
            Add an item
          </Link>
        </div>
      </form>
      <NotSaved error={error} />
      {told !== '' && undo !== undefined && (
        <Undo
          sentence={sentence(told)}
          action="Take it back"
          onUndo={() => {
            undo();
            setTold('');
          }}
        />
      )}
    </section>
  );
}

function nameOf(book: Book, id: string): string {
  const item = book.items.find((entry) => entry.id === id);
  return item === undefined ? id : nameOfItem(item, book.colours);
}
