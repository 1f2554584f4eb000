import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { Book, Supplier } from '@twistwright/books';
import { showMoney } from '@twistwright/units';
import { type ReactElement, useState } from 'react';
import { type BookText, keptBook, NotAccepted, type PriceColumns, type PricesRead, readPriceList, replaceBook } from '../book/book-door.ts';
import { bookQuery, useBook } from '../book/use-book.ts';
import { NotSaved } from '../forms/saving.tsx';
import { ChoiceField } from '../parts/field.tsx';
import { type ChosenFile, FileButton } from '../parts/file-button.tsx';
import { ItemName } from '../parts/item-name.tsx';
import { Undo } from '../parts/undo.tsx';
import { counted, sentence } from '../words/counted.ts';
import { headingsOf } from './headings-of.ts';

/** Lines of each table that are shown. */
const shown = 12;

/** Reads the price list that a supplier sends as a file, shows what it would change, and puts it into the book when it is right. */
export function PriceListFile({ supplier }: { readonly supplier: Supplier }): ReactElement {
  const { book } = useBook();
  const queries = useQueryClient();
  const [file, setFile] = useState<ChosenFile>();
  const [columns, setColumns] = useState<PriceColumns>();
  const [before, setBefore] = useState<BookText>();
  const look = useMutation({
    mutationFn: (ask: { readonly text: string; readonly mapping?: PriceColumns }) => readPriceList(supplier.id, ask),
  });
  const put = useMutation({
    mutationFn: async (gone: 'keep' | 'drop') => {
      setBefore(await keptBook());
      await readPriceList(supplier.id, {
        text: file?.text ?? '',
        apply: true,
        gone,
        ...(columns === undefined ? {} : { mapping: columns }),
      });
    },
    onSuccess: async () => {
      await queries.invalidateQueries(bookQuery);
      setFile(undefined);
      look.reset();
    },
  });
  const undo = useMutation({
    mutationFn: async (kept: BookText) => void (await replaceBook(kept)),
    onSuccess: async () => {
      setBefore(undefined);
      await queries.invalidateQueries(bookQuery);
    },
  });
  const choose = (chosen: ChosenFile): void => {
    setFile(chosen);
    setColumns(undefined);
    setBefore(undefined);
    put.reset();
    look.mutate({ text: chosen.text });
  };
  const asksForColumns = look.error instanceof NotAccepted && look.error.problems.some((problem) => problem.code === 'prices.columns');
  return (
    <div style={{ margin: '24px 0' }}>
      <div className="row">
        <FileButton label="Read a price list" accept=".csv,.txt,.tsv,text/csv" onFile={choose} />
        <p className="sp">A table saved as CSV: a line for each bag. Nothing changes before you have seen it.</p>
      </div>
      {asksForColumns && file !== undefined ? (
        <ColumnsForm
          headings={headingsOf(file.text)}
          onColumns={(mapping) => {
            setColumns(mapping);
            look.mutate({ text: file.text, mapping });
          }}
        />
      ) : (
        <NotSaved error={look.error} what="The price list could not be read." />
      )}
      <NotSaved error={put.error ?? undo.error} />
      {look.data !== undefined && file !== undefined && (
        <WhatItChanges book={book} supplier={supplier} list={look.data} isSaving={put.isPending} onPut={(gone) => put.mutate(gone)} />
      )}
      {before !== undefined && put.isSuccess && (
        <Undo sentence="The prices are in the book." action="Put the old prices back" onUndo={() => undo.mutate(before)} />
      )}
    </div>
  );
}

interface WhatItChangesProps {
  readonly book: Book;
  readonly supplier: Supplier;
  readonly list: PricesRead;
  readonly isSaving: boolean;
  readonly onPut: (gone: 'keep' | 'drop') => void;
}

function WhatItChanges({ book, supplier, list, isSaving, onPut }: WhatItChangesProps): ReactElement {
  const currency = supplier.currency ?? book.business.currency;
  const { added, changed, gone, unmatched } = list;
  const changes = [
    added.length > 0 && `${counted(added.length, 'bag')} more`,
    changed.length > 0 && `${counted(changed.length, 'bag')} at another price or on other terms`,
  ].filter((part) => part !== false);
  return (
    <section aria-live="polite" style={{ paddingTop: 24 }}>
      <h2>
        {changes.length === 0
          ? `${sentence(counted(list.offers.length, 'line'))} understood, and nothing to change.`
          : `${sentence(changes.join(', '))}; ${counted(list.offers.length, 'line is', 'lines are')} understood.`}
      </h2>
      {changed.length > 0 && (
        <table className="list-row">
          <caption className="skip">Bags whose price or terms change</caption>
          <thead>
            <tr>
              <th scope="col">Item</th>
              <th scope="col" className="num">
                In a bag
              </th>
              <th scope="col" className="num">
                Was
              </th>
              <th scope="col" className="num">
                Is
              </th>
            </tr>
          </thead>
          <tbody>
            {changed.slice(0, shown).map(({ before, after }) => (
              <tr key={after.id}>
                <th scope="row">
                  <ItemName book={book} item={after.item} />
                </th>
                <td className="num">{after.count}</td>
                <td className="num">{showMoney(before.price, currency)}</td>
                <td className="num">{showMoney(after.price, currency)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {changed.length > shown && <p className="sp">And {changed.length - shown} more.</p>}
      {unmatched.length > 0 && (
        <>
          <p className="lead" style={{ marginTop: 16 }}>
            {sentence(counted(unmatched.length, 'line'))} could not be matched and {unmatched.length === 1 ? 'is' : 'are'} left out.
          </p>
          <ul className="problems">
            {unmatched.slice(0, shown).map((line) => (
              <li key={line.line}>
                Line {line.line}, “{line.cells.filter((cell) => cell !== '').join(', ')}”: {line.problem.sentence}
              </li>
            ))}
            {unmatched.length > shown && <li>And {unmatched.length - shown} more.</li>}
          </ul>
        </>
      )}
      {(changes.length > 0 || gone.length > 0) && (
        <div className="row" style={{ marginTop: 16 }}>
          {changes.length > 0 && (
            <button type="button" className="btn full" disabled={isSaving} onClick={() => onPut('keep')}>
              Put these prices into the book
            </button>
          )}
          {gone.length > 0 && (
            <button type="button" className="btn" disabled={isSaving} onClick={() => onPut('drop')}>
              {changes.length > 0 ? 'The same, and take off' : 'Take off'} {counted(gone.length, 'bag')} that{' '}
              {gone.length === 1 ? 'is' : 'are'} not on the list any more
            </button>
          )}
        </div>
      )}
    </section>
  );
}

const asked = [
  { column: 'description', label: 'Goods in words' },
  { column: 'size', label: 'Size' },
  { column: 'colour', label: 'Colour' },
  { column: 'count', label: 'Pieces in a bag' },
  { column: 'price', label: 'Price of a bag' },
] as const;

/** Asks which column is which when the headings do not say it. */
function ColumnsForm({
  headings,
  onColumns,
}: {
  readonly headings: readonly string[];
  readonly onColumns: (columns: PriceColumns) => void;
}): ReactElement {
  const [columns, setColumns] = useState<PriceColumns>({});
  const options = [{ value: '', text: 'none' }, ...headings.map((heading) => ({ value: heading, text: heading }))];
  const isEnough = columns.price !== undefined && (columns.description !== undefined || columns.size !== undefined);
  return (
    <form
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        onColumns(columns);
      }}
    >
      <p className="wide lead">The headings do not say which column is which. Say it here; the price and the goods are enough.</p>
      {asked.map(({ column, label }) => (
        <ChoiceField
          key={column}
          label={label}
          value={columns[column] ?? ''}
          options={options}
          onChange={(heading) => {
            const { [column]: _before, ...others } = columns;
            setColumns(heading === '' ? others : { ...others, [column]: heading });
          }}
        />
      ))}
      <div className="wide row">
        <button type="submit" className="btn full" disabled={!isEnough}>
          Read it with these columns
        </button>
      </div>
    </form>
  );
}
