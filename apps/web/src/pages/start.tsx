import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import type { ReactElement } from 'react';
import { openDemo, openEmpty, replaceBook } from '../book/book-door.ts';
import { bookQuery } from '../book/use-book.ts';
import { EmptyBusiness } from '../business/empty-business.tsx';
import { NotSaved } from '../forms/saving.tsx';
import { Page } from '../frame/page.tsx';
import { FileButton } from '../parts/file-button.tsx';
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
          <p>
            An invented business with coming gigs, a full shelf and three suppliers. It also says what to buy first for those who are only
            beginning. You can start your own from the page of the book at any time.
          </p>
          <button type="button" className="btn full" onClick={() => demo.mutate()} disabled={demo.isPending}>
            Open the demo
          </button>
        </section>
        <section>
          <h2>Start with an empty book.</h2>
          <EmptyBusiness begin={openEmpty} onDone={done} />
        </section>
        <section>
          <h2>Open a book file.</h2>
          <p>A file that Twistwright wrote, or one that you wrote yourself: YAML or JSON.</p>
          <FileButton label="Open a book file" accept=".yaml,.yml,.json" onFile={(chosen) => file.mutate(chosen)} />
        </section>
      </div>
    </Page>
  );
}
