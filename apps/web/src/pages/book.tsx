import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type Book, type Business, emptyBook, type PlanningSettings, planningSettingsOf } from '@twistwright/books';
import { type FormEvent, type ReactElement, useState } from 'react';
import { type BookText, bookFilePath, keptBook, replaceBook } from '../book/book-door.ts';
import { bookQuery, useBook, useChangeBook } from '../book/use-book.ts';
import { EmptyBusiness } from '../business/empty-business.tsx';
import { Artists, Colours, StockPlaces } from '../business/people-and-places.tsx';
import { RatesForm } from '../business/rates-form.tsx';
import { FieldReader, moneyText, numberText } from '../forms/field-reader.ts';
import { NotSaved } from '../forms/saving.tsx';
import { useForm } from '../forms/use-form.ts';
import { Page } from '../frame/page.tsx';
import { Because } from '../parts/because.tsx';
import { TextField } from '../parts/field.tsx';
import { FileButton } from '../parts/file-button.tsx';
import { Undo } from '../parts/undo.tsx';
import { counted } from '../words/counted.ts';

/** Everything of one business: whose it is, its habits, and the file that holds it. */
export function BookPage(): ReactElement {
  const { book } = useBook();
  /** Another book begins other forms; what is changed in this one leaves them as they are, with what they have to say. */
  const [opened, setOpened] = useState(0);
  return (
    <Page title="Book" whose={book.business.name}>
      <div className="title">
        <h1 className="say">
          The book of {book.business.name} holds {counted(book.gigs.length, 'gig')}, {counted(book.figures.length, 'figure')} and{' '}
          {counted(book.items.length, 'item')}.
        </h1>
      </div>
      <BookFile onOpened={() => setOpened(opened + 1)} />
      <BusinessForm book={book} key={`business ${opened}`} />
      <RatesForm key={`rates ${opened}`} />
      <Artists />
      <StockPlaces />
      <Colours />
      <PlanningForm book={book} key={`planning ${opened}`} />
    </Page>
  );
}

function BookFile({ onOpened }: { readonly onOpened: () => void }): ReactElement {
  const queries = useQueryClient();
  const [before, setBefore] = useState<BookText>();
  const shown = async (): Promise<void> => {
    await queries.invalidateQueries(bookQuery);
    onOpened();
  };
  const replace = useMutation({ mutationFn: replaceBook, onSuccess: shown });
  const [isEmptied, setIsEmptied] = useState(false);
  const open = async (file: BookText): Promise<void> => {
    setBefore(await keptBook());
    setIsEmptied(false);
    replace.mutate(file);
  };
  const begin = async (business: Business): Promise<void> => {
    const kept = await keptBook();
    await replaceBook({ name: 'empty.json', text: JSON.stringify(emptyBook(business)) });
    setBefore(kept);
    setIsEmptied(true);
  };
  return (
    <section style={{ paddingTop: 0 }}>
      <h2>Keep it as a file.</h2>
      <p className="lead" style={{ margin: '8px 0 20px' }}>
        The file holds everything and can be opened again, here or on another machine. Opening a file puts its book in the place of this
        one.
      </p>
      <div className="row">
        <a className="btn full" href={bookFilePath('yaml')} download="book.yaml">
          Save as YAML
        </a>
        <a className="btn" href={bookFilePath('json')} download="book.json">
          Save as JSON
        </a>
        <FileButton label="Open a book file" accept=".yaml,.yml,.json" onFile={(file) => void open(file)} />
      </div>
      <NotSaved error={replace.error} what="The file was not opened; this book is as it was." />
      <Because ask="Begin an empty book?">
        <p>It takes the place of this one. Save this one as a file first if it is to be kept.</p>
        <EmptyBusiness begin={begin} onDone={shown} />
      </Because>
      {before !== undefined && (isEmptied || replace.isSuccess) && (
        <Undo
          sentence={
            isEmptied ? 'The book is empty; it took the place of the other.' : 'The file is open; its book took the place of the other.'
          }
          action="Put the other book back"
          onUndo={() => {
            replace.mutate(before);
            setBefore(undefined);
            setIsEmptied(false);
          }}
        />
      )}
    </section>
  );
}

function BusinessForm({ book }: { readonly book: Book }): ReactElement {
  const { change, error, isSaving } = useChangeBook({ fromDraft: true });
  const form = useForm({ name: book.business.name, town: book.business.town ?? '', zone: book.business.zone });
  const { draft } = form;
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const read = new FieldReader();
    const name = read.text('name', draft.name, 'the name that stands on your papers');
    const town = read.optionalText(draft.town);
    if (!Intl.supportedValuesOf('timeZone').includes(draft.zone) && draft.zone !== 'UTC')
      read.refuse('zone', `“${draft.zone}” is not a time zone. Write it as Europe/London.`);
    const { town: _town, ...kept } = book.business;
    if (form.isFine(read)) change({ business: { ...kept, name, zone: draft.zone, ...(town === undefined ? {} : { town }) } });
  };
  return (
    <section>
      <h2>Whose book it is.</h2>
      <form className="form" onSubmit={save} noValidate>
        <TextField label="Name of the business" {...form.field('name')} />
        <TextField label="Town" {...form.field('town')} />
        <TextField label="Time zone" {...form.field('zone')} list={Intl.supportedValuesOf('timeZone')} />
        <p className="note">All money in this book is in {book.business.currency}.</p>
        <div className="wide row">
          <button type="submit" className="btn" disabled={isSaving}>
            Save whose it is
          </button>
        </div>
      </form>
      <NotSaved error={error} />
    </section>
  );
}

function PlanningForm({ book }: { readonly book: Book }): ReactElement {
  const { change, error, isSaving } = useChangeBook({ fromDraft: true });
  const now = planningSettingsOf(book);
  const currency = book.business.currency;
  const form = useForm({
    chance: numberText(Number((now.chanceOfRunningOut * 100).toFixed(3))),
    daysToSpare: numberText(now.daysToSpare),
    runs: numberText(now.runs),
    handHours: numberText(now.handHoursPerDay),
    budget: moneyText(now.budget, currency),
  });
  const { draft } = form;
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const read = new FieldReader();
    const budget = read.optionalMoney('budget', draft.budget, currency);
    const { budget: _budget, ...kept } = book.settings?.planning ?? {};
    const planning: PlanningSettings = {
      ...kept,
      chanceOfRunningOut: read.number('chance', draft.chance, { example: '10', least: 0.1, most: 99 }) / 100,
      daysToSpare: read.number('daysToSpare', draft.daysToSpare, { example: '1', most: 60, whole: true }),
      runs: read.number('runs', draft.runs, { example: '2000', least: 50, most: 100_000, whole: true }),
      handHoursPerDay: read.number('handHours', draft.handHours, { example: '5', least: 0.5, most: 24 }),
      ...(budget === undefined ? {} : { budget }),
    };
    if (form.isFine(read)) change({ settings: { ...book.settings, planning } });
  };
  return (
    <section>
      <h2>How careful the plans are.</h2>
      <form className="form" onSubmit={save} noValidate>
        <TextField label="Chance that something runs out, in 100" inputMode="decimal" {...form.field('chance')} />
        <TextField
          label="Working days to spare"
          inputMode="numeric"
          {...form.field('daysToSpare')}
          note="Between the arrival of an order and the gig."
        />
        <TextField label="Tries for each gig" inputMode="numeric" {...form.field('runs')} note="More are slower and surer." />
        <TextField
          label="Hours of making a day"
          inputMode="decimal"
          {...form.field('handHours')}
          note="More than that are hard on the hands."
        />
        <TextField label={`Budget for shopping, ${currency}`} inputMode="decimal" {...form.field('budget')} note="Empty: no limit." />
        <div className="wide row">
          <button type="submit" className="btn" disabled={isSaving}>
            Save the habits
          </button>
        </div>
      </form>
      <NotSaved error={error} />
    </section>
  );
}
