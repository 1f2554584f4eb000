import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { type FormEvent, type ReactElement, useState } from 'react';
import { openDemo, openEmpty, replaceBook } from '../book/book-door.ts';
import { bookQuery } from '../book/use-book.ts';
import { FieldReader } from '../forms/field-reader.ts';
import { NotSaved } from '../forms/saving.tsx';
import { Page } from '../frame/page.tsx';
import { ChoiceField, TextField } from '../parts/field.tsx';
import { BookFileButton } from './book-file-button.tsx';
import { useBusy } from './use-busy.ts';

/** First start: the demo, an empty business, or a book file. */
export function Start(): ReactElement {
  const queries = useQueryClient();
  const navigate = useNavigate();
  const done = async (): Promise<void> => {
    await queries.fetchQuery({ ...bookQuery, staleTime: 0 });
    await navigate({ to: '/diary' });
  };
  const demo = useMutation({ mutationFn: openDemo, onSuccess: done });
  const file = useMutation({ mutationFn: replaceBook, onSuccess: done });
  useBusy(demo.isPending || file.isPending);
  return (
    <Page title="Start">
      <div className="title">
        <h1 className="say">Who will be served, what will it take, and what do you charge?</h1>
      </div>
      <p className="lead">
        Twistwright answers from your own book: your figures, gigs, balloons and price lists. It stays on this machine. Begin in one of
        three ways.
      </p>
      <NotSaved error={demo.error ?? file.error} what="The book was not opened." />
      <div className="choices">
        <section>
          <h2>Look around first.</h2>
          <p>An invented business with coming gigs, a full shelf and three suppliers. You can throw it away at any time.</p>
          <button type="button" className="btn full" onClick={() => demo.mutate()} disabled={demo.isPending}>
            Open the demo
          </button>
        </section>
        <EmptyBusiness onDone={done} />
        <section>
          <h2>Open a book file.</h2>
          <p>A file that Twistwright wrote, or one that you wrote yourself: YAML or JSON.</p>
          <BookFileButton onFile={(chosen) => file.mutate(chosen)} />
        </section>
      </div>
    </Page>
  );
}

const currencies = ['GBP', 'EUR', 'USD', 'CHF', 'JPY', 'AUD', 'CAD', 'NZD', 'SEK', 'NOK', 'DKK', 'PLN', 'CZK'];

function EmptyBusiness({ onDone }: { readonly onDone: () => Promise<void> }): ReactElement {
  const here = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const [draft, setDraft] = useState({ name: '', currency: 'EUR', zone: here });
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const save = useMutation({ mutationFn: openEmpty, onSuccess: onDone });
  const begin = (event: FormEvent): void => {
    event.preventDefault();
    const read = new FieldReader();
    const name = read.text('name', draft.name, 'the name that stands on your papers');
    if (!Intl.supportedValuesOf('timeZone').includes(draft.zone) && draft.zone !== 'UTC')
      read.refuse('zone', `“${draft.zone}” is not a time zone. Write it as Europe/London.`);
    setProblems(read.problems);
    if (read.isFine) save.mutate({ name, currency: draft.currency, zone: draft.zone });
  };
  return (
    <section>
      <h2>Start with an empty book.</h2>
      <form onSubmit={begin} noValidate className="rows">
        <TextField
          label="Name of the business"
          value={draft.name}
          problem={problems.name}
          onChange={(name) => setDraft({ ...draft, name })}
        />
        <ChoiceField
          label="Currency"
          value={draft.currency}
          options={currencies.map((code) => ({ value: code, text: code }))}
          onChange={(currency) => setDraft({ ...draft, currency })}
        />
        <TextField
          label="Time zone"
          value={draft.zone}
          problem={problems.zone}
          list={Intl.supportedValuesOf('timeZone')}
          onChange={(zone) => setDraft({ ...draft, zone })}
        />
        <NotSaved error={save.error} />
        <div style={{ marginTop: 12 }}>
          <button type="submit" className="btn" disabled={save.isPending}>
            Start an empty book
          </button>
        </div>
      </form>
    </section>
  );
}
